package io.github.wattledger.season;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.intake.RideSetting;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.time.Instant;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RideCodecTest {
    private static final List<SecondState> STATES = List.of(SecondState.values());

    private static Ride unpacked(Ride ride) {
        return new StoredRide(
                        new StoredRide.Key("00", 0),
                        new StoredRide.Device(null, null, null, null, null),
                        new RideSetting(false, true, 1),
                        ride.start(),
                        null,
                        "FIT",
                        0,
                        ride.laps().size(),
                        RideCodec.pack(ride),
                        RideCodec.packStates(ride),
                        RideCodec.packLaps(ride),
                        ride.seconds(),
                        null)
                .unpack();
    }

    /** The law: what was packed comes out bit for bit. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void everyValueComesBackBitForBit(long seed) {
        Random random = new Random(seed);
        int seconds = random.nextInt(4000) + 1;
        Ride.Builder builder = Ride.builder(Instant.ofEpochSecond(1_780_000_000L), seconds);
        for (Channel channel : RideCodec.KEPT) {
            int kind = random.nextInt(4);
            builder.channel(channel, Series.generate(seconds, second -> {
                if (random.nextInt(10) == 0) {
                    return Double.NaN;
                }
                return switch (kind) {
                    case 0 -> random.nextInt(500);
                    case 1 -> random.nextInt(5000) / 5.0 - 500;
                    case 2 -> random.nextInt(100_000) / 1000.0;
                    default ->
                        random.nextInt(50) == 0 ? -0.0 : random.nextGaussian() * Math.pow(10, random.nextInt(20));
                };
            }));
        }
        for (int i = 0; i < 5; i++) {
            int from = random.nextInt(seconds);
            builder.state(new Interval(from, from + random.nextInt(seconds - from)), STATES.get(random.nextInt(4)));
        }
        Ride ride = builder.laps(List.of(new Interval(0, seconds / 2), new Interval(seconds / 2, seconds)))
                .build();

        assertThat(unpacked(ride)).as("seed %d", seed).isEqualTo(ride);
    }

    /** An empty column once passed for one that is cut short. */
    @Test
    void aRideWithoutLapsComesBack() {
        Ride ride = Ride.ofWatts(1, 2, 3);
        assertThat(unpacked(ride)).isEqualTo(ride);
    }

    @Test
    void positionsAreNotKept() {
        Ride ride = Ride.builder(Instant.EPOCH, 2)
                .channel(Channel.POWER, Series.of(100, 200))
                .channel(Channel.LATITUDE, Series.of(45, 45))
                .build();
        assertThat(RideCodec.slim(ride).channels()).containsExactly(Channel.POWER);
    }
}
