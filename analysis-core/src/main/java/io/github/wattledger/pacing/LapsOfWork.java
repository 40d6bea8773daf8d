package io.github.wattledger.pacing;

import io.github.wattledger.pacing.Occasion.WorkLap;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The laps of work in a session. They have the same round length, and each is harder than the lap before it and the lap
 * after it. Limits are this project's own and were set on real rides: sessions have 2, 2, 2, 8, 9 and 23 such laps, all
 * other rides at most one.
 */
final class LapsOfWork {
    /** Fewer equal laps are a chance. */
    static final int FEWEST = 2;

    /**
     * Mean power over that of each neighbour, at least. Real rides give the same answer from 1.2 to 1.5; at 1.1 a ride of
     * seven hours with a lap each half hour has two.
     */
    static final double OVER_NEIGHBOURS = 1.2;

    /** Two laps are as long as each other within this many seconds, or within {@link #EQUAL_WITHIN_SHARE} of one. */
    static final int EQUAL_WITHIN_SECONDS = 3;

    static final double EQUAL_WITHIN_SHARE = 0.01;

    /** No shorter lap is one of work: sprints of a session last from about here on. */
    static final int SHORTEST_SECONDS = 12;

    static final int LONGEST_SECONDS = 45 * 60;

    /** A shorter lap is a slip of the finger; it counts neither as work nor as rest. */
    static final int SLIP_SECONDS = 10;

    /**
     * Work is planned in round lengths: quarters of a minute, from 75 seconds on halves. Laps that a rider marks at the foot
     * and at the top of a hill of a circuit are equal too, but hardly round.
     */
    static final int ROUND_SECONDS = 15;

    static final int LONGER_ROUND_SECONDS = 30;
    static final int LONGER_FROM_SECONDS = 75;

    /** How far a lap marked by hand may be off its round length, seconds. */
    static final int ROUND_WITHIN_SECONDS = 3;

    static final int LONG_ROUND_WITHIN_SECONDS = 5;
    static final int LONG_FROM_SECONDS = 10 * 60;

    /** Devices can begin a lap after each so many metres: usual are whole and half kilometres and miles. */
    static final double[] ROUND_DISTANCES_M = {500, 1609.344 / 2};

    /** How far the distance of such a lap may be off, metres: laps begin at whole seconds, descents reach 20 m/s. */
    static final double DISTANCE_WITHIN_M = 25;

    private final Ride ride;
    private final Series watts;
    private final Series distance;

    private LapsOfWork(Ride ride) {
        this.ride = ride;
        watts = ride.timerSeries(Channel.POWER);
        distance = ride.series(Channel.DISTANCE);
    }

    /**
     * The equal laps of work in time order: those of the length that occurs most often; empty when there are fewer than
     * two of any length.
     */
    static List<WorkLap> of(Ride ride) {
        return new LapsOfWork(ride).mostOfOneLength();
    }

    private List<WorkLap> mostOfOneLength() {
        List<WorkLap> work = work();
        List<WorkLap> most = List.of();
        for (WorkLap each : work) {
            List<WorkLap> equal = work.stream()
                    .filter(other -> isEqualLength(each.seconds(), other.seconds()))
                    .toList();
            if (equal.size() > most.size()) {
                most = equal;
            }
        }
        return most.size() >= FEWEST ? most : List.of();
    }

    private List<WorkLap> work() {
        List<WorkLap> laps = lapsByHandOrTime();
        List<WorkLap> work = new ArrayList<>();
        for (int i = 1; i + 1 < laps.size(); i++) {
            WorkLap lap = laps.get(i);
            double rest = Math.max(laps.get(i - 1).meanPowerW(), laps.get(i + 1).meanPowerW());
            boolean isHarder = lap.meanPowerW() > 0 && lap.meanPowerW() >= OVER_NEIGHBOURS * rest;
            if (isHarder && isWorkLength(lap.seconds())) {
                work.add(lap);
            }
        }
        return work;
    }

    /** The laps without slips of the finger and without those that the device began after a set distance. */
    private List<WorkLap> lapsByHandOrTime() {
        List<Interval> intervals = ride.laps();
        List<WorkLap> laps = new ArrayList<>();
        for (int i = 0; i < intervals.size(); i++) {
            Interval lap = intervals.get(i);
            if (lap.seconds() >= SLIP_SECONDS && !isByDistance(intervals, i)) {
                laps.add(new WorkLap(i + 1, lap.seconds(), meanPowerW(lap)));
            }
        }
        return laps;
    }

    static boolean isEqualLength(int seconds, int otherSeconds) {
        double within = Math.max(EQUAL_WITHIN_SECONDS, EQUAL_WITHIN_SHARE * seconds);
        return Math.abs(seconds - otherSeconds) <= within;
    }

    static boolean isWorkLength(int seconds) {
        if (seconds < SHORTEST_SECONDS || seconds > LONGEST_SECONDS) {
            return false;
        }
        int round = seconds < LONGER_FROM_SECONDS ? ROUND_SECONDS : LONGER_ROUND_SECONDS;
        int within = seconds < LONG_FROM_SECONDS ? ROUND_WITHIN_SECONDS : LONG_ROUND_WITHIN_SECONDS;
        int over = seconds % round;
        return Math.min(over, round - over) <= within;
    }

    /**
     * Whether the device began the lap after a set distance. A {@link Ride} does not carry what began a lap, so it is recognised
     * by the distance itself: the lap and the one before or after it both cover the same multiple of a round distance.
     */
    private boolean isByDistance(List<Interval> laps, int index) {
        double metres = metres(laps.get(index));
        boolean likeBefore = index > 0 && isSameRoundDistance(metres, metres(laps.get(index - 1)));
        return likeBefore || (index + 1 < laps.size() && isSameRoundDistance(metres, metres(laps.get(index + 1))));
    }

    private static boolean isSameRoundDistance(double metres, double otherMetres) {
        for (double unit : ROUND_DISTANCES_M) {
            double round = unit * Math.max(1, Math.rint(metres / unit));
            // A distance that was not measured is NaN, which is within nothing.
            if (Math.abs(metres - round) <= DISTANCE_WITHIN_M && Math.abs(otherMetres - round) <= DISTANCE_WITHIN_M) {
                return true;
            }
        }
        return false;
    }

    private double metres(Interval lap) {
        if (lap.isEmpty()) {
            return Double.NaN;
        }
        int next = Math.min(lap.toSecond(), ride.seconds() - 1);
        return distance.get(next) - distance.get(lap.fromSecond());
    }

    /** Mean power over the seconds with power; 0 of a lap in which the rider stood, {@code NaN} of any other without power. */
    private double meanPowerW(Interval lap) {
        OptionalDouble mean = lap.isEmpty() ? OptionalDouble.empty() : watts.mean(lap.fromSecond(), lap.toSecond());
        boolean stood =
                ride.countSeconds(SecondState.RIDING, lap) == 0 && ride.countSeconds(SecondState.MISSING, lap) == 0;
        return mean.orElse(stood ? 0 : Double.NaN);
    }
}
