package io.github.wattledger.compare;

import io.github.wattledger.course.Course;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Two rides over one course, point by point. The first is the reference: its distance is the axis, in points 100 m
 * apart. Times count from the first point that both passed; a gap above 0 says that the other ride is behind.
 *
 * <p>Where both rides have positions, points are found by position; otherwise by distance as a share of the whole length.
 * A stretch that the other ride did not pass has no gap: nothing is guessed there.
 *
 * @param method how the points were found
 * @param stepM distance between two points, metres
 * @param startM distance of the first point, metres from the start of the reference's recording
 * @param fromPoint the first point that is compared
 * @param toPoint the last point that is compared
 * @param referenceSecond second of the reference's recording at each point of its course
 * @param otherSecond second of the other's recording at each point, {@code NaN} where it does not pass it
 * @param gapSeconds elapsed time of the other since the first point less that of the reference, {@code NaN} outside the
 *     compared part and where the other does not pass
 * @param movingGapSeconds time under way of the other since the first point less that of the reference, {@code NaN} as for
 *     {@code gapSeconds}
 * @param stretches the compared part cut into climbs, descents and the rest, in order
 * @param apart the stretches within the reference's course that the other did not pass
 */
public record CourseComparison(
        Method method,
        double stepM,
        double startM,
        int fromPoint,
        int toPoint,
        Series referenceSecond,
        Series otherSecond,
        Series gapSeconds,
        Series movingGapSeconds,
        List<Stretch> stretches,
        List<Apart> apart)
        implements Serializable {
    /** Distance between two points of a course, metres. */
    public static final double STEP_M = Alignment.STEP_M;

    /** Two points in a row that are not passed are a stretch of their own; a single one is noise. */
    private static final int LEAST_POINTS_APART = 2;

    private static final double HALF_KILOMETRE = 500;

    /** How points of the course were found in the other ride. */
    public enum Method {
        /** By their positions. */
        POSITION("by position"),
        /** By their distance as a share of the whole length. */
        DISTANCE("by distance");

        private final String words;

        Method(String words) {
            this.words = words;
        }

        /** The method in two words, for people. */
        public String words() {
            return words;
        }
    }

    /** Why the other ride did not pass a stretch. */
    public enum Reason {
        /** It went another way. */
        ELSEWHERE("rode elsewhere"),
        /** One of the two has no position there. */
        NO_POSITION("no position recorded"),
        /** It lies before or after all that the two have in common. */
        BEYOND("not ridden by both");

        private final String words;

        Reason(String words) {
            this.words = words;
        }

        /** The reason in a few words, for people. */
        public String words() {
            return words;
        }
    }

    /**
     * What one ride did on a stretch.
     *
     * @param elapsedSeconds from its beginning to its end, stops and pauses included
     * @param movingSeconds of these the seconds under way
     * @param averagePowerW mean power under way, watts, or null without power
     * @param averageHeartRateBpm mean heart rate under way, or null without it
     */
    public record Side(
            double elapsedSeconds,
            double movingSeconds,
            @Nullable Double averagePowerW,
            @Nullable Double averageHeartRateBpm)
            implements Serializable {}

    /**
     * A stretch of the course that both passed.
     *
     * @param ground what kind of road it is
     * @param startM its beginning, metres from the start of the reference's recording
     * @param endM its end
     * @param meanGrade rise over run, or null without altitude
     * @param apartM length within it that the other did not pass, metres
     * @param reference the reference on it
     * @param other the other ride on it
     */
    public record Stretch(
            Ground ground,
            double startM,
            double endM,
            @Nullable Double meanGrade,
            double apartM,
            Side reference,
            Side other)
            implements Serializable {
        /** What the other ride lost on it to the reference, elapsed seconds; below 0 when it won. */
        public double lostSeconds() {
            return other.elapsedSeconds - reference.elapsedSeconds;
        }

        /** What the other ride lost on it to the reference, seconds under way; below 0 when it won. */
        public double lostMovingSeconds() {
            return other.movingSeconds - reference.movingSeconds;
        }
    }

    /**
     * A stretch of the reference's course that the other did not pass.
     *
     * @param reason why
     * @param startM its beginning, metres from the start of the reference's recording
     * @param endM its end
     */
    public record Apart(Reason reason, double startM, double endM) implements Serializable {}

    /** Copies the lists. */
    public CourseComparison {
        stretches = List.copyOf(stretches);
        apart = List.copyOf(apart);
    }

    /** Compares whole rides; see {@link #of(Ride, Ride, double, double)}. */
    public static Outcome<CourseComparison> of(Ride reference, Ride other) {
        return of(reference, other, 0, Double.POSITIVE_INFINITY);
    }

    /**
     * Compares a part of a course; the gap begins with 0 where the part begins. Refused are rides that share no course,
     * and a part that holds nothing of it; the reason says what to do, in words that go on from a name.
     *
     * @param fromM where the part begins, metres from the start of the reference's recording
     * @param toM where it ends; may lie beyond the end
     */
    public static Outcome<CourseComparison> of(Ride reference, Ride other, double fromM, double toM) {
        return of(new TimedRide(reference), other, fromM, toM);
    }

    /** {@link #of(Ride, Ride, double, double)} for a reference that several rides are held against. */
    static Outcome<CourseComparison> of(TimedRide first, Ride other, double fromM, double toM) {
        TimedRide second = new TimedRide(other);
        Outcome<Alignment> alignment = Alignment.of(first, second, fromM, toM);
        return alignment instanceof Outcome.Refused<Alignment> refused
                ? Outcome.refused(refused.reason())
                : Outcome.of(of(first, second, alignment.orElseThrow(AssertionError::new)));
    }

    private static CourseComparison of(TimedRide reference, TimedRide other, Alignment points) {
        double[] own = points.own();
        double[] passing = points.passing();
        int first = points.first();
        Series gap = Series.generate(
                own.length,
                point -> points.isCompared(point)
                        ? passing[point] - passing[first] - (own[point] - own[first])
                        : Double.NaN);
        Series movingGap = Series.generate(
                own.length,
                point -> points.isCompared(point)
                        ? other.movingSeconds(passing[first], passing[point])
                                - reference.movingSeconds(own[first], own[point])
                        : Double.NaN);
        return new CourseComparison(
                points.isByPosition() ? Method.POSITION : Method.DISTANCE,
                STEP_M,
                points.startM(),
                first,
                points.last(),
                Series.of(own),
                Series.of(passing),
                gap,
                movingGap,
                stretches(reference, other, points),
                apart(reference, other, points));
    }

    private static List<Stretch> stretches(TimedRide reference, TimedRide other, Alignment points) {
        Course course = Course.of(reference.ride()).orElse(null);
        List<Stretch> stretches = new ArrayList<>();
        for (CourseStretches.Span span :
                CourseStretches.of(course, points.startM(), STEP_M, points.first(), points.last())) {
            int from = points.firstPassed(span.from());
            int to = Math.min(points.last(), points.firstPassed(span.to()));
            if (from >= to) {
                continue;
            }
            int missed = 0;
            for (int point = from; point < to; point++) {
                missed += points.isPassed(point) ? 0 : 1;
            }
            stretches.add(new Stretch(
                    span.ground(),
                    points.distanceM(from),
                    points.distanceM(to),
                    span.meanGrade(),
                    missed < LEAST_POINTS_APART ? 0 : missed * STEP_M,
                    side(reference, points.own()[from], points.own()[to]),
                    side(other, points.passing()[from], points.passing()[to])));
        }
        return stretches;
    }

    private static Side side(TimedRide ride, double from, double to) {
        return new Side(
                to - from,
                ride.movingSeconds(from, to),
                ride.mean(Channel.POWER, from, to),
                ride.mean(Channel.HEART_RATE, from, to));
    }

    /** Runs of points that the other does not pass, within the compared part and before and after it. */
    private static List<Apart> apart(TimedRide reference, TimedRide other, Alignment points) {
        List<Apart> apart = new ArrayList<>();
        int count = points.passing().length;
        int from = 0;
        while (from < count) {
            int to = points.firstPassed(from);
            if (to - from >= LEAST_POINTS_APART) {
                apart.add(new Apart(
                        reason(reference, other, points, from, to),
                        points.distanceM(Math.max(0, from - 1)),
                        points.distanceM(Math.min(count - 1, to))));
            }
            from = to + 1;
        }
        return apart;
    }

    /** Why the other does not pass the points from one up to another, not included. */
    private static Reason reason(TimedRide reference, TimedRide other, Alignment points, int from, int to) {
        if (from == 0 || to == points.passing().length) {
            return Reason.BEYOND;
        }
        boolean bothPlaced = reference.hasPositions(points.own()[from], points.own()[to - 1])
                && other.hasPositions(points.passing()[from - 1], points.passing()[to]);
        return bothPlaced ? Reason.ELSEWHERE : Reason.NO_POSITION;
    }

    /** The number of points, those outside the compared part included. */
    public int points() {
        return gapSeconds.size();
    }

    /** Distance of a point, metres from the start of the reference's recording. */
    public double distanceM(int point) {
        return startM + point * stepM;
    }

    /** The gap at the end of the compared part, elapsed seconds. */
    public double finalGapSeconds() {
        return gapSeconds.get(toPoint);
    }

    /** The gap at the end of the compared part in time under way, seconds. */
    public double finalMovingGapSeconds() {
        return movingGapSeconds.get(toPoint);
    }

    /** What the other lost under way on all stretches of one ground, seconds; below 0 when it won. */
    public double lostMovingSecondsOn(Ground ground) {
        return stretches.stream()
                .filter(stretch -> stretch.ground() == ground)
                .mapToDouble(Stretch::lostMovingSeconds)
                .sum();
    }

    /** What the other stood longer than the reference, seconds, timer running or not; below 0 when it stood less. */
    public double lostStandingSeconds() {
        return finalGapSeconds() - finalMovingGapSeconds();
    }

    /**
     * A channel along the course, as the mean under way over the 500 m before and after each point.
     *
     * @param ride the reference or the other ride
     * @param passing {@link #referenceSecond()} or {@link #otherSecond()}
     * @return a value for each point, {@code NaN} where the ride did not pass or nothing was measured
     */
    static Series along(Ride ride, Channel channel, Series passing) {
        double[] sum = new double[ride.seconds() + 1];
        int[] measured = new int[ride.seconds() + 1];
        Series values = ride.series(channel);
        for (int second = 0; second < ride.seconds(); second++) {
            boolean counts = values.isMeasured(second) && ride.state(second) == SecondState.RIDING;
            sum[second + 1] = sum[second] + (counts ? values.get(second) : 0);
            measured[second + 1] = measured[second] + (counts ? 1 : 0);
        }
        int reach = (int) Math.round(HALF_KILOMETRE / STEP_M);
        return Series.generate(passing.size(), point -> {
            if (!passing.isMeasured(point)) {
                return Double.NaN;
            }
            int before = point;
            int after = point;
            for (int step = 1; step <= reach; step++) {
                before = point - step >= 0 && passing.isMeasured(point - step) ? point - step : before;
                after = point + step < passing.size() && passing.isMeasured(point + step) ? point + step : after;
            }
            int from = (int) Math.ceil(passing.get(before));
            int to = Math.max(from, Math.min(ride.seconds(), (int) Math.ceil(passing.get(after))));
            int count = measured[to] - measured[from];
            return count == 0 ? Double.NaN : (sum[to] - sum[from]) / count;
        });
    }
}
