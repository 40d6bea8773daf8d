package io.github.wattledger.pacing;

import java.io.Serializable;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Where the time of a ride went. The four parts are disjoint, and their sum is the elapsed time.
 *
 * @param elapsedMinutes from the first second to the last
 * @param movingMinutes recorded and under way
 * @param stoppedMinutes standing still with the timer running
 * @param pausedMinutes with the timer stopped
 * @param missingMinutes with the timer running and nothing recorded
 * @param entries what the mistakes cost
 * @param notes what to know when reading the entries, a sentence each
 */
public record TimeLedger(
        double elapsedMinutes,
        double movingMinutes,
        double stoppedMinutes,
        double pausedMinutes,
        double missingMinutes,
        List<Entry> entries,
        List<String> notes)
        implements Serializable {
    /**
     * What one mistake cost, as a range.
     *
     * @param label what it was
     * @param minutesLow the lower end
     * @param minutesHigh the upper end
     */
    public record Entry(String label, double minutesLow, double minutesHigh) implements Serializable {}

    /** The label of the line for all mistakes repaired at once, which is there where more than one was priced. */
    public static final String ALL_AT_ONCE = "all of these repaired at once";

    /** Copies the lists. */
    public TimeLedger {
        entries = List.copyOf(entries);
        notes = List.copyOf(notes);
    }

    /** What all mistakes cost together, each second counted once; empty when none was priced. */
    public Optional<Entry> allAtOnce() {
        Optional<Entry> all = entries.stream()
                .filter(entry -> entry.label().equals(ALL_AT_ONCE))
                .findFirst();
        return all.isPresent()
                ? all
                : entries.stream().filter(entry -> isMistake(entry.label())).findFirst();
    }

    /** Lines with another label speak of the race as a whole. */
    private static boolean isMistake(String label) {
        return Arrays.stream(FindingKind.values()).anyMatch(kind -> kind.id().equals(label));
    }
}
