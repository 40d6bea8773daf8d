package io.github.wattledger.pacing.price;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.course.Course;
import io.github.wattledger.replay.Replay;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rig.Rig;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/** What a repair takes out of which seconds, worked out by hand. */
class RepairedPowerTest {
    private static final int SECONDS = 3600;
    private static final int OFFSET = 600;

    /**
     * An hour at 8 m/s on level ground: 200 W, ten seconds of them at 400 W from 300 on, one at 0 W at 500, none recorded at
     * 700, coasted from 1,000 to 1,200.
     */
    private static double watts(int second) {
        if ((second >= 1000 && second < 1200) || second == 500) {
            return 0;
        }
        return second == 700 ? Double.NaN : second >= 300 && second < 310 ? 400 : 200;
    }

    private static RepairedPower recorded() {
        Ride ride = Ride.builder(Instant.EPOCH, SECONDS)
                .channel(Channel.POWER, Series.generate(SECONDS, RepairedPowerTest::watts))
                .channel(Channel.SPEED, Series.generate(SECONDS, second -> 8))
                .channel(Channel.DISTANCE, Series.generate(SECONDS, second -> 8.0 * (second + 1)))
                .channel(Channel.ALTITUDE, Series.generate(SECONDS, second -> 40))
                .build();
        Replay replay = Replay.of(ride, Course.of(ride).orElse(null), Rig.of(85, 0.358, 0.006))
                .orElseThrow(AssertionError::new);
        return new RepairedPower(ride.series(Channel.POWER), replay);
    }

    @Test
    void nothingIsChangedAtFirstAndEveryPedalledSecondMakesUp() {
        RepairedPower power = recorded();
        assertThat(power.factor(100)).isEqualTo(1);
        assertThat(power.makesUp(0)).isTrue();
        assertThat(power.makesUp(100)).isTrue();
        assertThat(power.makesUp(500)).as("a second at 0 W").isFalse();
        assertThat(power.makesUp(700)).as("a second without power").isFalse();
        assertThat(power.makesUp(1100)).as("coasting").isFalse();
    }

    @Test
    void scalingTakesTheSameShareOutOfEachSecond() {
        RepairedPower power = recorded();
        // 100 s x 200 W x 0.2, then half of the 160 W that are left.
        assertChange(power.scale(new Interval(100, 200), 0.8), 100, 4000);
        assertThat(power.factor(100)).isCloseTo(0.8, within(1e-12));
        assertThat(power.factor(199)).isCloseTo(0.8, within(1e-12));
        assertThat(power.factor(99)).isEqualTo(1);
        assertThat(power.factor(200)).isEqualTo(1);
        assertChange(power.scale(new Interval(100, 200), 0.5), 100, 8000);
        assertThat(power.factor(150)).isCloseTo(0.4, within(1e-12));
        assertThat(power.makesUp(99)).isTrue();
        assertThat(power.makesUp(100)).isFalse();
        assertThat(power.makesUp(199)).isFalse();
        assertThat(power.makesUp(200)).isTrue();
    }

    @Test
    void coastingIsNotScaled() {
        RepairedPower power = recorded();
        assertChange(power.scale(new Interval(1050, 1150), 0.8), 0, 0);
        assertThat(power.factor(1100)).isEqualTo(1);
    }

    @Test
    void levellingScalesButGoesOnMakingUp() {
        RepairedPower power = recorded();
        // Half as much again is put in: 10 s x 100 W.
        assertChange(power.level(new Interval(100, 110), 1.5), 10, -1000);
        assertThat(power.factor(105)).isCloseTo(1.5, within(1e-12));
        assertThat(power.makesUp(105)).isTrue();
    }

    @Test
    void cappingTakesOutWhatLiesAbove() {
        RepairedPower power = recorded();
        assertChange(power.cap(new Interval(290, 320), 250), 10, 1500);
        assertThat(power.factor(300)).isCloseTo(0.625, within(1e-12));
        assertThat(power.factor(299)).isEqualTo(1);
        assertThat(power.factor(310)).isEqualTo(1);
        assertThat(power.makesUp(289)).isTrue();
        assertThat(power.makesUp(290)).isFalse();
        assertThat(power.makesUp(319)).isFalse();
        assertThat(power.makesUp(320)).isTrue();
        assertChange(power.cap(new Interval(100, 120), 200), 0, 0);
    }

    @Test
    void cappingSeesWhatWasScaledBefore() {
        RepairedPower power = recorded();
        power.scale(new Interval(290, 320), 0.75);
        // 400 W are 300 W by then, 200 W are 150 W.
        assertChange(power.cap(new Interval(290, 320), 250), 10, 500);
        assertThat(power.factor(305)).isCloseTo(0.625, within(1e-12));
        assertThat(power.factor(295)).isCloseTo(0.75, within(1e-12));
    }

    @Test
    void whatMakesUpIsCountedInSecondsAndKilojoules() {
        RepairedPower power = recorded();
        assertThat(requireNonNull(power.makingUp(OFFSET)).firstSecond()).isEqualTo(OFFSET);
        power.makeUpFrom(3000);
        assertThat(power.makesUp(2999)).isFalse();
        assertThat(power.makesUp(3000)).isTrue();
        power.makeUpFrom(3100);
        // 500 s of 200 W, a tenth of them taken out of 100.
        power.level(new Interval(3100, 3200), 0.9);
        PriceSteps.MakingUp makingUp = requireNonNull(power.makingUp(OFFSET));
        assertThat(makingUp.firstSecond()).isEqualTo(OFFSET + 3100);
        assertThat(makingUp.seconds()).isEqualTo(500);
        assertThat(makingUp.workKJ()).isCloseTo(98, within(1e-9));
        power.makeUpFrom(SECONDS);
        assertThat(power.makingUp(OFFSET)).isNull();
    }

    @Test
    void whatWasChangedIsKnownToACopyToo() {
        RepairedPower power = recorded();
        assertThat(power.changed()).isEmpty();
        power.scale(new Interval(100, 200), 0.8);
        power.cap(new Interval(290, 320), 250);
        RepairedPower copy = new RepairedPower(power);
        copy.level(new Interval(400, 500), 1.1);
        copy.makeUpFrom(50);
        assertThat(power.changed()).containsExactly(new Interval(100, 200), new Interval(290, 320));
        assertThat(copy.changed())
                .containsExactly(
                        new Interval(100, 200), new Interval(290, 320), new Interval(400, 500), new Interval(0, 50));
        copy.makeUpFrom(2 * SECONDS);
        assertThat(copy.changed()).contains(new Interval(0, SECONDS));
        assertThat(copy.isMadeUpFor()).isFalse();
        assertThat(power.isMadeUpFor()).isTrue();
    }

    private static void assertChange(RepairedPower.Change change, int seconds, double takenOutJ) {
        assertThat(change.seconds()).isEqualTo(seconds);
        assertThat(change.takenOutJ()).isCloseTo(takenOutJ, within(1e-9));
    }
}
