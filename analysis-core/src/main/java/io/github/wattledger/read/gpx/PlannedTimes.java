package io.github.wattledger.read.gpx;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Samples;

/**
 * Whether a track's times were made up: some route planners write them at one constant speed, or all alike. Nobody rides a
 * kilometre so that every position lies within two seconds of one constant speed. A track with a sensor in it was ridden.
 */
final class PlannedTimes {
    private static final int FEWEST_POINTS = 10;
    private static final double SHORTEST_M = 1000;

    /** Planners round times to whole seconds, and measure a little differently from us. */
    private static final double OFF_SECONDS = 2;

    private static final double OFF_FRACTION = 0.0005;

    private PlannedTimes() {}

    static boolean areIn(Samples samples) {
        int last = samples.size() - 1;
        if (last + 1 < FEWEST_POINTS || hasSensor(samples)) {
            return false;
        }
        double[] covered = coveredM(samples);
        long seconds = samples.epochSecond(last) - samples.epochSecond(0);
        if (!(covered[last] >= SHORTEST_M)) {
            return false;
        }
        for (int i = 0; i <= last; i++) {
            double even = seconds * covered[i] / covered[last];
            double off = Math.abs(samples.epochSecond(i) - samples.epochSecond(0) - even);
            if (off > OFF_SECONDS + OFF_FRACTION * seconds) {
                return false;
            }
        }
        return true;
    }

    private static boolean hasSensor(Samples samples) {
        return samples.channels().contains(Channel.POWER)
                || samples.channels().contains(Channel.HEART_RATE)
                || samples.channels().contains(Channel.CADENCE)
                || samples.channels().contains(Channel.TEMPERATURE);
    }

    /** Metres from the first point on; a point without a position counts as the one before. */
    private static double[] coveredM(Samples samples) {
        double[] covered = new double[samples.size()];
        int previous = -1;
        for (int i = 0; i < covered.length; i++) {
            covered[i] = i == 0 ? 0 : covered[i - 1];
            if (Double.isNaN(samples.get(Channel.LATITUDE, i))) {
                continue;
            }
            if (previous >= 0) {
                covered[i] += PositionMeasure.metres(
                        samples.get(Channel.LATITUDE, previous),
                        samples.get(Channel.LONGITUDE, previous),
                        samples.get(Channel.LATITUDE, i),
                        samples.get(Channel.LONGITUDE, i));
            }
            previous = i;
        }
        return covered;
    }
}
