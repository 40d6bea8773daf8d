package io.github.wattledger.power;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Bounds;
import java.io.Serializable;
import java.util.Optional;

/**
 * Heart rate at threshold power, as a long steady effort near it shows. On a hot day, late in a long ride or after a
 * short night heart rate lies higher at the same power.
 *
 * @param heartRateBpm mean heart rate of the effort, beats per minute
 * @param meanPowerW its mean power, watts
 * @param fromSecond its first second on the ride's axis
 * @param seconds its length, seconds
 */
public record ThresholdHeartRate(double heartRateBpm, double meanPowerW, int fromSecond, int seconds)
        implements Serializable {
    /** Length of the effort, seconds: long enough for heart rate to settle at that of a threshold effort. */
    static final int EFFORT_SECONDS = 1200;

    /** Mean power may lie this far from threshold power, as a fraction: half of one of the seven usual zones. */
    private static final double NEAR = 0.07;

    /** Power is averaged over this long before its steadiness is judged: heart rate follows no faster. */
    private static final int SMOOTHING_SECONDS = 30;

    /**
     * Standard deviation of the 30-second means over their mean. It puts normalized power about 3 % above mean power; a
     * real outdoor time trial had 0.145 over its steadiest 20 minutes.
     */
    private static final double STEADY = 0.15;

    /** Share of the effort's seconds in which heart rate must have been measured. */
    private static final double MEASURED = 0.95;

    /**
     * The steady 20 minutes near threshold with the highest mean heart rate.
     *
     * @param thresholdPowerW threshold power, watts, above 0
     * @return empty when no 20 minutes had a mean power within 7 % of threshold, 30-second power steady within 15 %, no
     *     pause or hole in the power and heart rate in 95 % of the seconds
     * @throws IllegalArgumentException when the threshold is not above 0
     */
    public static Optional<ThresholdHeartRate> of(Ride ride, double thresholdPowerW) {
        return search(ride.timerSeries(Channel.POWER), ride.series(Channel.HEART_RATE), thresholdPowerW);
    }

    /**
     * {@link #of(Ride, double)} for one-second power and heart rate of equal length.
     *
     * @param watts one-second power, watts; {@code NaN} is "not measured"
     * @param heartRateBpm heart rate over the same seconds, beats per minute; {@code NaN} is "not measured"
     * @param thresholdPowerW threshold power, watts, above 0
     * @throws IllegalArgumentException when the lengths differ, or a reading or the threshold is out of range
     */
    public static Optional<ThresholdHeartRate> of(Series watts, Series heartRateBpm, double thresholdPowerW) {
        return search(watts.requireReadings("watts"), heartRateBpm.requireReadings("heartRateBpm"), thresholdPowerW);
    }

    /** {@link #of(Series, Series, double)} for arrays, which are copied. */
    public static Optional<ThresholdHeartRate> of(double[] watts, double[] heartRateBpm, double thresholdPowerW) {
        return of(Series.of(watts), Series.of(heartRateBpm), thresholdPowerW);
    }

    private static Optional<ThresholdHeartRate> search(Series watts, Series heartRate, double thresholdPowerW) {
        Bounds.requireAboveZero("thresholdPowerW", thresholdPowerW);
        if (heartRate.size() != watts.size()) {
            throw new IllegalArgumentException(
                    heartRate.size() + " seconds of heart rate but " + watts.size() + " of power");
        }
        Sums sums = new Sums(watts, heartRate);
        ThresholdHeartRate best = null;
        for (int from = 0; from + EFFORT_SECONDS <= watts.size(); from++) {
            int to = from + EFFORT_SECONDS;
            double meanW = sums.meanPower(from, to);
            if (!(Math.abs(meanW / thresholdPowerW - 1) <= NEAR)) {
                continue;
            }
            double bpm = sums.meanHeartRate(from, to);
            if ((best == null || bpm > best.heartRateBpm)
                    && sums.measuredHeartRate(from, to) >= MEASURED * EFFORT_SECONDS
                    && sums.variation(from, to) <= STEADY) {
                best = new ThresholdHeartRate(bpm, meanW, from, EFFORT_SECONDS);
            }
        }
        return Optional.ofNullable(best);
    }

    /** Running sums, so that every window costs the same; a hole in the power makes each window over it {@code NaN}. */
    private static final class Sums {
        private final double[] watts;
        private final int[] holes;
        private final double[] smooth;
        private final double[] smoothSquares;
        private final double[] bpm;
        private final int[] measured;

        Sums(Series power, Series heartRate) {
            int size = power.size();
            watts = new double[size + 1];
            holes = new int[size + 1];
            smooth = new double[size + 1];
            smoothSquares = new double[size + 1];
            bpm = new double[size + 1];
            measured = new int[size + 1];
            for (int second = 0; second < size; second++) {
                add(second, power.get(second), heartRate.get(second));
            }
        }

        private void add(int second, double power, double beats) {
            boolean hasPower = !Double.isNaN(power);
            watts[second + 1] = watts[second] + (hasPower ? power : 0);
            holes[second + 1] = holes[second] + (hasPower ? 0 : 1);
            int first = Math.max(0, second + 1 - SMOOTHING_SECONDS);
            double mean = (watts[second + 1] - watts[first]) / SMOOTHING_SECONDS;
            smooth[second + 1] = smooth[second] + mean;
            smoothSquares[second + 1] = smoothSquares[second] + mean * mean;
            boolean hasBeat = !Double.isNaN(beats);
            bpm[second + 1] = bpm[second] + (hasBeat ? beats : 0);
            measured[second + 1] = measured[second] + (hasBeat ? 1 : 0);
        }

        double meanPower(int from, int to) {
            return holes[to] > holes[from] ? Double.NaN : (watts[to] - watts[from]) / (to - from);
        }

        int measuredHeartRate(int from, int to) {
            return measured[to] - measured[from];
        }

        double meanHeartRate(int from, int to) {
            return (bpm[to] - bpm[from]) / measuredHeartRate(from, to);
        }

        /** Of the 30-second means that lie within the stretch. */
        double variation(int from, int to) {
            int first = from + SMOOTHING_SECONDS - 1;
            int count = to - first;
            double mean = (smooth[to] - smooth[first]) / count;
            double variance = (smoothSquares[to] - smoothSquares[first]) / count - mean * mean;
            return Math.sqrt(Math.max(0, variance)) / mean;
        }
    }
}
