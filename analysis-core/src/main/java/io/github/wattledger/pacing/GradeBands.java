package io.github.wattledger.pacing;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;

/**
 * Sorts the seconds of a ride by the grade they were ridden on, so that power can be compared on like ground. Without
 * altitude or distance all seconds are of one band.
 */
final class GradeBands {
    /** Grades between two bands, rise over run. Wide enough for the noise of a barometer over 100 m. */
    private static final double[] EDGES = {-0.04, -0.015, 0.015, 0.04, 0.07};

    /** Altitude is compared over this distance before and after a point. */
    private static final double REACH_M = 50;

    /** A band for seconds whose grade is not known. */
    static final int UNKNOWN = -1;

    private final int[] bandOfSecond;
    private final boolean terrainKnown;

    private GradeBands(int[] bandOfSecond, boolean terrainKnown) {
        this.bandOfSecond = bandOfSecond;
        this.terrainKnown = terrainKnown;
    }

    static GradeBands of(Ride ride) {
        if (!ride.has(Channel.ALTITUDE) || !ride.has(Channel.DISTANCE)) {
            return new GradeBands(new int[ride.seconds()], false);
        }
        Series altitude = ride.series(Channel.ALTITUDE);
        Series distance = ride.series(Channel.DISTANCE);
        int[] measured = new int[ride.seconds()];
        int count = 0;
        for (int second = 0; second < ride.seconds(); second++) {
            if (altitude.isMeasured(second) && distance.isMeasured(second)) {
                measured[count++] = second;
            }
        }
        int[] bands = new int[ride.seconds()];
        java.util.Arrays.fill(bands, UNKNOWN);
        int behind = 0;
        int ahead = 0;
        for (int k = 0; k < count; k++) {
            double here = distance.get(measured[k]);
            while (distance.get(measured[behind]) < here - REACH_M) {
                behind++;
            }
            ahead = Math.max(ahead, k);
            while (ahead + 1 < count && distance.get(measured[ahead]) < here + REACH_M) {
                ahead++;
            }
            double run = distance.get(measured[ahead]) - distance.get(measured[behind]);
            if (run >= REACH_M) {
                double rise = altitude.get(measured[ahead]) - altitude.get(measured[behind]);
                bands[measured[k]] = band(rise / run);
            }
        }
        return new GradeBands(bands, true);
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

    boolean isTerrainKnown() {
        return terrainKnown;
    }
}
