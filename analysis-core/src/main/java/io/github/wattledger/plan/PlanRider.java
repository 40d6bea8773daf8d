package io.github.wattledger.plan;

import io.github.wattledger.power.BestEffort;
import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.rider.Bounds;
import io.github.wattledger.rig.RigChoice;
import java.io.Serializable;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a plan needs to know about a rider, from wherever it comes.
 *
 * @param rig rider and bicycle, each number with its range
 * @param thresholdPowerW threshold power, watts
 * @param thresholdHeartRateBpm threshold heart rate, beats per minute, or null
 * @param longBests the rider's bests of 20 minutes and longer; with fewer than three the guide is used
 * @param heartRateLine heart rate on power, or null where it is not known
 * @param openingRatios of the last races, the oldest first: normalized power of the opening over the target of the day
 * @param usualStoppedSeconds how long the rider usually stands in a race, seconds, or null
 */
public record PlanRider(
        RigChoice rig,
        double thresholdPowerW,
        @Nullable Double thresholdHeartRateBpm,
        List<BestEffort> longBests,
        @Nullable HeartRateLine heartRateLine,
        List<Double> openingRatios,
        @Nullable Double usualStoppedSeconds)
        implements Serializable {
    /** @throws IllegalArgumentException when the threshold power or heart rate lies outside its range */
    public PlanRider {
        Bounds.THRESHOLD_POWER_W.require("thresholdPowerW", thresholdPowerW);
        Bounds.THRESHOLD_HEART_RATE_BPM.require("thresholdHeartRateBpm", thresholdHeartRateBpm);
        longBests = List.copyOf(longBests);
        openingRatios = List.copyOf(openingRatios);
    }

    /** A rider of whom only this is known. */
    public static PlanRider of(RigChoice rig, double thresholdPowerW) {
        return new PlanRider(rig, thresholdPowerW, null, List.of(), null, List.of(), null);
    }

    /** This rider with a threshold heart rate, beats per minute, or null. */
    public PlanRider withThresholdHeartRateBpm(@Nullable Double bpm) {
        return new PlanRider(rig, thresholdPowerW, bpm, longBests, heartRateLine, openingRatios, usualStoppedSeconds);
    }

    /** This rider with other long bests. */
    public PlanRider withLongBests(List<BestEffort> bests) {
        return new PlanRider(
                rig, thresholdPowerW, thresholdHeartRateBpm, bests, heartRateLine, openingRatios, usualStoppedSeconds);
    }

    /** This rider with a line of heart rate on power, or null. */
    public PlanRider withHeartRateLine(@Nullable HeartRateLine line) {
        return new PlanRider(
                rig, thresholdPowerW, thresholdHeartRateBpm, longBests, line, openingRatios, usualStoppedSeconds);
    }

    /** This rider with the habits of past races. */
    public PlanRider withHabits(List<Double> openings, @Nullable Double stoppedSeconds) {
        return new PlanRider(
                rig, thresholdPowerW, thresholdHeartRateBpm, longBests, heartRateLine, openings, stoppedSeconds);
    }

    /** What the rider can hold for so many seconds of riding: by the own bests where they carry it, by the guide otherwise. */
    SustainablePower sustainable(double seconds) {
        double atLeast = Math.max(seconds, SustainablePower.SHORTEST_GUIDE_SECONDS);
        return SustainablePower.fromBests(longBests, atLeast)
                .orElseGet(() -> SustainablePower.guide(thresholdPowerW, atLeast));
    }
}
