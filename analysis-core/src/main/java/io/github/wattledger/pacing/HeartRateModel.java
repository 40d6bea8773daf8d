package io.github.wattledger.pacing;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.util.OptionalDouble;
import org.hipparchus.stat.regression.SimpleRegression;

/**
 * Heart rate as this rider's own answer to power on this day: a straight line of heart rate on lagged power, from minute
 * 20, when the body is warm, to the middle of the race, before it is spent. The heart follows power with a lag of about
 * a minute, hence the first-order lag.
 */
final class HeartRateModel {
    private static final double LAG_SECONDS = 60;
    private static final int WARM_SECONDS = 20 * 60;

    /** Fewer seconds than this give no line. */
    private static final int LEAST_SECONDS = 20 * 60;

    /** Share of a stretch's moving seconds that must have a heart rate. */
    static final double LEAST_COVERAGE = 0.8;

    private final double[] laggedW;
    private final SimpleRegression line;
    private final boolean usable;

    private HeartRateModel(double[] laggedW, SimpleRegression line, boolean usable) {
        this.laggedW = laggedW;
        this.line = line;
        this.usable = usable;
    }

    static HeartRateModel of(Race race) {
        double[] lagged = lagged(race.watts());
        SimpleRegression line = new SimpleRegression();
        Series bpm = race.ride().series(Channel.HEART_RATE);
        Interval steady = new Interval(
                Math.min(WARM_SECONDS, race.ride().seconds()),
                Math.max(
                        Math.min(WARM_SECONDS, race.ride().seconds()),
                        race.betweenShares(0, 0.5).toSecond()));
        int moving = 0;
        for (int second = steady.fromSecond(); second < steady.toSecond(); second++) {
            if (race.ride().state(second) == SecondState.RIDING) {
                moving++;
                if (bpm.isMeasured(second)) {
                    line.addData(lagged[second], bpm.get(second));
                }
            }
        }
        boolean usable = race.watts().hasAny()
                && line.getN() >= LEAST_SECONDS
                && line.getN() >= LEAST_COVERAGE * moving
                && line.getSlope() > 0;
        return new HeartRateModel(lagged, line, usable);
    }

    /** Power as the heart feels it; a second without power holds what was felt before. */
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

    double laggedW(int second) {
        return laggedW[second];
    }

    /** Beats per minute that a power asks of this rider on this day, once the heart has followed. */
    double predictedBpm(double watts) {
        return line.predict(watts);
    }

    /** Beats per minute for 100 W more. */
    double bpmPer100W() {
        return line.getSlope() * 100;
    }

    /** The heart rate that goes with a power cap, for the advice; empty where the line is not usable. */
    OptionalDouble capBpm(double capW) {
        return usable ? OptionalDouble.of(predictedBpm(capW)) : OptionalDouble.empty();
    }
}
