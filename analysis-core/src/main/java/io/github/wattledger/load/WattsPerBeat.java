package io.github.wattledger.load;

import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Series;
import java.util.OptionalDouble;

/**
 * Watts a heartbeat: normalized power over mean heart rate, watts per beat per minute. It falls when the heart beats faster for
 * the same power. Source: J. Friel's efficiency factor (from memory), with normalized power as the power.
 */
public final class WattsPerBeat {
    /**
     * Least share of the timer seconds of a stretch that must carry power, and heart rate, for the number to stand
     * for the stretch. Our own decision: with less, the two means may speak of different minutes.
     */
    static final double LEAST_COVERAGE = 0.8;

    private WattsPerBeat() {}

    /**
     * Watts a heartbeat of one-second power and heart rate.
     *
     * @param watts one-second power, watts; {@code NaN} (not measured) is left out
     * @param heartRateBpm heart rate over the same seconds, beats per minute; {@code NaN} is left out
     * @return watts per beat per minute, or empty without normalized power or without heart rate
     * @throws IllegalArgumentException when the series differ in length, or a reading is below 0 or infinite
     */
    public static OptionalDouble of(Series watts, Series heartRateBpm) {
        if (watts.size() != heartRateBpm.size()) {
            throw new IllegalArgumentException(
                    "heartRateBpm has " + heartRateBpm.size() + " seconds, expected " + watts.size() + " as watts");
        }
        return of(watts.requireReadings("watts"), heartRateBpm.requireReadings("heartRateBpm"), 0, watts.size());
    }

    private static OptionalDouble of(Series watts, Series heartRateBpm, int from, int to) {
        OptionalDouble normalizedPowerW = NormalizedPower.of(watts, from, to);
        OptionalDouble meanHeartRateBpm = CompensatedSum.meanOfMeasured(heartRateBpm, from, to);
        return normalizedPowerW.isPresent() && meanHeartRateBpm.isPresent() && meanHeartRateBpm.getAsDouble() > 0
                ? OptionalDouble.of(normalizedPowerW.getAsDouble() / meanHeartRateBpm.getAsDouble())
                : OptionalDouble.empty();
    }

    /** {@link #of(Series, Series)} for arrays, which are copied. */
    public static OptionalDouble of(double[] watts, double[] heartRateBpm) {
        return of(Series.of(watts), Series.of(heartRateBpm));
    }

    /** Watts a heartbeat of a stretch that holds so many timer seconds; empty where too few of them carry both readings. */
    static OptionalDouble ofStretch(Series power, Series heartRate, Interval stretch, int timerSeconds) {
        int from = stretch.fromSecond();
        int to = stretch.toSecond();
        double least = LEAST_COVERAGE * timerSeconds;
        return power.measuredCount(from, to) < least || heartRate.measuredCount(from, to) < least
                ? OptionalDouble.empty()
                : of(power, heartRate, from, to);
    }
}
