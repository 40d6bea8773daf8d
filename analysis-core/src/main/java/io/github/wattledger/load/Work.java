package io.github.wattledger.load;

import io.github.wattledger.ride.Series;
import java.util.OptionalDouble;

/** Mechanical work done at the pedals, and its mean over time. */
public final class Work {
    static final double JOULES_PER_KILOJOULE = 1000;

    private Work() {}

    /**
     * The work done, kilojoules: the sum of one-second power.
     *
     * @param watts one-second power, watts; {@code NaN} (not measured) adds nothing
     * @return kilojoules, or empty when no second carries power
     * @throws IllegalArgumentException when a reading is below 0 or infinite
     */
    public static OptionalDouble kilojoules(Series watts) {
        return watts.requireReadings("watts").hasAny()
                ? OptionalDouble.of(CompensatedSum.ofMeasured(watts) / JOULES_PER_KILOJOULE)
                : OptionalDouble.empty();
    }

    /** {@link #kilojoules(Series)} for an array, which is copied. */
    public static OptionalDouble kilojoules(double[] watts) {
        return kilojoules(Series.of(watts));
    }

    /**
     * Mean power over the seconds that carry power, watts.
     *
     * @param watts one-second power, watts; {@code NaN} (not measured) is left out, 0 (coasting) counts
     * @return watts, or empty when no second carries power
     * @throws IllegalArgumentException when a reading is below 0 or infinite
     */
    public static OptionalDouble averagePowerW(Series watts) {
        return CompensatedSum.meanOfMeasured(watts.requireReadings("watts"));
    }

    /** {@link #averagePowerW(Series)} for an array, which is copied. */
    public static OptionalDouble averagePowerW(double[] watts) {
        return averagePowerW(Series.of(watts));
    }
}
