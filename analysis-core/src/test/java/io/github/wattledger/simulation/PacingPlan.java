package io.github.wattledger.simulation;

/** What power a rider means to give at each moment of the race. */
@FunctionalInterface
public interface PacingPlan {
    /** Speed on a descent at which pedalling stops paying, m/s. */
    double FREEWHEEL_MPS = 11.5;

    /** The power meant at a moment, watts; 0 is coasting. */
    double powerW(Moment moment);

    /**
     * Where the race stands.
     *
     * @param racingSeconds seconds of racing so far, standing left out
     * @param distanceM from the start line
     * @param grade rise over run, here
     * @param speedMps speed, now
     */
    record Moment(double racingSeconds, double distanceM, double grade, double speedMps) {}

    /** The same power everywhere. */
    static PacingPlan steady(double watts) {
        return moment -> watts;
    }

    /** One power for the first seconds, another after them. */
    static PacingPlan startThenRest(double startW, double startSeconds, double restW) {
        return moment -> moment.racingSeconds() < startSeconds ? startW : restW;
    }

    /**
     * A power with more of it uphill and less downhill, and none where a descent is fast.
     *
     * @param gain relative change of power per unit of grade: 2 gives a tenth more at 5 %
     */
    default PacingPlan onTerrain(double gain) {
        return moment -> {
            if (moment.grade() < -0.03 && moment.speedMps() > FREEWHEEL_MPS) {
                return 0;
            }
            double factor = StrictMath.max(0.8, StrictMath.min(1.2, 1 + gain * moment.grade()));
            return powerW(moment) * factor;
        };
    }

    /**
     * The same plan with short surges.
     *
     * @param fromSecond racing second from which they come
     * @param toSecond racing second up to which they come
     * @param everySeconds from one surge to the next
     * @param lengthSeconds how long one lasts
     * @param watts power of a surge
     */
    default PacingPlan withSurges(
            double fromSecond, double toSecond, double everySeconds, double lengthSeconds, double watts) {
        return moment -> {
            double second = moment.racingSeconds();
            boolean due = second >= fromSecond + everySeconds
                    && second < toSecond
                    && (second - fromSecond) % everySeconds < lengthSeconds;
            return due && moment.grade() > -0.02 ? watts : powerW(moment);
        };
    }
}
