package io.github.wattledger.pacing;

import io.github.wattledger.power.HeartLine;
import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * What the judged part of a ride shows of its rider whether or not anything was found wrong with it, to be compared with
 * other rides.
 *
 * @param heartLine how heart rate answered power from minute 20 to the middle, at or below threshold; null where that cannot
 *     be said
 * @param openingOverTarget normalized power of the opening over the target; null without a target, and where the ride was not
 *     judged as a race
 * @param fadePercent effort lost from early to late on like ground, percent, below 0 where it rose; null where there is
 *     nothing to compare, and where the ride was not judged as a race
 * @param descentSpeedMps the speed that was seldom exceeded on descents, the 95th percentile of the seconds on ground of -3 %
 *     and steeper, metres a second; null with under five minutes of them
 */
public record PacingNumbers(
        @Nullable HeartLine heartLine,
        @Nullable Double openingOverTarget,
        @Nullable Double fadePercent,
        @Nullable Double descentSpeedMps)
        implements Serializable {
    /** Nothing is known. */
    public static final PacingNumbers NONE = new PacingNumbers(null, null, null, null);

    static PacingNumbers of(Race race, boolean isRace) {
        HeartLine line = race.heartRateModel().asLine();
        Double descentSpeedMps = finite(DescentSpeed.mps(race.ride(), race.course()));
        return isRace
                ? new PacingNumbers(
                        line,
                        finite(race.normalizedPowerW(race.opening()) / race.targetW()),
                        finite(Fade.lossPercent(race)),
                        descentSpeedMps)
                : new PacingNumbers(line, null, null, descentSpeedMps);
    }

    /**
     * Normalized power of an opening, watts; null where one of the two is.
     *
     * @param openingOverTarget the opening over the target
     * @param targetW the target, watts
     */
    public static @Nullable Double openingW(@Nullable Double openingOverTarget, @Nullable Double targetW) {
        return openingOverTarget == null || targetW == null ? null : (Double) (openingOverTarget * targetW);
    }

    private static @Nullable Double finite(double value) {
        return Double.isFinite(value) ? value : null;
    }
}
