package io.github.wattledger.course;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Gears;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
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
        assertTruth(use(ride(false), GEARS).orElseThrow());
    }

    @Test
    void isReadWhereTheBicycleRecordsIt() {
        GearUse use = use(ride(true), GEARS).orElseThrow();
        assertTruth(use);
        assertThat(use.gears()).hasSize(3);
    }

    /** At 16.56 m/s a 50 x 11 turns at 99.4 rpm; at 1.68 m/s a 26 x 34 turns at 60.0 rpm. */
    @Test
    void otherChainringsWouldHaveServed() {
        Ride ride = ride(false);
        assertThat(served(ride, new Gears(List.of(30, 50), GEARS.cogs(), 2.2))
                        .orElseThrow()
                        .spunOutSeconds())
                .isZero();
        assertThat(served(ride, new Gears(List.of(30, 48), GEARS.cogs(), 2.2))
                        .orElseThrow()
                        .spunOutSeconds())
                .isEqualTo(600);
        assertThat(served(ride, new Gears(List.of(25, 46), GEARS.cogs(), 2.2))
                        .orElseThrow()
                        .overGearedSeconds())
                .isZero();
    }

    /** A minute at a cadence in 46 x 18, with the teeth recorded or not. */
    private static Ride.Builder steady(double rpm, int front, int rear) {
        double speed = rpm / 60 * front / rear * 2.2;
        return Ride.builder(Instant.EPOCH, 60)
                .channel(Channel.SPEED, Series.generate(60, s -> speed))
                .channel(Channel.CADENCE, Series.generate(60, s -> rpm))
                .channel(Channel.POWER, Series.generate(60, s -> 200));
    }

    @Test
    void everyPedalledSecondHasItsGear() {
        GearUse use = use(steady(85, 46, 18).build(), GEARS).orElseThrow();
        assertThat(use.pedalledSeconds()).isEqualTo(60);
        assertThat(use.unmatchedSeconds()).isZero();
        assertThat(use.gears()).singleElement().satisfies(gear -> {
            assertThat(gear.gear()).isEqualTo(new GearUse.Gear(46, 18));
            assertThat(gear.seconds()).isEqualTo(60);
            assertThat(gear.distanceM()).isCloseTo(85 * 46 / 18.0 * 2.2, within(1e-9));
        });
        assertThat(use.top()).isEqualTo(new GearUse.Gear(46, 11));
        assertThat(use.lowest()).isEqualTo(new GearUse.Gear(30, 34));
        assertThat(use.firstSpunOutSecond()).isNull();
        assertThat(use.firstOverGearedSecond()).isNull();
    }

    @Test
    void oneOddSecondOfFiveChangesNoGear() {
        for (int odd : new int[] {0, 1, 30, 58, 59}) {
            Ride ride = steady(85, 46, 18)
                    .channel(Channel.CADENCE, Series.generate(60, s -> s == odd ? 170 : 85))
                    .build();
            GearUse use = use(ride, GEARS).orElseThrow();
            assertThat(use.unmatchedSeconds()).as("second %d", odd).isZero();
            assertThat(use.gears()).as("second %d", odd).hasSize(1);
        }
    }

    @Test
    void whatIsNotPedalledHasNone() {
        Ride ride = steady(85, 46, 18)
                .channel(
                        Channel.POWER,
                        Series.generate(60, s -> s < 10 ? 29.9 : s < 20 ? 30 : s < 30 ? Double.NaN : 200))
                .channel(Channel.CADENCE, Series.generate(60, s -> s >= 30 && s < 35 ? 19.9 : 85))
                .state(new Interval(40, 50), SecondState.STOPPED)
                .build();
        // Ten seconds under 30 W, five under 20 rpm and ten of a stop; seconds without power may have been pedalled.
        assertThat(use(ride, GEARS).orElseThrow().pedalledSeconds()).isEqualTo(60 - 25);
    }

    @Test
    void recordedTeethThatTheBicycleHasNotFitNoGear() {
        Ride ride = steady(85, 46, 18)
                .channel(Channel.FRONT_TEETH, Series.generate(60, s -> 46))
                .channel(Channel.REAR_TEETH, Series.generate(60, s -> s < 20 ? 17 : 18))
                .build();
        GearUse use = use(ride, GEARS).orElseThrow();
        assertThat(use.unmatchedSeconds()).isEqualTo(20);
        assertThat(use.gears()).extracting(GearUse.InGear::seconds).containsExactly(40);
        // Recorded teeth go before speed and cadence.
        Ride told = steady(85, 46, 18)
                .channel(Channel.FRONT_TEETH, Series.generate(60, s -> 30))
                .channel(Channel.REAR_TEETH, Series.generate(60, s -> 21))
                .build();
        assertThat(use(told, GEARS).orElseThrow().gears())
                .extracting(GearUse.InGear::gear)
                .containsExactly(new GearUse.Gear(30, 21));
        // A chainring alone tells nothing.
        Ride half = steady(85, 46, 18)
                .channel(Channel.FRONT_TEETH, Series.generate(60, s -> 30))
                .channel(Channel.REAR_TEETH, Series.generate(60, s -> 0))
                .build();
        assertThat(use(half, GEARS).orElseThrow().gears())
                .extracting(GearUse.InGear::gear)
                .containsExactly(new GearUse.Gear(46, 18));
    }

    @Test
    void aRatioSixPercentOffFitsNone() {
        // 46 x 11 is the highest gear; 5 % above it is still that, 7 % above it is none.
        double speed = 90 / 60.0 * 46 / 11 * 2.2;
        for (double off : new double[] {1.05, 1.07}) {
            Ride ride = steady(90, 46, 11)
                    .channel(Channel.SPEED, Series.generate(60, s -> speed * off))
                    .build();
            assertThat(use(ride, GEARS).orElseThrow().unmatchedSeconds()).isEqualTo(off < 1.06 ? 0 : 60);
        }
    }

    @Test
    void spinningOutIsAboveAHundredInTheTopGear() {
        assertThat(use(steady(100, 46, 11).build(), GEARS).orElseThrow().spunOutSeconds())
                .isZero();
        GearUse above = use(steady(101, 46, 11).build(), GEARS).orElseThrow();
        assertThat(above.spunOutSeconds()).isEqualTo(60);
        assertThat(above.firstSpunOutSecond()).isZero();
        assertThat(use(steady(101, 46, 13).build(), GEARS).orElseThrow().spunOutSeconds())
                .isZero();
    }

    /** Ten minutes in 30 x 34, up a grade. */
    private static Ride grinding(double rpm, double grade) {
        double speed = rpm / 60 * 30 / 34 * 2.2;
        return Ride.builder(Instant.EPOCH, 600)
                .channel(Channel.SPEED, Series.generate(600, s -> speed))
                .channel(Channel.CADENCE, Series.generate(600, s -> rpm))
                .channel(Channel.POWER, Series.generate(600, s -> 250))
                .channel(Channel.DISTANCE, Series.generate(600, s -> speed * s))
                .channel(Channel.ALTITUDE, Series.generate(600, s -> grade * speed * s))
                .build();
    }

    @Test
    void grindingIsUnderSixtyInTheLowestGearOnAClimb() {
        GearUse under = use(grinding(59, 0.06), GEARS).orElseThrow();
        assertThat(under.overGearedSeconds()).isEqualTo(600);
        assertThat(under.firstOverGearedSecond()).isZero();
        assertThat(use(grinding(60, 0.06), GEARS).orElseThrow().overGearedSeconds())
                .isZero();
        // 3 % is a climb, 2.9 % is none.
        assertThat(use(grinding(59, 0.031), GEARS).orElseThrow().overGearedSeconds())
                .isEqualTo(600);
        assertThat(use(grinding(59, 0.029), GEARS).orElseThrow().overGearedSeconds())
                .isZero();
        // 59 rpm on 30 teeth are 57.1 on 31, and 61.0 on 29.
        assertThat(served(grinding(59, 0.06), new Gears(List.of(31), GEARS.cogs(), 2.2)))
                .contains(new GearUse.Served(0, 600));
        assertThat(served(grinding(59, 0.06), new Gears(List.of(29), GEARS.cogs(), 2.2)))
                .contains(new GearUse.Served(0, 0));
        assertThat(served(grinding(59, 0), new Gears(List.of(31), GEARS.cogs(), 2.2)))
                .contains(new GearUse.Served(0, 0));
    }

    @Test
    void isUnknownWithoutCadence() {
        assertThat(use(Ride.ofWatts(200, 200), GEARS)).isEmpty();
        assertThat(served(Ride.ofWatts(200, 200), GEARS)).isEmpty();
    }

    private static Optional<GearUse> use(Ride ride, Gears gears) {
        return GearUse.of(ride, Course.of(ride).orElse(null), gears);
    }

    private static Optional<GearUse.Served> served(Ride ride, Gears other) {
        return GearUse.served(ride, Course.of(ride).orElse(null), other);
    }
}
