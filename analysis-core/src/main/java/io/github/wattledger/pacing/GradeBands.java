package io.github.wattledger.pacing;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;

/**
 * The grade band of each second of a ride, so that power can be compared on like ground. Without altitude or distance all
 * seconds are of one band.
 */
final class GradeBands {
    /** Grades between two bands, rise over run. The bands are wide enough for the noise of a barometer over 100 m. */
    private static final double[] EDGES = {-0.04, -0.015, 0.015, 0.04, 0.07};

    /** Altitude is compared over this distance before and after a point, metres. */
    private static final double REACH_M = 50;

    /** The band of a second whose grade is not known. */
    static final int UNKNOWN = -1;

    private final int[] bandOfSecond;

    private GradeBands(int[] bandOfSecond) {
        this.bandOfSecond = bandOfSecond;
    }

    static GradeBands of(Ride ride) {
        if (!ride.has(Channel.ALTITUDE) || !ride.has(Channel.DISTANCE)) {
            return new GradeBands(new int[ride.seconds()]);
        }
        Series altitude = ride.series(Channel.ALTITUDE);
        Series distance = ride.series(Channel.DISTANCE);
        Window window = new Window(distance, altitude);
        int[] bands = new int[ride.seconds()];
        for (int second = 0; second < bands.length; second++) {
            bands[second] = window.bandAround(second);
        }
        return new GradeBands(bands);
    }

    /** The stretch within reach of a second, which moves along the ride second by second. */
    private static final class Window {
        private final Series distance;
        private final Series altitude;
        private int behind;
        private int ahead;
        private int afterAhead;

        Window(Series distance, Series altitude) {
            this.distance = distance;
            this.altitude = altitude;
            this.behind = measuredFrom(0);
            this.ahead = behind;
            this.afterAhead = measuredFrom(ahead + 1);
        }

        int bandAround(int second) {
            if (!isMeasured(second)) {
                return UNKNOWN;
            }
            double here = distance.get(second);
            while (distance.get(behind) < here - REACH_M) {
                behind = measuredFrom(behind + 1);
            }
            while (afterAhead < distance.size() && (ahead < second || distance.get(ahead) < here + REACH_M)) {
                ahead = afterAhead;
                afterAhead = measuredFrom(ahead + 1);
            }
            double run = distance.get(ahead) - distance.get(behind);
            return run >= REACH_M ? band((altitude.get(ahead) - altitude.get(behind)) / run) : UNKNOWN;
        }

        /** The first second from one on that has altitude and distance; the length of the ride when there is none. */
        private int measuredFrom(int from) {
            int second = from;
            while (second < distance.size() && !isMeasured(second)) {
                second++;
            }
            return second;
        }

        private boolean isMeasured(int second) {
            return altitude.isMeasured(second) && distance.isMeasured(second);
        }
    }

    private static int band(double grade) {
        int band = 0;
        while (band < EDGES.length && grade >= EDGES[band]) {
            band++;
        }
        return band;
    }

    static int count() {
        return EDGES.length + 1;
    }

    /** The band of a second, or {@link #UNKNOWN}. */
    int of(int second) {
        return bandOfSecond[second];
    }
}
