package io.github.wattledger.read.gpx;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Samples;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicMask;

/** Distance and speed from positions, along geodesics on the WGS-84 ellipsoid (C. F. F. Karney's algorithm). */
final class PositionMeasure {
    /** Over a longer gap a mean speed says nothing of its last second. */
    private static final long LONGEST_GAP_SECONDS = 10;

    /** 130 km/h: about the highest speed that riders reach on descents. */
    private static final double TOP_SPEED_MPS = 130 / 3.6;

    /** A bad position is over after so many points; what lasts longer is another place. */
    private static final int LASTING_POINTS = 10;

    private PositionMeasure() {}

    /** Metres between two positions in degrees; the shortest way over the ellipsoid, height left out. */
    static double metres(double latitude1, double longitude1, double latitude2, double longitude2) {
        return Geodesic.WGS84.Inverse(latitude1, longitude1, latitude2, longitude2, GeodesicMask.DISTANCE).s12;
    }

    /**
     * The samples with distance, speed or both set. The distance goes on over a break between two segments without
     * counting the way between them; the speed of a sample is that from the position before. A position that nobody
     * reaches in the time, and from which the next ones come back, is passed over.
     */
    static Samples complete(Samples samples, List<Integer> segmentStarts, boolean distance, boolean speed) {
        Set<Integer> starts = new HashSet<>(segmentStarts);
        Samples.Builder completed = Samples.builder();
        double coveredM = 0;
        int previous = -1;
        for (int i = 0; i < samples.size(); i++) {
            completed.at(samples.epochSecond(i));
            for (Channel channel : samples.channels()) {
                completed.set(channel, samples.get(channel, i));
            }
            if (starts.contains(i)) {
                previous = -1;
            }
            if (Double.isNaN(samples.get(Channel.LATITUDE, i))) {
                continue;
            }
            if (previous >= 0 && !isReachable(samples, previous, i) && comesBack(samples, previous, i)) {
                if (distance) {
                    completed.set(Channel.DISTANCE, coveredM);
                }
                continue;
            }
            if (previous >= 0) {
                double stepM = metres(samples, previous, i);
                coveredM += stepM;
                long seconds = samples.epochSecond(i) - samples.epochSecond(previous);
                if (speed && seconds > 0 && seconds <= LONGEST_GAP_SECONDS) {
                    completed.set(Channel.SPEED, stepM / seconds);
                }
            }
            if (distance) {
                completed.set(Channel.DISTANCE, coveredM);
            }
            previous = i;
        }
        return completed.build();
    }

    private static double metres(Samples samples, int from, int to) {
        return metres(
                samples.get(Channel.LATITUDE, from),
                samples.get(Channel.LONGITUDE, from),
                samples.get(Channel.LATITUDE, to),
                samples.get(Channel.LONGITUDE, to));
    }

    /** Whether a bicycle gets from one position to another; times are cut to whole seconds. */
    private static boolean isReachable(Samples samples, int from, int to) {
        double seconds = Math.abs((double) samples.epochSecond(to) - samples.epochSecond(from)) + 1;
        return metres(samples, from, to) <= TOP_SPEED_MPS * seconds;
    }

    private static boolean comesBack(Samples samples, int previous, int bad) {
        for (int i = bad + 1; i < samples.size() && i <= bad + LASTING_POINTS; i++) {
            if (!Double.isNaN(samples.get(Channel.LATITUDE, i)) && isReachable(samples, previous, i)) {
                return true;
            }
        }
        return false;
    }
}
