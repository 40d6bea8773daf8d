package io.github.wattledger.power;

import io.github.wattledger.rider.Bounds;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How much power a rider can be expected to hold for a duration, with a range.
 *
 * @param watts the expected power, watts
 * @param lowW lower end of the range, watts
 * @param highW upper end of the range, watts
 * @param source what it rests on
 */
public record SustainablePower(double watts, double lowW, double highW, Source source) implements Serializable {
    /** What a sustainable power rests on. */
    public enum Source {
        /** The general guide, {@link SustainablePower#guideW}. */
        GUIDE,
        /** The rider's own long bests in other rides, {@link SustainablePower#fromBests}. */
        OWN_BESTS,
        /** The rider's own long rides of a year, by {@code OwnEndurance}. */
        OWN_RIDES
    }

    /**
     * How fast sustainable power falls with duration beyond an hour: 0.89 of threshold at 2 h, 0.80 at 4 h, 0.72 at 8 h,
     * 0.67 at 12 h. Common targets of coaches, no single source.
     */
    static final double DECLINE_BEYOND_HOUR = 0.16;

    /**
     * How fast sustainable power falls with duration below an hour: 20 minutes come out at the power of which threshold is
     * {@link ThresholdEstimate#SHARE_OF_TWENTY_MINUTES}.
     */
    static final double DECLINE_WITHIN_HOUR = -Math.log(ThresholdEstimate.SHARE_OF_TWENTY_MINUTES) / Math.log(3);

    /** Shortest duration the guide speaks of, seconds. */
    public static final int SHORTEST_GUIDE_SECONDS = 1200;

    /** Shorter bests say more about critical power than about endurance, seconds. */
    static final int SHORTEST_BEST_SECONDS = 1200;

    /** The longest best must reach this share of the duration asked about; farther out the line is a guess. */
    private static final double LEAST_REACH = 0.5;

    private static final int FEWEST_BESTS = 3;

    /** Longest over shortest best, at least: a slope needs a lever. */
    private static final double LEAST_SPAN = 3;

    /**
     * No range is narrower than this to each side, whatever the bests' scatter: riders repeat a best effort within 2.6 %
     * at the very best (Muriel et al. 2023, J Strength Cond Res 37:1131).
     */
    private static final double LEAST_LOG_ERROR = 0.026;

    /**
     * Fall of power with duration that a rider can show. Professionals lose about 9.5 % of maximal aerobic power a unit
     * of log time (Pinot and Grappe 2014, J Sci Cycling 3(1):26), which is an exponent near 0.1 to 0.16. A steeper line
     * comes from long rides that were not ridden hard.
     */
    private static final double STEEPEST_EXPONENT = 0.30;

    /** Far below any fall that a meter could show: a line through equal powers is level up to rounding. */
    private static final double LEVEL_EXPONENT = 1e-9;

    static final double SECONDS_PER_HOUR = 3600;

    /**
     * A guide to the power that can be held for a duration, from threshold power alone. It knows nothing of the rider's
     * endurance and must be shown as a guide, never as a fact.
     *
     * @param thresholdPowerW threshold power, watts, above 0
     * @param seconds the duration, at least 20 minutes
     * @return watts
     * @throws IllegalArgumentException when an argument is out of range
     */
    public static double guideW(double thresholdPowerW, double seconds) {
        Bounds.requireAboveZero("thresholdPowerW", thresholdPowerW);
        if (!(seconds >= SHORTEST_GUIDE_SECONDS && Double.isFinite(seconds))) {
            throw new IllegalArgumentException("seconds " + seconds + ", expected at least " + SHORTEST_GUIDE_SECONDS);
        }
        double hours = seconds / SECONDS_PER_HOUR;
        double decline = hours >= 1 ? DECLINE_BEYOND_HOUR : DECLINE_WITHIN_HOUR;
        return thresholdPowerW * Math.pow(hours, -decline);
    }

