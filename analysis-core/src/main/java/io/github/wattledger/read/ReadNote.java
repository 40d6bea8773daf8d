package io.github.wattledger.read;

import io.github.wattledger.ride.Interval;
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

    /**
     * Text of a file made fit for one line of a message: what could break the line or steer a terminal becomes a
     * question mark.
     *
     * @param text any text
     * @param longest most characters to keep
     */
    public static String printable(String text, int longest) {
        StringBuilder plain = new StringBuilder();
        text.codePoints().limit(longest).forEach(point -> plain.appendCodePoint(isPrintable(point) ? point : '?'));
        return text.codePointCount(0, text.length()) > longest ? plain + "..." : plain.toString();
    }

    private static boolean isPrintable(int point) {
        return switch (Character.getType(point)) {
            case Character.CONTROL,
                    Character.FORMAT,
                    Character.SURROGATE,
                    Character.PRIVATE_USE,
                    Character.UNASSIGNED,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR -> false;
            default -> true;
        };
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
                : ", the last at " + Interval.clock((int) seconds) + ",";
        return count + " up to there" + last + (size == 1 ? " was read." : " were read.");
    }
}
