package io.github.wattledger.pacing.price;

import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Series;
import java.io.Serializable;

/**
 * Where the time of a price was lost: both ends of the price, laid out over the seconds of the race. A second under way lost
 * what it took longer than the same road takes in the repaired race, so that it is negative where the repaired race is the
 * slower one; a second of a long stop is lost whole.
 *
 * @param when the seconds of the race, counted from the first second of the whole recording
 * @param lowSeconds seconds lost in each of these seconds at the low end of the price; never {@code NaN}
 * @param highSeconds the same at the high end
 * @param lowEnd which end of a replay the low end is
 */
public record LostTime(Interval when, Series lowSeconds, Series highSeconds, LowEnd lowEnd) implements Serializable {
    private static final double SECONDS_PER_MINUTE = 60;

    /** What the race and the repaired race have in common at the low end of a price. */
    public enum LowEnd {
        /** The same work at the low end, the same normalized power at the high one. */
        SAME_ENERGY,
        /** The same normalized power at the low end, the same work at the high one. */
        SAME_EFFORT,
        /** Nothing was replayed: the low end is time that the rider stood. */
        STANDING
    }

    /** @throws IllegalArgumentException when a series is not as long as the race */
    public LostTime {
        if (lowSeconds.size() != when.seconds() || highSeconds.size() != when.seconds()) {
            throw new IllegalArgumentException("lost time of " + lowSeconds.size() + " and " + highSeconds.size()
                    + " seconds, expected " + when.seconds());
        }
    }

    /** Minutes lost within a stretch of the whole recording, at the low end. What lies outside the race lost nothing. */
    public double lowMinutes(Interval stretch) {
        return minutes(lowSeconds, stretch);
    }

    /** Minutes lost within a stretch of the whole recording, at the high end. */
    public double highMinutes(Interval stretch) {
        return minutes(highSeconds, stretch);
    }

    /**
     * The same with a stop that is lost whole, evenly over its seconds.
     *
     * @param stop seconds of the whole recording within the race, not empty
     * @param stopLowSeconds what it cost at the low end, seconds
     * @param stopHighSeconds what it cost at the high end, seconds
     */
    public LostTime withStop(Interval stop, double stopLowSeconds, double stopHighSeconds) {
        Interval within = new Interval(stop.fromSecond() - when.fromSecond(), stop.toSecond() - when.fromSecond());
        return new LostTime(
                when, spread(lowSeconds, within, stopLowSeconds), spread(highSeconds, within, stopHighSeconds), lowEnd);
    }

    private static Series spread(Series seconds, Interval over, double added) {
        double each = added / over.seconds();
        return Series.generate(seconds.size(), second -> seconds.get(second) + (over.contains(second) ? each : 0));
    }

    private double minutes(Series seconds, Interval stretch) {
        int from = Math.max(stretch.fromSecond(), when.fromSecond());
        int to = Math.min(stretch.toSecond(), when.toSecond());
        double sum = 0;
        for (int second = from; second < to; second++) {
            sum += seconds.get(second - when.fromSecond());
        }
        return sum / SECONDS_PER_MINUTE;
    }

    /** A race in which nothing was lost, to add stops to. */
    public static LostTime none(Interval when) {
        Series nothing = Series.generate(when.seconds(), second -> 0);
        return new LostTime(when, nothing, nothing, LowEnd.STANDING);
    }
}
