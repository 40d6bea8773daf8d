package io.github.wattledger.power;

import io.github.wattledger.power.CriticalPowerRefusal.Reason;
import io.github.wattledger.ride.Decimals;
import io.github.wattledger.ride.Ride;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Critical power and W′ from best efforts.
 *
 * <p>Sources: Monod and Scherrer 1965, Ergonomics 8:329 (work and time); Hill 1993, Sports Med 16:237; Morton 1996,
 * Ergonomics 39:611 (three parameters); the forms side by side in Gaesser et al. 1995, Med Sci Sports Exerc 27:1430.
 * The same trials give a lower critical power and a larger W′ in the order inverse time, work and time, time on power:
 * the forms differ in which number is taken to carry the error.
 */
public final class CriticalPower {
    /**
     * Which form of the model is fitted, which is to say what is taken to carry the error.
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

    /** Shortest effort for the forms with two parameters: below it they promise more than riders do, seconds. */
    public static final int SHORTEST_SECONDS = 120;

    /** Longest effort: above it power falls below the level the model predicts, seconds. */
    public static final int LONGEST_SECONDS = 1800;

    /**
     * Durations read from a ride's curve, seconds: those that riders test themselves over, among them the 3, 7 and 12
     * minutes of Karsten et al. 2015.
     */
    private static final int[] CURVE_SECONDS = {180, 300, 420, 480, 720, 1200, 1800};

    /** Of three efforts, two parameters leave one degree of freedom: the least from which an error can be told. */
    private static final int FEWEST_DURATIONS = 3;

    /** Longest over shortest duration: closer together, the line swings about a single point. */
    private static final double LEAST_SPAN = 3;

    /**
     * A curve that ends before 12 minutes is not fitted: trials all under 10 minutes overestimate critical power, and
     * two of 12 to 20 minutes mend it (Mattioni Maturana et al. 2018, J Sci Med Sport 21:742).
     */
    private static final int LEAST_LONGEST_SECONDS = 720;

    /**
     * Largest standard error of critical power, as a fraction of it. Field tests repeat laboratory ones within 4.5 %
     * (Karsten et al. 2015, Eur J Appl Physiol 115:197); a fit that is itself worse than this adds nothing.
     */
    private static final double LARGEST_ERROR = 0.05;

    /** The same for W′. Group standard deviations are 18 to 26 % of the mean: an error above that says nothing. */
    private static final double LARGEST_W_PRIME_ERROR = 0.25;

    /**
     * W′ over critical power, seconds. In the 14 trained men of Mitchell et al. 2018 it lies between 38 and 75 s, in
     * the group of Vinetti et al. 2019 at 90 s. An effort that lies below what a longer one and the lower limit call for
     * was not maximal: it was a part of the longer one, or easy. A fit above the upper limit means that the long efforts
     * were not maximal, or that short ones were ridden between rests.
     */
    private static final double LEAST_W_PRIME_SECONDS = 25;

    private static final double MOST_W_PRIME_SECONDS = 115;

    /**
     * A fit this far below a threshold known from elsewhere shows that the efforts were not maximal: critical power lies
     * at or above the power of an hour, and one standard error of a field test is 4.5 % (Karsten et al. 2015).
     */
    private static final double LEAST_OF_THRESHOLD = 0.955;

    /**
     * How far the three forms with two parameters may lie apart, as a fraction of critical power. On the six riders of
     * Mitchell et al. 2018 in this project's tests it is 0.3 to 2.4 %; where the choice of the form moves the result by
     * more than a field test repeats (4.5 %), the efforts lie on no hyperbola.
     */
    private static final double WIDEST_FORMS = 0.05;

