package io.github.wattledger.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.garmin.fit.BufferEncoder;
import com.garmin.fit.DateTime;
import com.garmin.fit.File;
import com.garmin.fit.FileIdMesg;
import com.garmin.fit.Fit;
import com.garmin.fit.RecordMesg;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Samples;
import io.github.wattledger.testing.CleanTable;
import io.github.wattledger.testing.RawFit;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.function.DoubleConsumer;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever samples are written in a format come back as the same samples, as finely as the format can tell. */
class RoundTripTest {
    /** The steps in which the fields of the public FIT profile count; half a step is the most that can be lost. */
    private static final Map<Channel, Double> FIT_STEPS = Map.of(
            Channel.POWER, 1.0,
            Channel.HEART_RATE, 1.0,
            Channel.CADENCE, 1.0,
            Channel.SPEED, 0.001,
            Channel.DISTANCE, 0.01,
            Channel.ALTITUDE, 0.2,
            Channel.LATITUDE, 180 / Math.pow(2, 31),
            Channel.LONGITUDE, 180 / Math.pow(2, 31),
            Channel.TEMPERATURE, 1.0,
            Channel.ACCUMULATED_WORK, 1.0);

    private static final Set<Channel> GPX_CHANNELS = EnumSet.of(
            Channel.POWER,
            Channel.HEART_RATE,
            Channel.CADENCE,
            Channel.SPEED,
            Channel.DISTANCE,
            Channel.ALTITUDE,
            Channel.LATITUDE,
            Channel.LONGITUDE,
            Channel.TEMPERATURE);

    private static final Map<Channel, String> GPX_NAMES = new EnumMap<>(Map.of(
            Channel.POWER, "power",
            Channel.HEART_RATE, "hr",
            Channel.CADENCE, "cad",
            Channel.SPEED, "speed",
            Channel.DISTANCE, "distance",
            Channel.TEMPERATURE, "atemp",
            Channel.ALTITUDE, "ele"));

    /** Up to 300 samples with a random set of channels, each of which is missing now and then. */
    private static Samples samples(long seed, Set<Channel> possible) {
        Random random = new Random(seed);
        Set<Channel> channels = EnumSet.of(Channel.POWER);
        for (Channel channel : possible) {
            if (random.nextInt(4) > 0) {
                channels.add(channel);
            }
        }
        Samples.Builder samples = Samples.builder();
        long second = 1_700_000_000L + random.nextInt(1_000_000);
        int size = 1 + random.nextInt(300);
        for (int i = 0; i < size; i++) {
            samples.at(second);
            second += 1 + (random.nextInt(5) == 0 ? random.nextInt(100) : 0);
            for (Channel channel : channels) {
                if (i == 0 || random.nextInt(10) > 0) {
                    samples.set(channel, value(channel, random));
                }
            }
        }
        return samples.build();
    }

    private static double value(Channel channel, Random random) {
        return switch (channel) {
            case POWER -> random.nextInt(2000);
            case HEART_RATE -> 30 + random.nextInt(200);
            case CADENCE -> random.nextInt(200);
            case SPEED -> random.nextDouble() * 30;
            // The encoder takes single precision, which at 50 km is finer than the field's centimetre only on its grid.
            case DISTANCE -> random.nextInt(5_000_000) / 100.0;
            case ALTITUDE -> random.nextDouble() * 4000 - 400;
            case LATITUDE -> random.nextDouble() * 170 - 85;
            case LONGITUDE -> random.nextDouble() * 359 - 179.5;
            case TEMPERATURE -> random.nextInt(60) - 15;
            case LEFT_SHARE -> random.nextDouble();
            case ACCUMULATED_WORK -> random.nextInt(5_000_000);
            case RESPIRATION -> 10 + random.nextInt(40);
            case FRONT_TEETH, REAR_TEETH -> 10 + random.nextInt(40);
        };
    }

