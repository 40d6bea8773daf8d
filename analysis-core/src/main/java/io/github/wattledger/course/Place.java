package io.github.wattledger.course;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * A point of the earth.
 *
 * @param latitudeDegrees degrees north of the equator, WGS-84
 * @param longitudeDegrees degrees east of Greenwich, WGS-84
 */
public record Place(double latitudeDegrees, double longitudeDegrees) implements Serializable {
    /** Mean radius of the earth, metres (IUGG). */
    private static final double MEAN_EARTH_RADIUS_M = 6_371_008.8;

    /** Metres on the ground for one degree of latitude; one of longitude is shorter by the cosine of the latitude. */
    public static final double METRES_PER_DEGREE = Math.toRadians(MEAN_EARTH_RADIUS_M);

    /**
     * Where a ride was at the end of a second; null where no position was recorded.
     *
     * @throws ArrayIndexOutOfBoundsException when the ride has no such second
     */
    public static @Nullable Place of(Ride ride, int second) {
        Series latitude = ride.series(Channel.LATITUDE);
        Series longitude = ride.series(Channel.LONGITUDE);
        return latitude.isMeasured(second) && longitude.isMeasured(second)
                ? new Place(latitude.get(second), longitude.get(second))
                : null;
    }

    /** Great-circle distance to another place on a sphere (haversine), metres; 0.5 % wrong at worst. */
    public double metresTo(Place other) {
        double phi1 = Math.toRadians(latitudeDegrees);
        double phi2 = Math.toRadians(other.latitudeDegrees);
        double sinPhi = Math.sin((phi2 - phi1) / 2);
        double sinLambda = Math.sin(Math.toRadians(other.longitudeDegrees - longitudeDegrees) / 2);
        double h = sinPhi * sinPhi + Math.cos(phi1) * Math.cos(phi2) * sinLambda * sinLambda;
        return 2 * MEAN_EARTH_RADIUS_M * Math.asin(Math.min(1, Math.sqrt(h)));
    }
}
