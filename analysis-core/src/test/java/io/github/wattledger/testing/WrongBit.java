package io.github.wattledger.testing;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.ride.Samples;
import java.util.List;
import java.util.Map;

/**
 * A recording with one bit of one sample wrong, as the field of a record message of the public FIT profile holds it.
 *
 * @param channel the field's channel
 * @param bit the place of the bit, 0 the lowest
 */
public record WrongBit(Channel channel, int bit) {
    /** 180 degrees are 2^31 semicircles (public FIT profile). */
    private static final double SEMICIRCLES_PER_DEGREE = (1L << 31) / 180.0;

    /** The fields of the public FIT profile; altitude, speed and distance in the forms that records hold. */
    private static final Map<Channel, Field> FIELDS = Map.of(
            Channel.DISTANCE, new Field(32, false, 100, 0),
            Channel.ALTITUDE, new Field(16, false, 5, 500),
            Channel.POWER, new Field(16, false, 1, 0),
            Channel.HEART_RATE, new Field(8, false, 1, 0),
            Channel.SPEED, new Field(16, false, 1000, 0),
            Channel.LATITUDE, new Field(32, true, SEMICIRCLES_PER_DEGREE, 0),
            Channel.LONGITUDE, new Field(32, true, SEMICIRCLES_PER_DEGREE, 0),
            Channel.TEMPERATURE, new Field(8, true, 1, 0),
            Channel.CADENCE, new Field(8, false, 1, 0));

    /** The channels that have such a field. */
    public static final List<Channel> CHANNELS =
            FIELDS.keySet().stream().sorted().toList();

    private record Field(int bits, boolean isSigned, double perUnit, double offset) {
        double with(double value, int bit) {
            long raw = Math.round((value + offset) * perUnit) ^ (1L << bit);
            long all = (1L << bits) - 1;
            long invalid = isSigned ? all >> 1 : all;
            if ((raw & all) == invalid) {
                return Double.NaN;
            }
            boolean isNegative = isSigned && (raw & (1L << (bits - 1))) != 0;
            return (isNegative ? (raw & all) - all - 1 : raw & all) / perUnit - offset;
        }
    }

    /** How many bits a channel's field has. */
    public static int bits(Channel channel) {
        Field field = FIELDS.get(channel);
        if (field == null) {
            throw new IllegalArgumentException("no field for " + channel);
        }
        return field.bits();
    }

    /** The recording with this bit of a sample wrong; the sample must have a value of the channel. */
    public Recording in(Recording recording, int sampleIndex) {
        Field field = FIELDS.get(channel);
        if (field == null) {
            throw new IllegalArgumentException("no field for " + channel);
        }
        return changed(
                recording, channel, sampleIndex, field.with(recording.samples().get(channel, sampleIndex), bit));
    }

    /** The recording with another value of one sample. */
    public static Recording changed(Recording recording, Channel channel, int sampleIndex, double value) {
        Samples samples = recording.samples();
        Samples.Builder changed = Samples.builder();
        for (int i = 0; i < samples.size(); i++) {
            changed.at(samples.epochSecond(i));
            for (Channel each : samples.channels()) {
                changed.set(each, each == channel && i == sampleIndex ? value : samples.get(each, i));
            }
        }
        return new Recording(
                changed.build(),
                recording.timerEvents(),
                recording.laps(),
                recording.totals(),
                RecordingDevice.UNKNOWN,
                recording.sport(),
                0,
                null);
    }
}
