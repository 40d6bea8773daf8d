package io.github.wattledger.power;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rider.LongBest;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The ability of a rider by one ride and by what is known from elsewhere. Sustainable power comes from long bests of
 * earlier rides where the rider names some that carry it, otherwise from the rider's own long rides of the year before,
 * otherwise from the guide: the bests of the ride itself would set it a target that it always meets.
 */
public final class RideAbility {
    /**
     * What is known of the rider's power from elsewhere than the ride.
     *
     * @param thresholdPowerW threshold power, watts, or null, which lets it be estimated from the ride
     * @param criticalPowerW critical power, watts, or null, which lets it be fitted to the ride; given with W′ or not at all
     * @param wPrimeKJ W′, kilojoules, or null
     * @param longBests long best efforts of earlier days, possibly none
     * @param basis how well the threshold power is known
     * @param endurance what the rider's own long rides of earlier days say, or null
     */
    public record Elsewhere(
            @Nullable Double thresholdPowerW,
            @Nullable Double criticalPowerW,
            @Nullable Double wPrimeKJ,
            List<LongBest> longBests,
            ThresholdBasis basis,
            @Nullable OwnEndurance endurance) {
        /** Copies the list. */
        public Elsewhere {
            longBests = List.copyOf(longBests);
        }
    }

    private final Ride ride;
    private final Outcome<CriticalPowerFit> criticalPower;
    private final @Nullable ThresholdEstimate estimate;
    private final Elsewhere elsewhere;

    private RideAbility(
            Ride ride,
            Outcome<CriticalPowerFit> criticalPower,
            @Nullable ThresholdEstimate estimate,
            Elsewhere elsewhere) {
        this.ride = ride;
        this.criticalPower = criticalPower;
        this.estimate = estimate;
        this.elsewhere = elsewhere;
    }

    /**
     * Fits the curve of a ride.
     *
     * @param curve the best mean power of this ride over any duration
     */
    public static RideAbility of(Ride ride, MeanMaximalCurve curve, Elsewhere elsewhere) {
        Double knownThresholdW = elsewhere.thresholdPowerW();
        Outcome<CriticalPowerFit> criticalPower = RideCriticalPower.ofRide(ride, curve, knownThresholdW);
        ThresholdEstimate estimate = knownThresholdW != null
                ? null
                : ThresholdEstimate.of(curve, criticalPower).orElse(null);
        return new RideAbility(ride, criticalPower, estimate, elsewhere);
    }

    /** Threshold power as estimated from the ride, watts; null when it was known or cannot be estimated. */
    public @Nullable Double estimatedThresholdPowerW() {
        return estimate == null ? null : Double.valueOf(estimate.watts());
    }

    /**
     * The ability over so many seconds of moving time.
     *
     * @param trustedThresholdW the threshold power that sustainable power may rest on, watts, or null for none
     */
    public Ability over(int movingSeconds, @Nullable Double trustedThresholdW) {
        SustainablePower sustainable = sustainable(movingSeconds, trustedThresholdW);
        CriticalPowerFit fit = criticalPower.found().orElse(null);
        boolean isGiven = elsewhere.criticalPowerW() != null;
        Double criticalPowerW = elsewhere.criticalPowerW();
        Double wPrimeKJ = elsewhere.wPrimeKJ();
        if (!isGiven && fit != null) {
            criticalPowerW = fit.criticalPowerW();
            wPrimeKJ = fit.wPrimeKJ();
        }
        return new Ability(
                criticalPowerW,
                wPrimeKJ,
                source(isGiven, fit != null, sustainable),
                isGiven || fit == null ? null : Double.valueOf(fit.criticalPowerErrorW()),
                sustainable == null ? null : Double.valueOf(sustainable.watts()),
                movingSeconds,
                evidence(criticalPowerW, wPrimeKJ, sustainable));
    }

    private @Nullable SustainablePower sustainable(int movingSeconds, @Nullable Double trustedThresholdW) {
        if (movingSeconds < SustainablePower.SHORTEST_GUIDE_SECONDS) {
            return null;
        }
        List<BestEffort> bests = new ArrayList<>();
        for (LongBest best : elsewhere.longBests()) {
            bests.add(new BestEffort(best.seconds(), best.watts()));
        }
        SustainablePower own = SustainablePower.fromBests(bests, movingSeconds).orElse(null);
        if (own != null) {
            return own;
        }
        if (trustedThresholdW == null) {
            return null;
        }
        OwnEndurance endurance = elsewhere.endurance();
        SustainablePower ofRides = endurance == null
                ? null
                : endurance.over(trustedThresholdW, movingSeconds).orElse(null);
        return ofRides != null ? ofRides : SustainablePower.guide(trustedThresholdW, movingSeconds, elsewhere.basis());
    }

    private static Ability.@Nullable Source source(
            boolean isGiven, boolean isFitted, @Nullable SustainablePower sustainable) {
        boolean isOwn = sustainable != null && sustainable.source() != SustainablePower.Source.GUIDE;
        if (isGiven) {
            return isOwn ? Ability.Source.GIVEN_AND_OWN_BESTS : Ability.Source.GIVEN_AND_GUIDE;
        }
        if (isFitted) {
            return isOwn ? Ability.Source.RIDE_FIT_AND_OWN_BESTS : Ability.Source.RIDE_FIT_AND_GUIDE;
        }
        if (sustainable == null) {
            return null;
        }
        return isOwn ? Ability.Source.OWN_BESTS : Ability.Source.GUIDE;
    }

    private AbilityEvidence evidence(
            @Nullable Double criticalPowerW, @Nullable Double wPrimeKJ, @Nullable SustainablePower sustainable) {
        Double knownThresholdW = elsewhere.thresholdPowerW();
        return new AbilityEvidence(
                sustainable,
                criticalPower,
                criticalPowerW == null || wPrimeKJ == null
                        ? null
                        : WPrimeBalance.of(ride, criticalPowerW, 1000 * wPrimeKJ, WPrimeBalance.Model.DIFFERENTIAL),
                ride.has(Channel.POWER) ? Durability.of(ride) : List.of(),
                estimate,
                knownThresholdW == null
                        ? null
                        : ThresholdHeartRate.of(ride, knownThresholdW).orElse(null));
    }
}
