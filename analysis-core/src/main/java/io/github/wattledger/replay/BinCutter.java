package io.github.wattledger.replay;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Cuts the moving time of a ride into bins. A second belongs whole to one bin, so that bins add up to the moving time
 * without a rest; a bin ends with the second in which its 200 m are full. Distance covered while nothing was recorded
 * belongs to no bin.
 */
final class BinCutter {
    /** Length of a bin, metres ridden. */
    static final double BIN_M = 200;

    /** Two places further apart than this do not follow each other, metres. */
    private static final double LONGEST_JUMP_M = 1;

    private final Ride ride;
    private final Series distance;
    private final Series speed;
    private final Series watts;
    private final int[] binOfSecond;
    private final List<ReplayBin> bins = new ArrayList<>();
    private ReplayBin bin = new ReplayBin();

    private BinCutter(Ride ride) {
        this.ride = ride;
        this.distance = ride.series(Channel.DISTANCE);
        this.speed = ride.series(Channel.SPEED);
        this.watts = ride.series(Channel.POWER);
        this.binOfSecond = new int[ride.seconds()];
        Arrays.fill(binOfSecond, -1);
    }

    static BinCutter cut(Ride ride) {
        BinCutter cutter = new BinCutter(ride);
        for (int second = 0; second < ride.seconds(); second++) {
            if (ride.state(second) == SecondState.RIDING) {
                cutter.take(second);
            }
        }
        cutter.close();
        return cutter;
    }

    ReplayBin[] bins() {
        return bins.toArray(ReplayBin[]::new);
    }

    /** For each second its bin, or -1 for a second that is not moving time. */
    int[] binOfSecond() {
        return binOfSecond;
    }

    /** Notes in each bin where the brakes were pulled hard. */
    void brake(boolean[] pulled) {
        for (int second = 1; second < pulled.length; second++) {
            if (pulled[second] && binOfSecond[second] >= 0) {
                ReplayBin braked = bins.get(binOfSecond[second]);
                double from = (distance.get(second - 1) - braked.startDistanceM) / braked.lengthM;
                double to = (distance.get(second) - braked.startDistanceM) / braked.lengthM;
                braked.brake(Math.max(0, Math.min(1, from)), Math.max(0, Math.min(1, to)), speed.get(second));
            }
        }
    }

    private void take(int second) {
        double before = second == 0 ? Double.NaN : distance.get(second - 1);
        double covered = distance.get(second) - before;
        boolean follows = second > 0 && ride.state(second - 1) != SecondState.MISSING;
        boolean known = follows && covered >= 0 && covered < ReplayBin.FASTEST_MPS;
        double start = known ? before : distance.get(second);
        // A jump of the distance would make a grade of two places that do not belong together.
        if (!(Math.abs(start - bin.endDistanceM) < LONGEST_JUMP_M)) {
            close();
        }
        if (bin.seconds == 0) {
            bin.startDistanceM = start;
            bin.startMps = second == 0 ? speed.get(second) : orElse(speed.get(second - 1), speed.get(second));
        }
        bin.seconds++;
        bin.lengthM += known ? covered : 0;
        bin.endDistanceM = distance.get(second);
        bin.endMps = speed.get(second);
        bin.joules += watts.get(second);
        // The first second has no place to have come from: it counts as time and asks for nothing.
        bin.measured &= (known || second == 0) && watts.isMeasured(second);
        binOfSecond[second] = bins.size();
        if (bin.lengthM >= BIN_M) {
            close();
        }
    }

    private void close() {
        if (bin.seconds > 0) {
            bins.add(bin.closed());
            bin = new ReplayBin();
        }
    }

    private static double orElse(double value, double otherwise) {
        return Double.isNaN(value) ? otherwise : value;
    }
}
