package io.github.wattledger;

import io.github.wattledger.compare.CourseStretches;
import io.github.wattledger.compare.Ground;
import io.github.wattledger.course.ClimbReview;
import io.github.wattledger.course.Course;
import io.github.wattledger.load.StretchLoad;
import io.github.wattledger.load.StretchLoads;
import io.github.wattledger.pacing.price.LostTime;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The reviewed part of a ride split up: how hard each hour, lap, climb and section of the course was, and what the mistakes
 * cost in it. Seconds are those of the whole recording. Hours and sections each make up the whole reviewed part, so that the
 * minutes lost in them add up to those that the ledger gives for all mistakes at once.
 *
 * @param hours the hours, pauses counted, the last of them shorter
 * @param laps the laps that the recorder marked, possibly none
 * @param climbs the climbs of the review, in its order; empty without any
 * @param sections climbs, descents and the road between them, none too short to be worth a line; empty without distance or
 *     on less than a kilometre
 */
public record RideSplits(List<Split> hours, List<Split> laps, List<Split> climbs, List<Section> sections)
        implements Serializable {
    /** Distance between two points at which a section can begin or end, metres. */
    private static final double STEP_M = 100;

    private static final double SHORTEST_COURSE_M = 1000;

    /** Copies the lists. */
    public RideSplits {
        hours = List.copyOf(hours);
        laps = List.copyOf(laps);
        climbs = List.copyOf(climbs);
        sections = List.copyOf(sections);
    }

    /**
     * A part of a ride.
     *
     * @param load how hard it was
     * @param lostLowMinutes what all mistakes together cost in it at the low end of their price, minutes; negative where the
     *     repaired race is the slower one; null where nothing was priced
     * @param lostHighMinutes the same at the high end
     */
    public record Split(
            StretchLoad load,
            @Nullable Double lostLowMinutes,
            @Nullable Double lostHighMinutes) implements Serializable {}

    /**
     * A section of the course.
     *
     * @param split how hard it was, and what was lost
     * @param startM distance at its start, metres from the start of the recording
     * @param endM distance at its end
     * @param ground what kind of road it is
     * @param meanGrade rise over run, or null where it is not known
     * @param climbedM metres climbed in it on road as steep as a climb, or null where that is not known
     */
    public record Section(
            Split split,
            double startM,
            double endM,
            Ground ground,
            @Nullable Double meanGrade,
            @Nullable Double climbedM)
            implements Serializable {}

    /** The splits of a review. */
    public static RideSplits of(RideReview review) {
        Ride part = review.ride().part(review.reviewed());
        Splitter splitter = new Splitter(
                part, review.reviewed().fromSecond(), review.pacing().lost());
        List<ClimbReview> climbs = review.climbs();
        return new RideSplits(
                splitter.all(StretchLoads.hours(part)),
                splitter.all(part.laps()),
                climbs == null
                        ? List.of()
                        : climbs.stream()
                                .map(climb -> splitter.split(climb.climb().when()))
                                .toList(),
                sections(part, splitter));
    }

    private static List<Section> sections(Ride part, Splitter splitter) {
        Series distance = part.series(Channel.DISTANCE);
        double startM = nextMeasured(distance, 0, 1);
        double endM = nextMeasured(distance, distance.size() - 1, -1);
        if (!(endM - startM >= SHORTEST_COURSE_M)) {
            return List.of();
        }
        Course course = Course.of(part).orElse(null);
        // The points are those of the course, so that its altitude reaches to the first and the last of them.
        double originM = course == null ? startM : course.distanceM(0);
        double lastM = course == null ? endM : originM + course.lengthM();
        int points = Math.max(1, (int) ((lastM - originM) / STEP_M));
        List<Section> sections = new ArrayList<>();
        int from = 0;
        for (CourseStretches.Span span : CourseStretches.of(course, originM, STEP_M, 0, points)) {
            boolean isLast = span.to() == points;
            double toM = isLast ? endM : originM + span.to() * STEP_M;
            int to = isLast ? part.seconds() : firstAt(distance, from, toM);
            if (to > from) {
                sections.add(new Section(
                        splitter.split(new Interval(from, to)),
                        span.from() == 0 ? startM : originM + span.from() * STEP_M,
                        toM,
                        span.ground(),
                        span.meanGrade(),
                        course == null || span.meanGrade() == null
                                ? null
                                : (Double) CourseStretches.climbedM(course, originM, STEP_M, span)));
            }
            from = to;
        }
        return sections;
    }

    private static int firstAt(Series distance, int from, double atM) {
        int second = from;
        while (second < distance.size() && !(distance.get(second) >= atM)) {
            second++;
        }
        return second;
    }

    private static double nextMeasured(Series series, int from, int step) {
        for (int second = from; second >= 0 && second < series.size(); second += step) {
            if (series.isMeasured(second)) {
                return series.get(second);
            }
        }
        return Double.NaN;
    }

    /**
     * Splits a part of a recording.
     *
     * @param offsetSeconds what to add to a second of the part to get a second of the recording
     */
    private record Splitter(
            StretchLoads loads, int offsetSeconds, @Nullable LostTime lost) {
        Splitter(Ride part, int offsetSeconds, @Nullable LostTime lost) {
            this(StretchLoads.of(part), offsetSeconds, lost);
        }

        List<Split> all(List<Interval> stretches) {
            return stretches.stream().map(this::split).toList();
        }

        Split split(Interval within) {
            StretchLoad load = loads.of(within).shifted(offsetSeconds);
            return new Split(
                    load,
                    lost == null ? null : lost.lowMinutes(load.when()),
                    lost == null ? null : lost.highMinutes(load.when()));
        }
    }
}
