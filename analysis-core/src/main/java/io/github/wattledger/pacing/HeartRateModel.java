package io.github.wattledger.pacing;

import io.github.wattledger.power.HeartLine;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.util.Arrays;
import java.util.OptionalDouble;
import org.hipparchus.stat.regression.SimpleRegression;
import org.jspecify.annotations.Nullable;

/**
 * How this rider's heart answered power on this day: a straight line of heart rate on lagged power, fitted from minute 20,
 * when the body is warm, to the middle of the race, before it is tired. The heart follows power with a lag of about a
 * minute, so power is lagged by a first-order lag of that length.
 */
final class HeartRateModel {
    private static final double LAG_SECONDS = 60;
    private static final int WARM_SECONDS = 20 * 60;

    /** A line needs at least this many seconds. */
    private static final int LEAST_SECONDS = 20 * 60;

    private static final double TAIL_SHARE = 0.03;

    /** The share of a stretch's moving seconds that must have a heart rate. */
    static final double LEAST_COVERAGE = 0.8;

    private final double[] laggedW;
    private final SimpleRegression line;
    private final boolean usable;
    private final double[] sortedFittedW;

    private HeartRateModel(double[] laggedW, SimpleRegression line, boolean usable, double[] sortedFittedW) {
        this.laggedW = laggedW;
        this.line = line;
        this.usable = usable;
        this.sortedFittedW = sortedFittedW;
    }

    /**
     * Fits the line.
     *
     * @param ride the race
     * @param middleSecond the second at which half of the moving time has passed
     * @param thresholdPowerW threshold power, watts, or {@code NaN}; above it the heart nears its ceiling, which would bend
     *     the line, so such seconds are left out
     */
    static HeartRateModel of(Ride ride, int middleSecond, double thresholdPowerW) {
        Series watts = ride.series(Channel.POWER);
        double[] lagged = lagged(watts);
        SimpleRegression line = new SimpleRegression();
        Series bpm = ride.series(Channel.HEART_RATE);
        int warm = Math.min(WARM_SECONDS, ride.seconds());
        Interval steady = new Interval(warm, Math.max(warm, middleSecond));
        double[] fitted = new double[steady.seconds()];
        int moving = 0;
        for (int second = steady.fromSecond(); second < steady.toSecond(); second++) {
            if (ride.state(second) == SecondState.RIDING) {
                if (lagged[second] > thresholdPowerW) {
                    continue;
                }
                moving++;
                if (bpm.isMeasured(second)) {
                    line.addData(lagged[second], bpm.get(second));
                    fitted[(int) line.getN() - 1] = lagged[second];
                }
            }
        }
        boolean usable = watts.hasAny()
                && line.getN() >= LEAST_SECONDS
                && line.getN() >= LEAST_COVERAGE * moving
                && line.getSlope() > 0;
        Arrays.sort(fitted, 0, (int) line.getN());
        return new HeartRateModel(lagged, line, usable, Arrays.copyOf(fitted, (int) line.getN()));
    }

    /** Power as the heart feels it, watts; in a second without power the heart feels what it felt before. */
    private static double[] lagged(Series watts) {
        double[] lagged = new double[watts.size()];
        double share = 1 - Math.exp(-1 / LAG_SECONDS);
        double felt = 0;
        for (int second = 0; second < lagged.length; second++) {
            if (watts.isMeasured(second)) {
                felt += (watts.get(second) - felt) * share;
            }
            lagged[second] = felt;
        }
        return lagged;
    }

    boolean isUsable() {
        return usable;
    }

    /** Whether a power lies among those that the line was fitted on, the outermost three percent at each end left out. */
    boolean isFittedAt(double watts) {
        int last = sortedFittedW.length - 1;
        return watts >= sortedFittedW[(int) Math.round(TAIL_SHARE * last)]
                && watts <= sortedFittedW[(int) Math.round((1 - TAIL_SHARE) * last)];
    }

    /** The line with the powers that it was fitted on; null where it is not usable. */
    @Nullable HeartLine asLine() {
        if (!usable) {
            return null;
        }
        int last = sortedFittedW.length - 1;
        return new HeartLine(
                line.getIntercept(),
                line.getSlope(),
                sortedFittedW[(int) Math.round(TAIL_SHARE * last)],
                sortedFittedW[(int) Math.round((1 - TAIL_SHARE) * last)]);
    }

    double laggedW(int second) {
        return laggedW[second];
    }

    /** Heart rate at a power for this rider on this day, once the heart has followed, beats per minute. */
    double predictedBpm(double watts) {
        return line.predict(watts);
    }

    /** The rise of heart rate for 100 W more, beats per minute. */
    double bpmPer100W() {
        return line.getSlope() * 100;
    }

    /** The heart rate that goes with a power cap, for the advice; empty where the line is not usable. */
    OptionalDouble capBpm(double capW) {
        return usable ? OptionalDouble.of(predictedBpm(capW)) : OptionalDouble.empty();
    }
}
