package io.github.wattledger.plan;

import java.io.Serializable;

/**
 * A time with its range.
 *
 * @param seconds the time, seconds
 * @param lowSeconds the shortest that is plausible, seconds
 * @param highSeconds the longest that is plausible, seconds
 */
public record TimeRange(double seconds, double lowSeconds, double highSeconds) implements Serializable {
    /** This range with stops added to all three. */
    TimeRange plus(double stoppedSeconds) {
        return new TimeRange(seconds + stoppedSeconds, lowSeconds + stoppedSeconds, highSeconds + stoppedSeconds);
    }

    /** The range of a part of the way, as wide in proportion. */
    TimeRange part(double partSeconds) {
        return new TimeRange(partSeconds, partSeconds * lowSeconds / seconds, partSeconds * highSeconds / seconds);
    }
}
