package io.github.wattledger.testing;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import java.util.Locale;
import java.util.Map;

/** Writes a clean ride as the table that {@code docs/adding-a-reader.md} describes: a row for each second. */
public final class CleanTable {
    private static final Map<Channel, String> HEADERS = Map.ofEntries(
            Map.entry(Channel.POWER, "power_w"),
            Map.entry(Channel.HEART_RATE, "heart_rate_bpm"),
            Map.entry(Channel.CADENCE, "cadence_rpm"),
            Map.entry(Channel.SPEED, "speed_mps"),
            Map.entry(Channel.DISTANCE, "distance_m"),
            Map.entry(Channel.ALTITUDE, "altitude_m"),
            Map.entry(Channel.LATITUDE, "latitude_deg"),
            Map.entry(Channel.LONGITUDE, "longitude_deg"),
            Map.entry(Channel.TEMPERATURE, "temperature_c"),
            Map.entry(Channel.LEFT_SHARE, "left_share"),
            Map.entry(Channel.ACCUMULATED_WORK, "accumulated_work_j"),
            Map.entry(Channel.RESPIRATION, "respiration_rpm"),
            Map.entry(Channel.FRONT_TEETH, "front_teeth"),
            Map.entry(Channel.REAR_TEETH, "rear_teeth"));

    private CleanTable() {}

    /** The header of a channel. */
    public static String header(Channel channel) {
        String header = HEADERS.get(channel);
        if (header == null) {
            throw new AssertionError("no header for " + channel);
        }
        return header;
    }

    /** The table, with a column for the laps when the ride has any. */
    public static String of(Ride ride) {
        boolean withLaps = !ride.laps().isEmpty();
        StringBuilder text = new StringBuilder("time,state");
        for (Channel channel : Channel.values()) {
            text.append(',').append(header(channel));
        }
        text.append(withLaps ? ",lap\n" : "\n");
        for (int second = 0; second < ride.seconds(); second++) {
            text.append(ride.start().plusSeconds(second)).append(',');
            text.append(ride.state(second).name().toLowerCase(Locale.ROOT));
            for (Channel channel : Channel.values()) {
                double value = ride.series(channel).get(second);
                text.append(',').append(Double.isNaN(value) ? "" : Double.toString(value));
            }
            text.append(withLaps ? "," + lap(ride, second) + "\n" : "\n");
        }
        return text.toString();
    }

    private static String lap(Ride ride, int second) {
        for (int i = 0; i < ride.laps().size(); i++) {
            Interval lap = ride.laps().get(i);
            if (lap.fromSecond() <= second && second < lap.toSecond()) {
                return String.valueOf(i + 1);
            }
        }
        return "";
    }
}
