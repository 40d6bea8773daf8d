package io.github.wattledger.read;

import io.github.wattledger.ride.NamedPoint;
import io.github.wattledger.ride.RouteLine;
import io.github.wattledger.ride.Series;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicMask;
import org.jspecify.annotations.Nullable;

/**
 * Collects the points of a route in the file's order. Points without a position are passed over unless they have a distance.
 * Distances are the file's where every point has one, otherwise they are measured along the WGS-84 ellipsoid.
 */
public final class RouteBuilder {
    private static final double METRES_PER_DEGREE = 111_195;
    private static final int FIRST_SIZE = 1024;

    /** How far from the line a point may lie that belongs to it, metres: a stop beside the road. */
    private static final double BESIDE_M = 150;

    private double[] values = new double[4 * FIRST_SIZE];
    private int size;
    private @Nullable String name;
    private final List<Position> beside = new ArrayList<>();
    private final List<NamedPoint> along = new ArrayList<>();

    private record Position(String name, double latitudeDegrees, double longitudeDegrees) {}

    /** A route without a point. */
    public RouteBuilder() {}

    /** Names the route; the first name counts. */
    public void name(String text) {
        if (name == null && !text.isBlank()) {
            name = ReadNote.printable(text.strip(), 80);
        }
    }

    /**
     * Adds a point; {@code NaN} for what it does not have.
     *
     * @param latitudeDegrees degrees north
     * @param longitudeDegrees degrees east
     * @param altitudeM altitude, metres
     * @param distanceM metres from the start by the file
     */
    public void add(double latitudeDegrees, double longitudeDegrees, double altitudeM, double distanceM) {
        if (Double.isNaN(latitudeDegrees + longitudeDegrees) && Double.isNaN(distanceM)) {
            return;
        }
        if (4 * size == values.length) {
            values = Arrays.copyOf(values, 2 * values.length);
        }
        values[4 * size] = latitudeDegrees;
        values[4 * size + 1] = longitudeDegrees;
        values[4 * size + 2] = altitudeM;
        values[4 * size + 3] = distanceM;
        size++;
    }

    /** Adds a named place; it belongs to the route when it lies within 150 m of it. */
    public void addPlace(String text, double latitudeDegrees, double longitudeDegrees) {
        if (!text.isBlank() && !Double.isNaN(latitudeDegrees + longitudeDegrees)) {
            beside.add(new Position(ReadNote.printable(text.strip(), 40), latitudeDegrees, longitudeDegrees));
        }
    }

    /** Adds a named point at a distance of the file's own count. */
    public void addNamedAt(String text, double distanceM) {
        if (!text.isBlank() && distanceM >= 0) {
            along.add(new NamedPoint(ReadNote.printable(text.strip(), 40), distanceM));
        }
    }

    /** How many points there are. */
    public int size() {
        return size;
    }

    /**
     * The route; null where its points lie in one place, or there are fewer than two.
     *
     * @param isRecorded whether somebody rode it
     */
    public @Nullable RouteLine build(boolean isRecorded) {
        if (size < 2) {
            return null;
        }
        double[] distance = new double[size];
        boolean hasDistances = true;
        for (int i = 0; i < size; i++) {
            hasDistances &= !Double.isNaN(values[4 * i + 3]);
        }
        double measured = 0;
        int previous = -1;
        for (int i = 0; i < size; i++) {
            boolean hasPosition = !Double.isNaN(values[4 * i] + values[4 * i + 1]);
            if (hasPosition && previous >= 0) {
                measured += metres(previous, i);
            }
            previous = hasPosition ? i : previous;
            double own = hasDistances ? values[4 * i + 3] - values[3] : measured;
            distance[i] = i == 0 ? 0 : Math.max(distance[i - 1], own);
        }
        return distance[size - 1] > 0 ? line(distance, isRecorded) : null;
    }

    private RouteLine line(double[] distance, boolean isRecorded) {
        Series distances = Series.of(distance);
        List<NamedPoint> named = new ArrayList<>();
        for (NamedPoint each : along) {
            double at = each.distanceM() - (Double.isNaN(values[3]) ? 0 : values[3]);
            named.add(new NamedPoint(each.name(), Math.max(0, Math.min(distance[size - 1], at))));
        }
        beside.forEach(place -> addPassages(place, distances, named));
        named.sort(Comparator.comparingDouble(NamedPoint::distanceM));
        return new RouteLine(name, column(0), column(1), column(2), distances, named, isRecorded);
    }

    /** A place is passed where the line comes nearest; a line that comes by twice passes it twice. */
    private void addPassages(Position place, Series distance, List<NamedPoint> named) {
        double nearestM = BESIDE_M;
        double nearestAtM = Double.NaN;
        double east = METRES_PER_DEGREE * Math.cos(Math.toRadians(place.latitudeDegrees));
        for (int i = 0; i + 1 < size; i++) {
            if (Double.isNaN(nearestAtM) && isFarNorthOrSouth(place, i)) {
                continue;
            }
            double[] foot = foot(place, i, east);
            double atM = distance.get(i) + foot[0] * (distance.get(i + 1) - distance.get(i));
            boolean isAway = foot[1] > BESIDE_M;
            if (isAway && !Double.isNaN(nearestAtM)) {
                named.add(new NamedPoint(place.name, nearestAtM));
                nearestAtM = Double.NaN;
                nearestM = BESIDE_M;
            }
            if (foot[1] < nearestM) {
                nearestM = foot[1];
                nearestAtM = atM;
            }
        }
        if (!Double.isNaN(nearestAtM)) {
            named.add(new NamedPoint(place.name, nearestAtM));
        }
    }

    /** Most of a long course lies far from a place, and one comparison says so. */
    private boolean isFarNorthOrSouth(Position place, int point) {
        double from = values[4 * point] - place.latitudeDegrees;
        double to = values[4 * point + 4] - place.latitudeDegrees;
        double far = BESIDE_M / METRES_PER_DEGREE;
        return (from > far && to > far) || (from < -far && to < -far);
    }

    /** Where on the stretch from a point to the next a place lies nearest, as a share of it, and how far off, metres. */
    private double[] foot(Position place, int point, double east) {
        double x0 = (values[4 * point + 1] - place.longitudeDegrees) * east;
        double y0 = (values[4 * point] - place.latitudeDegrees) * METRES_PER_DEGREE;
        double dx = (values[4 * point + 5] - values[4 * point + 1]) * east;
        double dy = (values[4 * point + 4] - values[4 * point]) * METRES_PER_DEGREE;
        double square = dx * dx + dy * dy;
        double share = square > 0 ? Math.max(0, Math.min(1, -(x0 * dx + y0 * dy) / square)) : 0;
        double off = Math.hypot(x0 + share * dx, y0 + share * dy);
        return new double[] {share, Double.isNaN(off) ? Double.POSITIVE_INFINITY : off};
    }

    private double metres(int from, int to) {
        return Geodesic.WGS84.Inverse(
                        values[4 * from],
                        values[4 * from + 1],
                        values[4 * to],
                        values[4 * to + 1],
                        GeodesicMask.DISTANCE)
                .s12;
    }

    private Series column(int column) {
        return Series.generate(size, i -> values[4 * i + column]);
    }
}
