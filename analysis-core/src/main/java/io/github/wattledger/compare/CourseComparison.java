package io.github.wattledger.compare;

import io.github.wattledger.course.Course;
import io.github.wattledger.course.Place;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
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
 * @param movingGapSeconds the same of the time under way
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
    public static final double STEP_M = 100;

    /** Rides share a course when they have at least so much of it in common, metres. Own choice. */
    private static final double LEAST_SHARED_M = 1000;

    /** And at least this part of the shorter one. Own choice. */
    private static final double LEAST_SHARED_FRACTION = 0.1;

    /** Without positions only rides of about one length are of one course. Own choice. */
    private static final double LONGEST_LENGTH_DIFFERENCE = 0.05;

    /** Two points in a row that are not passed are a stretch of their own; a single one is noise. */
    private static final int LEAST_POINTS_APART = 2;

    private static final double HALF_KILOMETRE = 500;

    /** How points of the course were found in the other ride. */
    public enum Method {
        /** By where they lie. */
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

    /** The lie of a stretch. */
    public enum Ground {
        /** At least 2 % up on average. */
        CLIMB("climb"),
        /** At least 2 % down on average. */
        DESCENT("descent"),
        /** Neither. */
        FLAT("flat or rolling"),
        /** There is no altitude. */
        UNKNOWN("no altitude");

        private final String words;

        Ground(String words) {
            this.words = words;
        }

        /** The ground in a few words, for people. */
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
     * @param ground its lie
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

        /** The same of the time under way. */
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

    /** Two rides that cannot be compared; the message says why and what to do, in words that go on from a name. */
    public static final class NotComparableException extends Exception {
        private static final long serialVersionUID = 1L;

        NotComparableException(String message) {
            super(message);
        }
    }

    /** Copies the lists. */
    public CourseComparison {
        stretches = List.copyOf(stretches);
        apart = List.copyOf(apart);
    }

    /** Compares whole rides. */
    public static CourseComparison of(Ride reference, Ride other) throws NotComparableException {
        return of(reference, other, 0, Double.POSITIVE_INFINITY);
    }

    /**
     * Compares a part of a course; the gap begins with 0 where the part begins.
     *
     * @param fromM where the part begins, metres from the start of the reference's recording
     * @param toM where it ends; may lie beyond the end
     * @throws NotComparableException when the two share no course, or the part holds nothing of it
     */
    public static CourseComparison of(Ride reference, Ride other, double fromM, double toM)
            throws NotComparableException {
        double[] referenceM = Odometer.of(reference);
        double[] otherM = Odometer.of(other);
        double startM = Odometer.first(referenceM);
        double lengthM = Odometer.last(referenceM) - startM;
        double otherLengthM = Odometer.last(otherM) - Odometer.first(otherM);
        if (!(lengthM >= 2 * STEP_M) || !(otherLengthM >= 2 * STEP_M)) {
            String which = lengthM >= 2 * STEP_M ? "it" : "the first ride";
            throw new NotComparableException(
                    which + " has neither positions nor distance to compare by; give a recording with one of them");
        }
        int count = (int) Math.floor(lengthM / STEP_M + 1e-6) + 1;
        Place origin = Track.firstPlace(reference);
        boolean byPosition = origin != null && Track.firstPlace(other) != null;
        double[] passing;
        if (origin != null && byPosition) {
            passing = byPosition(reference, referenceM, other, otherM, startM, count, origin);
        } else {
            passing = byDistance(otherM, lengthM, otherLengthM, count);
        }
        double[] own = new double[count];
        for (int point = 0; point < count; point++) {
            own[point] = Odometer.secondAt(referenceM, startM + point * STEP_M);
        }
        int first = firstPassed(passing, Math.max(0, (int) Math.ceil((fromM - startM) / STEP_M - 1e-6)));
        int last = lastPassed(passing, (int) Math.min(count - 1.0, Math.floor((toM - startM) / STEP_M + 1e-6)));
        if (first >= last) {
            throw new NotComparableException("shares nothing of the chosen part with the first ride; choose another");
        }
        return new Builder(reference, referenceM, other, otherM, byPosition, startM, own, passing, first, last).build();
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
    public static Series along(Ride ride, Channel channel, Series passing) {
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

    private static double[] byPosition(
            Ride reference, double[] referenceM, Ride other, double[] otherM, double startM, int count, Place origin)
            throws NotComparableException {
        Track course = Track.of(reference, referenceM, origin);
        Track track = Track.of(other, otherM, origin);
        if (course.count < 2 || track.count < 2) {
            String which = course.count < 2 ? "the first ride" : "it";
            throw new NotComparableException(which + " has too few positions under way; give another recording");
        }
        CourseMatch.Nodes nodes = CourseMatch.Nodes.along(course, startM, STEP_M, count);
        double[] passing = CourseMatch.seconds(nodes, track);
        int passed = 0;
        for (double each : passing) {
            passed += Double.isNaN(each) ? 0 : 1;
        }
        double sharedM = passed * STEP_M;
        double shorterM = Math.min(count * STEP_M, Odometer.last(otherM) - Odometer.first(otherM));
        if (sharedM < Math.min(LEAST_SHARED_M, shorterM / 2) || sharedM < LEAST_SHARED_FRACTION * shorterM) {
            int backwards = CourseMatch.passed(nodes.reversed(), track);
            throw new NotComparableException(
                    backwards > Math.max(passed, count / 2)
                            ? "goes over the course of the first ride the other way round; compare rides in the same"
                                    + " direction"
                            : "shares no course with the first ride; compare rides over the same roads, in the same"
                                    + " direction");
        }
        return passing;
    }

    private static double[] byDistance(double[] otherM, double lengthM, double otherLengthM, int count)
            throws NotComparableException {
        if (Math.abs(lengthM - otherLengthM) > LONGEST_LENGTH_DIFFERENCE * Math.max(lengthM, otherLengthM)) {
            throw new NotComparableException(String.format(
                    java.util.Locale.ROOT,
                    "is %.1f km long, the first ride %.1f km, and without positions in both only lengths within 5 %% can"
                            + " be compared; give recordings with positions, or of the course alone",
                    otherLengthM / 1000,
                    lengthM / 1000));
        }
        double[] passing = new double[count];
        double otherStartM = Odometer.first(otherM);
        for (int point = 0; point < count; point++) {
            double share = Math.min(1, point * STEP_M / lengthM);
            passing[point] = Odometer.secondAt(otherM, otherStartM + share * otherLengthM);
        }
        return passing;
    }

    private static int firstPassed(double[] passing, int from) {
        int point = from;
        while (point < passing.length && Double.isNaN(passing[point])) {
            point++;
        }
        return point;
    }

    private static int lastPassed(double[] passing, int to) {
        int point = to;
        while (point >= 0 && Double.isNaN(passing[point])) {
            point--;
        }
        return point;
    }

    /** Puts a comparison together from the seconds at which both pass each point. */
    private static final class Builder {
        private final Ride reference;
        private final double[] referenceM;
        private final Ride other;
        private final double[] otherM;
        private final boolean byPosition;
        private final double startM;
        private final double[] own;
        private final double[] passing;
        private final int first;
        private final int last;
        private final int[] ownMoving;
        private final int[] otherMoving;

        Builder(
                Ride reference,
                double[] referenceM,
                Ride other,
                double[] otherM,
                boolean byPosition,
                double startM,
                double[] own,
                double[] passing,
                int first,
                int last) {
            this.reference = reference;
            this.referenceM = referenceM;
            this.other = other;
            this.otherM = otherM;
            this.byPosition = byPosition;
            this.startM = startM;
            this.own = own;
            this.passing = passing;
            this.first = first;
            this.last = last;
            ownMoving = moving(reference);
            otherMoving = moving(other);
        }

        CourseComparison build() {
            int count = own.length;
            Series gap = Series.generate(
                    count,
                    point -> isCompared(point)
                            ? passing[point] - passing[first] - (own[point] - own[first])
                            : Double.NaN);
            Series movingGap = Series.generate(
                    count,
                    point -> isCompared(point)
                            ? between(otherMoving, passing[first], passing[point])
                                    - between(ownMoving, own[first], own[point])
                            : Double.NaN);
            List<Stretch> stretches = new ArrayList<>();
            for (CourseStretches.Span span : CourseStretches.of(Course.of(reference), startM, STEP_M, first, last)) {
                int from = firstPassed(passing, span.from());
                int to = Math.min(last, firstPassed(passing, span.to()));
                if (from < to) {
                    stretches.add(stretch(span, from, to));
                }
            }
            return new CourseComparison(
                    byPosition ? Method.POSITION : Method.DISTANCE,
                    STEP_M,
                    startM,
                    first,
                    last,
                    Series.of(own),
                    Series.of(passing),
                    gap,
                    movingGap,
                    stretches,
                    apart());
        }

        private boolean isCompared(int point) {
            return point >= first && point <= last && !Double.isNaN(passing[point]);
        }

        private Stretch stretch(CourseStretches.Span span, int from, int to) {
            int missed = 0;
            for (int point = from; point < to; point++) {
                missed += Double.isNaN(passing[point]) ? 1 : 0;
            }
            return new Stretch(
                    span.ground(),
                    startM + from * STEP_M,
                    startM + to * STEP_M,
                    span.meanGrade(),
                    missed < LEAST_POINTS_APART ? 0 : missed * STEP_M,
                    side(reference, ownMoving, own[from], own[to]),
                    side(other, otherMoving, passing[from], passing[to]));
        }

        private static Side side(Ride ride, int[] moving, double from, double to) {
            return new Side(
                    to - from,
                    between(moving, from, to),
                    mean(ride, Channel.POWER, from, to),
                    mean(ride, Channel.HEART_RATE, from, to));
        }

        private static @Nullable Double mean(Ride ride, Channel channel, double from, double to) {
            Series series = ride.series(channel);
            double sum = 0;
            int count = 0;
            int end = Math.min(ride.seconds(), (int) Math.ceil(to));
            for (int second = (int) Math.ceil(from); second < end; second++) {
                if (series.isMeasured(second) && ride.state(second) == SecondState.RIDING) {
                    sum += series.get(second);
                    count++;
                }
            }
            return count == 0 ? null : sum / count;
        }

        /** Runs of points that the other does not pass, within the compared part and before and after it. */
        private List<Apart> apart() {
            List<Apart> apart = new ArrayList<>();
            int point = 0;
            while (point < passing.length) {
                int from = point;
                while (point < passing.length && Double.isNaN(passing[point])) {
                    point++;
                }
                if (point - from >= LEAST_POINTS_APART) {
                    double begin = startM + Math.max(0, from - 1) * STEP_M;
                    double end = startM + Math.min(passing.length - 1, point) * STEP_M;
                    apart.add(new Apart(reason(from, point), begin, end));
                }
                point++;
            }
            return apart;
        }

        private Reason reason(int from, int to) {
            if (from == 0 || to == passing.length) {
                return Reason.BEYOND;
            }
            boolean bothPlaced = hasPositions(reference, referenceM, own[from], own[to - 1])
                    && hasPositions(other, otherM, passing[from - 1], passing[to]);
            return bothPlaced ? Reason.ELSEWHERE : Reason.NO_POSITION;
        }

        /** Whether most of the way within a stretch of time has positions. */
        private static boolean hasPositions(Ride ride, double[] odometerM, double from, double to) {
            Series latitude = ride.series(Channel.LATITUDE);
            double placedM = 0;
            int begin = (int) Math.ceil(from);
            int end = (int) Math.floor(Math.min(to, ride.seconds() - 1.0));
            for (int second = begin + 1; second <= end; second++) {
                if (latitude.isMeasured(second) && latitude.isMeasured(second - 1)) {
                    placedM += odometerM[second] - odometerM[second - 1];
                }
            }
            return end > begin && placedM >= (odometerM[end] - odometerM[begin]) / 2;
        }

        private static int[] moving(Ride ride) {
            int[] moving = new int[ride.seconds() + 1];
            for (int second = 0; second < ride.seconds(); second++) {
                moving[second + 1] = moving[second] + (ride.state(second) == SecondState.RIDING ? 1 : 0);
            }
            return moving;
        }

        private static double between(int[] cumulative, double from, double to) {
            return at(cumulative, to) - at(cumulative, from);
        }

        private static double at(int[] cumulative, double second) {
            // The value of a second is what was reached by its end; the second before the place counts in part.
            int whole = Math.min(cumulative.length - 1, (int) Math.floor(second) + 1);
            int next = Math.min(cumulative.length - 1, whole + 1);
            return cumulative[whole] + (cumulative[next] - cumulative[whole]) * (second - Math.floor(second));
        }
    }

    /** Distance ridden up to each second. */
    private static final class Odometer {
        private Odometer() {}

        /** From the distance channel, else from positions; never falling, {@code NaN} before the first measured. */
        static double[] of(Ride ride) {
            double[] metres = new double[ride.seconds()];
            Series distance = ride.series(Channel.DISTANCE);
            double reached = Double.NaN;
            Place before = null;
            for (int second = 0; second < metres.length; second++) {
                if (ride.has(Channel.DISTANCE)) {
                    double at = distance.get(second);
                    reached = at < reached || Double.isNaN(at) ? reached : at;
                } else {
                    Place here = place(ride, second);
                    if (here != null && ride.state(second) == SecondState.RIDING) {
                        reached = before == null ? 0 : reached + before.metresTo(here);
                        before = here;
                    }
                }
                metres[second] = reached;
            }
            return metres;
        }

        private static @Nullable Place place(Ride ride, int second) {
            Series latitude = ride.series(Channel.LATITUDE);
            Series longitude = ride.series(Channel.LONGITUDE);
            return latitude.isMeasured(second) && longitude.isMeasured(second)
                    ? new Place(latitude.get(second), longitude.get(second))
                    : null;
        }

        static double first(double[] metres) {
            return Arrays.stream(metres)
                    .filter(each -> !Double.isNaN(each))
                    .findFirst()
                    .orElse(Double.NaN);
        }

        static double last(double[] metres) {
            return metres.length == 0 ? Double.NaN : metres[metres.length - 1];
        }

        /** When a distance was reached: the last second at which the ride had not gone further. */
        static double secondAt(double[] metres, double atM) {
            int low = 0;
            int high = metres.length - 1;
            while (low < high) {
                int middle = (low + high) / 2;
                if (metres[middle] >= atM) {
                    high = middle;
                } else {
                    low = middle + 1;
                }
            }
            if (low == 0 || !(metres[low] > metres[low - 1])) {
                return low;
            }
            return low - (metres[low] - atM) / (metres[low] - metres[low - 1]);
        }
    }
}
