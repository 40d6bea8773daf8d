package io.github.wattledger.pacing;

import io.github.wattledger.replay.Replay;
import io.github.wattledger.ride.Interval;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The power of a race with one or several mistakes mended: by what each second's power is multiplied, and which seconds
 * take what has to be given back. Mistakes are added one after the other.
 */
final class Mend {
    private final Race race;
    private final Replay replay;
    private final double[] factor;
    private final boolean[] takesBack;
    private final List<Interval> changed;

    /** Nothing mended yet; every pedalled second from the first on takes back. */
    Mend(Race race, Replay replay) {
        this.race = race;
        this.replay = replay;
        this.factor = new double[race.watts().size()];
        this.takesBack = new boolean[factor.length];
        this.changed = new ArrayList<>();
        Arrays.fill(factor, 1);
        for (int second = 0; second < factor.length; second++) {
            takesBack[second] = replay.isPedalled(second) && race.watts().get(second) > 0;
        }
    }

    /** The same mended so far, to be mended further on its own. */
    Mend(Mend other) {
        this.race = other.race;
        this.replay = other.replay;
        this.factor = other.factor.clone();
        this.takesBack = other.takesBack.clone();
        this.changed = new ArrayList<>(other.changed);
    }

    /** What a step changed: how many seconds, and the work it took out of them, joules. */
    record Change(int seconds, double takenOutJ) {}

    /** One factor for the pedalled seconds of a stretch, which then take nothing back. */
    Change scale(Interval stretch, double by) {
        Change change = level(stretch, by);
        Arrays.fill(takesBack, stretch.fromSecond(), stretch.toSecond(), false);
        return change;
    }

    /** Like {@link #scale}, but what is left over or missing is shared by these seconds as well. */
    Change level(Interval stretch, double by) {
        changed.add(stretch);
        int seconds = 0;
        double takenOutJ = 0;
        for (int second = stretch.fromSecond(); second < stretch.toSecond(); second++) {
            if (replay.isPedalled(second)) {
                takenOutJ += wattsOrZero(second) * (1 - by);
                factor[second] *= by;
                seconds++;
            }
        }
        return new Change(seconds, takenOutJ);
    }

    /** The power of a second as mended so far, 0 where it was not measured. */
    private double wattsOrZero(int second) {
        return race.watts().isMeasured(second) ? race.watts().get(second) * factor[second] : 0;
    }

    /** The pedalled seconds of a stretch brought down to a power where they exceed it; they take nothing back. */
    Change cap(Interval stretch, double capW) {
        changed.add(stretch);
        int seconds = 0;
        double takenOutJ = 0;
        for (int second = stretch.fromSecond(); second < stretch.toSecond(); second++) {
            double watts = race.watts().get(second) * factor[second];
            if (replay.isPedalled(second) && watts > capW) {
                takenOutJ += watts - capW;
                factor[second] *= capW / watts;
                seconds++;
            }
        }
        Arrays.fill(takesBack, stretch.fromSecond(), stretch.toSecond(), false);
        return new Change(seconds, takenOutJ);
    }

    /** Nothing before a second takes back: what was ridden by then cannot be ridden again. */
    void giveBackFrom(int second) {
        Interval before = new Interval(0, Math.min(second, takesBack.length));
        changed.add(before);
        Arrays.fill(takesBack, before.fromSecond(), before.toSecond(), false);
    }

    /** The stretches outside which nothing was changed; they may overlap. */
    List<Interval> changed() {
        return Collections.unmodifiableList(changed);
    }

    /** The seconds that take back, counted from the start of the recording; null when there are none. */
    PriceSteps.@Nullable TakingBack takingBack() {
        int first = -1;
        int seconds = 0;
        double joules = 0;
        for (int second = 0; second < takesBack.length; second++) {
            if (takesBack[second]) {
                first = first < 0 ? second : first;
                seconds++;
                joules += wattsOrZero(second);
            }
        }
        return first < 0 ? null : new PriceSteps.TakingBack(first + race.offsetSeconds(), seconds, joules / 1000);
    }

    boolean takesAnythingBack() {
        for (boolean takes : takesBack) {
            if (takes) {
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
