package io.github.wattledger.season;

import io.github.wattledger.intake.RideSetting;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import java.time.Instant;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A ride as the store keeps it.
 *
 * @param key the file content and the session within it
 * @param device what the recording device knew
 * @param setting what the file says about where it was ridden
 * @param start the first second
 * @param utcOffsetSeconds local time minus UTC, or null
 * @param format the file's format
 * @param channelCount how many channels were measured
 * @param lapCount how many laps it has
 * @param columns the packed channels
 * @param states the packed states
 * @param laps the packed laps
 * @param seconds its length on the axis
 * @param estimate its drag area and rolling resistance, or null where the kept channels give the same
 */
record StoredRide(
        Key key,
        Device device,
        RideSetting setting,
        Instant start,
        @Nullable Integer utcOffsetSeconds,
        String format,
        int channelCount,
        int lapCount,
        Map<Channel, RideCodec.Column> columns,
        RideCodec.Column states,
        RideCodec.Column laps,
        int seconds,
        @Nullable KeptEstimate estimate) {
    /** A session of a file's content. */
    record Key(String sha256, int sessionIndex) implements Comparable<Key> {
        @Override
        public int compareTo(Key other) {
            int bySha = sha256.compareTo(other.sha256);
            return bySha != 0 ? bySha : Integer.compare(sessionIndex, other.sessionIndex);
        }
    }

    /** What the device knew of its rider. */
    record Device(
            @Nullable String name,
            @Nullable Double thresholdPowerW,
            @Nullable Double thresholdHeartRateBpm,
            @Nullable Double maximumHeartRateBpm,
            @Nullable Double riderMassKg) {}

    /** Unpacks the ride with the channels that the store keeps. */
    Ride unpack() {
        Ride.Builder ride = Ride.builder(start, seconds).laps(RideCodec.unpackLaps(laps, lapCount));
        columns.forEach((channel, column) -> ride.channel(channel, RideCodec.unpack(column, seconds)));
        SecondState[] unpacked = RideCodec.unpackStates(states, seconds);
        for (int second = 0; second < seconds; second++) {
            if (unpacked[second] != SecondState.RIDING) {
                ride.state(second, unpacked[second]);
            }
        }
        return ride.build();
    }
}
