package io.github.wattledger.pacing;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.course.Course;
import io.github.wattledger.power.Ability;
import io.github.wattledger.replay.Replay;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rig.Rig;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/** What a mending takes out of which seconds, by hand. */
class MendTest {
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

    private static Mend mend() {
        Ride ride = Ride.builder(Instant.EPOCH, SECONDS)
                .channel(Channel.POWER, Series.generate(SECONDS, MendTest::watts))
                .channel(Channel.SPEED, Series.generate(SECONDS, second -> 8))
                .channel(Channel.DISTANCE, Series.generate(SECONDS, second -> 8.0 * (second + 1)))
                .channel(Channel.ALTITUDE, Series.generate(SECONDS, second -> 40))
                .build();
        Race race = new Race(
                ride,
                OFFSET,
                new Thresholds(250.0, false, null),
                new Ability(null, null, null, null, 200.0, SECONDS, null),
                JudgementLimits.USUAL);
        return new Mend(
                race,
                Replay.of(ride, Course.of(ride).orElse(null), Rig.of(85, 0.358, 0.006))
                        .orElseThrow(AssertionError::new));
    }

    @Test
    void nothingIsChangedAtFirstAndEveryPedalledSecondTakesBack() {
        Mend mend = mend();
        assertThat(mend.factor(100)).isEqualTo(1);
        assertThat(mend.takesBack(0)).isTrue();
        assertThat(mend.takesBack(100)).isTrue();
        assertThat(mend.takesBack(500)).as("a second at 0 W").isFalse();
        assertThat(mend.takesBack(700)).as("a second without power").isFalse();
        assertThat(mend.takesBack(1100)).as("coasting").isFalse();
    }

    @Test
    void scalingTakesTheSameShareOutOfEachSecond() {
        Mend mend = mend();
        // 100 s x 200 W x 0.2, then half of the 160 W that are left.
        assertChange(mend.scale(new Interval(100, 200), 0.8), 100, 4000);
        assertThat(mend.factor(100)).isCloseTo(0.8, within(1e-12));
        assertThat(mend.factor(199)).isCloseTo(0.8, within(1e-12));
        assertThat(mend.factor(99)).isEqualTo(1);
        assertThat(mend.factor(200)).isEqualTo(1);
        assertChange(mend.scale(new Interval(100, 200), 0.5), 100, 8000);
        assertThat(mend.factor(150)).isCloseTo(0.4, within(1e-12));
        assertThat(mend.takesBack(99)).isTrue();
        assertThat(mend.takesBack(100)).isFalse();
        assertThat(mend.takesBack(199)).isFalse();
        assertThat(mend.takesBack(200)).isTrue();
    }

    @Test
    void coastingIsNotScaled() {
        Mend mend = mend();
        assertChange(mend.scale(new Interval(1050, 1150), 0.8), 0, 0);
        assertThat(mend.factor(1100)).isEqualTo(1);
    }

    @Test
    void levellingScalesButGoesOnTakingBack() {
        Mend mend = mend();
        // Half as much again is put in: 10 s x 100 W.
        assertChange(mend.level(new Interval(100, 110), 1.5), 10, -1000);
        assertThat(mend.factor(105)).isCloseTo(1.5, within(1e-12));
        assertThat(mend.takesBack(105)).isTrue();
    }

    @Test
    void cappingTakesOutWhatLiesAbove() {
        Mend mend = mend();
        assertChange(mend.cap(new Interval(290, 320), 250), 10, 1500);
        assertThat(mend.factor(300)).isCloseTo(0.625, within(1e-12));
        assertThat(mend.factor(299)).isEqualTo(1);
        assertThat(mend.factor(310)).isEqualTo(1);
        assertThat(mend.takesBack(289)).isTrue();
        assertThat(mend.takesBack(290)).isFalse();
        assertThat(mend.takesBack(319)).isFalse();
        assertThat(mend.takesBack(320)).isTrue();
        assertChange(mend.cap(new Interval(100, 120), 200), 0, 0);
    }

    @Test
    void cappingSeesWhatWasScaledBefore() {
        Mend mend = mend();
        mend.scale(new Interval(290, 320), 0.75);
        // 400 W are 300 W by then, 200 W are 150 W.
        assertChange(mend.cap(new Interval(290, 320), 250), 10, 500);
        assertThat(mend.factor(305)).isCloseTo(0.625, within(1e-12));
        assertThat(mend.factor(295)).isCloseTo(0.75, within(1e-12));
    }

    @Test
    void whatTakesBackIsCountedInSecondsAndKilojoules() {
        Mend mend = mend();
        assertThat(requireNonNull(mend.takingBack()).firstSecond()).isEqualTo(OFFSET);
        mend.giveBackFrom(3000);
        assertThat(mend.takesBack(2999)).isFalse();
        assertThat(mend.takesBack(3000)).isTrue();
        mend.giveBackFrom(3100);
        // 500 s of 200 W, a tenth of them taken out of 100.
        mend.level(new Interval(3100, 3200), 0.9);
        PriceSteps.TakingBack takingBack = requireNonNull(mend.takingBack());
        assertThat(takingBack.firstSecond()).isEqualTo(OFFSET + 3100);
        assertThat(takingBack.seconds()).isEqualTo(500);
        assertThat(takingBack.workKJ()).isCloseTo(98, within(1e-9));
        mend.giveBackFrom(SECONDS);
        assertThat(mend.takingBack()).isNull();
    }

    @Test
    void whatWasChangedIsKnownToACopyToo() {
        Mend mend = mend();
        assertThat(mend.changed()).isEmpty();
        mend.scale(new Interval(100, 200), 0.8);
        mend.cap(new Interval(290, 320), 250);
        Mend copy = new Mend(mend);
        copy.level(new Interval(400, 500), 1.1);
        copy.giveBackFrom(50);
        assertThat(mend.changed()).containsExactly(new Interval(100, 200), new Interval(290, 320));
        assertThat(copy.changed())
                .containsExactly(
                        new Interval(100, 200), new Interval(290, 320), new Interval(400, 500), new Interval(0, 50));
        copy.giveBackFrom(2 * SECONDS);
        assertThat(copy.changed()).contains(new Interval(0, SECONDS));
        assertThat(copy.takesAnythingBack()).isFalse();
        assertThat(mend.takesAnythingBack()).isTrue();
    }

    private static void assertChange(Mend.Change change, int seconds, double takenOutJ) {
        assertThat(change.seconds()).isEqualTo(seconds);
        assertThat(change.takenOutJ()).isCloseTo(takenOutJ, within(1e-9));
    }
}