    private static Samples read(byte[] content) throws UnreadableRideException {
        return RideFiles.read(RideInput.of(content, "ride"), ReadOptions.DEFAULT)
                .recordings()
                .get(0)
                .samples();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
    void csvGivesBackExactlyTheSame(long seed) throws UnreadableRideException {
        Samples samples = samples(seed, EnumSet.allOf(Channel.class));
        StringBuilder text = new StringBuilder("time");
        for (Channel channel : Channel.values()) {
            text.append(';').append(CleanTable.header(channel));
        }
        for (int i = 0; i < samples.size(); i++) {
            text.append('\n').append(Instant.ofEpochSecond(samples.epochSecond(i)));
            for (Channel channel : Channel.values()) {
                double value = samples.get(channel, i);
                text.append(';').append(Double.isNaN(value) ? "" : Double.toString(value));
            }
        }
        assertThat(read(text.toString().getBytes(StandardCharsets.UTF_8)))
                .as("seed " + seed)
                .isEqualTo(samples);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
    void gpxGivesBackExactlyTheSame(long seed) throws UnreadableRideException {
        Samples random = samples(seed, GPX_CHANNELS);
        Random positions = new Random(seed);
        Samples.Builder complete = Samples.builder();
        StringBuilder text = new StringBuilder("<gpx><trk><trkseg>");
        for (int i = 0; i < random.size(); i++) {
            complete.at(random.epochSecond(i));
            double latitude = value(Channel.LATITUDE, positions);
            double longitude = value(Channel.LONGITUDE, positions);
            complete.set(Channel.LATITUDE, latitude).set(Channel.LONGITUDE, longitude);
            text.append("<trkpt lat=\"" + latitude + "\" lon=\"" + longitude + "\"><time>"
                    + Instant.ofEpochSecond(random.epochSecond(i)) + "</time>");
            for (Map.Entry<Channel, String> name : GPX_NAMES.entrySet()) {
                double value = random.get(name.getKey(), i);
                // Without speed and distance they would be measured.
                boolean needed = name.getKey() == Channel.SPEED || name.getKey() == Channel.DISTANCE;
                if (Double.isNaN(value) && needed && i == 0) {
                    value = 0;
                }
                complete.set(name.getKey(), value);
                if (!Double.isNaN(value)) {
                    text.append("<" + name.getValue() + ">" + value + "</" + name.getValue() + ">");
                }
            }
            text.append("</trkpt>");
        }
        text.append("</trkseg></trk></gpx>");
        assertThat(read(text.toString().getBytes(StandardCharsets.UTF_8)))
                .as("seed " + seed)
                .isEqualTo(complete.build());
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
    void fitGivesBackTheSameWithinHalfAStep(long seed) throws UnreadableRideException {
        Samples samples = samples(seed, FIT_STEPS.keySet());
        Samples back = read(fit(samples));
        assertThat(back.size()).isEqualTo(samples.size());
        assertThat(back.channels()).isEqualTo(samples.channels());
        for (int i = 0; i < samples.size(); i++) {
            assertThat(back.epochSecond(i)).isEqualTo(samples.epochSecond(i));
            for (Map.Entry<Channel, Double> step : FIT_STEPS.entrySet()) {
                double value = samples.get(step.getKey(), i);
                String where = "seed " + seed + ", sample " + i + ", " + step.getKey();
                if (Double.isNaN(value)) {
                    assertThat(back.get(step.getKey(), i)).as(where).isNaN();
                } else {
                    assertThat(back.get(step.getKey(), i))
                            .as(where)
                            .isCloseTo(value, within(step.getValue() * 0.501 + 1e-9));
                }
            }
        }
    }

    private static byte[] fit(Samples samples) {
        BufferEncoder encoder = new BufferEncoder(Fit.ProtocolVersion.V2_0);
        encoder.open();
        FileIdMesg id = new FileIdMesg();
        id.setType(File.ACTIVITY);
        encoder.write(id);
        for (int i = 0; i < samples.size(); i++) {
            RecordMesg record = new RecordMesg();
            record.setTimestamp(new DateTime(samples.epochSecond(i) - RawFit.EPOCH_SECOND));
            ifThere(samples.get(Channel.POWER, i), value -> record.setPower((int) value));
            ifThere(samples.get(Channel.HEART_RATE, i), value -> record.setHeartRate((short) value));
            ifThere(samples.get(Channel.CADENCE, i), value -> record.setCadence((short) value));
            ifThere(samples.get(Channel.SPEED, i), value -> record.setEnhancedSpeed((float) value));
            ifThere(samples.get(Channel.DISTANCE, i), value -> record.setDistance((float) value));
            ifThere(samples.get(Channel.ALTITUDE, i), value -> record.setEnhancedAltitude((float) value));
            ifThere(samples.get(Channel.LATITUDE, i), value -> record.setPositionLat(semicircles(value)));
            ifThere(samples.get(Channel.LONGITUDE, i), value -> record.setPositionLong(semicircles(value)));
            ifThere(samples.get(Channel.TEMPERATURE, i), value -> record.setTemperature((byte) value));
            ifThere(samples.get(Channel.ACCUMULATED_WORK, i), value -> record.setAccumulatedPower((long) value));
            encoder.write(record);
        }
        return encoder.close();
    }

    private static void ifThere(double value, DoubleConsumer field) {
        if (!Double.isNaN(value)) {
            field.accept(value);
        }
    }

    private static int semicircles(double degrees) {
        return (int) Math.round(degrees / 180 * Math.pow(2, 31));
    }
}
