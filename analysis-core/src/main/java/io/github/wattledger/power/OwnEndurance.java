package io.github.wattledger.power;

import io.github.wattledger.ride.Outcome;
import java.io.Serializable;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What a rider's own long rides say about endurance: how far the best few of a year lay over the general guide, each
 * held against the threshold of its own day. The guide's fall of power with duration is drawn towards them, the more the
 * more of them there are.
 *
 * <p>A ride shows what its rider could do at least. So easy rides teach nothing, and rides that lie below the guide count
 * only when something else shows that the rider had no more to give.
 *
 * <p>The rule and its numbers come from 1,000 simulated seasons with a known truth; {@code docs/methods.md} tells how it did on fresh
 * ones. Nothing of it could be tried on real seasons with a known truth.
 *
 * @param top the rides it rests on, the one farthest over the guide first; one to five
 * @param isNamed whether the rider named these rides as all-out
 * @param logOverGuide their mean distance from the guide with what they still fell short, in natural logarithms
 * @param meanLogHours mean logarithm of their riding times in hours
 * @param logError standard error of that distance as a measure of the rider, in natural logarithms
 * @param basis how well the threshold of today is known
 */
public record OwnEndurance(
        List<LongRide> top,
        boolean isNamed,
        double logOverGuide,
        double meanLogHours,
        double logError,
        ThresholdBasis basis)
        implements Serializable {
    /** Shortest riding time of a ride that speaks for endurance, hours: below it, intervals flatter normalized power. */
    public static final double SHORTEST_HOURS = 2;

    private static final int MOST_IN_TOP = 5;

    /** Beyond so many times the longest ride of the top nothing is said. */
    private static final double FARTHEST_REACH = 4;

    /** Beyond so many times the longest ride of the top the power is extrapolated. */
    private static final double REACH = 2;

    /**
     * How rides are read.
     *
     * @param isNamed whether the rider named the rides as all-out
     * @param steepest the exponent above which the best ride is taken for an easy one
     * @param tolerance how far below the best ride another one may lie in the top, in natural logarithms
     * @param logErrors standard error for one to five rides, in natural logarithms
     * @param lessSure by what the error grows when up to four rides say "weaker than the guide"
     */
    private record Reading(
            boolean isNamed, double steepest, double tolerance, List<Double> logErrors, double lessSure) {}

    private static final Reading FOUND =
            new Reading(false, 0.27, 0.08, List.of(0.065, 0.055, 0.045, 0.040, 0.032), 1.5);
    private static final Reading NAMED = new Reading(true, 0.40, 0.12, List.of(0.055, 0.045, 0.040, 0.035, 0.030), 1);

    /** A ride with its distance from the guide, which takes two logarithms to work out. */
    private record Placed(LongRide ride, double logOverGuide) {
        static Placed of(LongRide ride) {
            return new Placed(ride, ride.logOverGuide());
        }
    }

    private static final Comparator<Placed> FARTHEST_FIRST = Comparator.comparingDouble(Placed::logOverGuide)
            .thenComparingDouble(each -> each.ride.hours())
            .reversed()
            .thenComparing(each -> each.ride.day());

    /** How far named all-out rides still fall short, in natural logarithms. */
    private static final double SHORTFALL_OF_NAMED = 0.03;

    /** Copies the list. */
    public OwnEndurance {
        top = List.copyOf(top);
    }

    /**
     * From rides of which nobody said how hard they were.
     *
     * @param rides the rides of the last 365 days, in any order; those under two hours are not looked at
     * @param basis how well the threshold of today is known
     * @param hasWitness whether a long ride of that year shows that the rider had no more to give: named all-out, or a race
     *     in which the rider faded, ran out of energy or drifted
     * @return refused when no ride was hard, and when the rides say "weaker than the guide" without a witness
     */
    public static Outcome<OwnEndurance> ofFound(List<LongRide> rides, ThresholdBasis basis, boolean hasWitness) {
        return of(rides, FOUND, basis, basis.shortfall(), hasWitness);
    }

    /**
     * From rides that the rider named as all-out; they need no witness.
     *
     * @param rides the named rides of the last 365 days, in any order; those under two hours are not looked at
     * @param basis how well the threshold of today is known
     * @return refused when there is none, and when even the best of them was easy
     */
    public static Outcome<OwnEndurance> ofNamed(List<LongRide> rides, ThresholdBasis basis) {
        return of(rides, NAMED, basis, SHORTFALL_OF_NAMED, true);
    }

    /** {@link #ofFound} with a shortfall of one's own. */
    static Outcome<OwnEndurance> ofFound(
            List<LongRide> rides, ThresholdBasis basis, double shortfall, boolean hasWitness) {
        return of(rides, FOUND, basis, shortfall, hasWitness);
    }

    private static Outcome<OwnEndurance> of(
            List<LongRide> rides, Reading reading, ThresholdBasis basis, double shortfall, boolean hasWitness) {
        List<Placed> placed = rides.stream()
                .filter(ride -> ride.hours() >= SHORTEST_HOURS)
                .map(Placed::of)
                .toList();
        if (placed.isEmpty()) {
            return Outcome.refused("no ride of two hours or more within a year");
        }
        double highest = placed.stream().mapToDouble(Placed::logOverGuide).max().orElseThrow();
        // Only these are sorted: a season asks for each of its days, and a year has hundreds of rides.
        List<LongRide> top = placed.stream()
                .filter(each -> each.logOverGuide > highest - reading.tolerance)
                .sorted(FARTHEST_FIRST)
                .limit(MOST_IN_TOP)
                .map(Placed::ride)
                .toList();
        LongRide best = top.get(0);
        double exponent = SustainablePower.DECLINE_BEYOND_HOUR - best.logOverGuide() / best.logHours();
        if (exponent > reading.steepest) {
            return Outcome.refused("no hard ride of two hours or more within a year");
        }
        double over = top.stream().mapToDouble(LongRide::logOverGuide).sum() / top.size() + shortfall;
        if (over < 0 && !hasWitness) {
            return Outcome.refused("the long rides of the last year lie below the general guide, and none of them shows"
                    + " that the rider had no more to give");
        }
        double error = reading.logErrors.get(top.size() - 1);
        return Outcome.of(new OwnEndurance(
                top,
                reading.isNamed,
                over,
                top.stream().mapToDouble(LongRide::logHours).sum() / top.size(),
                over < 0 && top.size() < MOST_IN_TOP ? error * reading.lessSure : error,
                basis));
    }

    /** Riding time of the longest ride of the top, hours. */
    public double longestHours() {
        return top.stream().mapToDouble(LongRide::hours).max().orElseThrow();
    }

    /** Riding time of the shortest ride of the top, hours. */
    public double shortestHours() {
        return top.stream().mapToDouble(LongRide::hours).min().orElseThrow();
    }

    /** Whether a duration in seconds lies beyond twice the longest ride it rests on, so that its power is extrapolated. */
    public boolean isExtrapolated(double seconds) {
        return seconds > REACH * SustainablePower.SECONDS_PER_HOUR * longestHours();
    }

    /**
     * The power that the rider can be expected to hold, with a range that holds the truth in about eight of ten cases.
     *
     * @param thresholdPowerW threshold power today, watts, above 0
     * @param seconds the duration, at least 20 minutes
     * @return empty beyond four times the longest ride of the top
     * @throws IllegalArgumentException when an argument is out of range
     */
    public Optional<SustainablePower> over(double thresholdPowerW, double seconds) {
        double guideW = SustainablePower.guideW(thresholdPowerW, seconds);
        if (seconds > FARTHEST_REACH * SustainablePower.SECONDS_PER_HOUR * longestHours()) {
            return Optional.empty();
        }
        // The exponent is that of durations beyond an hour; below it only what is learnt of the threshold counts.
        double logHours = Math.max(0, Math.log(seconds / SustainablePower.SECONDS_PER_HOUR));
        double threshold = square(basis.logError());
        double spread = square(EnduranceSpread.EXPONENT);
        double together = threshold + spread * meanLogHours * logHours;
        double ofRides = threshold + spread * square(meanLogHours) + square(logError);
        double variance = threshold
                + spread * square(logHours)
                - square(together) / ofRides
                + square(EnduranceSpread.BEND * (square(logHours) - square(meanLogHours)))
                + square(basis.extraLogError());
        double watts = guideW * Math.exp(together * logOverGuide / ofRides);
        return Optional.of(SustainablePower.within(watts, variance, SustainablePower.Source.OWN_RIDES));
    }

    private static double square(double value) {
        return value * value;
    }
}
