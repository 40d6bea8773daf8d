package io.github.wattledger.pacing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.course.Course;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import java.time.Instant;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

/** From its definition: the 95th percentile of the seconds on ground of -3 % and steeper. */
class DescentSpeedTest {
    private static final int FLAT_SECONDS = 600;

    /** Ten minutes on the flat at 25 m/s, then a descent. */
    private static Ride ride(int descentSeconds, double grade, IntToDoubleFunction descentMps) {
        int seconds = FLAT_SECONDS + descentSeconds;
        double[] speed = new double[seconds];
        double[] distance = new double[seconds];
        double[] altitude = new double[seconds];
        altitude[0] = 2000;
        for (int second = 0; second < seconds; second++) {
            boolean isFlat = second < FLAT_SECONDS;
            speed[second] = isFlat ? 25 : descentMps.applyAsDouble(second - FLAT_SECONDS);
            if (second > 0) {
                distance[second] = distance[second - 1] + speed[second];
                altitude[second] = altitude[second - 1] + (isFlat ? 0 : grade * speed[second]);
            }
        }
        return Ride.builder(Instant.EPOCH, seconds)
                .channel(Channel.SPEED, Series.of(speed))
                .channel(Channel.DISTANCE, Series.of(distance))
                .channel(Channel.ALTITUDE, Series.of(altitude))
                .build();
    }

    private static double speed(Ride ride) {
        return DescentSpeed.mps(ride, Course.of(ride).orElse(null));
    }

    @Test
    void isThe95thPercentileOfTheSecondsDownhill() {
        // From 10 to 20 m/s evenly: 95 % of the seconds are slower than 19.5. The faster flat does not count; the fit
        // of
        // the grade over 100 m leaves out a few of the first seconds.
        assertThat(speed(ride(1001, -0.05, second -> 10 + second / 100.0))).isCloseTo(19.5, within(0.05));
    }

    @Test
    void isNotSaidOfTooFewSecondsOrFlatterGroundOrWithoutCourse() {
        assertThat(speed(ride(250, -0.05, second -> 15))).isNaN();
        assertThat(speed(ride(1000, -0.02, second -> 15))).isNaN();
        assertThat(DescentSpeed.mps(ride(1000, -0.05, second -> 15), null)).isNaN();
    }
}
