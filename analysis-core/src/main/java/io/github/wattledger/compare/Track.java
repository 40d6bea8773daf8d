package io.github.wattledger.compare;

import io.github.wattledger.course.Place;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Where a ride went, on a plane: the seconds under way that have a position, each with its place, its direction and the
 * distance ridden. Places and directions come from a straight line fitted over the 20 m before and after each, so that
 * the scatter of a satellite receiver does not become time.
 */
final class Track {
    /** The fit reaches so far before and after a point, metres. */
    private static final double REACH_M = 20;

    /** Fewer points than this make no line. */
    private static final int LEAST_POINTS = 3;

    final int count;
    final double[] second;
    final double[] odometerM;
    final double[] x;
    final double[] y;
    final double[] headingX;
    final double[] headingY;
    /** Length of the track up to each point, metres on the plane. */
    final double[] pathM;

    private Track(int count, double[] second, double[] odometerM, double[] x, double[] y) {
        this.count = count;
        this.second = Arrays.copyOf(second, count);
        this.odometerM = Arrays.copyOf(odometerM, count);
        this.x = new double[count];
        this.y = new double[count];
        headingX = new double[count];
        headingY = new double[count];
        pathM = new double[count];
        smooth(x, y);
        for (int k = 1; k < count; k++) {
            pathM[k] = pathM[k - 1] + Math.hypot(this.x[k] - this.x[k - 1], this.y[k] - this.y[k - 1]);
        }
    }

    /** The first position of a ride, or null without any. */
    static @Nullable Place firstPlace(Ride ride) {
        for (int second = 0; second < ride.seconds(); second++) {
            Place place = Place.of(ride, second);
            if (place != null) {
                return place;
            }
        }
        return null;
    }

    /**
     * The track of a ride.
     *
     * @param ridden the distance along the ride
     * @param origin the point of the earth where the plane touches it
     */
    static Track of(Ride ride, Odometer ridden, Place origin) {
        Series latitude = ride.series(Channel.LATITUDE);
        Series longitude = ride.series(Channel.LONGITUDE);
        double[] second = new double[ride.seconds()];
        double[] odometer = new double[ride.seconds()];
        double[] x = new double[ride.seconds()];
        double[] y = new double[ride.seconds()];
        double shrink = Math.cos(Math.toRadians(origin.latitudeDegrees()));
        int count = 0;
        for (int s = 0; s < ride.seconds(); s++) {
            boolean usable = ride.state(s) == SecondState.RIDING
                    && latitude.isMeasured(s)
                    && longitude.isMeasured(s)
                    && !Double.isNaN(ridden.metresAt(s));
            if (usable) {
                second[count] = s;
                odometer[count] = ridden.metresAt(s);
                double east = Math.IEEEremainder(longitude.get(s) - origin.longitudeDegrees(), 360);
                x[count] = east * Place.METRES_PER_DEGREE * shrink;
                y[count] = (latitude.get(s) - origin.latitudeDegrees()) * Place.METRES_PER_DEGREE;
                count++;
            }
        }
        return new Track(count, second, odometer, x, y);
    }

    private void smooth(double[] rawX, double[] rawY) {
        int from = 0;
        int to = 0;
        for (int k = 0; k < count; k++) {
            while (odometerM[from] < odometerM[k] - REACH_M) {
                from++;
            }
            while (to < count && odometerM[to] <= odometerM[k] + REACH_M) {
                to++;
            }
            if (to - from < LEAST_POINTS || !fit(rawX, rawY, from, to, k)) {
                x[k] = rawX[k];
                y[k] = rawY[k];
                int before = Math.max(0, k - 1);
                int after = Math.min(count - 1, k + 1);
                headingX[k] = rawX[after] - rawX[before];
                headingY[k] = rawY[after] - rawY[before];
            }
        }
    }

    private boolean fit(double[] rawX, double[] rawY, int from, int to, int k) {
        int n = to - from;
        double sumD = 0;
        double sumDD = 0;
        double sumX = 0;
        double sumY = 0;
        double sumDX = 0;
        double sumDY = 0;
        for (int i = from; i < to; i++) {
            double d = odometerM[i] - odometerM[k];
            double dx = rawX[i] - rawX[k];
            double dy = rawY[i] - rawY[k];
            sumD += d;
            sumDD += d * d;
            sumX += dx;
            sumY += dy;
            sumDX += d * dx;
            sumDY += d * dy;
        }
        double spread = n * sumDD - sumD * sumD;
        // Points closer together than some metres give no direction.
        if (spread < n * n * REACH_M * REACH_M / 50) {
            return false;
        }
        headingX[k] = (n * sumDX - sumD * sumX) / spread;
        headingY[k] = (n * sumDY - sumD * sumY) / spread;
        x[k] = rawX[k] + (sumX - headingX[k] * sumD) / n;
        y[k] = rawY[k] + (sumY - headingY[k] * sumD) / n;
        return true;
    }

    /** Whether the road between a point and the next one is known: not across a hole in the recording. */
    boolean isJoined(int k, double longestM, double longestSeconds, double standstillM) {
        double length = pathM[k + 1] - pathM[k];
        return length <= standstillM || (length <= longestM && second[k + 1] - second[k] <= longestSeconds);
    }

    /** The last point at or before a distance; -1 when there is none. */
    int lastAtOrBefore(double distanceM) {
        int found = Arrays.binarySearch(odometerM, distanceM);
        return found >= 0 ? found : -found - 2;
    }
}
