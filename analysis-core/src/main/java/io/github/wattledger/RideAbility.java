package io.github.wattledger;

import io.github.wattledger.power.Ability;
import io.github.wattledger.power.AbilityEvidence;
import io.github.wattledger.power.CriticalPower;
import io.github.wattledger.power.CriticalPowerFit;
import io.github.wattledger.power.CriticalPowerResult;
import io.github.wattledger.power.Durability;
import io.github.wattledger.power.MeanMaximalCurve;
import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.power.ThresholdEstimate;
import io.github.wattledger.power.ThresholdHeartRate;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What one ride and a threshold known from elsewhere tell of a rider's ability. Sustainable power is the guide: the bests
 * of the ride itself would set it a target that it always meets.
 */
final class RideAbility {
    private final Ride ride;
    private final CriticalPowerResult criticalPower;
    private final @Nullable ThresholdEstimate estimate;
    private final @Nullable Double thresholdPowerW;

    private RideAbility(
            Ride ride,
            CriticalPowerResult criticalPower,
            @Nullable ThresholdEstimate estimate,
            @Nullable Double thresholdPowerW) {
        this.ride = ride;
        this.criticalPower = criticalPower;
        this.estimate = estimate;
        this.thresholdPowerW = thresholdPowerW;
    }

    /**
     * Fits the curve of a ride.
     *
     * @param knownThresholdW threshold power known from elsewhere, watts, or null, which lets it be estimated
     */
    static RideAbility of(Ride ride, MeanMaximalCurve curve, @Nullable Double knownThresholdW) {
        CriticalPowerResult criticalPower = CriticalPower.ofCurve(curve, knownThresholdW);
        if (knownThresholdW != null) {
            return new RideAbility(ride, criticalPower, null, knownThresholdW);
        }
        ThresholdEstimate estimate = ThresholdEstimate.of(curve, criticalPower).orElse(null);
        return new RideAbility(ride, criticalPower, estimate, estimate == null ? null : (Double) estimate.watts());
    }

    /** The threshold power to judge by, known or estimated, watts; null when there is neither. */
    @Nullable Double thresholdPowerW() {
        return thresholdPowerW;
    }

    /**
     * The ability over so many seconds of moving time.
     *
     * @param trustedThresholdW the threshold power that sustainable power may rest on, watts, or null for none
     */
    Ability over(int movingSeconds, @Nullable Double trustedThresholdW) {
        SustainablePower sustainable =
                trustedThresholdW == null || movingSeconds < SustainablePower.SHORTEST_GUIDE_SECONDS
                        ? null
                        : SustainablePower.guide(trustedThresholdW, movingSeconds);
        CriticalPowerFit fit = criticalPower.accepted().orElse(null);
        return new Ability(
                fit == null ? null : (Double) fit.criticalPowerW(),
                fit == null ? null : (Double) fit.wPrimeKJ(),
                source(fit, sustainable),
                fit == null ? null : (Double) fit.criticalPowerErrorW(),
                sustainable == null ? null : (Double) sustainable.watts(),
                movingSeconds,
                evidence(fit, sustainable));
    }

    private static Ability.@Nullable Source source(
            @Nullable CriticalPowerFit fit, @Nullable SustainablePower sustainable) {
        if (fit != null) {
            return Ability.Source.RIDE_FIT_AND_GUIDE;
        }
        return sustainable == null ? null : sustainable.source();
    }

    private AbilityEvidence evidence(@Nullable CriticalPowerFit fit, @Nullable SustainablePower sustainable) {
        return new AbilityEvidence(
                sustainable,
                criticalPower,
                fit == null ? null : AbilityEvidence.Spending.of(ride, fit),
                ride.has(Channel.POWER) ? Durability.of(ride) : List.of(),
                estimate,
                thresholdPowerW == null || estimate != null
                        ? null
                        : ThresholdHeartRate.of(ride, thresholdPowerW).orElse(null));
    }
}
