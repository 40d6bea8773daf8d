package io.github.wattledger.plan;

import org.jspecify.annotations.Nullable;

/**
 * What heat does to a plan: no formula is known for many hours, so it only widens the range downwards. Losses of 5 to 15 %
 * above 30 degrees are those of riders who are not used to it; own choice from trials of about an hour.
 */
public final class Heat {
    /** From this temperature on a plan speaks of heat, degrees Celsius. */
    public static final double WARM_C = 25;

    private static final double HOT_C = 30;
    private static final double LEAST_FACTOR_WARM = 0.95;
    private static final double LEAST_FACTOR_HOT = 0.85;

    private Heat() {}

    /** Whether a plan for such a day speaks of heat; not where the temperature is not known. */
    public static boolean isExpected(@Nullable Double temperatureC) {
        return temperatureC != null && temperatureC > WARM_C;
    }

    static double leastFactor(@Nullable Double temperatureC) {
        if (!isExpected(temperatureC) || temperatureC == null) {
            return 1;
        }
        return temperatureC > HOT_C ? LEAST_FACTOR_HOT : LEAST_FACTOR_WARM;
    }
}
