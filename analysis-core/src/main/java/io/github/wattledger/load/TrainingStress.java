package io.github.wattledger.load;

import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Bounds;
import java.util.OptionalDouble;

/**
 * Training stress: how long and how hard in one number, 100 for one hour at threshold power. It is seconds × normalized
 * power × intensity factor / (threshold power × 3600) × 100.
 *
 * <p>Source: H. Allen and A. Coggan, Training and Racing with a Power Meter; FIT profile, field {@code
 * training_stress_score}.
 */
public final class TrainingStress {
    private static final double SECONDS_PER_HOUR = 3600;
    private static final double HOUR_AT_THRESHOLD = 100;

    private TrainingStress() {}

    /**
     * Training stress of so many seconds at a normalized power.
     *
     * @param seconds the seconds that carry power, 0 or more
     * @param normalizedPowerW normalized power, watts, 0 or more
     * @param thresholdPowerW threshold power, watts, above 0
     * @throws IllegalArgumentException when an argument is out of range
     */
    public static double of(double seconds, double normalizedPowerW, double thresholdPowerW) {
        Bounds.requireNotNegative("seconds", seconds);
        double intensityFactor = intensityFactor(normalizedPowerW, thresholdPowerW);
        return seconds * normalizedPowerW * intensityFactor / (thresholdPowerW * SECONDS_PER_HOUR) * HOUR_AT_THRESHOLD;
    }

    /**
     * Training stress of one-second power.
     *
     * @param watts one-second power, watts; {@code NaN} (not measured) is left out of the power and of the seconds
     * @param thresholdPowerW threshold power, watts, above 0
     * @return training stress, or empty when there is no normalized power
     * @throws IllegalArgumentException when a reading or the threshold is out of range
     */
    public static OptionalDouble of(Series watts, double thresholdPowerW) {
        Bounds.requireAboveZero("thresholdPowerW", thresholdPowerW);
        OptionalDouble normalizedPowerW = NormalizedPower.of(watts);
        return normalizedPowerW.isPresent()
                ? OptionalDouble.of(of(watts.measuredCount(), normalizedPowerW.getAsDouble(), thresholdPowerW))
                : OptionalDouble.empty();
    }

    /** {@link #of(Series, double)} for an array, which is copied. */
    public static OptionalDouble of(double[] watts, double thresholdPowerW) {
        return of(Series.of(watts), thresholdPowerW);
    }

    /**
     * Intensity factor: normalized power over threshold power.
     *
     * @param normalizedPowerW normalized power, watts, 0 or more
     * @param thresholdPowerW threshold power, watts, above 0
     * @throws IllegalArgumentException when an argument is out of range
     */
    public static double intensityFactor(double normalizedPowerW, double thresholdPowerW) {
        Bounds.requireNotNegative("normalizedPowerW", normalizedPowerW);
        Bounds.requireAboveZero("thresholdPowerW", thresholdPowerW);
        return normalizedPowerW / thresholdPowerW;
    }
}
