package io.github.wattledger.course;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;

/** Straight lines through the altitudes of a ride over its distance under way; each is fitted around a place. */
final class AltitudeFit {
    /** The fit reaches so far before and after a node, metres. */
    private static final double REACH_M = 50;

    /** The fit reaches further where it has too few samples, metres, at most this far. */
    private static final double LONGEST_REACH_M = 400;

    /** Fewer samples than this make no line. */
    private static final int LEAST_SAMPLES = 5;

    private final double[] distance;
    private final double[] altitude;
    private int count;
    private double height;
    private double slope;
    private int from;
    private int nearFrom;

    private AltitudeFit(int most) {
        this.distance = new double[most];
        this.altitude = new double[most];
    }

    static AltitudeFit of(Ride ride) {
        Series distance = ride.series(Channel.DISTANCE);
        Series altitude = ride.series(Channel.ALTITUDE);
        AltitudeFit samples = new AltitudeFit(ride.seconds());
        for (int second = 0; second < ride.seconds(); second++) {
            if (ride.state(second) == SecondState.RIDING) {
                samples.add(distance.get(second), altitude.get(second));
            }
        }
        return samples;
    }

    private void add(double atM, double altitudeM) {
        boolean measured = !Double.isNaN(atM) && !Double.isNaN(altitudeM);
        if (measured && (count == 0 || atM >= distance[count - 1])) {
            distance[count] = atM;
            altitude[count] = altitudeM;
            count++;
        }
    }

    /** Whether there are samples enough for a line at all. */
    boolean isEnough() {
        return count >= LEAST_SAMPLES;
    }

    /** Distance of the first sample, metres. */
    double firstM() {
        return distance[0];
    }

    /** Distance of the last sample, metres. */
    double lastM() {
        return distance[count - 1];
    }

    /** Altitude of the line at the place it was last fitted around, metres; {@code NaN} where there is none. */
    double altitudeM() {
        return height;
    }

    /** Grade of the line that was last fitted, rise over run; {@code NaN} where there is none. */
    double grade() {
        return slope;
    }

    /** Fits the line around a distance; the window moves along, so distances have to come in rising order. */
    void fit(double atM) {
        height = Double.NaN;
        slope = Double.NaN;
        from = firstWithin(from, atM - LONGEST_REACH_M);
        nearFrom = firstWithin(nearFrom, atM - REACH_M);
        boolean fits = fitWithin(nearFrom, atM, REACH_M);
        for (double reach = 2 * REACH_M; reach <= LONGEST_REACH_M && !fits; reach *= 2) {
            fits = fitWithin(from, atM, reach);
        }
    }

    private int firstWithin(int from, double leastM) {
        int first = from;
        while (first < count && distance[first] < leastM) {
            first++;
        }
        return first;
    }

    private boolean fitWithin(int from, double atM, double reachM) {
        int n = 0;
        double sumX = 0;
        double sumY = 0;
        double sumXX = 0;
        double sumXY = 0;
        double base = altitude[Math.min(from, count - 1)];
        for (int k = from; k < count && distance[k] <= atM + reachM; k++) {
            double x = distance[k] - atM;
            if (x < -reachM) {
                continue;
            }
            double y = altitude[k] - base;
            n++;
            sumX += x;
            sumY += y;
            sumXX += x * x;
            sumXY += x * y;
        }
        double spread = n * sumXX - sumX * sumX;
        // A line over less than about half of the reach says nothing about the grade.
        if (n < LEAST_SAMPLES || spread < n * n * reachM * reachM / 50) {
            return false;
        }
        slope = (n * sumXY - sumX * sumY) / spread;
        height = base + (sumY - slope * sumX) / n;
        return true;
    }
}
