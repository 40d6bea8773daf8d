package io.github.wattledger.power;

/**
 * Critical power and W′ as a model: its forms, its formulas, and the durations it holds for. {@link CriticalPowerFit}
 * fits it to efforts; {@link RideCriticalPower} decides whether a ride carries such a fit.
 *
 * <p>Sources: Monod and Scherrer 1965, Ergonomics 8:329 (work and time); Hill 1993, Sports Med 16:237; Morton 1996,
 * Ergonomics 39:611 (three parameters); the forms side by side in Gaesser et al. 1995, Med Sci Sports Exerc 27:1430.
 */
public final class CriticalPower {
    /**
     * The forms in which the model can be fitted. They differ in the number that is taken to carry the error, so the same
     * trials give a lower critical power and a larger W′ in the order {@link #INVERSE_TIME}, {@link #WORK_TIME}, {@link
     * #TIME_ON_POWER}.
     */
    public enum Form {
        /** Work on time, a line: {@code P t = W′ + CP t}. */
        WORK_TIME(2),
        /**
         * Power on the inverse of time, a line: {@code P = W′ / t + CP}. It is at once the hyperbola fitted in power, so
         * it suits bests over chosen durations, whose time is exact. Weighting {@link #WORK_TIME} by one over time
         * squared gives the same numbers.
         */
        INVERSE_TIME(2),
        /** Time on power, the hyperbola: {@code t = W′ / (P − CP)}. It suits trials ridden at a set power to failure. */
        TIME_ON_POWER(2),
        /**
         * The hyperbola with a maximal power, {@code t = W′ / (P − CP) − W′ / (Pmax − CP)}, fitted in power as
         * {@code P = CP + W′ / (t + W′ / (Pmax − CP))}. It needs short efforts too.
         */
        THREE_PARAMETER(3);

        private final int parameters;

        Form(int parameters) {
            this.parameters = parameters;
        }

        int parameters() {
            return parameters;
        }
    }

    /** Shortest effort for the forms with two parameters, seconds: below it they promise more power than riders have. */
    public static final int SHORTEST_SECONDS = 120;

    /** Longest effort, seconds: above it power falls below the level the model predicts (Drake et al. 2024). */
    public static final int LONGEST_SECONDS = 1800;

    private CriticalPower() {}

    /**
     * The power that critical power and W′ allow for a duration, watts: {@code CP + W′ / t}.
     *
     * @param seconds the duration, above 0
     * @param criticalPowerW critical power, watts
     * @param wPrimeJ W′, joules
     */
    static double powerW(double seconds, double criticalPowerW, double wPrimeJ) {
        return criticalPowerW + wPrimeJ / seconds;
    }

    /**
     * The power that critical power, W′ and a maximal power allow for a duration, watts: {@code CP + W′ / (t + W′ / (Pmax
     * − CP))}.
     *
     * @param seconds the duration, 0 or more
     * @param criticalPowerW critical power, watts
     * @param wPrimeJ W′, joules
     * @param maximalPowerW maximal power, watts, above critical power
     */
    static double powerW(double seconds, double criticalPowerW, double wPrimeJ, double maximalPowerW) {
        return criticalPowerW + wPrimeJ / (seconds + wPrimeJ / (maximalPowerW - criticalPowerW));
    }

    /**
     * How long critical power and W′ allow a power, seconds: {@code W′ / (P − CP)}; infinite at critical power and below.
     *
     * @param watts the power
     * @param criticalPowerW critical power, watts
     * @param wPrimeJ W′, joules
     */
    static double secondsAt(double watts, double criticalPowerW, double wPrimeJ) {
        return watts <= criticalPowerW ? Double.POSITIVE_INFINITY : wPrimeJ / (watts - criticalPowerW);
    }

    /**
     * How long critical power, W′ and a maximal power allow a power, seconds: {@code W′ / (P − CP) − W′ / (Pmax − CP)}. It
     * is 0 at maximal power and below 0 above it.
     *
     * @param watts the power
     * @param criticalPowerW critical power, watts
     * @param wPrimeJ W′, joules
     * @param maximalPowerW maximal power, watts, above critical power
     */
    static double secondsAt(double watts, double criticalPowerW, double wPrimeJ, double maximalPowerW) {
        return secondsAt(watts, criticalPowerW, wPrimeJ) - wPrimeJ / (maximalPowerW - criticalPowerW);
    }
}
