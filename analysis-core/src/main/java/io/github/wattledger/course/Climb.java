package io.github.wattledger.course;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * A climb: at least 500 m of road that average at least 3 %, short dips allowed. Each beginning and each end of it
 * averages 3 % as well, so that no flat run-up belongs to it.
 *
 * @param when its seconds, counted from the first second of the ride it was found in
 * @param startM distance at its foot, metres from the start of the recording
 * @param endM distance at its top, metres from the start of the recording
 * @param gainM altitude of the top over the foot, metres, above 0
 * @param meanGrade gain over length, rise over run
 * @param steepestGrade highest mean grade over 100 m of it, rise over run
 * @param movingSeconds seconds under way on it
 * @param averagePowerW mean power, watts, or null without power
 * @param averageHeartRateBpm mean heart rate, beats per minute, or null without it
 * @param verticalSpeedMPerHour altitude gained in an hour of moving time at this rate, metres
 * @param foot position of the foot, or null without positions
 * @param top position of the top, or null without positions
 */
public record Climb(
        Interval when,
        double startM,
        double endM,
        double gainM,
        double meanGrade,
        double steepestGrade,
        int movingSeconds,
        @Nullable Double averagePowerW,
        @Nullable Double averageHeartRateBpm,
        double verticalSpeedMPerHour,
        @Nullable Place foot,
        @Nullable Place top)
        implements Serializable {
    /** A climb is at least so long, metres. */
    public static final double LEAST_LENGTH_M = 500;

    /** A climb is at least so steep on average, rise over run. */
    public static final double LEAST_GRADE = 0.03;

    /** A stretch without a new greatest height as long as this ends a climb; shorter ones are dips of it. */
    private static final double LONGEST_DIP_M = 500;

    private static final double STEEPEST_OVER_M = 100;

    /** Places closer together than this are one place, metres: satellite receivers are no more exact. */
    private static final double SAME_PLACE_M = 60;

    private static final double SAME_LENGTH_FRACTION = 0.1;
    private static final double SECONDS_PER_HOUR = 3600;

    /** Length, metres. */
    public double lengthM() {
        return endM - startM;
    }

    /**
     * Whether both are the same climb ridden twice: foot and top at the same places, up to 60 m apart, and lengths that
     * differ by 10 % at most. Never so without positions.
     */
    boolean isSameRoadAs(Climb other) {
        return foot != null
                && top != null
                && other.foot != null
                && other.top != null
                && foot.metresTo(other.foot) <= SAME_PLACE_M
                && top.metresTo(other.top) <= SAME_PLACE_M
                && Math.abs(lengthM() - other.lengthM()) <= SAME_LENGTH_FRACTION * Math.max(lengthM(), other.lengthM());
    }

    /**
     * The climbs of a ride in the order in which they were ridden; none without altitude or distance.
     *
     * @param course the course of this ride, or null where it leads nowhere
     */
    public static List<Climb> of(Ride ride, @Nullable Course course) {
        if (course == null) {
            return List.of();
        }
        List<Climb> climbs = new ArrayList<>();
        int from = 0;
        int second = 0;
        while (from < course.pieces()) {
            Span span = next(course, from);
            if (span == null) {
                break;
            }
            if (span.isClimb(course)) {
                Climb climb = describe(ride, course, span, second);
                climbs.add(climb);
                second = climb.when().fromSecond();
            }
            from = span.end;
        }
        return climbs;
    }

    /** A stretch that rises, by its nodes; a climb if it is long and steep enough. */
    record Span(int start, int end) {
        boolean isClimb(Course course) {
            double length = (end - start) * course.stepM();
            double gain = course.altitudeM(end) - course.altitudeM(start);
            return length >= LEAST_LENGTH_M && gain >= LEAST_GRADE * length;
        }
    }

    /*
     * The walk keeps the height won beyond 3 % of the length ridden since the foot. A climb begins where that surplus is
     * positive and ends where it was largest, once the surplus is used up or no new height was reached for the length of a
     * dip. So every beginning and every end of the stretch averages 3 % or more.
     */
    static @Nullable Span next(Course course, int from) {
        int start = -1;
        int best = -1;
        int highest = -1;
        double mostOver = 0;
        for (int node = from; node < course.nodes(); node++) {
            double altitude = course.altitudeM(node);
            if (start >= 0) {
                double over = altitude - course.altitudeM(start) - LEAST_GRADE * (node - start) * course.stepM();
                boolean known = !Double.isNaN(altitude);
                if (known && altitude > course.altitudeM(highest)) {
                    highest = node;
                }
                if (known && over > mostOver) {
                    mostOver = over;
                    best = node;
                }
                boolean isOver = !known || over <= 0 || (node - highest) * course.stepM() > LONGEST_DIP_M;
                if (isOver && best > start) {
                    return new Span(start, best);
                }
                if (isOver) {
                    start = -1;
                }
            }
            if (start < 0 && !Double.isNaN(altitude)) {
                start = node;
                best = node;
                highest = node;
                mostOver = 0;
            }
        }
        return start >= 0 && best > start ? new Span(start, best) : null;
    }

    private static Climb describe(Ride ride, Course course, Span span, int afterSecond) {
        double startM = course.distanceM(span.start);
        double endM = course.distanceM(span.end);
        double gain = course.altitudeM(span.end) - course.altitudeM(span.start);
        Interval when = seconds(ride, startM, endM, afterSecond);
        int moving = ride.countSeconds(SecondState.RIDING, when);
        return new Climb(
                when,
                startM,
                endM,
                gain,
                course.meanGrade(span.start, span.end),
                steepest(course, span),
                moving,
                mean(ride, Channel.POWER, when),
                mean(ride, Channel.HEART_RATE, when),
                moving == 0 ? 0 : gain / moving * SECONDS_PER_HOUR,
                Place.of(ride, when.fromSecond()),
                Place.of(ride, Math.max(when.fromSecond(), when.toSecond() - 1)));
    }

    private static double steepest(Course course, Span span) {
        int reach = Math.max(1, (int) Math.round(STEEPEST_OVER_M / course.stepM()));
        double steepest = Double.NEGATIVE_INFINITY;
        for (int node = span.start; node + reach <= span.end; node++) {
            steepest = Math.max(steepest, course.meanGrade(node, node + reach));
        }
        return steepest;
    }

    /**
     * The seconds from the last one at or before the foot to the first one at or beyond the top.
     *
     * @param afterSecond where the search begins, so that a road ridden twice is found in its own seconds
     */
    private static Interval seconds(Ride ride, double startM, double endM, int afterSecond) {
        Series distance = ride.series(Channel.DISTANCE);
        int from = afterSecond;
        int to = ride.seconds();
        for (int second = afterSecond; second < ride.seconds(); second++) {
            double at = distance.get(second);
            if (at <= startM) {
                from = second;
            } else if (at >= endM) {
                to = second + 1;
                break;
            }
        }
        return new Interval(from, to);
    }

    private static @Nullable Double mean(Ride ride, Channel channel, Interval when) {
        OptionalDouble mean = ride.meanWhileRiding(channel, when);
        return mean.isPresent() ? mean.getAsDouble() : null;
    }
}
