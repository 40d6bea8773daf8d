package io.github.wattledger.rig;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.course.Course;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/** Slowing by Newton's law, with brakes and without. */
class BrakesTest {
    private static final int SECONDS = 60;
    private static final double KG = 85;
    private static final Rig RIG = Rig.of(KG, 0.36, 0.006);

    /** Starts at a speed and slows every second by what air, tyres and slope do, and by so much more. */
    private static boolean[] pulled(double startMps, double grade, double brakesMps2, double watts) {
        double[] mps = new double[SECONDS];
        double[] metres = new double[SECONDS];
        mps[0] = startMps;
        for (int s = 1; s < SECONDS; s++) {
            double v = mps[s - 1];
            double airMps2 = 1.225 / 2 * 0.3644 * v * v / KG;
            double roadMps2 = 9.80665 * (0.006 + grade);
            double pushMps2 = watts * 0.976 / v / KG;
            mps[s] = Math.max(1, v - airMps2 - roadMps2 - brakesMps2 + pushMps2);
            metres[s] = metres[s - 1] + (v + mps[s]) / 2;
        }
        Ride ride = Ride.builder(Instant.EPOCH, SECONDS)
                .channel(Channel.SPEED, Series.generate(SECONDS, s -> mps[s]))
                .channel(Channel.DISTANCE, Series.generate(SECONDS, s -> metres[s]))
                .channel(Channel.ALTITUDE, Series.generate(SECONDS, s -> 500 + grade * metres[s]))
                .channel(Channel.POWER, Series.generate(SECONDS, s -> watts))
                .build();
        return Brakes.pulled(ride, Course.of(ride).orElseThrow(), RIG, 1.225);
    }

    private static int count(boolean... seconds) {
        int count = 0;
        for (boolean each : seconds) {
            count += each ? 1 : 0;
        }
        return count;
    }

    @Test
    void rollingOutIsNoBraking() {
        // From 72 km/h the air alone takes 1 m/s in the first second.
        assertThat(count(pulled(20, 0, 0, 0))).isZero();
        assertThat(count(pulled(12, 0.08, 0, 0))).isZero();
    }

    @Test
    void slowingForABendIsBraking() {
        assertThat(count(pulled(14, 0, 2, 0))).isBetween(4, 7);
        assertThat(count(pulled(14, -0.06, 2, 0))).isBetween(5, 9);
    }

    @Test
    void whoPedalsDoesNotBrake() {
        assertThat(count(pulled(14, 0, 2, 150))).isZero();
    }
}