    /**
     * How far below empty the W′ balance of the ride itself may fall, as a share of W′. At the end of eight all-out
     * races, where 0 would be right, the model stood at −2.7 ± 2.0 kJ (Bartram et al. 2022, Int J Sports Physiol Perform
     * 17:170): two standard deviations below is a third of a W′ of 20 kJ. On 16 real rides not known to be tests
     * a fit through all their bests of 3 to 30 minutes was overdrawn by half of W′ and more; this limit was set with
     * those rides in view.
     */
    private static final double DEEPEST_OVERDRAFT = 1 / 3.0;

    /** Beyond the best sprinters (from memory, about 2,500 W): efforts that lead there hold no short one. */
    private static final double HIGHEST_MAXIMAL_POWER_W = 3000;

    /** Far beyond any rider, kilojoules of W′ as joules; bounds the search only. */
    private static final double HIGHEST_W_PRIME_J = 1e6;

    private CriticalPower() {}

    /**
     * Fits efforts that each were maximal, all weighing the same.
     *
     * @param efforts one for each duration, in any order
     */
    public static CriticalPowerResult fit(List<BestEffort> efforts, Form form) {
        return fit(efforts, LeastSquares.equalWeights(efforts.size()), form);
    }

    /**
     * {@link #fit(List, Form)} for arrays of equal length.
     *
     * @throws IllegalArgumentException when the lengths differ or a number is not finite and above 0
     */
    public static CriticalPowerResult fit(double[] seconds, double[] watts, Form form) {
        return fit(BestEffort.listOf(seconds, watts), form);
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
    public static CriticalPowerResult fit(List<BestEffort> efforts, double[] weights, Form form) {
        requireWeights(efforts, weights);
        List<Weighted> weighted = new ArrayList<>();
        for (int i = 0; i < weights.length; i++) {
            weighted.add(new Weighted(efforts.get(i), weights[i]));
        }
        weighted.sort(Comparator.comparingDouble(each -> each.effort.seconds()));
        List<BestEffort> sorted = new ArrayList<>();
        double[] sortedWeights = new double[weights.length];
        for (Weighted each : weighted) {
            sortedWeights[sorted.size()] = each.weight;
            sorted.add(each.effort);
        }
        CriticalPowerRefusal refusal = unfit(sorted, form);
        return refusal != null ? refusal : solve(List.copyOf(sorted), sortedWeights, form);
    }

    private record Weighted(BestEffort effort, double weight) {}

    /**
     * Critical power from one ride: {@link #ofCurve}, and then held against the ride itself. When the W′ balance by the
     * fit ({@link WPrimeBalance}, differential) falls more than a third of W′ below empty, the rider did what the fit
     * says nobody could, mostly because the bests were not begun rested, and the fit is refused.
     *
     * <p>An ordinary ride or race hardly ever carries a fit; a ride with three or more all-out efforts of different
     * length and rest between them does.
     *
     * @param curve the curve of that ride
     * @param thresholdPowerW threshold power known from elsewhere, watts, or null; never one estimated from this ride
     */
    public static CriticalPowerResult ofRide(Ride ride, MeanMaximalCurve curve, @Nullable Double thresholdPowerW) {
        return longestAccepted(curve, thresholdPowerW, fit -> heldAgainst(ride, fit));
    }

    /** {@link #ofRide} for one-second power, watts; {@code NaN} is a missing second. */
    public static CriticalPowerResult ofRide(double[] watts, @Nullable Double thresholdPowerW) {
        Ride ride = Ride.ofWatts(watts);
        return ofRide(ride, MeanMaximalCurve.of(ride), thresholdPowerW);
    }

    /**
     * Critical power from the mean-maximal curve of one ride, from the best 3, 5, 7, 8, 12, 20 and 30 minutes as far as the
     * ride goes, in the form {@link Form#INVERSE_TIME}. Left out are bests that missing seconds may have lowered, and
     * bests that cannot have been maximal because a longer one is too close to them: the best 8 minutes of a trial of 12
     * are no trial of their own. Where the longest bests were not maximal, as after a longest trial of 20 minutes, the
     * fit is tried without them, down to 12 minutes. A curve says what was done, not what could have been, so a fit is refused
     *
     * <ul>
     *   <li>when the curve is shorter than 12 minutes or holds no power,
     *   <li>when fewer than three efforts that span a factor of 3 are left, as in an even ride,
     *   <li>when its standard error is above 5 % of critical power or 25 % of W′,
     *   <li>when the three forms with two parameters lie more than 5 % of critical power apart: no hyperbola,
     *   <li>when W′ is more than 115 s of critical power (the longer efforts were not maximal),
     *   <li>when critical power is more than 4.5 % below a threshold power known from elsewhere.
     * </ul>
     *
     * <p>Without a known threshold a ride in which every effort fell short of maximal by the same share cannot be told
     * from a weaker rider's: what is accepted is then a lower limit. {@link #ofRide} tests more.
     *
     * @param thresholdPowerW threshold power known from elsewhere, watts, or null; never one estimated from this curve
     */
    public static CriticalPowerResult ofCurve(MeanMaximalCurve curve, @Nullable Double thresholdPowerW) {
        return longestAccepted(curve, thresholdPowerW, fit -> fit);
    }

    /** The first accepted fit, from the longest bests down; where there is none, the reason against all bests. */
    private static CriticalPowerResult longestAccepted(
            MeanMaximalCurve curve,
            @Nullable Double thresholdPowerW,
            Function<CriticalPowerFit, CriticalPowerResult> check) {
        if (curve.longestSeconds() < LEAST_LONGEST_SECONDS || !(curve.watts(LEAST_LONGEST_SECONDS) > 0)) {
            return refuse(Reason.TOO_SHORT, "the ride holds no 12 minutes of power", null);
        }
        List<BestEffort> bests = new ArrayList<>();
        for (int seconds : CURVE_SECONDS) {
            if (seconds <= curve.longestSeconds() && !curve.mayBeLow(seconds) && curve.watts(seconds) > 0) {
                bests.add(new BestEffort(seconds, curve.watts(seconds)));
            }
        }
        CriticalPowerResult first = null;
        for (int count = bests.size(); count > 0; count--) {
            if (bests.get(count - 1).seconds() < LEAST_LONGEST_SECONDS) {
                break;
            }
            CriticalPowerResult result = ofBests(bests.subList(0, count), thresholdPowerW);
            if (result instanceof CriticalPowerFit fit) {
                result = check.apply(fit);
            }
            if (result instanceof CriticalPowerFit) {
                return result;
            }
            first = first == null ? result : first;
        }
        return first != null
                ? first
                : refuse(
                        Reason.MISSING_SECONDS,
                        "seconds without power may have lowered the best 12 minutes and all longer ones",
                        null);
    }

    private static CriticalPowerResult ofBests(List<BestEffort> bests, @Nullable Double thresholdPowerW) {
        List<BestEffort> perhapsMaximal = new ArrayList<>();
        for (BestEffort best : bests) {
            if (couldBeMaximal(best, bests)) {
                perhapsMaximal.add(best);
            }
        }
        if (fit(perhapsMaximal, Form.INVERSE_TIME) instanceof CriticalPowerFit fit) {
            return believed(fit, thresholdPowerW);
        }
        BestEffort shortest = bests.get(0);
        BestEffort longest = bests.get(bests.size() - 1);
        return refuse(
                Reason.NO_MAXIMAL_EFFORTS,
                "the ride holds no three maximal efforts of different length: its best "
                        + Decimals.of(shortest.seconds() / 60, 0) + " min were at " + Decimals.of(shortest.watts(), 0)
                        + " W, its best " + Decimals.of(longest.seconds() / 60, 0) + " min at "
                        + Decimals.of(longest.watts(), 0) + " W",
                null);
    }

    private static CriticalPowerResult heldAgainst(Ride ride, CriticalPowerFit fit) {
        double lowestJ = WPrimeBalance.of(ride, fit.criticalPowerW(), fit.wPrimeJ(), WPrimeBalance.Model.DIFFERENTIAL)
                .minimumJ();
        return lowestJ >= -DEEPEST_OVERDRAFT * fit.wPrimeJ()
                ? fit
                : refuse(
                        Reason.CONTRADICTED_BY_RIDE,
                        format(
                                "the ride goes beyond what its own best efforts allow (%.0f W and %.1f kJ would have been"
                                        + " overdrawn by %.1f kJ): they were not begun rested, or not all-out",
                                fit.criticalPowerW(), fit.wPrimeKJ(), -lowestJ / 1000),
                        fit);
    }

    /** Whether no longer effort shows that a rider could have done better in this one. */
    private static boolean couldBeMaximal(BestEffort effort, List<BestEffort> efforts) {
        for (BestEffort longer : efforts) {
            double leastW = longer.watts()
                    * (1 + LEAST_W_PRIME_SECONDS / effort.seconds())
                    / (1 + LEAST_W_PRIME_SECONDS / longer.seconds());
            if (longer.seconds() > effort.seconds() && effort.watts() < leastW) {
                return false;
            }
        }
        return true;
    }

    /**
     * The power that critical power and W′ allow for a duration, watts: {@code CP + W′ / t}.
     *
     * @param seconds the duration, above 0
     * @param criticalPowerW critical power, watts
     * @param wPrimeJ W′, joules
     */
    public static double powerW(double seconds, double criticalPowerW, double wPrimeJ) {
        return criticalPowerW + wPrimeJ / seconds;
    }

    /**
     * The same with a maximal power: {@code CP + W′ / (t + W′ / (Pmax − CP))}.
     *
     * @param maximalPowerW maximal power, watts, above critical power
     */
    public static double powerW(double seconds, double criticalPowerW, double wPrimeJ, double maximalPowerW) {
        return criticalPowerW + wPrimeJ / (seconds + wPrimeJ / (maximalPowerW - criticalPowerW));
    }

    /**
     * How long critical power and W′ allow a power, seconds: {@code W′ / (P − CP)}; infinite at critical power and below.
     *
     * @param watts the power
     * @param criticalPowerW critical power, watts
     * @param wPrimeJ W′, joules
     */
    public static double secondsAt(double watts, double criticalPowerW, double wPrimeJ) {
        return watts <= criticalPowerW ? Double.POSITIVE_INFINITY : wPrimeJ / (watts - criticalPowerW);
    }

    /**
     * The same with a maximal power: {@code W′ / (P − CP) − W′ / (Pmax − CP)}, 0 at maximal power and below 0 above it.
     *
     * @param maximalPowerW maximal power, watts, above critical power
     */
    public static double secondsAt(double watts, double criticalPowerW, double wPrimeJ, double maximalPowerW) {
        return secondsAt(watts, criticalPowerW, wPrimeJ) - wPrimeJ / (maximalPowerW - criticalPowerW);
    }

    private static @Nullable CriticalPowerRefusal unfit(List<BestEffort> sorted, Form form) {
        int fewest = Math.max(FEWEST_DURATIONS, form.parameters() + 1);
        int durations = BestEffort.durations(sorted);
        if (durations < fewest) {
            return refuse(Reason.TOO_FEW_DURATIONS, durations + " durations, at least " + fewest + " are needed", null);
        }
        double shortest = sorted.get(0).seconds();
        double longest = sorted.get(sorted.size() - 1).seconds();
        if (shortest < (form == Form.THREE_PARAMETER ? 1 : SHORTEST_SECONDS) || longest > LONGEST_SECONDS) {
            return refuse(
                    Reason.DURATION_OUT_OF_RANGE,
                    "efforts of " + Decimals.of(shortest, 0) + " to " + Decimals.of(longest, 0)
                            + " s, outside the 2 to 30 minutes the model is for",
                    null);
        }
        if (longest < LEAST_SPAN * shortest) {
            return refuse(
                    Reason.SPAN_TOO_NARROW,
                    "efforts of " + Decimals.of(shortest, 0) + " to " + Decimals.of(longest, 0)
                            + " s lie too close together",
                    null);
        }
        return null;
    }

    private static CriticalPowerResult solve(List<BestEffort> efforts, double[] weights, Form form) {
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
            case TIME_ON_POWER -> nonlinear(form, efforts, timeOnPower(efforts, weights, line));
            case THREE_PARAMETER -> nonlinear(form, efforts, threeParameter(efforts, weights, line));
        };
    }

