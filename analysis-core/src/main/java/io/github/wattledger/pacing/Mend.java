package io.github.wattledger.pacing;

import io.github.wattledger.ride.Interval;
import io.github.wattledger.road.Replay;
import java.util.Arrays;

/**
 * The power of a race with one or several mistakes mended: by what each second's power is multiplied, and which seconds
 * take what has to be given back. Mistakes are added one after the other.
 */
final class Mend {
    private final Race race;
    private final Replay replay;
    private final double[] factor;
    private final boolean[] takesBack;

    /** Nothing mended yet; every pedalled second from the first on takes back. */
    Mend(Race race, Replay replay) {
        this.race = race;
        this.replay = replay;
        this.factor = new double[race.watts().size()];
        this.takesBack = new boolean[factor.length];
        Arrays.fill(factor, 1);
        for (int second = 0; second < factor.length; second++) {
            takesBack[second] = replay.isPedalled(second) && race.watts().get(second) > 0;
        }
    }

    /** One factor for the pedalled seconds of a stretch, which then take nothing back. */
    void scale(Interval stretch, double by) {
        level(stretch, by);
        Arrays.fill(takesBack, stretch.fromSecond(), stretch.toSecond(), false);
    }

    /** Like {@link #scale}, but what is left over or missing is shared by these seconds as well. */
    void level(Interval stretch, double by) {
        for (int second = stretch.fromSecond(); second < stretch.toSecond(); second++) {
            if (replay.isPedalled(second)) {
                factor[second] *= by;
            }
        }
    }

    /** The pedalled seconds of a stretch brought down to a power where they exceed it; they take nothing back. */
    void cap(Interval stretch, double capW) {
        for (int second = stretch.fromSecond(); second < stretch.toSecond(); second++) {
            double watts = race.watts().get(second) * factor[second];
            if (replay.isPedalled(second) && watts > capW) {
                factor[second] *= capW / watts;
            }
        }
        Arrays.fill(takesBack, stretch.fromSecond(), stretch.toSecond(), false);
    }

    /** Nothing before a second takes back: what was ridden by then cannot be ridden again. */
    void giveBackFrom(int second) {
        Arrays.fill(takesBack, 0, Math.min(second, takesBack.length), false);
    }

    boolean canGiveBack() {
        for (boolean each : takesBack) {
            if (each) {
                return true;
            }
        }
        return false;
    }

    /** By what a second's power is multiplied. */
    double factor(int second) {
        return factor[second];
    }

    /** Whether it is multiplied by the share of what is given back as well. */
    boolean takesBack(int second) {
        return takesBack[second];
    }
}
