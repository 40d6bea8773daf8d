package io.github.wattledger.pacing;

import java.io.Serializable;
import java.util.List;

/**
 * Where the time of a ride went. The four parts are disjoint, and their sum is the elapsed time.
 *
 * @param elapsedMinutes from the first second to the last
 * @param movingMinutes recorded and under way
 * @param stoppedMinutes standing still with the timer running
 * @param pausedMinutes with the timer stopped
 * @param missingMinutes with the timer running and nothing recorded
 * @param entries what the mistakes cost
 */
public record TimeLedger(
        double elapsedMinutes,
        double movingMinutes,
        double stoppedMinutes,
        double pausedMinutes,
        double missingMinutes,
        List<Entry> entries)
        implements Serializable {
    /**
     * What one mistake cost, as a range.
     *
     * @param label what it was
     * @param minutesLow the lower end
     * @param minutesHigh the upper end
     */
    public record Entry(String label, double minutesLow, double minutesHigh) implements Serializable {}

    /** Copies the entries. */
    public TimeLedger {
        entries = List.copyOf(entries);
    }
}
