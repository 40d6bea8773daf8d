package io.github.wattledger.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.course.Place;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.time.Instant;
import java.util.Arrays;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Tracks over roads laid out in metres; a degree is that of the IUGG mean radius. */
class TrackTest {
    private static final double METRES_PER_DEGREE = Math.toRadians(6_371_008.8);
    private static final Place ORIGIN = new Place(60, 179.99);

    private static Ride.Builder ride(int seconds, IntToDoubleFunction eastM, IntToDoubleFunction northM) {
        // At 60 degrees a degree of longitude is half as long. The road crosses the date line.
        return Ride.builder(Instant.EPOCH, seconds)
                .channel(
                        Channel.LATITUDE,
                        Series.generate(seconds, s -> 60 + northM.applyAsDouble(s) / METRES_PER_DEGREE))
                .channel(
                        Channel.LONGITUDE,
                        Series.generate(
                                seconds,
                                s -> Math.IEEEremainder(
                                        179.99 + eastM.applyAsDouble(s) / (METRES_PER_DEGREE / 2), 360)));
    }

    private static double[] metres(int seconds, double speedMps) {
        double[] odometer = new double[seconds];
        Arrays.setAll(odometer, s -> s * speedMps);
        return odometer;
    }

    @Test
    void aStraightRoadHasItsPlacesAndItsDirection() {
        // 6 m east and 8 m north a second: 10 m/s. 200 s lead 1,200 m east, across the date line after 556 m.
        Track track = Track.of(ride(200, s -> 6.0 * s, s -> 8.0 * s).build(), new Odometer(metres(200, 10)), ORIGIN);
        assertThat(track.count).isEqualTo(200);
        for (int k = 0; k < 200; k++) {
            assertThat(track.x[k]).as("second %d", k).isCloseTo(6.0 * k, within(1e-6));
            assertThat(track.y[k]).isCloseTo(8.0 * k, within(1e-6));
            assertThat(track.headingX[k]).isCloseTo(0.6, within(1e-9));
            assertThat(track.headingY[k]).isCloseTo(0.8, within(1e-9));
            assertThat(track.pathM[k]).isCloseTo(10.0 * k, within(1e-6));
        }
        assertThat(track.lastAtOrBefore(505)).isEqualTo(50);
        assertThat(track.lastAtOrBefore(510)).isEqualTo(51);
        assertThat(track.lastAtOrBefore(-1)).isEqualTo(-1);
    }

    @Test
    void scatterIsSmoothedByTheLineOverTwentyMetres() {
        // At 10 m/s the line rests on five points. One of them lies 10 m to the side: it moves to a fifth of that, its
        // neighbours do so too, and the line turns by sum(d dy) / sum(d d) = 10 / 100 a metre for those 10 m away.
        Track track = Track.of(
                ride(100, s -> 10.0 * s, s -> s == 50 ? 10 : 0).build(), new Odometer(metres(100, 10)), ORIGIN);
        assertThat(track.y[50]).isCloseTo(2, within(1e-6));
        assertThat(track.headingY[50]).isCloseTo(0, within(1e-9));
        assertThat(track.y[49]).isCloseTo(2, within(1e-6));
        assertThat(track.headingY[49]).isCloseTo(100 / 1000.0, within(1e-9));
        assertThat(track.headingY[52]).isCloseTo(-200 / 1000.0, within(1e-9));
        assertThat(track.y[47]).isCloseTo(0, within(1e-6));
    }

    @Test
    void aFastOneGoesByItsNeighbours() {
        // 25 m a second: nobody else lies within 20 m, so place and direction are as recorded.
        Track track = Track.of(ride(10, s -> 15.0 * s, s -> -20.0 * s).build(), new Odometer(metres(10, 25)), ORIGIN);
        assertThat(track.x[5]).isCloseTo(75, within(1e-6));
        assertThat(track.y[5]).isCloseTo(-100, within(1e-6));
        assertThat(track.headingX[5]).isCloseTo(30, within(1e-6));
        assertThat(track.headingY[5]).isCloseTo(-40, within(1e-6));
        assertThat(track.headingX[0]).isCloseTo(15, within(1e-6));
        assertThat(track.headingY[9]).isCloseTo(-20, within(1e-6));
    }

    @Test
    void onlySecondsUnderWayWithAPlaceAreOnIt() {
        Ride ride = ride(100, s -> s == 10 ? Double.NaN : 6.0 * s, s -> s == 11 ? Double.NaN : 8.0 * s)
                .state(new Interval(20, 30), SecondState.STOPPED)
                .build();
        double[] odometer = metres(100, 10);
        odometer[0] = Double.NaN;
        Track track = Track.of(ride, new Odometer(odometer), ORIGIN);
        assertThat(track.count).isEqualTo(100 - 13);
        assertThat(track.second[0]).isEqualTo(1);
        assertThat(track.second[9]).isEqualTo(12);
        assertThat(track.second[17]).isEqualTo(30);
        assertThat(track.odometerM[17]).isEqualTo(300);
    }

    @Test
    void isNotJoinedAcrossAHole() {
        // From second 50 to 90 nothing: 400 m and 40 s.
        Ride ride =
                ride(100, s -> s > 50 && s < 90 ? Double.NaN : 10.0 * s, s -> 0).build();
        Track track = Track.of(ride, new Odometer(metres(100, 10)), ORIGIN);
        assertThat(track.second[50]).isEqualTo(50);
        assertThat(track.second[51]).isEqualTo(90);
        assertThat(track.isJoined(49, 300, 60, 30)).isTrue();
        assertThat(track.isJoined(50, 300, 60, 30)).as("too far").isFalse();
        assertThat(track.isJoined(50, 500, 60, 30)).isTrue();
        assertThat(track.isJoined(50, 500, 39, 30)).as("too long").isFalse();
        assertThat(track.isJoined(50, 300, 39, 500)).as("at one place").isTrue();
    }
}
