package io.github.wattledger.power;

import io.github.wattledger.ride.Outcome;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Critical power and W′ from efforts of different days that the rider names as trials, each meant to be maximal. An effort
 * that falls far below what the others promise was not maximal and is set aside; the published ratio of W′ to critical
 * power counts as one more observation.
 *
 * @param criticalPowerW critical power, watts
 * @param criticalPowerErrorW its standard error, watts
 * @param wPrimeJ W′, joules
 * @param wPrimeErrorJ its standard error, joules
 * @param used the trials that were used, shortest first
 * @param setAside the trials that were not maximal, in the order in which they were set aside
 */
public record TrialCriticalPower(
        double criticalPowerW,
        double criticalPowerErrorW,
        double wPrimeJ,
        double wPrimeErrorJ,
        List<BestEffort> used,
        List<BestEffort> setAside)
        implements Serializable {
    /** Fewest trials that give a result. */
    public static final int FEWEST = 6;

    /** From so many trials on the result is given without reservation. */
    public static final int ENOUGH = 8;

    /** An effort this share below what the others promise was not maximal: 3 % throws out honest ones. */
    private static final double NOT_MAXIMAL = 0.05;

    /** Trials repeat within about 2 % (Triska et al. 2017, PLoS One 12: e0189776: 2.6 % of critical power). */
    private static final double EFFORT_LOG_ERROR = 0.02;

    /** W′ over critical power of 14 published riders, 57.4 ± 12.7 s, rounded and widened. */
    static final double RATIO_SECONDS = 60;

    private static final double RATIO_ERROR_SECONDS = 15;

    private static final int PASSES = 3;
    private static final int FEWEST_KEPT = 3;
    private static final int FEWEST_DURATIONS = 3;
    private static final double LEAST_SPAN = 3;
    private static final double LONGEST_AT_LEAST_SECONDS = 720;

    /** Shortest and longest effort that bounds critical power from below, seconds. */
    private static final double SHORTEST_BOUND_SECONDS = 180;

    private static final double LONGEST_BOUND_SECONDS = 1800;

    /** Copies the lists. */
    public TrialCriticalPower {
        used = List.copyOf(used);
        setAside = List.copyOf(setAside);
    }

    /**
     * From named trials.
     *
     * @param trials the trials, in any order
     * @return refused with fewer than six, fewer than three durations, durations within a factor of 3, or none of 12
     *     minutes
     */
    public static Outcome<TrialCriticalPower> of(List<BestEffort> trials) {
        if (trials.size() < FEWEST) {
            return Outcome.refused(trials.size() + " named trials, at least " + FEWEST + " are needed");
        }
        List<BestEffort> sorted = new ArrayList<>(trials);
        sorted.sort(Comparator.comparingDouble(BestEffort::seconds).thenComparingDouble(BestEffort::watts));
        if (!hasSpan(sorted) || sorted.get(sorted.size() - 1).seconds() < LONGEST_AT_LEAST_SECONDS) {
            return Outcome.refused("the named trials need three durations over a factor of three, the longest of 12"
                    + " minutes or more");
        }
        List<BestEffort> setAside = new ArrayList<>();
        List<BestEffort> kept = trimmed(sorted, setAside);
        return Outcome.of(withRatio(kept, setAside));
    }

    /**
     * {@link #of(List)} for arrays of equal length.
     *
     * @throws IllegalArgumentException when the lengths differ or a number is not finite and above 0
     */
    public static Outcome<TrialCriticalPower> of(double[] seconds, double[] watts) {
        return of(BestEffort.listOf(seconds, watts));
    }

    /**
     * What critical power is at least, by efforts of 3 to 30 minutes that nobody named as maximal, watts: the greatest of
     * {@code P / (1 + 60 / t)}. Its error is about 5 %; W′ cannot be known from such efforts.
     *
     * @return empty without an effort of 3 to 30 minutes
     */
    public static OptionalDouble atLeastW(List<BestEffort> efforts) {
        return efforts.stream()
                .filter(effort ->
                        effort.seconds() >= SHORTEST_BOUND_SECONDS && effort.seconds() <= LONGEST_BOUND_SECONDS)
                .mapToDouble(effort -> effort.watts() / (1 + RATIO_SECONDS / effort.seconds()))
                .max();
    }

    /** Whether there are trials enough to give the result without reservation. */
    public boolean isWithoutReservation() {
        return used.size() + setAside.size() >= ENOUGH;
    }

    private static boolean hasSpan(List<BestEffort> sorted) {
        return BestEffort.durations(sorted) >= FEWEST_DURATIONS
                && sorted.get(sorted.size() - 1).seconds()
                        >= LEAST_SPAN * sorted.get(0).seconds();
    }

    /** The efforts without those that lie too far below the line through the others, the farthest first. */
    static List<BestEffort> trimmed(List<BestEffort> sorted, List<BestEffort> setAside) {
        List<BestEffort> kept = new ArrayList<>(sorted);
        while (kept.size() > FEWEST_KEPT) {
            BestEffort lowest = null;
            double farthest = -NOT_MAXIMAL;
            for (int i = 0; i < kept.size(); i++) {
                List<BestEffort> others = new ArrayList<>(kept);
                BestEffort one = others.remove(i);
                double below = hasSpan(others) ? logBelow(one, relativeLine(others)) : 0;
                if (below < farthest) {
                    farthest = below;
                    lowest = one;
                }
            }
            if (lowest == null) {
                return kept;
            }
            setAside.add(lowest);
            kept.remove(lowest);
        }
        return kept;
    }

    private static double logBelow(BestEffort effort, LeastSquares.Solution line) {
        double expected = line.parameter(0) + line.parameter(1) / effort.seconds();
        return line.parameter(0) > 0 && expected > 0 ? Math.log(effort.watts() / expected) : 0;
    }

    /** Power on the inverse of time; an error is a share of power, so each weighs by the inverse of its square. */
    static LeastSquares.Solution relativeLine(List<BestEffort> efforts) {
        double[] watts = BestEffort.wattsOf(efforts);
        double[] inverse = new double[watts.length];
        double[] weights = new double[watts.length];
        for (int i = 0; i < watts.length; i++) {
            inverse[i] = 1 / efforts.get(i).seconds();
            weights[i] = 1 / (watts[i] * watts[i]);
        }
        return LeastSquares.line(inverse, watts, weights);
    }

    private static TrialCriticalPower withRatio(List<BestEffort> kept, List<BestEffort> setAside) {
        int n = kept.size();
        double[] inverse = new double[n + 1];
        double[] watts = new double[n + 1];
        double[] weights = new double[n + 1];
        for (int i = 0; i < n; i++) {
            watts[i] = kept.get(i).watts();
            inverse[i] = 1 / kept.get(i).seconds();
            weights[i] = 1 / square(EFFORT_LOG_ERROR * watts[i]);
        }
        // The ratio as an observation: 60 CP - W' = 0, within 15 CP; divided by 60, it is a point of the same line.
        inverse[n] = -1 / RATIO_SECONDS;
        LeastSquares.Solution line = relativeLine(kept);
        for (int pass = 0; pass < PASSES; pass++) {
            weights[n] = square(RATIO_SECONDS / (RATIO_ERROR_SECONDS * line.parameter(0)));
            line = LeastSquares.line(inverse, watts, weights);
        }
        double squares = 0;
        for (int i = 0; i < n; i++) {
            squares += square(Math.log(watts[i] / (line.parameter(0) + line.parameter(1) * inverse[i])));
        }
        double scatter = Math.sqrt(squares / Math.max(1, n - 2));
        double wider = Math.max(1, scatter / EFFORT_LOG_ERROR);
        return new TrialCriticalPower(
                line.parameter(0),
                wider * line.unscaledError(0),
                line.parameter(1),
                wider * line.unscaledError(1),
                kept,
                setAside);
    }

    private static double square(double value) {
        return value * value;
    }
}
