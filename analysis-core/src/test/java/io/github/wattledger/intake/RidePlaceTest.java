package io.github.wattledger.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/** A ride of six seconds: nothing at first, then 10 m a second with one second that was not measured. */
class RidePlaceTest {
    private static Ride ride() {
        return Ride.builder(Instant.EPOCH, 6)
                .channel(Channel.DISTANCE, Series.of(Double.NaN, 0, 10, Double.NaN, 30, 40))
                .build();
    }

    @Test
    void aDistanceIsWhereItWasFirstReached() {
        assertThat(new RidePlace.AtDistance(10).secondOf(ride())).isEqualTo(2);
        assertThat(new RidePlace.AtDistance(11).secondOf(ride())).isEqualTo(4);
        assertThat(new RidePlace.AtDistance(0).secondOf(ride())).isEqualTo(1);
    }

    @Test
    void aDistanceThatWasNeverReachedIsTheEnd() {
        assertThat(new RidePlace.AtDistance(41).secondOf(ride())).isEqualTo(6);
    }

    @Test
    void aTimeHasTheLastDistanceMeasured() {
        assertThat(new RidePlace.AtSecond(3).metresOf(ride())).isEqualTo(10);
        assertThat(new RidePlace.AtSecond(0).metresOf(ride())).isZero();
        assertThat(new RidePlace.AtSecond(100).metresOf(ride())).isEqualTo(40);
    }

    @Test
    void eachIsItself() {
        assertThat(new RidePlace.AtSecond(3).secondOf(ride())).isEqualTo(3);
        assertThat(new RidePlace.AtDistance(25).metresOf(ride())).isEqualTo(25);
    }

    @Test
    void aRideWithoutDistanceHasOnlyTimes() {
        Ride ride = Ride.builder(Instant.EPOCH, 6).build();
        assertThat(new RidePlace.AtSecond(3).secondOf(ride)).isEqualTo(3);
        assertThatThrownBy(() -> new RidePlace.AtDistance(10).secondOf(ride))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("the ride has no distance");
        assertThatThrownBy(() -> new RidePlace.AtSecond(10).metresOf(ride)).hasMessage("the ride has no distance");
    }

    @Test
    void whatIsNoPlaceIsRefused() {
        assertThatThrownBy(() -> new RidePlace.AtSecond(-1)).hasMessage("second -1, expected 0 or more");
        assertThatThrownBy(() -> new RidePlace.AtDistance(Double.NaN)).hasMessage("metres NaN, expected 0 or more");
        assertThatThrownBy(() -> new RidePlace.AtDistance(Double.POSITIVE_INFINITY))
                .hasMessage("metres Infinity, expected 0 or more");
    }
}
