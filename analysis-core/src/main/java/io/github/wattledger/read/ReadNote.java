package io.github.wattledger.read;

import io.github.wattledger.ride.Samples;
import java.io.Serializable;
import java.util.Locale;

/**
 * Something a reader survived or left out.
 *
 * @param code a fixed word for programs, lower case with hyphens
 * @param text one sentence for people: what, and where in the file
 */
public record ReadNote(String code, String text) implements Serializable {
    private static final long MOST_SECONDS = 100L * 86_400;

    /**
     * A note on damage that ended the reading: after what happened it says how far the reading came.
     *
     * @param code a fixed word for programs
     * @param whatHappened a whole sentence
     * @param read what was read before the damage
     */
    public static ReadNote damage(String code, String whatHappened, Samples read) {
        return new ReadNote(code, whatHappened + " " + reached(read));
    }

    private static String reached(Samples read) {
        int size = read.size();
        if (size == 0) {
            return "No sample was read up to there.";
        }
        String count = size == 1 ? "The 1 sample" : String.format(Locale.ROOT, "The %,d samples", size);
        long seconds = read.epochSecond(size - 1) - read.epochSecond(0);
        String last = seconds < 0 || seconds > MOST_SECONDS || size == 1
                ? ""
                : String.format(
                        Locale.ROOT, ", the last at %d:%02d:%02d,", seconds / 3600, seconds / 60 % 60, seconds % 60);
        return count + " up to there" + last + (size == 1 ? " was read." : " were read.");
    }
}
