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
     */
    public static OptionalDouble kilojoules(Series watts) {
        return watts.hasAny()
                ? OptionalDouble.of(CompensatedSum.ofMeasured(watts) / JOULES_PER_KILOJOULE)
                : OptionalDouble.empty();
    }

    /** {@link #kilojoules(Series)} for an array, which is copied; a reading below 0 or infinite is refused. */
    public static OptionalDouble kilojoules(double[] watts) {
        return kilojoules(Series.ofReadings("watts", watts));
    }

    /**
     * Mean power over the seconds that carry power, watts.
     *
     * @param watts one-second power, watts; {@code NaN} (not measured) is left out, 0 (coasting) counts
     * @return watts, or empty when no second carries power
     */
    public static OptionalDouble averagePowerW(Series watts) {
        return CompensatedSum.meanOfMeasured(watts);
    }

    /** {@link #averagePowerW(Series)} for an array, which is copied; a reading below 0 or infinite is refused. */
    public static OptionalDouble averagePowerW(double[] watts) {
        return averagePowerW(Series.ofReadings("watts", watts));
    }
}
