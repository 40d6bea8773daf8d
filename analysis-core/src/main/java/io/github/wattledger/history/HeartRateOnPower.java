package io.github.wattledger.history;

import io.github.wattledger.ride.Median;
import io.github.wattledger.ride.Outcome;
import java.io.Serializable;
import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * The heart rate that goes with a power, from the rider's last rides. Heart rate at one power differs from day to day by
 * about five beats, so the spread that a few rides show is drawn towards that of riders.
 *
 * @param watts the power
 * @param medianBpm median over the rides, beats per minute
 * @param spreadBpm robust spread of the rides alone, beats per minute
 * @param halfWidthBpm half of the width of the range that holds the next ride in about eight of ten cases, beats per minute
 * @param rides how many rides it rests on, at least 3
 */
public record HeartRateOnPower(double watts, double medianBpm, double spreadBpm, double halfWidthBpm, int rides)
        implements Serializable {
    /** Fewer rides say nothing. */
    public static final int FEWEST = 3;

    /** From so many rides on it is said without reservation. */
    public static final int ENOUGH = 5;

    /** No more than so many last rides are taken: the rider changes. */
    public static final int MOST = 8;

    /** Older rides are not taken, days. */
    public static final int DAYS = 60;

    /** A shorter ride shows no line, hours. */
    public static final double SHORTEST_HOURS = 1;

    /** From median absolute deviation to standard deviation of a normal distribution. */
    private static final double NORMAL = 1.4826;

    /** Spread from day to day, beats per minute, from 600 simulated riders; Lamberts et al. 2004 found 5 ± 2. */
    private static final double USUAL_SPREAD_BPM = 4.6;

    /** How many rides the usual spread counts for. */
    private static final double WEIGHT_OF_USUAL = 4;

    /** Variance of a median over that of a mean, of a normal distribution: half of pi. */
    private static final double MEDIAN_OVER_MEAN = 1.57;

    private static final double ERRORS_OF_80_PERCENT = 1.2816;

    /**
     * From the heart rates of rides at one power.
     *
     * @param watts the power
     * @param bpm the heart rate of each ride at that power, beats per minute
     * @return refused with fewer than three rides
     */
    public static Outcome<HeartRateOnPower> of(double watts, double[] bpm) {
        int n = bpm.length;
        if (n < FEWEST) {
            return Outcome.refused(n + " rides of the last " + DAYS + " days show a heart rate at this power, at least "
                    + FEWEST + " are needed");
        }
        double median = Median.of(bpm);
        double spread = NORMAL
                * Median.of(
                        Arrays.stream(bpm).map(each -> Math.abs(each - median)).toArray());
        double variance =
                (WEIGHT_OF_USUAL * USUAL_SPREAD_BPM * USUAL_SPREAD_BPM + n * spread * spread) / (WEIGHT_OF_USUAL + n);
        double half = ERRORS_OF_80_PERCENT * Math.sqrt(variance) * Math.sqrt(1 + MEDIAN_OVER_MEAN / n);
        return Outcome.of(new HeartRateOnPower(watts, median, spread, half, n));
    }

    /** Whether it rests on so few rides that it must be said with reservation. */
    public boolean isFromFew() {
        return rides < ENOUGH;
    }

    /**
     * The heart rate to hold beside the power, beats per minute: the upper end of the range, but never above the highest
     * heart rate that was seen nor above that of threshold. On a hot day it caps about every second ride, and rightly.
     *
     * @param highestBpm the highest heart rate that was seen, beats per minute; empty where none is known
     * @param thresholdBpm threshold heart rate, beats per minute; empty where none is known
     */
    public double capBpm(OptionalDouble highestBpm, OptionalDouble thresholdBpm) {
        return Math.min(
                medianBpm + halfWidthBpm,
                Math.min(highestBpm.orElse(Double.POSITIVE_INFINITY), thresholdBpm.orElse(Double.POSITIVE_INFINITY)));
    }
}
