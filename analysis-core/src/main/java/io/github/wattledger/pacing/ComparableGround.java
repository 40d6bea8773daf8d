package io.github.wattledger.pacing;

import io.github.wattledger.course.Course;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The ground under each second of a race that can be compared with others: pedalled, on ground whose grade is known, and
 * outside surges. Without altitude or distance all ground counts as level.
 */
final class ComparableGround {
    /** A surge is left out with the seconds in which the rider gathers for it, and with those of ebbing power after it. */
    private static final int BEFORE_SURGE_SECONDS = 2;

    private static final int AFTER_SURGE_SECONDS = 8;

    private static final int LEVEL = GroundAndTime.groundOf(0);

    private final Series watts;
    private final int[] ground;

    private ComparableGround(Series watts, int[] ground) {
        this.watts = watts;
        this.ground = ground;
    }

    /**
     * The ground of a race.
     *
     * @param course its course, or null where it leads nowhere
     * @param surges the surges, which compare with nothing
     */
    static ComparableGround of(Ride ride, @Nullable Course course, List<Interval> surges) {
        Series watts = ride.series(Channel.POWER);
        Series distance = ride.series(Channel.DISTANCE);
        int[] ground = new int[ride.seconds()];
        for (int second = 0; second < ground.length; second++) {
            boolean pedalled = ride.state(second) == SecondState.RIDING && watts.get(second) >= Ride.PEDALLING_W;
            if (!pedalled) {
                ground[second] = GroundAndTime.NONE;
            } else if (course == null) {
                ground[second] = LEVEL;
            } else {
                ground[second] = distance.isMeasured(second)
                        ? GroundAndTime.groundOf(course.gradeAtM(distance.get(second)))
                        : GroundAndTime.NONE;
            }
        }
        for (Interval surge : surges) {
            Arrays.fill(
                    ground,
                    Math.max(0, surge.fromSecond() - BEFORE_SURGE_SECONDS),
                    Math.min(ground.length, surge.toSecond() + AFTER_SURGE_SECONDS),
                    GroundAndTime.NONE);
        }
        return new ComparableGround(watts, ground);
    }

    /** This ground with further stretches left out of every comparison. */
    ComparableGround without(List<Interval> stretches) {
        int[] fewer = ground.clone();
        for (Interval stretch : stretches) {
            Arrays.fill(fewer, stretch.fromSecond(), stretch.toSecond(), GroundAndTime.NONE);
        }
        return new ComparableGround(watts, fewer);
    }

    /** Compares parts of the race. Where two overlap, their seconds count to the later in the list. */
    GroundAndTime compare(List<Interval> parts) {
        GroundAndTime.Cells cells = new GroundAndTime.Cells(watts, ground, parts.size());
        for (int k = 0; k < parts.size(); k++) {
            List<Interval> later = parts.subList(k + 1, parts.size());
            for (int second = parts.get(k).fromSecond(); second < parts.get(k).toSecond(); second++) {
                if (!isIn(later, second)) {
                    cells.add(second, k);
                }
            }
        }
        return cells.compared();
    }

    private static boolean isIn(List<Interval> stretches, int second) {
        for (Interval stretch : stretches) {
            if (stretch.contains(second)) {
                return true;
            }
        }
        return false;
    }

    /**
     * The effort of one stretch over that of another that does not overlap it: 1 where both were ridden equally hard on
     * like ground; {@code NaN} where they share too little ground.
     */
    double ratio(Interval stretch, Interval over) {
        return compare(List.of(stretch, over)).ratio(0, 1);
    }

    /**
     * {@link #ratio}; where a stretch shares too little ground with an earlier one, but is steeper, the plain ratio of their
     * mean powers. Riders push more watts uphill, so a stretch that is steeper and weaker was ridden less hard.
     *
     * @return {@code NaN} where neither tells anything
     */
    double ratioOrSteeper(Interval stretch, Interval over) {
        double ratio = ratio(stretch, over);
        if (!Double.isNaN(ratio)) {
            return ratio;
        }
        return meanGround(stretch) > meanGround(over) ? meanW(stretch) / meanW(over) : ratio;
    }

    private double meanGround(Interval stretch) {
        double sum = 0;
        int count = 0;
        for (int second = stretch.fromSecond(); second < stretch.toSecond(); second++) {
            if (ground[second] != GroundAndTime.NONE) {
                sum += ground[second];
                count++;
            }
        }
        return sum / count;
    }

    /** Mean power of the seconds of a stretch that can be compared, watts; {@code NaN} where there is none. */
    double meanW(Interval stretch) {
        double sum = 0;
        int count = 0;
        for (int second = stretch.fromSecond(); second < stretch.toSecond(); second++) {
            if (ground[second] != GroundAndTime.NONE) {
                sum += watts.get(second);
                count++;
            }
        }
        return sum / count;
    }

    /** Whether a second can be compared. */
    boolean isCompared(int second) {
        return ground[second] != GroundAndTime.NONE;
    }

    /** The ground of a second, or {@link GroundAndTime#NONE}. */
    int ground(int second) {
        return ground[second];
    }
}
