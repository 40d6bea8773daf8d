package io.github.wattledger.rider;

import java.io.Serializable;
import java.util.List;

/**
 * A way to divide intensity into zones, by fractions of a threshold. A zone includes its lower bound and excludes its
 * upper one; the first zone starts at 0 and the last has no upper bound, so that every reading has exactly one zone.
 *
 * @param zones the zones from the lowest up
 */
public record ZoneScheme(List<Zone> zones) implements Serializable {
    /**
     * One zone.
     *
     * @param name what the zone is called
     * @param fromFraction its lower bound as a fraction of the threshold, included
     */
    public record Zone(String name, double fromFraction) implements Serializable {}

    /**
     * Seven levels by fractions of threshold power. Bounds: A. Coggan's levels of 2001 and the later book table (under
     * 55, 56-75, 76-90, 91-105, 106-120, 121-150, over 150 percent), read for continuous data as edges at 55, 75, 90,
     * 105, 120 and 150 percent.
     */
    public static final ZoneScheme POWER_SEVEN_LEVELS = new ZoneScheme(List.of(
            new Zone("recovery", 0),
            new Zone("endurance", 0.55),
            new Zone("tempo", 0.75),
            new Zone("threshold", 0.90),
            new Zone("VO2max", 1.05),
            new Zone("anaerobic", 1.20),
            new Zone("neuromuscular", 1.50)));

    /**
     * Five levels by fractions of threshold heart rate. Bounds: the heart-rate column beside the seven power levels
     * (under 68, 69-83, 84-94, 95-105, over 105 percent), read for continuous data as edges at 68, 83, 94 and 105
     * percent. Its author calls the column a rough guide: heart rate drifts, and differs on race day.
     */
    public static final ZoneScheme HEART_RATE_FIVE_LEVELS = new ZoneScheme(List.of(
            new Zone("recovery", 0),
            new Zone("endurance", 0.68),
            new Zone("tempo", 0.83),
            new Zone("threshold", 0.94),
            new Zone("above threshold", 1.05)));

    /** @throws IllegalArgumentException when there is no zone, the first does not start at 0, or bounds do not rise */
    public ZoneScheme {
        zones = List.copyOf(zones);
        if (zones.isEmpty() || zones.get(0).fromFraction() != 0) {
            throw new IllegalArgumentException("zones " + zones + ", expected at least one, the first from 0");
        }
        for (int i = 1; i < zones.size(); i++) {
            if (!(zones.get(i).fromFraction() > zones.get(i - 1).fromFraction())) {
                throw new IllegalArgumentException("zone bounds must rise, found " + zones);
            }
        }
    }
}
