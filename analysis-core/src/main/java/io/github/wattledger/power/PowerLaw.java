package io.github.wattledger.power;

import java.io.Serializable;
import java.util.Arrays;
import java.util.List;

/**
 * Power against duration as a power law, {@code P = S t^(−b)}, by a straight line through the logarithms of both, all
 * efforts weighing the same. It holds for longer efforts than critical power does (Drake et al. 2024, Eur J Appl Physiol
 * 124:507).
 *
 * @param powerAtOneSecondW S, watts: the law's value at one second, far outside where it holds
 * @param exponent b, above 0 where power falls with duration
 * @param logError standard deviation of an effort about the line, in natural logarithms: 0.03 is about 3 %
 * @param efforts how many efforts it rests on, at least 3
 * @param meanLogSeconds mean logarithm of their durations
 * @param spreadLogSeconds sum of squared deviations of the logarithms from that mean
 */
record PowerLaw(
        double powerAtOneSecondW,
        double exponent,
        double logError,
        int efforts,
        double meanLogSeconds,
        double spreadLogSeconds)
        implements Serializable {
    /**
     * Fits efforts of at least three durations.
     *
     * @throws IllegalArgumentException when there are fewer than three durations
     */
    static PowerLaw fit(List<BestEffort> efforts) {
        double[] logSeconds =
                Arrays.stream(BestEffort.secondsOf(efforts)).map(Math::log).toArray();
        double[] logWatts =
                Arrays.stream(BestEffort.wattsOf(efforts)).map(Math::log).toArray();
        if (Arrays.stream(logSeconds).distinct().count() < 3) {
            throw new IllegalArgumentException("a power law needs at least 3 durations");
        }
        LeastSquares.Solution line =
                LeastSquares.line(logSeconds, logWatts, LeastSquares.equalWeights(logSeconds.length));
        double mean = Arrays.stream(logSeconds).average().orElseThrow();
        double spread =
                Arrays.stream(logSeconds).map(x -> (x - mean) * (x - mean)).sum();
        return new PowerLaw(
                Math.exp(line.parameter(0)),
                -line.parameter(1),
                Math.sqrt(line.residualSumOfSquares() / line.degreesOfFreedom()),
                logSeconds.length,
                mean,
                spread);
    }

    /**
     * {@link #fit(List)} for arrays of equal length.
     *
     * @throws IllegalArgumentException when the lengths differ, a number is not finite and above 0, or there are fewer
     *     than three durations
     */
    static PowerLaw fit(double[] seconds, double[] watts) {
        return fit(BestEffort.listOf(seconds, watts));
    }

    /**
     * The law's power for a duration, watts.
     *
     * @param seconds the duration, above 0
     */
    double powerW(double seconds) {
        return powerAtOneSecondW * Math.pow(seconds, -exponent);
    }

    /**
     * Standard error of one further effort of this duration about the law, in natural logarithms: the scatter of the
     * efforts and the uncertainty of the line, which grows away from them.
     *
     * @param seconds the duration, above 0
     */
    double predictionLogError(double seconds) {
        double away = Math.log(seconds) - meanLogSeconds;
        return logError * Math.sqrt(1 + 1.0 / efforts + away * away / spreadLogSeconds);
    }
}
