package io.github.wattledger.load;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.time.Instant;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class StretchNormalizedPowerTest {
    /** Power from 0 to 600 W with missing seconds, and pauses in some of which power was recorded. */
    private static Ride ride(Random random, int seconds) {
        Ride.Builder ride = Ride.builder(Instant.EPOCH, seconds)
                .channel(
                        Channel.POWER,
                        Series.generate(seconds, second -> random.nextInt(50) == 0 ? Double.NaN : random.nextInt(600)));
        for (int pause = 0; pause < 3; pause++) {
            int from = random.nextInt(seconds - 100);
            ride.state(new Interval(from, from + random.nextInt(100)), SecondState.PAUSED);
        }
        return ride.build();
    }

    /** The definition, applied to each stretch on its own, is {@link NormalizedPower}, which has its own tests. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void everyStretchIsAsIfTheRideWereNoMoreThanThat(long seed) {
        Random random = new Random(seed);
        Ride ride = ride(random, 2000);
        StretchNormalizedPower stretches = StretchNormalizedPower.of(ride);
        for (int i = 0; i < 500; i++) {
            int from = random.nextInt(2001);
            int to = from + random.nextInt(2001 - from);
            Interval stretch = new Interval(from, i % 2 == 0 ? to : Math.min(2000, from + random.nextInt(60)));
            OptionalDouble expected = NormalizedPower.of(ride, stretch);
            OptionalDouble found = stretches.of(stretch);
            assertThat(found.isPresent()).as("%s", stretch).isEqualTo(expected.isPresent());
            assertThat(found.orElse(0)).as("%s", stretch).isCloseTo(expected.orElse(0), within(1e-9));
        }
    }

    @Test
    void thirtySecondsWithPowerAreTheLeast() {
        StretchNormalizedPower stretches = StretchNormalizedPower.of(Ride.ofWatts(new double[60]));
        assertThat(stretches.of(new Interval(10, 39))).isEmpty();
        assertThat(stretches.of(new Interval(10, 40))).hasValue(0);
    }

    @Test
    void aRideWithoutPowerHasNone() {
        StretchNormalizedPower stretches =
                StretchNormalizedPower.of(Ride.builder(Instant.EPOCH, 100).build());
        assertThat(stretches.of(new Interval(0, 100))).isEmpty();
    }

    @Test
    void aStretchBeyondTheRideIsRefused() {
        StretchNormalizedPower stretches = StretchNormalizedPower.of(Ride.ofWatts(new double[60]));
        assertThatThrownBy(() -> stretches.of(new Interval(10, 61))).isInstanceOf(IndexOutOfBoundsException.class);
    }
}
