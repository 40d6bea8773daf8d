package io.github.wattledger.pacing.price;

import io.github.wattledger.replay.Replay;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Series;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The power of a race with one or several mistakes repaired: the factor of each second's power, and which seconds make up
 * for what the repairs take out or put in. Repairs are added one after the other.
 */
final class RepairedPower {
    private final Series watts;
    private final Replay replay;
    private final double[] factor;
    private final boolean[] makesUp;
    private final List<Interval> changed;

    /** Nothing is repaired yet, and every pedalled second makes up for what will be. */
    RepairedPower(Series watts, Replay replay) {
        this.watts = watts;
        this.replay = replay;
        this.factor = new double[watts.size()];
        this.makesUp = new boolean[factor.length];
        this.changed = new ArrayList<>();
        Arrays.fill(factor, 1);
        for (int second = 0; second < factor.length; second++) {
            makesUp[second] = replay.isPedalled(second) && watts.get(second) > 0;
        }
    }

    /** A copy, which further repairs change and the original does not see. */
    RepairedPower(RepairedPower other) {
        this.watts = other.watts;
        this.replay = other.replay;
        this.factor = other.factor.clone();
        this.makesUp = other.makesUp.clone();
        this.changed = new ArrayList<>(other.changed);
    }

    /**
     * What one change did.
     *
     * @param seconds how many seconds it changed
     * @param takenOutJ the work that it took out of them, joules; negative where it put work in
     */
    record Change(int seconds, double takenOutJ) {}

    /** Multiplies the pedalled seconds of a stretch by a factor; the stretch then makes up for nothing. */
    Change scale(Interval stretch, double by) {
        Change change = level(stretch, by);
        Arrays.fill(makesUp, stretch.fromSecond(), stretch.toSecond(), false);
        return change;
    }

    /** Multiplies the pedalled seconds of a stretch by a factor; the stretch goes on making up for repairs. */
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

    /** The power of a second as repaired so far, watts; 0 where it was not measured. */
    private double wattsOrZero(int second) {
        return watts.isMeasured(second) ? watts.get(second) * factor[second] : 0;
    }

    /** Brings the pedalled seconds of a stretch down to a power where they exceed it; the stretch makes up for nothing. */
    Change cap(Interval stretch, double capW) {
        changed.add(stretch);
        int seconds = 0;
        double takenOutJ = 0;
        for (int second = stretch.fromSecond(); second < stretch.toSecond(); second++) {
            double riddenW = watts.get(second) * factor[second];
            if (replay.isPedalled(second) && riddenW > capW) {
                takenOutJ += riddenW - capW;
                factor[second] *= capW / riddenW;
                seconds++;
            }
        }
        Arrays.fill(makesUp, stretch.fromSecond(), stretch.toSecond(), false);
        return new Change(seconds, takenOutJ);
    }

    /** Lets nothing before a second make up for repairs: what was ridden by then cannot be ridden again. */
    void makeUpFrom(int second) {
        Interval before = new Interval(0, Math.min(second, makesUp.length));
        changed.add(before);
        Arrays.fill(makesUp, before.fromSecond(), before.toSecond(), false);
    }

    /** How many seconds the race has. */
    int seconds() {
        return factor.length;
    }

    /** Stretches outside which nothing was changed; they may overlap. */
    List<Interval> changed() {
        return Collections.unmodifiableList(changed);
    }

    /**
     * The seconds that make up for the repairs; null when there are none.
     *
     * @param offsetSeconds what to add to a second of the race to get a second of the recording
     */
    PriceSteps.@Nullable MakingUp makingUp(int offsetSeconds) {
        int first = -1;
        int seconds = 0;
        double joules = 0;
        for (int second = 0; second < makesUp.length; second++) {
            if (makesUp[second]) {
                first = first < 0 ? second : first;
                seconds++;
                joules += wattsOrZero(second);
            }
        }
        return first < 0 ? null : new PriceSteps.MakingUp(first + offsetSeconds, seconds, joules / 1000);
    }

    /** Whether any second makes up for the repairs. */
    boolean isMadeUpFor() {
        for (boolean makes : makesUp) {
            if (makes) {
                return true;
            }
        }
        return false;
    }

    /** The factor of a second's power. */
    double factor(int second) {
        return factor[second];
    }

    /** Whether a second's power is multiplied by the share as well, which makes the race as hard as it was. */
    boolean makesUp(int second) {
        return makesUp[second];
    }
}
