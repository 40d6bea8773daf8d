package io.github.wattledger.power;

import java.util.List;
import java.util.Optional;

/** The search for critical power and W′ where a form of the model is no straight line. */
final class CriticalPowerSearch {
    /** No sprinter is known to exceed it (from memory, about 2,500 W): a search that goes there holds no short effort. */
    private static final double HIGHEST_MAXIMAL_POWER_W = 3000;

    /** Far beyond any rider, joules. It only bounds the search. */
    private static final double HIGHEST_W_PRIME_J = 1e6;

    /** The search starts below the lowest power ridden by this factor where the straight line starts above it. */
    private static final double START_OF_LOWEST = 0.98;

    private static final double LEAST_START_J = 1000;

    private CriticalPowerSearch() {}

    /**
     * Fits {@link CriticalPower.Form#TIME_ON_POWER}; the parameters are critical power and W′.
     *
     * @param line the fit of {@link CriticalPower.Form#INVERSE_TIME}, from which the search starts
     */
    static Optional<LeastSquares.Solution> timeOnPower(
            List<BestEffort> efforts, double[] weights, LeastSquares.Solution line) {
        double lowestW = lowestW(efforts);
        double[] low = {0, 0};
        // At critical power time is infinite, so the search stays below the lowest power ridden.
        double[] high = {lowestW * (1 - 1e-9), HIGHEST_W_PRIME_J};
        double startW = Math.min(line.parameter(0), START_OF_LOWEST * lowestW);
        double[] start = {startW, Math.max(line.parameter(1), LEAST_START_J)};
        return LeastSquares.curve(
                new TimeOnPower(),
                BestEffort.wattsOf(efforts),
                BestEffort.secondsOf(efforts),
                weights,
                start,
                low,
                high);
    }

    /**
     * Fits {@link CriticalPower.Form#THREE_PARAMETER}; the parameters are critical power, W′ and maximal power.
     *
     * @param line the fit of {@link CriticalPower.Form#INVERSE_TIME}, from which the search starts
     */
    static Optional<LeastSquares.Solution> threeParameter(
            List<BestEffort> efforts, double[] weights, LeastSquares.Solution line) {
        double highestW = efforts.stream().mapToDouble(BestEffort::watts).max().orElseThrow();
        double lowestW = lowestW(efforts);
        double[] low = {0, 0, highestW};
        double[] high = {lowestW, HIGHEST_W_PRIME_J, HIGHEST_MAXIMAL_POWER_W};
        double[] start = {
            Math.min(Math.max(line.parameter(0), 0.5 * lowestW), START_OF_LOWEST * lowestW),
            Math.max(line.parameter(1), LEAST_START_J),
            1.2 * highestW
        };
        return LeastSquares.curve(
                new PowerOfThree(),
                BestEffort.secondsOf(efforts),
                BestEffort.wattsOf(efforts),
                weights,
                start,
                low,
                high);
    }

    private static double lowestW(List<BestEffort> efforts) {
        return efforts.stream().mapToDouble(BestEffort::watts).min().orElseThrow();
    }

    /** {@code t = W′ / (P − CP)}, parameters CP and W′. */
    private static final class TimeOnPower implements LeastSquares.Model {
        @Override
        public double value(double watts, double[] parameters) {
            return parameters[1] / (watts - parameters[0]);
        }

        @Override
        public void gradient(double watts, double[] parameters, double[] gradient) {
            double above = watts - parameters[0];
            gradient[0] = parameters[1] / (above * above);
            gradient[1] = 1 / above;
        }
    }

    /** {@code P = CP + W′ / (t + W′ / (Pmax − CP))}, parameters CP, W′ and Pmax. */
    private static final class PowerOfThree implements LeastSquares.Model {
        @Override
        public double value(double seconds, double[] parameters) {
            return CriticalPower.powerW(seconds, parameters[0], parameters[1], parameters[2]);
        }

        @Override
        public void gradient(double seconds, double[] parameters, double[] gradient) {
            double wPrimeJ = parameters[1];
            double reserveW = parameters[2] - parameters[0];
            double shifted = seconds + wPrimeJ / reserveW;
            double slope = wPrimeJ / (shifted * shifted);
            double byReserve = slope * wPrimeJ / (reserveW * reserveW);
            gradient[0] = 1 - byReserve;
            gradient[1] = 1 / shifted - slope / reserveW;
            gradient[2] = byReserve;
        }
    }
}
