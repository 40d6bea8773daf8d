package io.github.wattledger.road;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Gears;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import java.time.Instant;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Rides made from gear and cadence: speed is cadence times ratio times circumference. */
class GearUseTest {
    private static final Gears GEARS = new Gears(List.of(30, 46), List.of(11, 13, 15, 18, 21, 25, 29, 34), 2.2);

    /** Ten minutes each of 46 x 11 at 108 rpm, 46 x 18 at 85 rpm, and 30 x 34 at 52 rpm up 6 %. */
    private static Ride ride(boolean withTeeth) {
        Random chance = new Random(2);
        double[] speed = new double[1800];
        double[] cadence = new double[1800];
        double[] distance = new double[1800];
        double[] altitude = new double[1800];
        double[] front = new double[1800];
        double[] rear = new double[1800];
        for (int second = 0; second < 1800; second++) {
            int part = second / 600;
            front[second] = part == 2 ? 30 : 46;
            rear[second] = new double[] {11, 18, 34}[part];
            double rpm = new double[] {108, 85, 52}[part];
            speed[second] = rpm / 60 * front[second] / rear[second] * 2.2;
            // A sensor shows whole revolutions.
            cadence[second] = Math.round(rpm + chance.nextGaussian());
            distance[second] = (second == 0 ? 0 : distance[second - 1]) + speed[second];
            altitude[second] = (second == 0 ? 100 : altitude[second - 1]) + (part == 2 ? 0.06 * speed[second] : 0);
        }
        Ride.Builder ride = Ride.builder(Instant.EPOCH, 1800)
                .channel(Channel.SPEED, Series.of(speed))
                .channel(Channel.CADENCE, Series.of(cadence))
                .channel(Channel.DISTANCE, Series.of(distance))
                .channel(Channel.ALTITUDE, Series.of(altitude))
                .channel(Channel.POWER, Series.generate(1800, s -> 200));
        if (withTeeth) {
            ride.channel(Channel.FRONT_TEETH, Series.of(front)).channel(Channel.REAR_TEETH, Series.of(rear));
        }
        return ride.build();
    }

    private static void assertTruth(GearUse use) {
        assertThat(use.gears())
                .extracting(GearUse.InGear::gear)
                .contains(new GearUse.Gear(46, 11), new GearUse.Gear(46, 18), new GearUse.Gear(30, 34));
        assertThat(use.spunOutSeconds()).isCloseTo(600, within(5));
        assertThat(use.overGearedSeconds()).isCloseTo(600, within(15));
        assertThat(use.unmatchedSeconds()).isLessThan(10);
        GearUse.InGear top = use.gears().get(0);
        assertThat(top.seconds()).isCloseTo(600, within(5));
        // 108 rpm in 46 x 11 with 2.2 m: 16.56 m/s for 600 s.
        assertThat(top.distanceM()).isCloseTo(600 * 108 / 60.0 * 46 / 11 * 2.2, within(100.0));
    }

    @Test
    void isFoundFromSpeedAndCadence() {
        assertTruth(GearUse.of(ride(false), GEARS).orElseThrow());
    }

    @Test
    void isReadWhereTheBicycleRecordsIt() {
        GearUse use = GearUse.of(ride(true), GEARS).orElseThrow();
        assertTruth(use);
        assertThat(use.gears()).hasSize(3);
    }

    /** At 16.56 m/s a 50 x 11 turns at 99.4 rpm; at 1.68 m/s a 26 x 34 turns at 60.0 rpm. */
    @Test
    void otherChainringsWouldHaveServed() {
        Ride ride = ride(false);
        assertThat(GearUse.served(ride, new Gears(List.of(30, 50), GEARS.cogs(), 2.2))
                        .orElseThrow()
                        .spunOutSeconds())
                .isZero();
        assertThat(GearUse.served(ride, new Gears(List.of(30, 48), GEARS.cogs(), 2.2))
                        .orElseThrow()
                        .spunOutSeconds())
                .isEqualTo(600);
        assertThat(GearUse.served(ride, new Gears(List.of(25, 46), GEARS.cogs(), 2.2))
                        .orElseThrow()
                        .overGearedSeconds())
                .isZero();
    }

    @Test
    void isUnknownWithoutCadence() {
        assertThat(GearUse.of(Ride.ofWatts(200, 200), GEARS)).isEmpty();
        assertThat(GearUse.served(Ride.ofWatts(200, 200), GEARS)).isEmpty();
    }
}
