package io.github.wattledger.read.csv;

import io.github.wattledger.ride.Channel;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * How to come from a column's numbers to a channel's unit: times the factor, plus the offset, divided by the divisor, so
 * that every definition stands as it is in its source.
 *
 * @param factor the factor
 * @param offset what is added to the product
 * @param divisor what the sum is divided by
 */
record CsvUnit(double factor, double offset, double divisor) {
    /** The channel's own unit. */
    static final CsvUnit SAME = new CsvUnit(1, 0, 1);

    private static final CsvUnit THOUSAND = new CsvUnit(1000, 0, 1);

    // The international mile of 1,609.344 m and foot of 0.3048 m (international yard and pound agreement, 1959).
    private static final CsvUnit MILES = new CsvUnit(1609.344, 0, 1);
    private static final CsvUnit FEET = new CsvUnit(0.3048, 0, 1);
    private static final CsvUnit MILES_AN_HOUR = new CsvUnit(1609.344, 0, 3600);
    private static final CsvUnit KILOMETRES_AN_HOUR = new CsvUnit(1, 0, 3.6);
    private static final CsvUnit PERCENT = new CsvUnit(1, 0, 100);
    private static final CsvUnit FAHRENHEIT = new CsvUnit(1, -32, 1.8);

    private static final Map<Channel, Set<String>> OWN_NAMES = Map.ofEntries(
            Map.entry(Channel.POWER, Set.of("w", "watt", "watts")),
            Map.entry(Channel.HEART_RATE, Set.of("bpm", "beats_min", "beats_per_minute", "1_min")),
            Map.entry(Channel.CADENCE, Set.of("rpm", "1_min", "revs_min")),
            Map.entry(Channel.SPEED, Set.of("mps", "m_s", "ms")),
            Map.entry(Channel.DISTANCE, Set.of("m", "metres", "meters")),
            Map.entry(Channel.ALTITUDE, Set.of("m", "metres", "meters")),
            Map.entry(Channel.LATITUDE, Set.of("deg", "degrees")),
            Map.entry(Channel.LONGITUDE, Set.of("deg", "degrees")),
            Map.entry(Channel.TEMPERATURE, Set.of("c", "celsius", "deg_c", "degc")),
            Map.entry(Channel.LEFT_SHARE, Set.of("fraction")),
            Map.entry(Channel.ACCUMULATED_WORK, Set.of("j", "joules")),
            Map.entry(Channel.RESPIRATION, Set.of("rpm", "brpm", "breaths_min", "1_min")),
            Map.entry(Channel.FRONT_TEETH, Set.of("t", "teeth")),
            Map.entry(Channel.REAR_TEETH, Set.of("t", "teeth")));

    private static final Map<Channel, Map<String, CsvUnit>> OTHERS = Map.of(
            Channel.POWER, Map.of("kw", THOUSAND),
            Channel.SPEED,
                    Map.of(
                            "kmh", KILOMETRES_AN_HOUR,
                            "km_h", KILOMETRES_AN_HOUR,
                            "kph", KILOMETRES_AN_HOUR,
                            "mph", MILES_AN_HOUR),
            Channel.DISTANCE, Map.of("km", THOUSAND, "mi", MILES, "miles", MILES, "ft", FEET),
            Channel.ALTITUDE, Map.of("ft", FEET, "feet", FEET, "km", THOUSAND),
            Channel.TEMPERATURE, Map.of("f", FAHRENHEIT, "fahrenheit", FAHRENHEIT),
            Channel.LEFT_SHARE, Map.of("percent", PERCENT),
            Channel.ACCUMULATED_WORK, Map.of("kj", THOUSAND));

    /** The unit of that name for a channel, or null when the channel is not measured in it. */
    static @Nullable CsvUnit named(Channel channel, String name) {
        if (OWN_NAMES.getOrDefault(channel, Set.of()).contains(name)) {
            return SAME;
        }
        return OTHERS.getOrDefault(channel, Map.of()).get(name);
    }

    double apply(double number) {
        return (number * factor + offset) / divisor;
    }
}
