package io.github.wattledger.power;

import io.github.wattledger.ride.Outcome;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import java.io.Serializable;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Threshold power estimated from the efforts of a ride. If the meter is right, the threshold is at least this high; it
 * is higher if the rider was never at the limit.
 *
 * <p>Two rules read a threshold off efforts. Both take {@link #SHARE_OF_TWENTY_MINUTES} of the best 20 minutes, and each
 * takes a second number where that is higher: this estimate of one ride the critical power of its fit, the check of a
 * season's threshold ({@code season.BestEfforts}) the best hour of the last 90 days, as it keeps bests and no fits.
 *
 * @param watts the estimate, watts
 * @param lowW lower end of its range, watts
 * @param highW upper end of its range, watts, for efforts that were maximal
 * @param basis what it rests on
 * @param bestTwentyMinutesW the best 20 minutes, watts
 * @param criticalPowerW critical power of an accepted fit, watts, or null
 */
public record ThresholdEstimate(
        double watts,
        double lowW,
        double highW,
        Basis basis,
        double bestTwentyMinutesW,
        @Nullable Double criticalPowerW)
        implements Serializable {
    /** What a threshold is estimated from. */
    public enum Basis {
        /** 95 % of the best 20 minutes. */
        TWENTY_MINUTES,
        /** Critical power of an accepted fit. */
        CRITICAL_POWER
    }

    /** The duration from whose best a threshold is implied by {@link #SHARE_OF_TWENTY_MINUTES}, seconds. */
    public static final int TWENTY_MINUTES = 1200;

    /**
     * The threshold power that a best of 20 minutes implies, as a share of it. Whatever reads a threshold from 20 minutes
     * takes this share: this estimate, the guide of {@link SustainablePower} within the hour, and the check of a season's
     * threshold. Common practice; Borszcz et al. 2018 (Int J Sports Med 39:737) found it within 1 to 5 W of 60-minute
     * power on average.
     */
    public static final double SHARE_OF_TWENTY_MINUTES = 0.95;

    /**
     * One rider's 60-minute power lay up to about 40 W to either side of that share (the tightest limits of agreement in
     * Borszcz et al. 2018: 40 W below to 32 W above; the widest reach 60 W).
     */
    private static final double TWENTY_MINUTES_RANGE_W = 40;

    /** Twice the standard error of field critical power against the laboratory's, 4.5 % (Karsten et al. 2015). */
    private static final double CRITICAL_POWER_RANGE = 0.09;

    /**
     * The higher of 95 % of the best 20 minutes and the critical power of an accepted fit: a ride shows what the rider
     * could do at least.
     *
     * @param fit what {@link RideCriticalPower} made of the same ride
     * @return the estimate, or empty when the curve is shorter than 20 minutes or holds no power
     */
    public static Optional<ThresholdEstimate> of(MeanMaximalCurve curve, Outcome<CriticalPowerFit> fit) {
        double twentyW = curve.longestSeconds() < TWENTY_MINUTES ? 0 : curve.bestWatts(TWENTY_MINUTES);
        if (!(twentyW > 0)) {
            return Optional.empty();
        }
        double shareW = SHARE_OF_TWENTY_MINUTES * twentyW;
        CriticalPowerFit accepted = fit.found().orElse(null);
        if (accepted != null && accepted.criticalPowerW() > shareW) {
            double criticalW = accepted.criticalPowerW();
            double range = Math.max(CRITICAL_POWER_RANGE * criticalW, accepted.criticalPowerHalfWidthW());
            return Optional.of(new ThresholdEstimate(
                    criticalW, criticalW - range, criticalW + range, Basis.CRITICAL_POWER, twentyW, criticalW));
        }
        return Optional.of(new ThresholdEstimate(
                shareW,
                Math.max(0, shareW - TWENTY_MINUTES_RANGE_W),
                shareW + TWENTY_MINUTES_RANGE_W,
                Basis.TWENTY_MINUTES,
                twentyW,
                accepted == null ? null : Double.valueOf(accepted.criticalPowerW())));
    }

    /**
     * {@link #of(MeanMaximalCurve, Outcome)} for one-second power.
     *
     * @param watts one-second power, watts; {@code NaN} is a missing second
     * @throws IllegalArgumentException when a reading is below 0 or infinite
     */
    public static Optional<ThresholdEstimate> of(Series watts) {
        Ride ride = Ride.ofWatts(watts);
        MeanMaximalCurve curve = MeanMaximalCurve.of(ride);
        return of(curve, RideCriticalPower.ofRide(ride, curve, null));
    }

    /** {@link #of(Series)} for an array, which is copied. */
    public static Optional<ThresholdEstimate> of(double[] watts) {
        return of(Series.of(watts));
    }
}