    /**
     * {@link #guideW} with a range that holds the truth in about eight of ten cases, for a threshold that was measured
     * lately: about 6 % to either side at 2 h, from 11 % below to 13 % above at 5 h, and from 16 % below to 19 % above at 10 h.
     *
     * @throws IllegalArgumentException when an argument is out of range
     */
    public static SustainablePower guide(double thresholdPowerW, double seconds) {
        return guide(thresholdPowerW, seconds, ThresholdBasis.RECENT);
    }

    /**
     * {@link #guideW} with a range that holds the truth in about eight of ten cases. It is wide because riders of one
     * threshold differ in endurance, and the guide knows nothing of that; {@code docs/methods.md} has its derivation.
     *
     * @param thresholdPowerW threshold power, watts, above 0
     * @param seconds the duration, at least 20 minutes
     * @param basis how well the threshold is known
     * @throws IllegalArgumentException when an argument is out of range
     */
    public static SustainablePower guide(double thresholdPowerW, double seconds, ThresholdBasis basis) {
        double watts = guideW(thresholdPowerW, seconds);
        return within(watts, EnduranceSpread.varianceOfGuide(basis, seconds / SECONDS_PER_HOUR), Source.GUIDE);
    }

    /** A power with its 80 % range, from its variance in squared natural logarithms. */
    static SustainablePower within(double watts, double variance, Source source) {
        double half = EnduranceSpread.ERRORS_OF_80_PERCENT * Math.sqrt(variance);
        return new SustainablePower(watts, watts * Math.exp(-half), watts * Math.exp(half), source);
    }

    /**
     * From the rider's own long bests: a power law through those of 20 minutes and longer. The range is one standard
     * error of a further effort to each side, about two chances in three.
     *
     * <p>The bests must come from <b>other</b> rides than the one under judgement: a ride measured by its own bests has
     * always met its target.
     *
     * @param bests the rider's bests in any order; those under 20 minutes are not used
     * @param seconds the duration asked about, above 0
     * @return empty when fewer than three durations of 20 minutes and longer are there, when they span less than a factor
     *     of 3, when the longest is shorter than half of {@code seconds}, when power does not fall with duration, or when
     *     it falls faster than riders tire, because the long rides were not ridden hard
     * @throws IllegalArgumentException when the duration is not above 0
     */
    public static Optional<SustainablePower> fromBests(List<BestEffort> bests, double seconds) {
        Bounds.requireAboveZero("seconds", seconds);
        List<BestEffort> used = new ArrayList<>(bests);
        used.removeIf(best -> best.seconds() < SHORTEST_BEST_SECONDS);
        if (BestEffort.durations(used) < FEWEST_BESTS) {
            return Optional.empty();
        }
        double shortest = used.stream().mapToDouble(BestEffort::seconds).min().orElseThrow();
        double longest = used.stream().mapToDouble(BestEffort::seconds).max().orElseThrow();
        if (longest < LEAST_SPAN * shortest || longest < LEAST_REACH * seconds) {
            return Optional.empty();
        }
        PowerLaw law = PowerLaw.fit(used);
        if (!(law.exponent() > LEVEL_EXPONENT && law.exponent() <= STEEPEST_EXPONENT)) {
            return Optional.empty();
        }
        double watts = law.powerW(seconds);
        double error = Math.max(LEAST_LOG_ERROR, law.predictionLogError(seconds));
        return Optional.of(
                new SustainablePower(watts, watts * Math.exp(-error), watts * Math.exp(error), Source.OWN_BESTS));
    }

    /**
     * {@link #fromBests(List, double)} for arrays of equal length.
     *
     * @throws IllegalArgumentException when the lengths differ or a number is not finite and above 0
     */
    public static Optional<SustainablePower> fromBests(double[] bestSeconds, double[] bestWatts, double seconds) {
        return fromBests(BestEffort.listOf(bestSeconds, bestWatts), seconds);
    }
}
