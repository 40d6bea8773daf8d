package io.github.wattledger;

import io.github.wattledger.power.Ability;
import io.github.wattledger.power.AbilityEvidence;
import io.github.wattledger.power.BestEffort;
import io.github.wattledger.power.CriticalPowerFit;
import io.github.wattledger.power.Durability;
import io.github.wattledger.power.MeanMaximalCurve;
import io.github.wattledger.power.RideCriticalPower;
import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.power.ThresholdEstimate;
import io.github.wattledger.power.ThresholdHeartRate;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rider.LongBest;
import io.github.wattledger.rider.Rider;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What one ride, and what is known of its rider from elsewhere, tell of the rider's ability. Sustainable power comes from
 * long bests of earlier rides where they carry it, and from the guide otherwise: the bests of the ride itself would set it
 * a target that it always meets.
 */
final class RideAbility {
    private final Ride ride;
    private final Outcome<CriticalPowerFit> criticalPower;
    private final @Nullable ThresholdEstimate estimate;
    private final @Nullable Double thresholdPowerW;
    private final Rider rider;
    private final LocalDate day;

    private RideAbility(
            Ride ride,
            Outcome<CriticalPowerFit> criticalPower,
            @Nullable ThresholdEstimate estimate,
            @Nullable Double thresholdPowerW,
            Rider rider,
            LocalDate day) {
        this.ride = ride;
        this.criticalPower = criticalPower;
        this.estimate = estimate;
        this.thresholdPowerW = thresholdPowerW;
        this.rider = rider;
        this.day = day;
    }

    /**
     * Fits the curve of a ride.
     *
     * @param knownThresholdW threshold power known from elsewhere, watts, or null, which lets it be estimated
     * @param day the day of the ride, before which the rider's long bests count
     */
    static RideAbility of(
            Ride ride, MeanMaximalCurve curve, @Nullable Double knownThresholdW, Rider rider, LocalDate day) {
        Outcome<CriticalPowerFit> criticalPower = RideCriticalPower.ofRide(ride, curve, knownThresholdW);
        if (knownThresholdW != null) {
            return new RideAbility(ride, criticalPower, null, knownThresholdW, rider, day);
        }
        ThresholdEstimate estimate = ThresholdEstimate.of(curve, criticalPower).orElse(null);
        return new RideAbility(
                ride, criticalPower, estimate, estimate == null ? null : (Double) estimate.watts(), rider, day);
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
        SustainablePower sustainable = sustainable(movingSeconds, trustedThresholdW);
        CriticalPowerFit fit = criticalPower.found().orElse(null);
        Double fitted = fit == null ? null : (Double) fit.criticalPowerW();
        Double fittedKJ = fit == null ? null : (Double) fit.wPrimeKJ();
        boolean isGiven = rider.criticalPowerW() != null;
        Double criticalPowerW = isGiven ? rider.criticalPowerW() : fitted;
        Double wPrimeKJ = isGiven ? rider.wPrimeKJ() : fittedKJ;
        return new Ability(
                criticalPowerW,
                wPrimeKJ,
                source(isGiven, fit != null, sustainable),
                isGiven || fit == null ? null : (Double) fit.criticalPowerErrorW(),
                sustainable == null ? null : (Double) sustainable.watts(),
                movingSeconds,
                evidence(criticalPowerW, wPrimeKJ, sustainable));
    }

    private @Nullable SustainablePower sustainable(int movingSeconds, @Nullable Double trustedThresholdW) {
        if (movingSeconds < SustainablePower.SHORTEST_GUIDE_SECONDS) {
            return null;
        }
        List<BestEffort> bests = new ArrayList<>();
        for (LongBest best : rider.longBests()) {
            if (best.isBefore(day)) {
                bests.add(new BestEffort(best.seconds(), best.watts()));
            }
        }
        SustainablePower own = SustainablePower.fromBests(bests, movingSeconds).orElse(null);
        if (own != null) {
            return own;
        }
        return trustedThresholdW == null ? null : SustainablePower.guide(trustedThresholdW, movingSeconds);
    }

    private static Ability.@Nullable Source source(
            boolean isGiven, boolean isFitted, @Nullable SustainablePower sustainable) {
        boolean isOwn = sustainable != null && sustainable.source() == Ability.Source.OWN_BESTS;
        if (isGiven) {
            return isOwn ? Ability.Source.GIVEN_AND_OWN_BESTS : Ability.Source.GIVEN_AND_GUIDE;
        }
        if (isFitted) {
            return isOwn ? Ability.Source.RIDE_FIT_AND_OWN_BESTS : Ability.Source.RIDE_FIT_AND_GUIDE;
        }
        return sustainable == null ? null : sustainable.source();
    }

    private AbilityEvidence evidence(
            @Nullable Double criticalPowerW, @Nullable Double wPrimeKJ, @Nullable SustainablePower sustainable) {
        return new AbilityEvidence(
                sustainable,
                criticalPower,
                criticalPowerW == null || wPrimeKJ == null
                        ? null
                        : AbilityEvidence.Spending.of(ride, criticalPowerW, 1000 * wPrimeKJ),
                ride.has(Channel.POWER) ? Durability.of(ride) : List.of(),
                estimate,
                thresholdPowerW == null || estimate != null
                        ? null
                        : ThresholdHeartRate.of(ride, thresholdPowerW).orElse(null));
    }
}
