package io.github.wattledger.power;

import io.github.wattledger.power.CriticalPower.Form;
import io.github.wattledger.ride.Decimals;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.rider.Bounds;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Critical power and W′ as fitted to best efforts, with standard errors that rest on the scatter of the efforts about
 * the curve. Bests taken from one mean-maximal curve overlap, so their scatter is smaller than that of separate trials
 * and the errors are then too small.
 *
 * @param form the form of the model that was fitted
 * @param criticalPowerW critical power, watts, above 0
 * @param criticalPowerErrorW its standard error, watts
 * @param wPrimeJ W′, the work that can be done above critical power, joules, above 0
 * @param wPrimeErrorJ its standard error, joules
 * @param maximalPowerW the power that can be held for no time at all, watts; null but for the three-parameter form
 * @param maximalPowerErrorW its standard error, watts; null but for the three-parameter form
 * @param efforts the efforts used, shortest first
 * @param residualsW for each effort its power less the fitted power for that duration, watts
 * @param rSquared the share of variance explained, in the terms of the form that was fitted
 */
public record CriticalPowerFit(
        Form form,
        double criticalPowerW,
        double criticalPowerErrorW,
        double wPrimeJ,
        double wPrimeErrorJ,
        @Nullable Double maximalPowerW,
        @Nullable Double maximalPowerErrorW,
        List<BestEffort> efforts,
        List<Double> residualsW,
        double rSquared)
        implements Serializable {
    private static final double JOULES_PER_KILOJOULE = 1000;

    /** Of three efforts, two parameters leave one degree of freedom, the fewest from which an error can be estimated. */
    private static final int FEWEST_DURATIONS = 3;

    /** Longest over shortest duration, at least: closer together, the line swings about a single point. */
    private static final double LEAST_SPAN = 3;

    /** Copies the lists. */
    public CriticalPowerFit {
        efforts = List.copyOf(efforts);
        residualsW = List.copyOf(residualsW);
    }

    /**
     * Fits efforts that each were maximal, all weighing the same. {@link #of(List, double[], Form)} says what is refused.
     *
     * @param efforts one for each duration, in any order
     */
    public static Outcome<CriticalPowerFit> of(List<BestEffort> efforts, Form form) {
        return of(efforts, LeastSquares.equalWeights(efforts.size()), form);
    }

    /**
     * {@link #of(List, Form)} for arrays of equal length.
     *
     * @param seconds durations, seconds
     * @param watts mean powers, watts
     * @throws IllegalArgumentException when the lengths differ or a number is not finite and above 0
     */
    public static Outcome<CriticalPowerFit> of(double[] seconds, double[] watts, Form form) {
        return of(BestEffort.listOf(seconds, watts), form);
    }

    /**
     * Fits efforts that each were maximal. Refused are: fewer durations than one more than the form has parameters,
     * durations that span less than a factor of 3 or lie outside 2 to 30 minutes (the three-parameter form takes shorter
     * ones too), a search that does not converge or ends on a bound, and a critical power or W′ of 0 or below.
     *
     * @param efforts one for each duration, in any order
     * @param weights how much each effort counts against the others, in the form's own response, above 0
     * @throws IllegalArgumentException when the weights do not fit the efforts
     */
    public static Outcome<CriticalPowerFit> of(List<BestEffort> efforts, double[] weights, Form form) {
        requireWeights(efforts, weights);
        List<Weighted> weighted = new ArrayList<>();
        for (int i = 0; i < weights.length; i++) {
            weighted.add(new Weighted(efforts.get(i), weights[i]));
        }
        weighted.sort(Comparator.comparingDouble(each -> each.effort.seconds()));
        List<BestEffort> sorted = weighted.stream().map(Weighted::effort).toList();
        double[] sortedWeights = weighted.stream().mapToDouble(Weighted::weight).toArray();
        String unfit = whyUnfit(sorted, form);
        return unfit != null ? Outcome.refused(unfit) : solve(sorted, sortedWeights, form);
    }

    private record Weighted(BestEffort effort, double weight) {}

    private static void requireWeights(List<BestEffort> efforts, double[] weights) {
        if (weights.length != efforts.size()) {
            throw new IllegalArgumentException(efforts.size() + " efforts but " + weights.length + " weights");
        }
        for (double weight : weights) {
            Bounds.requireAboveZero("weight", weight);
        }
    }

    /** Why these efforts, shortest first, cannot carry a fit; null when they can. */
    private static @Nullable String whyUnfit(List<BestEffort> efforts, Form form) {
        int fewest = Math.max(FEWEST_DURATIONS, form.parameters() + 1);
        int durations = BestEffort.durations(efforts);
        if (durations < fewest) {
            return durations + " durations, at least " + fewest + " are needed";
        }
        double shortest = efforts.get(0).seconds();
        double longest = efforts.get(efforts.size() - 1).seconds();
        String range = "efforts of " + Decimals.of(shortest, 0) + " to " + Decimals.of(longest, 0) + " s";
        double least = form == Form.THREE_PARAMETER ? 1 : CriticalPower.SHORTEST_SECONDS;
        if (shortest < least || longest > CriticalPower.LONGEST_SECONDS) {
            return range + ", outside the 2 to 30 minutes the model is for";
        }
        return longest < LEAST_SPAN * shortest ? range + " lie too close together" : null;
    }

    private static Outcome<CriticalPowerFit> solve(List<BestEffort> efforts, double[] weights, Form form) {
        double[] seconds = BestEffort.secondsOf(efforts);
        double[] watts = BestEffort.wattsOf(efforts);
        double[] inverse = Arrays.stream(seconds).map(t -> 1 / t).toArray();
        LeastSquares.Solution line = LeastSquares.line(inverse, watts, weights);
        return switch (form) {
            case INVERSE_TIME -> result(form, efforts, line, 0, 1);
            case WORK_TIME -> {
                double[] work = new double[seconds.length];
                Arrays.setAll(work, i -> watts[i] * seconds[i]);
                yield result(form, efforts, LeastSquares.line(seconds, work, weights), 1, 0);
            }
            case TIME_ON_POWER -> searched(form, efforts, CriticalPowerSearch.timeOnPower(efforts, weights, line));
            case THREE_PARAMETER -> searched(form, efforts, CriticalPowerSearch.threeParameter(efforts, weights, line));
        };
    }

    private static Outcome<CriticalPowerFit> searched(
            Form form, List<BestEffort> efforts, Optional<LeastSquares.Solution> solution) {
        if (solution.isEmpty()) {
            return Outcome.refused("no curve through these efforts was found");
        }
        return solution.get().isOnBound()
                ? Outcome.refused("the efforts do not determine the curve: it ran to the edge")
                : result(form, efforts, solution.get(), 0, 1);
    }

    /** @param criticalPower which parameter critical power is
     * @param wPrime which parameter W′ is */
    private static Outcome<CriticalPowerFit> result(
            Form form, List<BestEffort> efforts, LeastSquares.Solution solution, int criticalPower, int wPrime) {
        double criticalPowerW = solution.parameter(criticalPower);
        double wPrimeJ = solution.parameter(wPrime);
        if (!(criticalPowerW > 0 && wPrimeJ > 0)) {
            return Outcome.refused(String.format(
                    Locale.ROOT,
                    "critical power %.0f W and W' %.1f kJ cannot be",
                    criticalPowerW,
                    wPrimeJ / JOULES_PER_KILOJOULE));
        }
        boolean hasMaximum = form == Form.THREE_PARAMETER;
        Double maximalPowerW = hasMaximum ? Double.valueOf(solution.parameter(2)) : null;
        List<Double> residualsW = efforts.stream()
                .map(effort -> effort.watts() - powerW(effort.seconds(), criticalPowerW, wPrimeJ, maximalPowerW))
                .toList();
        return Outcome.of(new CriticalPowerFit(
                form,
                criticalPowerW,
                solution.standardError(criticalPower),
                wPrimeJ,
                solution.standardError(wPrime),
                maximalPowerW,
                hasMaximum ? Double.valueOf(solution.standardError(2)) : null,
                efforts,
                residualsW,
                solution.rSquared()));
    }

    private static double powerW(
            double seconds, double criticalPowerW, double wPrimeJ, @Nullable Double maximalPowerW) {
        return maximalPowerW == null
                ? CriticalPower.powerW(seconds, criticalPowerW, wPrimeJ)
                : CriticalPower.powerW(seconds, criticalPowerW, wPrimeJ, maximalPowerW);
    }

    /** W′, kilojoules. */
    public double wPrimeKJ() {
        return wPrimeJ / JOULES_PER_KILOJOULE;
    }

    /** Efforts less parameters, at least 1. */
    int degreesOfFreedom() {
        return efforts.size() - form.parameters();
    }

    /** Half the width of the 95 % confidence interval of critical power (Student's t), watts. */
    public double criticalPowerHalfWidthW() {
        return LeastSquares.errorsWithin95Percent(degreesOfFreedom()) * criticalPowerErrorW;
    }

    /** Half the width of the 95 % confidence interval of W′ (Student's t), joules. */
    double wPrimeHalfWidthJ() {
        return LeastSquares.errorsWithin95Percent(degreesOfFreedom()) * wPrimeErrorJ;
    }

    /**
     * The fitted power for a duration, watts. Beyond half an hour the model promises more than riders hold (Drake et al.
     * 2024, Eur J Appl Physiol 124:507): use {@link SustainablePower} there.
     *
     * @param seconds the duration, above 0
     */
    public double powerW(double seconds) {
        return powerW(seconds, criticalPowerW, wPrimeJ, maximalPowerW);
    }

    /**
     * How long a power can be held according to the fit, seconds; infinite at critical power and below.
     *
     * @param watts the power
     */
    public double secondsAt(double watts) {
        return maximalPowerW == null
                ? CriticalPower.secondsAt(watts, criticalPowerW, wPrimeJ)
                : CriticalPower.secondsAt(watts, criticalPowerW, wPrimeJ, maximalPowerW);
    }
}
