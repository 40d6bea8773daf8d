package io.github.wattledger.plan;

import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * How to begin.
 *
 * @param seconds how long the opening is: a sixth of the time, 20 to 90 minutes
 * @param capW the normalized power of the opening not to exceed, watts
 * @param capBpm the heart rate beside it, beats per minute, or null where the rider's line is not known
 * @param pastRatio median of the rider's past openings over their targets, or null with fewer than two races
 */
public record OpeningCap(
        double seconds,
        double capW,
        @Nullable Double capBpm,
        @Nullable Double pastRatio) implements Serializable {
    /** Leaves a little room for the climbs and corners of an opening, as the advice of a review does. */
    static final double ROOM = 1.05;

    /** Own choice, as in the review of a race. */
    private static final double SHARE = 1.0 / 6;

    private static final double SHORTEST_SECONDS = 1200;
    private static final double LONGEST_SECONDS = 5400;

    static double secondsOf(double movingSeconds) {
        return Math.max(Math.min(SHORTEST_SECONDS, movingSeconds), Math.min(LONGEST_SECONDS, SHARE * movingSeconds));
    }
}
