package io.github.wattledger.pacing.price;

import io.github.wattledger.replay.Replay;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.util.Arrays;

/**
 * The seconds of a race that carry power while the timer ran, counted from 0, each in its group: a bin of the replay, or
 * the last group for the seconds outside all bins.
 */
final class PoweredSeconds {
    private final int[] seconds;
    private final int[] groups;
    private final double[] watts;

    private PoweredSeconds(int[] seconds, int[] groups, double[] watts) {
        this.seconds = seconds;
        this.groups = groups;
        this.watts = watts;
    }

    static PoweredSeconds of(Ride race, Replay replay) {
        Series watts = race.series(Channel.POWER);
        int[] seconds = new int[watts.size()];
        int count = 0;
        for (int second = 0; second < seconds.length; second++) {
            if (watts.isMeasured(second) && race.state(second) != SecondState.PAUSED) {
                seconds[count++] = second;
            }
        }
        PoweredSeconds powered = new PoweredSeconds(Arrays.copyOf(seconds, count), new int[count], new double[count]);
        for (int k = 0; k < count; k++) {
            int bin = replay.binOf(seconds[k]);
            powered.groups[k] = bin < 0 ? replay.bins() : bin;
            powered.watts[k] = watts.get(seconds[k]);
        }
        return powered;
    }

    /** How many groups there are. */
    static int groups(Replay replay) {
        return replay.bins() + 1;
    }

    int count() {
        return seconds.length;
    }

    /** The second of the race at a place of this list. */
    int second(int k) {
        return seconds[k];
    }

    int group(int k) {
        return groups[k];
    }

    /** The first place after this one whose second is of another group, or the count. */
    int endOfGroup(int k) {
        int end = k + 1;
        while (end < groups.length && groups[end] == groups[k]) {
            end++;
        }
        return end;
    }

    double watts(int k) {
        return watts[k];
    }

    /** Marks the groups of the seconds of a stretch and of the given number of seconds after it. */
    void markGroups(Interval stretch, int after, boolean[] marked) {
        int to = Math.min(count(), firstFrom(stretch.toSecond()) + after);
        for (int k = firstFrom(stretch.fromSecond()); k < to; k++) {
            marked[groups[k]] = true;
        }
    }

    private int firstFrom(int second) {
        int found = Arrays.binarySearch(seconds, second);
        return found < 0 ? -found - 1 : found;
    }
}
