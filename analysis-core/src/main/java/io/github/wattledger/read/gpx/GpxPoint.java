package io.github.wattledger.read.gpx;

import io.github.wattledger.read.Timestamps;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Samples;
import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;

/** A track point as it is being read. Of two elements for the same thing the first is taken. */
final class GpxPoint {
    private static final int LONGEST_NUMBER = 40;
    private static final double MOST_LATITUDE_DEGREES = 90;
    private static final double MOST_LONGITUDE_DEGREES = 180;

    /** The names under which the extensions in use write a channel, lower case; units as the channel's. */
    private static final Map<String, Channel> NAMES = Map.ofEntries(
            Map.entry("power", Channel.POWER),
            Map.entry("powerinwatts", Channel.POWER),
            Map.entry("watts", Channel.POWER),
            Map.entry("hr", Channel.HEART_RATE),
            Map.entry("heartrate", Channel.HEART_RATE),
            Map.entry("heart_rate", Channel.HEART_RATE),
            Map.entry("cad", Channel.CADENCE),
            Map.entry("cadence", Channel.CADENCE),
            Map.entry("atemp", Channel.TEMPERATURE),
            Map.entry("temp", Channel.TEMPERATURE),
            Map.entry("temperature", Channel.TEMPERATURE),
            Map.entry("speed", Channel.SPEED),
            Map.entry("distance", Channel.DISTANCE),
            Map.entry("ele", Channel.ALTITUDE));

    private final Map<Channel, Double> values = new EnumMap<>(Channel.class);
    private OptionalLong epochSecond = OptionalLong.empty();
    private boolean hasZone;
    private int badValues;

    GpxPoint(@Nullable String latitude, @Nullable String longitude) {
        double north = degrees(latitude, MOST_LATITUDE_DEGREES);
        double east = degrees(longitude, MOST_LONGITUDE_DEGREES);
        if (!Double.isNaN(north) && !Double.isNaN(east)) {
            values.put(Channel.LATITUDE, north);
            values.put(Channel.LONGITUDE, east);
        }
    }

    private double degrees(@Nullable String text, double most) {
        double value = number(text == null ? "" : text.strip());
        if (Math.abs(value) <= most) {
            return value;
        }
        badValues++;
        return Double.NaN;
    }

    /** Takes an element within the point. */
    void set(String lowerCaseName, String text) {
        if (lowerCaseName.equals("time")) {
            if (epochSecond.isEmpty()) {
                epochSecond = Timestamps.epochSecond(text);
                hasZone = Timestamps.hasZone(text);
            }
            return;
        }
        Channel channel = NAMES.get(lowerCaseName);
        if (channel == null || text.isEmpty() || values.containsKey(channel)) {
            return;
        }
        double value = number(text);
        if (Double.isNaN(value)) {
            badValues++;
        } else {
            values.put(channel, value);
        }
    }

    /** A finite decimal number, or NaN. */
    private static double number(String text) {
        if (text.isEmpty() || text.length() > LONGEST_NUMBER) {
            return Double.NaN;
        }
        for (int i = 0; i < text.length(); i++) {
            // Java's own parser also takes hexadecimal numbers, words and type letters.
            if ("0123456789+-.eE".indexOf(text.charAt(i)) < 0) {
                return Double.NaN;
            }
        }
        try {
            double value = Double.parseDouble(text);
            return Double.isFinite(value) ? value : Double.NaN;
        } catch (NumberFormatException e) {
            return Double.NaN;
        }
    }

    OptionalLong epochSecond() {
        return epochSecond;
    }

    boolean hasZone() {
        return hasZone;
    }

    int badValues() {
        return badValues;
    }

    double get(Channel channel) {
        return values.getOrDefault(channel, Double.NaN);
    }

    void copyInto(Samples.Builder samples) {
        values.forEach(samples::set);
    }
}
