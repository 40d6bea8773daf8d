package io.github.wattledger.compare;

import io.github.wattledger.course.Place;
import io.github.wattledger.ride.Outcome;
import java.util.Locale;

/**
 * When each of two rides passes the points of the first one's course, which lie at equal distances.
 *
 * @param isByPosition whether the points were found by position; otherwise by distance as a share of the whole length
 * @param startM distance of the first point, metres from the start of the reference's recording
 * @param own for each point the second at which the reference passes it
 * @param passing for each point the second at which the other ride passes it, {@code NaN} where it does not
 * @param first the first point that is compared
 * @param last the last point that is compared
 */
@SuppressWarnings(
        "ArrayRecordComponent") // Lives within one comparison, is never compared and never leaves the package.
record Alignment(boolean isByPosition, double startM, double[] own, double[] passing, int first, int last) {
    /** Distance between two points of a course, metres. */
    static final double STEP_M = 100;

    /** Rides share a course when they have at least this much of it in common, metres. Own choice. */
    private static final double LEAST_SHARED_M = 1000;

    /** Rides share a course when they have at least this part of the shorter one in common. Own choice. */
    private static final double LEAST_SHARED_FRACTION = 0.1;

    /** Without positions only rides of about one length are of one course. Own choice. */
    private static final double LONGEST_LENGTH_DIFFERENCE = 0.05;

    /** A place that is at a point up to rounding counts as there. */
    private static final double ROUNDING = 1e-6;

    /**
     * Aligns two rides over a part of the course.
     *
     * @param fromM where the part begins, metres from the start of the reference's recording
     * @param toM where it ends; may lie beyond the end
     */
    static Outcome<Alignment> of(TimedRide reference, TimedRide other, double fromM, double toM) {
        double startM = reference.odometer().firstM();
        double lengthM = reference.odometer().lengthM();
        if (!(lengthM >= 2 * STEP_M) || !(other.odometer().lengthM() >= 2 * STEP_M)) {
            return Outcome.refused((lengthM >= 2 * STEP_M ? "it" : "the first ride")
                    + " has neither positions nor distance to compare by; give a recording with one of them");
        }
        int count = (int) Math.floor(lengthM / STEP_M + ROUNDING) + 1;
        Place origin = Track.firstPlace(reference.ride());
        boolean isByPosition = origin != null && Track.firstPlace(other.ride()) != null;
        Outcome<double[]> found = origin != null && isByPosition
                ? byPosition(reference, other, startM, count, origin)
                : byDistance(reference, other, count);
        if (found instanceof Outcome.Refused<double[]> refused) {
            return Outcome.refused(refused.reason());
        }
        double[] passing = found.orElseThrow(AssertionError::new);
        double[] own = new double[count];
        for (int point = 0; point < count; point++) {
            own[point] = reference.odometer().secondAt(startM + point * STEP_M);
        }
        int first = firstPassed(passing, Math.max(0, (int) Math.ceil((fromM - startM) / STEP_M - ROUNDING)));
        int last = lastPassed(passing, (int) Math.min(count - 1.0, Math.floor((toM - startM) / STEP_M + ROUNDING)));
        return first >= last
                ? Outcome.refused("shares nothing of the chosen part with the first ride; choose another")
                : Outcome.of(new Alignment(isByPosition, startM, own, passing, first, last));
    }

    /** Distance of a point, metres from the start of the reference's recording. */
    double distanceM(int point) {
        return startM + point * STEP_M;
    }

    /** Whether a point is compared and the other ride passes it. */
    boolean isCompared(int point) {
        return point >= first && point <= last && isPassed(point);
    }

    /** Whether the other ride passes a point. */
    boolean isPassed(int point) {
        return !Double.isNaN(passing[point]);
    }

    /** The first point from one on that the other ride passes; the number of points when there is none. */
    int firstPassed(int from) {
        return firstPassed(passing, from);
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

    private static Outcome<double[]> byPosition(
            TimedRide reference, TimedRide other, double startM, int count, Place origin) {
        Track course = Track.of(reference.ride(), reference.odometer(), origin);
        Track track = Track.of(other.ride(), other.odometer(), origin);
        if (course.count < 2 || track.count < 2) {
            return Outcome.refused((course.count < 2 ? "the first ride" : "it")
                    + " has too few positions under way; give another recording");
        }
        CourseMatch.Nodes nodes = CourseMatch.Nodes.along(course, startM, STEP_M, count);
        double[] passing = CourseMatch.seconds(nodes, track);
        int passed = 0;
        for (double each : passing) {
            passed += Double.isNaN(each) ? 0 : 1;
        }
        double sharedM = passed * STEP_M;
        double shorterM = Math.min(count * STEP_M, other.odometer().lengthM());
        if (sharedM < Math.min(LEAST_SHARED_M, shorterM / 2) || sharedM < LEAST_SHARED_FRACTION * shorterM) {
            int backwards = CourseMatch.passed(nodes.reversed(), track);
            return Outcome.refused(
                    backwards > Math.max(passed, count / 2)
                            ? "goes over the course of the first ride the other way round; compare rides in the same"
                                    + " direction"
                            : "shares no course with the first ride; compare rides over the same roads, in the same"
                                    + " direction");
        }
        return Outcome.of(passing);
    }

    private static Outcome<double[]> byDistance(TimedRide reference, TimedRide other, int count) {
        double lengthM = reference.odometer().lengthM();
        double otherLengthM = other.odometer().lengthM();
        if (Math.abs(lengthM - otherLengthM) > LONGEST_LENGTH_DIFFERENCE * Math.max(lengthM, otherLengthM)) {
            return Outcome.refused(String.format(
                    Locale.ROOT,
                    "is %.1f km long, the first ride %.1f km, and without positions in both only lengths within 5 %% can"
                            + " be compared; give recordings with positions, or of the course alone",
                    otherLengthM / 1000,
                    lengthM / 1000));
        }
        double[] passing = new double[count];
        double otherStartM = other.odometer().firstM();
        for (int point = 0; point < count; point++) {
            double share = Math.min(1, point * STEP_M / lengthM);
            passing[point] = other.odometer().secondAt(otherStartM + share * otherLengthM);
        }
        return Outcome.of(passing);
    }
}
