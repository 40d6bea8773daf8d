package io.github.wattledger.power;

import java.io.Serializable;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Threshold power estimated from the efforts of a ride: at least this much, if the meter is right, and more if the rider
 * was never at the limit.
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

    private static final int TWENTY_MINUTES = 1200;

    /**
     * Share of the best 20 minutes. Common practice; Borszcz et al. 2018 (Int J Sports Med 39:737) found it within 1 to
     * 5 W of 60-minute power on average.
     */
    private static final double SHARE_OF_TWENTY_MINUTES = 0.95;

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
     * @param fit what {@link CriticalPower#ofCurve} made of the same curve
     * @return the estimate, or empty when the curve is shorter than 20 minutes or holds no power
     */
    public static Optional<ThresholdEstimate> of(MeanMaximalCurve curve, CriticalPowerResult fit) {
        if (curve.longestSeconds() < TWENTY_MINUTES || !(curve.watts(TWENTY_MINUTES) > 0)) {
            return Optional.empty();
        }
        double twentyW = curve.watts(TWENTY_MINUTES);
        double shareW = SHARE_OF_TWENTY_MINUTES * twentyW;
        if (fit instanceof CriticalPowerFit accepted && accepted.criticalPowerW() > shareW) {
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
                fit instanceof CriticalPowerFit accepted ? (Double) accepted.criticalPowerW() : null));
    }

    /** {@link #of(MeanMaximalCurve, CriticalPowerResult)} with the fit of the same curve, no threshold being known. */
    public static Optional<ThresholdEstimate> of(MeanMaximalCurve curve) {
        return of(curve, CriticalPower.ofCurve(curve, null));
    }
}
