package io.github.wattledger.pacing;

import io.github.wattledger.road.Replay;
import java.util.Arrays;

/**
 * The power of a race with one or several mistakes mended: by what each second's power is multiplied, and which seconds
 * take what has to be given back.
 */
final class Mend {
    private final double[] factor;
    private final boolean[] takesBack;

    private Mend(double[] factor, boolean[] takesBack) {
        this.factor = factor;
        this.takesBack = takesBack;
    }

    /** Nothing mended yet; every pedalled second from the first on takes back. */
    static Mend nothing(Race race, Replay replay) {
        double[] factor = new double[race.watts().size()];
        boolean[] takesBack = new boolean[factor.length];
        Arrays.fill(factor, 1);
        for (int second = 0; second < factor.length; second++) {
            takesBack[second] = replay.isPedalled(second) && race.watts().get(second) > 0;
        }
        return new Mend(factor, takesBack);
    }

    private Mend copy() {
        return new Mend(factor.clone(), takesBack.clone());
    }

    /** One factor for the pedalled seconds of a stretch, which then take nothing back. */
    Mend scaled(Replay replay, io.github.wattledger.ride.Interval stretch, double by) {
        Mend mend = copy();
        for (int second = stretch.fromSecond(); second < stretch.toSecond(); second++) {
            mend.takesBack[second] = false;
            if (replay.isPedalled(second)) {
                mend.factor[second] *= by;
            }
        }
        return mend;
    }

    /** Like {@link #scaled}, but what is left over or missing is shared by these seconds as well. */
    Mend levelled(Replay replay, io.github.wattledger.ride.Interval stretch, double by) {
        Mend mend = copy();
        for (int second = stretch.fromSecond(); second < stretch.toSecond(); second++) {
            if (replay.isPedalled(second)) {
                mend.factor[second] *= by;
            }
        }
        return mend;
    }

    /** The pedalled seconds of a stretch brought down to a power where they exceed it; they take nothing back. */
    Mend capped(Race race, Replay replay, io.github.wattledger.ride.Interval stretch, double capW) {
        Mend mend = copy();
        for (int second = stretch.fromSecond(); second < stretch.toSecond(); second++) {
            double watts = race.watts().get(second) * mend.factor[second];
            mend.takesBack[second] = false;
            if (replay.isPedalled(second) && watts > capW) {
                mend.factor[second] *= capW / watts;
            }
        }
        return mend;
    }

    /** Nothing before a second takes back: what was ridden by then cannot be ridden again. */
    Mend givenBackFrom(int second) {
        Mend mend = copy();
        Arrays.fill(mend.takesBack, 0, Math.min(second, takesBack.length), false);
        return mend;
    }

    boolean canGiveBack() {
        for (boolean each : takesBack) {
            if (each) {
                return true;
            }
        }
        return false;
    }

    /** By what a second's power is multiplied when those that take back are multiplied by {@code share} as well. */
    double factor(int second, double share) {
        return takesBack[second] ? factor[second] * share : factor[second];
    }
}
