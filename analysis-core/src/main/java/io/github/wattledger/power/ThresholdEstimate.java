package io.github.wattledger.power;

import java.util.OptionalDouble;

/** Threshold power estimated from best efforts. */
public final class ThresholdEstimate {
    private static final int TWENTY_MINUTES = 1200;

    /**
     * Share of the best 20 minutes. Common practice; Borszcz et al. 2018 (Int J Sports Med 39:737) found it 1 to 5 W
     * above 60-minute power on average, with limits of agreement of 30 to 60 W.
     */
    private static final double SHARE_OF_TWENTY_MINUTES = 0.95;

    private ThresholdEstimate() {}

    /**
     * 95 percent of the best 20 minutes: at least this much, if the meter is right, and more if the rider was never at
     * the limit.
     *
     * @return watts, or empty when the curve is shorter than 20 minutes or holds no power
     */
    public static OptionalDouble watts(MeanMaximalCurve curve) {
        if (curve.longestSeconds() < TWENTY_MINUTES || !(curve.watts(TWENTY_MINUTES) > 0)) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(SHARE_OF_TWENTY_MINUTES * curve.watts(TWENTY_MINUTES));
    }
}
