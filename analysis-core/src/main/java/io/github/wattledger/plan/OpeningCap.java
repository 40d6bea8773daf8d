package io.github.wattledger.plan;

import io.github.wattledger.pacing.Opening;
import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * How to begin.
 *
 * @param seconds how long the opening is: a sixth of the time, 20 to 90 minutes
 * @param capW the normalized power of the opening not to exceed, watts
 * @param byCapsW the normalized power that the caps by ground come to in the opening of the plan, watts: what to expect
 *     there when nothing but they is ridden
 * @param capBpm the heart rate beside it, beats per minute, or null where the rider's line is not known
 * @param pastRatio median of the rider's openings of the last races over their targets, or null with fewer than two races
 */
public record OpeningCap(
        double seconds,
        double capW,
        double byCapsW,
        @Nullable Double capBpm,
        @Nullable Double pastRatio) implements Serializable {
    static double secondsOf(double movingSeconds) {
        return Math.min(movingSeconds, Opening.secondsOf(movingSeconds));
    }
}
