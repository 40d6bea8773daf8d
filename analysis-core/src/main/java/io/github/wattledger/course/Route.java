package io.github.wattledger.course;

import io.github.wattledger.load.Ascent;
import io.github.wattledger.ride.NamedPoint;
import io.github.wattledger.ride.RouteLine;
import io.github.wattledger.ride.Series;
import java.io.Serial;
import java.io.Serializable;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The ground of a course that nobody has ridden yet. The altitude of a course file comes from a terrain model or from
 * somebody's recording, and its noise only ever makes hills: it is smoothed with a straight line over 200 m to each side, 50 m
 * where a ride was recorded, and no grade counts as steeper than 20 %. Own rules.
 *
 * <p>Immutable and safe for many threads.
 */
public final class Route implements Serializable {
    @Serial
    private static final long serialVersionUID = 1L;

    /** A course is planned in pieces of about this length, metres. */
    public static final double PIECE_M = 200;

    /** No grade counts as steeper, rise over run. */
    public static final double STEEPEST_GRADE = 0.20;

    private static final double GRID_M = 25;
    private static final double PLANNED_REACH_M = 200;
    private static final double RECORDED_REACH_M = 50;

    private final @Nullable String name;
    private final Course course;
    private final Series latitudeDegrees;
    private final Series longitudeDegrees;
    private final double ascentM;
    private final boolean hasAltitude;
    private final List<NamedPoint> namedPoints;

    private Route(RouteLine line, Course course, boolean hasAltitude) {
        this.name = line.name();
        this.course = course;
        this.hasAltitude = hasAltitude;
        this.namedPoints = line.namedPoints();
        this.latitudeDegrees = atNodes(course, line.distanceM(), line.latitudeDegrees());
        this.longitudeDegrees = atNodes(course, line.distanceM(), line.longitudeDegrees());
        this.ascentM = Ascent.metres(Series.generate(course.nodes(), course::altitudeM))
                .orElse(0);
    }

    /**
     * The ground of a line.
     *
     * @throws IllegalArgumentException when the line is shorter than 100 m
     */
    public static Route of(RouteLine line) {
        double lengthM = line.lengthM();
        if (!(lengthM >= 100)) {
            throw new IllegalArgumentException("a course of " + lengthM + " m, expected 100 m or more");
        }
        int pieces = Math.max(2, (int) Math.round(lengthM / GRID_M));
        double stepM = lengthM / pieces;
        RouteAltitude altitude = RouteAltitude.of(line);
        if (altitude == null) {
            return new Route(line, Course.of(stepM, Series.generate(pieces + 1, node -> 0)), false);
        }
        Series smooth = altitude.smoothed(pieces + 1, stepM, line.isRecorded() ? RECORDED_REACH_M : PLANNED_REACH_M);
        return new Route(line, Course.of(stepM, smooth), true);
    }

    private static Series atNodes(Course course, Series distanceM, Series values) {
        double[] found = new double[course.nodes()];
        int point = 0;
        for (int node = 0; node < found.length; node++) {
            double at = course.distanceM(node);
            while (point + 2 < distanceM.size() && distanceM.get(point + 1) < at) {
                point++;
            }
            double span = distanceM.get(point + 1) - distanceM.get(point);
            double share = span > 0 ? Math.max(0, Math.min(1, (at - distanceM.get(point)) / span)) : 0;
            found[node] = values.get(point) + share * (values.get(point + 1) - values.get(point));
        }
        return Series.of(found);
    }

    /** What the file calls it, or null. */
    public @Nullable String name() {
        return name;
    }

    /** The smoothed ground, a node every 25 m or so; level where the file has no altitude. */
    public Course course() {
        return course;
    }

    /** Length, metres. */
    public double lengthM() {
        return course.lengthM();
    }

    /** Ascent of the smoothed ground, metres, by the rule of {@link Ascent}; 0 where the file has no altitude. */
    public double ascentM() {
        return ascentM;
    }

    /** Whether the file has altitudes; without them the course is taken as level. */
    public boolean hasAltitude() {
        return hasAltitude;
    }

    /** The points with names, in the order of the route. */
    public List<NamedPoint> namedPoints() {
        return namedPoints;
    }

    /** The climbs, in the order of the route. */
    public List<RouteClimb> climbs() {
        return RouteClimb.of(course);
    }

    /** Mean altitude, metres; 0 where the file has none. */
    public double meanAltitudeM() {
        double sum = 0;
        for (int node = 0; node < course.nodes(); node++) {
            sum += course.altitudeM(node);
        }
        return sum / course.nodes();
    }

    /**
     * Mean grade between two places of the course, rise over run, at most 20 % either way.
     *
     * @param fromM distance of the first place, metres from the start, 0 or more
     * @param toM distance of the second place, beyond the first and up to the length
     */
    public double gradeBetweenM(double fromM, double toM) {
        double grade = course.meanGradeBetweenM(fromM, Math.min(toM, course.lengthM()));
        return Double.isNaN(grade) ? 0 : Math.max(-STEEPEST_GRADE, Math.min(STEEPEST_GRADE, grade));
    }

    /**
     * Which way the road leads between two places, radians clockwise from north; {@code NaN} without positions, or where
     * both are one place.
     */
    public double bearingBetweenM(double fromM, double toM) {
        int from = node(fromM);
        int to = Math.max(from + 1, node(toM));
        if (to >= course.nodes()) {
            return Double.NaN;
        }
        double north = latitudeDegrees.get(to) - latitudeDegrees.get(from);
        double east = (longitudeDegrees.get(to) - longitudeDegrees.get(from))
                * Math.cos(Math.toRadians(latitudeDegrees.get(from)));
        return north == 0 && east == 0 ? Double.NaN : Math.atan2(east, north);
    }

    private int node(double atM) {
        return (int) Math.max(0, Math.min(course.nodes() - 1, Math.round(atM / course.stepM())));
    }
}