    private static CriticalPowerResult nonlinear(
            Form form, List<BestEffort> efforts, Optional<LeastSquares.Solution> solution) {
        if (solution.isEmpty()) {
            return refuse(Reason.NOT_CONVERGED, "no curve through these efforts was found", null);
        }
        if (solution.get().isOnBound()) {
            return refuse(Reason.ON_A_BOUND, "the efforts do not determine the curve: it ran to the edge", null);
        }
        return result(form, efforts, solution.get(), 0, 1);
    }

    private static Optional<LeastSquares.Solution> timeOnPower(
            List<BestEffort> efforts, double[] weights, LeastSquares.Solution line) {
        double lowestW = lowestW(efforts);
        double[] low = {0, 0};
        // At critical power time is infinite, so the search stays below the lowest power ridden.
        double[] high = {lowestW * (1 - 1e-9), HIGHEST_W_PRIME_J};
        double startW = Math.min(line.parameter(0), 0.98 * lowestW);
        double[] start = {startW, Math.max(line.parameter(1), 1000)};
        return LeastSquares.curve(
                new TimeOnPower(),
                BestEffort.wattsOf(efforts),
                BestEffort.secondsOf(efforts),
                weights,
                start,
                low,
                high);
    }

    private static Optional<LeastSquares.Solution> threeParameter(
            List<BestEffort> efforts, double[] weights, LeastSquares.Solution line) {
        double highestW = efforts.stream().mapToDouble(BestEffort::watts).max().orElseThrow();
        double lowestW = lowestW(efforts);
        double[] low = {0, 0, highestW};
        double[] high = {lowestW, HIGHEST_W_PRIME_J, HIGHEST_MAXIMAL_POWER_W};
        double[] start = {
            Math.min(Math.max(line.parameter(0), 0.5 * lowestW), 0.98 * lowestW),
            Math.max(line.parameter(1), 1000),
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

    private static CriticalPowerResult result(
            Form form, List<BestEffort> efforts, LeastSquares.Solution solution, int criticalPower, int wPrime) {
        double criticalPowerW = solution.parameter(criticalPower);
        double wPrimeJ = solution.parameter(wPrime);
        if (!(criticalPowerW > 0 && wPrimeJ > 0)) {
            return refuse(
                    Reason.NEGATIVE,
                    format("critical power %.0f W and W' %.1f kJ cannot be", criticalPowerW, wPrimeJ / 1000),
                    null);
        }
        boolean three = form == Form.THREE_PARAMETER;
        Double maximalPowerW = three ? (Double) solution.parameter(2) : null;
        List<Double> residualsW = efforts.stream()
                .map(effort -> effort.watts()
                        - (maximalPowerW == null
                                ? powerW(effort.seconds(), criticalPowerW, wPrimeJ)
                                : powerW(effort.seconds(), criticalPowerW, wPrimeJ, maximalPowerW)))
                .toList();
        return new CriticalPowerFit(
                form,
                criticalPowerW,
                solution.standardError(criticalPower),
                wPrimeJ,
                solution.standardError(wPrime),
                maximalPowerW,
                three ? (Double) solution.standardError(2) : null,
                efforts,
                residualsW,
                solution.rSquared());
    }

    /** The fit, or why the efforts of a ride do not carry it. */
    private static CriticalPowerResult believed(CriticalPowerFit fit, @Nullable Double thresholdPowerW) {
        double wPrimeSeconds = fit.wPrimeJ() / fit.criticalPowerW();
        if (wPrimeSeconds > MOST_W_PRIME_SECONDS) {
            return refuse(
                    Reason.NO_MAXIMAL_EFFORTS,
                    format(
                            "its long efforts were not maximal: best %.0f min %.0f W, but best %.0f min %.0f W",
                            shortest(fit).seconds() / 60,
                            shortest(fit).watts(),
                            longest(fit).seconds() / 60,
                            longest(fit).watts()),
                    fit);
        }
        if (thresholdPowerW != null && fit.criticalPowerW() < LEAST_OF_THRESHOLD * thresholdPowerW) {
            return refuse(
                    Reason.NO_MAXIMAL_EFFORTS,
                    format(
                            "the ride holds no maximal efforts: its best ones point to %.0f W, below the threshold of"
                                    + " %.0f W",
                            fit.criticalPowerW(), thresholdPowerW),
                    fit);
        }
        if (!(fit.criticalPowerErrorW() <= LARGEST_ERROR * fit.criticalPowerW()
                && fit.wPrimeErrorJ() <= LARGEST_W_PRIME_ERROR * fit.wPrimeJ())) {
            return refuse(
                    Reason.TOO_UNCERTAIN,
                    format(
                            "its best efforts do not lie on one curve: critical power %.0f W with an error of %.0f W,"
                                    + " W' %.1f kJ with an error of %.1f kJ",
                            fit.criticalPowerW(), fit.criticalPowerErrorW(), fit.wPrimeKJ(), fit.wPrimeErrorJ() / 1000),
                    fit);
        }
        if (!(formsApart(fit.efforts()) <= WIDEST_FORMS)) {
            return refuse(
                    Reason.TOO_UNCERTAIN,
                    "its best efforts do not lie on one curve: critical power depends on the way of fitting it",
                    fit);
        }
        return fit;
    }

    /** Highest less lowest critical power of the forms with two parameters, over the one reported. */
    private static double formsApart(List<BestEffort> efforts) {
        double lowest = Double.POSITIVE_INFINITY;
        double highest = Double.NEGATIVE_INFINITY;
        double reported = Double.NaN;
        for (Form form : List.of(Form.INVERSE_TIME, Form.WORK_TIME, Form.TIME_ON_POWER)) {
            if (!(fit(efforts, form) instanceof CriticalPowerFit each)) {
                return Double.NaN;
            }
            reported = form == Form.INVERSE_TIME ? each.criticalPowerW() : reported;
            lowest = Math.min(lowest, each.criticalPowerW());
            highest = Math.max(highest, each.criticalPowerW());
        }
        return (highest - lowest) / reported;
    }

    private static BestEffort shortest(CriticalPowerFit fit) {
        return fit.efforts().get(0);
    }

    private static BestEffort longest(CriticalPowerFit fit) {
        return fit.efforts().get(fit.efforts().size() - 1);
    }

    private static void requireWeights(List<BestEffort> efforts, double[] weights) {
        if (weights.length != efforts.size()) {
            throw new IllegalArgumentException(efforts.size() + " efforts but " + weights.length + " weights");
        }
        for (double weight : weights) {
            if (!(weight > 0 && Double.isFinite(weight))) {
                throw new IllegalArgumentException("weight " + weight + ", expected above 0");
            }
        }
    }

    private static CriticalPowerRefusal refuse(Reason reason, String text, @Nullable CriticalPowerFit fit) {
        return new CriticalPowerRefusal(reason, text, fit);
    }

    private static String format(String format, Object... arguments) {
        return String.format(Locale.ROOT, format, arguments);
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
            return powerW(seconds, parameters[0], parameters[1], parameters[2]);
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
