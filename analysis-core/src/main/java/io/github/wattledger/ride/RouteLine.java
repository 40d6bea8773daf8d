package io.github.wattledger.ride;

import java.io.Serializable;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A way to ride as a file says it, without times. The series have one value for each point.
 *
 * @param name what the file calls it, or null where it has no name
 * @param latitudeDegrees degrees north of the equator; {@code NaN} where a point has no position
 * @param longitudeDegrees degrees east of Greenwich; {@code NaN} where a point has no position
 * @param altitudeM altitude, metres; {@code NaN} where the file has none
 * @param distanceM metres along the route, from 0, never falling
 * @param namedPoints the points with names in the order of the route
 * @param isRecorded whether somebody rode it: a barometer's altitude needs less smoothing than a terrain model's
 */
public record RouteLine(
        @Nullable String name,
        Series latitudeDegrees,
        Series longitudeDegrees,
        Series altitudeM,
        Series distanceM,
        List<NamedPoint> namedPoints,
        boolean isRecorded)
        implements Serializable {
    /** @throws IllegalArgumentException when there are fewer than two points, or the series differ in length */
    public RouteLine {
        int points = distanceM.size();
        if (points < 2
                || latitudeDegrees.size() != points
                || longitudeDegrees.size() != points
                || altitudeM.size() != points) {
            throw new IllegalArgumentException(points + " distances, " + latitudeDegrees.size() + " latitudes, "
                    + longitudeDegrees.size() + " longitudes and " + altitudeM.size()
                    + " altitudes, expected 2 or more of each and as many");
        }
        namedPoints = List.copyOf(namedPoints);
    }

    /** Metres from the first point to the last. */
    public double lengthM() {
        return distanceM.get(distanceM.size() - 1);
    }
}
