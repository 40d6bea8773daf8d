package io.github.wattledger.plan;

import io.github.wattledger.history.OwnRides;
import io.github.wattledger.history.PastRide;
import io.github.wattledger.history.RiderTraits;
import io.github.wattledger.history.Spread;
import io.github.wattledger.intake.RiderOnDay;
import io.github.wattledger.power.RideAbility;
import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.ride.Median;
import io.github.wattledger.rider.Bounds;
import io.github.wattledger.rig.RigChoice;
import java.io.Serializable;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * What a plan needs to know about a rider, from wherever it comes.
 *
 * @param rig rider and bicycle, each number with its range
 * @param thresholdPowerW threshold power, watts
 * @param thresholdHeartRateBpm threshold heart rate, beats per minute, or null
 * @param highestHeartRateBpm the highest heart rate that the rider reaches, beats per minute, or null
 * @param power what else is known of the rider's power
 * @param mayBeUnder18 whether the rider is, or may be, under 18: then nothing is said of what to eat
 * @param traits what the rider's own rides say of heart rate, rig and habits, or null where they were not looked at
 * @param lastRaces the rider's last races, the latest first; none where they were not looked at
 */
public record PlanRider(
        RigChoice rig,
        double thresholdPowerW,
        @Nullable Double thresholdHeartRateBpm,
        @Nullable Double highestHeartRateBpm,
        RideAbility.Elsewhere power,
        boolean mayBeUnder18,
        @Nullable RiderTraits traits,
        List<PastRide> lastRaces)
        implements Serializable {
    /** A habit shows in so many races. Own choice. */
    static final int FEWEST_RACES = 2;

    /** @throws IllegalArgumentException when the threshold power or heart rate lies outside its range */
    public PlanRider {
        Bounds.THRESHOLD_POWER_W.require("thresholdPowerW", thresholdPowerW);
        Bounds.THRESHOLD_HEART_RATE_BPM.require("thresholdHeartRateBpm", thresholdHeartRateBpm);
        Bounds.MAXIMUM_HEART_RATE_BPM.require("highestHeartRateBpm", highestHeartRateBpm);
        lastRaces = List.copyOf(lastRaces);
    }

    /** An adult of whom only this is known. */
    public static PlanRider of(RigChoice rig, double thresholdPowerW) {
        return new PlanRider(
                rig,
                thresholdPowerW,
                null,
                null,
                RideAbility.Elsewhere.ofThreshold(thresholdPowerW),
                false,
                null,
                List.of());
    }

    /**
     * What holds of a rider on the day of the race.
     *
     * @throws IllegalArgumentException when no threshold power is known
     */
    public static PlanRider of(RigChoice rig, RiderOnDay onDay) {
        Double thresholdW = onDay.thresholdPowerW();
        if (thresholdW == null) {
            throw new IllegalArgumentException("the threshold power is not known");
        }
        return new PlanRider(
                rig,
                thresholdW,
                onDay.thresholdHeartRateBpm(),
                onDay.rider().maximumHeartRateBpm(),
                onDay.power(),
                onDay.mayBeUnder18(),
                null,
                List.of());
    }

    /** This rider with a threshold heart rate, beats per minute, or null. */
    public PlanRider withThresholdHeartRateBpm(@Nullable Double bpm) {
        return new PlanRider(rig, thresholdPowerW, bpm, highestHeartRateBpm, power, mayBeUnder18, traits, lastRaces);
    }

    /**
     * This rider with what own rides before a day say of heart rate and habits, and of drag area and rolling resistance
     * where these were not given: of the drag area the upper quartile, since drag in a bunch is lower than alone.
     */
    public PlanRider withOwnRides(OwnRides own, LocalDate day) {
        RiderTraits ofRides = own.traitsOn(day);
        return new PlanRider(
                ofRides.fill(rig),
                thresholdPowerW,
                thresholdHeartRateBpm,
                highestHeartRateBpm,
                power,
                mayBeUnder18,
                ofRides,
                own.racesBefore(day));
    }

    /** The speed that the rider seldom exceeds on descents, m/s: as own rides show it, otherwise an ordinary one. */
    public double usualFastestMps() {
        Spread own = traits == null ? null : traits.descentSpeedMps().found().orElse(null);
        return own == null
                ? PlanOptions.USUAL_FASTEST_MPS
                : Math.max(PlanOptions.FASTEST_MPS.low(), Math.min(PlanOptions.FASTEST_MPS.high(), own.median()));
    }

    /** What the rider can hold for so many seconds of riding, at least for 20 minutes. */
    SustainablePower sustainable(double seconds) {
        return Objects.requireNonNull(
                power.sustainable(Math.max(seconds, SustainablePower.SHORTEST_GUIDE_SECONDS), thresholdPowerW));
    }

    /** The heart rate not to exceed beside a power, beats per minute; null where own rides do not show it. */
    @Nullable Double capBpm(double watts) {
        return traits == null
                ? null
                : traits.heartRateAt(watts)
                        .found()
                        .map(rate ->
                                (double) Math.round(rate.capBpm(of(highestHeartRateBpm), of(thresholdHeartRateBpm))))
                        .orElse(null);
    }

    /** How the rider opened the last races, normalized power over the target of the day; null with fewer than two. */
    @Nullable Double usualOpening() {
        return lastRaces.size() < FEWEST_RACES
                ? null
                : (Double) Median.of(lastRaces.stream()
                        .map(race -> race.traits().openingOverTarget())
                        .filter(Objects::nonNull)
                        .mapToDouble(Double::doubleValue)
                        .toArray());
    }

    /** The share of the time from start to finish in which the rider stood in the last races, 0 to 1; null with fewer than two. */
    public @Nullable Double usualStoppedShare() {
        return lastRaces.size() < FEWEST_RACES
                ? null
                : (Double) Median.of(
                        lastRaces.stream().mapToDouble(PastRide::stoppedShare).toArray());
    }

    private static OptionalDouble of(@Nullable Double bpm) {
        return bpm == null ? OptionalDouble.empty() : OptionalDouble.of(bpm);
    }
}
