package io.github.wattledger.load;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/** Against the definitions, by hand. */
class RideTemperatureTest {
    @Test
    void meanHighestAndRise() {
        RideTemperature temperature = RideTemperature.of(10, 12, 14, 16, 18, 20, 22, Double.NaN, 24, 26, 28, 31, 25)
                .orElseThrow();
        // Twelve readings: 246 in all; a sixth is two of them, 11 at first and 28 at last.
        assertThat(temperature.meanC()).isEqualTo(20.5);
        assertThat(temperature.highestC()).isEqualTo(31);
        assertThat(temperature.riseC()).isEqualTo(17);
    }

    @Test
    void itCanGrowColder() {
        assertThat(RideTemperature.of(6, 5, 4, 3, 2, -1).orElseThrow().riseC()).isEqualTo(-7);
    }

    @Test
    void notMeasuredIsNotKnown() {
        assertThat(RideTemperature.of(20, 20, 20, Double.NaN, 20, 20)).isEmpty();
        assertThat(RideTemperature.of(Ride.ofWatts(1, 2, 3, 4, 5, 6, 7))).isEmpty();
    }

    /** A recorder left in the sun during a pause says nothing of the ride. */
    @Test
    void pausesDoNotCount() {
        Ride ride = Ride.builder(Instant.parse("2026-06-14T05:00:00Z"), 9)
                .channel(Channel.TEMPERATURE, Series.of(20, 20, 20, 50, 50, 50, 20, 20, 20))
                .state(new Interval(3, 6), SecondState.PAUSED)
                .build();
        RideTemperature temperature = RideTemperature.of(ride).orElseThrow();
        assertThat(temperature.highestC()).isEqualTo(20);
        assertThat(temperature.meanC()).isEqualTo(20);
    }
}
