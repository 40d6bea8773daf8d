package io.github.wattledger.power;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What the models of an {@link Ability} say of power against duration, as lines to draw beside a mean-maximal curve.
 *
 * @param source what the line rests on
 * @param points by rising duration, at least two
 */
public record ModelCurve(Source source, List<Point> points) implements Serializable {
    private static final int POINTS = 25;

    /** What a line rests on. */
    public enum Source {
        /** The fit of critical power and W′ to this ride. */
        CRITICAL_POWER,
        /** Critical power and W′ as they were given. */
        GIVEN_CRITICAL_POWER,
        /** The general guide from threshold power. */
        GUIDE
    }

    /**
     * A point of the line.
     *
     * @param seconds the duration
     * @param watts the power
     * @param lowW lower bound, watts, or null where none is known
     * @param highW upper bound, watts, or null
     */
    public record Point(
            double seconds,
            double watts,
            @Nullable Double lowW,
            @Nullable Double highW) implements Serializable {}

    /** Copies the list. */
    public ModelCurve {
        points = List.copyOf(points);
    }

    /**
     * The fitted line over the durations of the efforts it rests on, at most 2 to 30 minutes. Its bounds are the 95 %
     * interval of critical power with W′ held; they do not carry the uncertainty of W′.
     */
    public static ModelCurve of(CriticalPowerFit fit) {
        List<BestEffort> efforts = fit.efforts();
        double from = Math.max(CriticalPower.SHORTEST_SECONDS, efforts.get(0).seconds());
        double to = Math.min(
                CriticalPower.LONGEST_SECONDS, efforts.get(efforts.size() - 1).seconds());
        double half = fit.criticalPowerHalfWidthW();
        List<Point> points = new ArrayList<>();
        for (double seconds : logSpaced(from, Math.max(from + 1, to))) {
            double watts = fit.powerW(seconds);
            points.add(new Point(seconds, watts, watts - half, watts + half));
        }
        return new ModelCurve(Source.CRITICAL_POWER, points);
    }

    /**
     * The line of a critical power and W′ that were given, from 2 to 30 minutes; no bounds are known.
     *
     * @param criticalPowerW critical power, watts, above 0
     * @param wPrimeJ W′, joules, above 0
     * @throws IllegalArgumentException when a number is not above 0
     */
    public static ModelCurve given(double criticalPowerW, double wPrimeJ) {
        List<Point> points = new ArrayList<>();
        for (double seconds : logSpaced(CriticalPower.SHORTEST_SECONDS, CriticalPower.LONGEST_SECONDS)) {
            points.add(new Point(seconds, CriticalPower.powerW(seconds, criticalPowerW, wPrimeJ), null, null));
        }
        return new ModelCurve(Source.GIVEN_CRITICAL_POWER, points);
    }

    /**
     * The guide from 20 minutes to a duration, with its range.
     *
     * @param thresholdPowerW threshold power, watts, above 0
     * @param longestSeconds the duration to end with
     * @return empty when the duration is not beyond 20 minutes
     * @throws IllegalArgumentException when the threshold is not above 0
     */
    public static Optional<ModelCurve> guide(double thresholdPowerW, double longestSeconds) {
        if (!(longestSeconds > SustainablePower.SHORTEST_GUIDE_SECONDS)) {
            return Optional.empty();
        }
        List<Point> points = new ArrayList<>();
        for (double seconds : logSpaced(SustainablePower.SHORTEST_GUIDE_SECONDS, longestSeconds)) {
            SustainablePower power = SustainablePower.guide(thresholdPowerW, seconds);
            points.add(new Point(seconds, power.watts(), power.lowW(), power.highW()));
        }
        return Optional.of(new ModelCurve(Source.GUIDE, points));
    }

    private static double[] logSpaced(double from, double to) {
        double[] seconds = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            // The ends are exact, whatever the logarithms round to.
            seconds[i] = i == 0 ? from : i == POINTS - 1 ? to : from * Math.pow(to / from, i / (POINTS - 1.0));
        }
        return seconds;
    }
}
