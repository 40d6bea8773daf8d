package io.github.wattledger.load;

import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Bounds;
import io.github.wattledger.rider.ZoneScheme;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How long readings of power or heart rate lay in each zone of a scheme. A zone includes its lower bound and excludes
 * its upper one, so the times add up to the seconds with a reading.
 */
public final class TimeInZones {
    /**
     * Bounds are rounded to a millionth of their unit: 0.55 × 200 W is 110.00000000000001 in binary arithmetic, and
     * 110 W would miss the zone that starts there.
     */
    private static final double BOUNDS_PER_UNIT = 1e6;

    private TimeInZones() {}

    /**
     * The time in each zone.
     *
     * @param readings one reading a second, in the threshold's unit; {@code NaN} (not measured) is in no zone
     * @param threshold what the scheme's fractions are fractions of, above 0
     * @param scheme how readings are divided
     * @return one entry a zone, from the lowest up
     * @throws IllegalArgumentException when a reading or the threshold is out of range
     */
    public static List<ZoneTime> of(Series readings, double threshold, ZoneScheme scheme) {
        Bounds.requireAboveZero("threshold", threshold);
        readings.requireReadings("readings");
        int zoneCount = scheme.zones().size();
        double[] from = new double[zoneCount];
        for (int zone = 0; zone < zoneCount; zone++) {
            from[zone] =
                    Math.rint(scheme.zones().get(zone).fromFraction() * threshold * BOUNDS_PER_UNIT) / BOUNDS_PER_UNIT;
        }
        int[] seconds = new int[zoneCount];
        for (int second = 0; second < readings.size(); second++) {
            double reading = readings.get(second);
            if (!Double.isNaN(reading)) {
                int zone = 0;
                for (int higher = 1; higher < zoneCount; higher++) {
                    zone += reading >= from[higher] ? 1 : 0;
                }
                seconds[zone]++;
            }
        }
        List<ZoneTime> times = new ArrayList<>(zoneCount);
        for (int zone = 0; zone < zoneCount; zone++) {
            @Nullable Double to = zone + 1 < zoneCount ? from[zone + 1] : null;
            times.add(new ZoneTime(scheme.zones().get(zone).name(), from[zone], to, seconds[zone]));
        }
        return List.copyOf(times);
    }

    /** {@link #of(Series, double, ZoneScheme)} for an array, which is copied. */
    public static List<ZoneTime> of(double[] readings, double threshold, ZoneScheme scheme) {
        return of(Series.of(readings), threshold, scheme);
    }
}
