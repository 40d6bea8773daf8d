package io.github.wattledger.pacing;

import static io.github.wattledger.pacing.RaceByHand.HOUR;
import static io.github.wattledger.pacing.RaceByHand.onRoad;
import static io.github.wattledger.pacing.RaceByHand.race;
import static io.github.wattledger.pacing.RaceByHand.steady;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.course.Course;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Which seconds can be compared, from the definition in {@code docs/methods.md}. */
class ComparableGroundTest {
    private static final int LEVEL = GroundAndTime.groundOf(0);

    private static ComparableGround of(Ride ride, Interval... surges) {
        return ComparableGround.of(ride, Course.of(ride).orElse(null), List.of(surges));
    }

    /** Two seconds before a surge and eight after it go with it. */
    @Test
    void surgesAreLeftOutWithWhatLiesAroundThem() {
        ComparableGround ground = of(Ride.ofWatts(steady(2000, 200)), new Interval(1000, 1020));
        for (int second = 990; second < 1040; second++) {
            assertThat(ground.isCompared(second)).as("second %d", second).isEqualTo(second < 998 || second >= 1028);
        }
    }

    @Test
    void surgesAtBothEndsReachNoFurtherThanTheRace() {
        ComparableGround ground = of(Ride.ofWatts(steady(100, 200)), new Interval(0, 10), new Interval(90, 100));
        assertThat(ground.isCompared(17)).isFalse();
        assertThat(ground.isCompared(18)).isTrue();
        assertThat(ground.isCompared(87)).isTrue();
        assertThat(ground.isCompared(88)).isFalse();
    }

    /** A race finds its own surges: 20 s at 420 W between 200 W, with a threshold of 250 W. */
    @Test
    void aRaceLeavesOutItsSurges() {
        double[] watts = steady(HOUR, 200);
        Arrays.fill(watts, 1000, 1020, 420);
        ComparableGround ground = race(watts).ground();
        assertThat(ground.isCompared(997)).isTrue();
        assertThat(ground.isCompared(998)).isFalse();
        assertThat(ground.isCompared(1027)).isFalse();
        assertThat(ground.isCompared(1028)).isTrue();
    }

    /** Under 30 W a rider coasts; a standing rider and a second without power compare with nothing. */
    @Test
    void onlyPedalledSecondsCount() {
        Ride ride = Ride.builder(Instant.EPOCH, 40)
                .channel(
                        Channel.POWER,
                        Series.generate(
                                40, second -> second < 10 ? 30 : second < 20 ? 29.9 : second < 30 ? 200 : Double.NaN))
                .state(new Interval(25, 30), SecondState.STOPPED)
                .build();
        ComparableGround ground = of(ride);
        for (int second = 0; second < 40; second++) {
            assertThat(ground.isCompared(second))
                    .as("second %d", second)
                    .isEqualTo(second < 10 || (second >= 20 && second < 25));
        }
    }

    @Test
    void withoutAltitudeOrDistanceAllGroundIsLevel() {
        Ride noAltitude = Ride.builder(Instant.EPOCH, 100)
                .channel(Channel.POWER, Series.generate(100, second -> 200))
                .channel(Channel.DISTANCE, Series.generate(100, second -> 10.0 * second))
                .build();
        Ride noDistance = Ride.builder(Instant.EPOCH, 100)
                .channel(Channel.POWER, Series.generate(100, second -> 200))
                .channel(Channel.ALTITUDE, Series.generate(100, second -> 1.0 * second))
                .build();
        for (Ride ride : List.of(noAltitude, noDistance)) {
            ComparableGround ground = of(ride);
            assertThat(ground.ground(0)).isEqualTo(LEVEL);
            assertThat(ground.ground(99)).isEqualTo(LEVEL);
        }
    }

    /** Two kilometres of 5.5 % and two of level road: the middle of each lies far from the other. */
    @Test
    void theGradeOfTheRoadDecides() {
        ComparableGround ground = of(onRoad(800, second -> 200, second -> second < 400 ? 0.055 : 0.005));
        assertThat(ground.ground(200)).isEqualTo(GroundAndTime.groundOf(0.055)).isNotEqualTo(LEVEL);
        assertThat(ground.ground(600)).isEqualTo(LEVEL);
    }

    @Test
    void aSecondWithoutDistanceHasNoGround() {
        Ride ride = Ride.builder(Instant.EPOCH, 400)
                .channel(Channel.POWER, Series.generate(400, second -> 200))
                .channel(Channel.DISTANCE, Series.generate(400, second -> second == 200 ? Double.NaN : 5.0 * second))
                .channel(Channel.ALTITUDE, Series.generate(400, second -> 40))
                .build();
        ComparableGround ground = of(ride);
        assertThat(ground.isCompared(199)).isTrue();
        assertThat(ground.isCompared(200)).isFalse();
    }

    /** 240 W against 200 W on one ground are 1.2; what is left out of a comparison has no say in it. */
    @Test
    void stretchesAreComparedOnWhatIsLeft() {
        double[] watts = steady(3000, 200);
        Arrays.fill(watts, 0, 1000, 240);
        Arrays.fill(watts, 500, 600, 40);
        ComparableGround ground = of(Ride.ofWatts(watts)).without(List.of(new Interval(500, 600)));
        assertThat(ground.ratio(new Interval(0, 1000), new Interval(1000, 3000)))
                .isCloseTo(1.2, within(1e-9));
        assertThat(ground.meanW(new Interval(0, 1000))).isCloseTo(240, within(1e-9));
        assertThat(ground.meanW(new Interval(500, 600))).isNaN();
    }

    /** The climb is ridden at 1.25 of the level everywhere, the first part at 1.1 of the second: 1.1 whatever the mixture. */
    @Test
    void likeIsComparedWithLike() {
        Ride ride = onRoad(
                8000,
                second -> (second < 4000 ? 1.1 : 1) * (isClimb(second) ? 250 : 200),
                second -> isClimb(second) ? 0.055 : 0);
        ComparableGround ground = of(ride);
        Interval first = new Interval(0, 4000);
        Interval second = new Interval(4000, 8000);
        // The first part climbs for 3,000 s and the second for 500 s.
        assertThat(ground.meanW(first) / ground.meanW(second)).isGreaterThan(1.2);
        assertThat(ground.ratio(first, second)).isCloseTo(1.1, within(0.005));
    }

    /**
     * Level road at 200 W, then a climb of 6 % at 150 W: no shared ground, but steeper and weaker, so that plain power tells.
     * The other way round it does not: a level road asks for less.
     */
    @Test
    void whatIsSteeperAndWeakerWasRiddenLessHard() {
        Ride ride = onRoad(6000, second -> second < 3000 ? 200 : 150, second -> second < 3000 ? 0 : 0.065);
        ComparableGround ground = of(ride);
        Interval level = new Interval(0, 2900);
        Interval climb = new Interval(3100, 6000);
        assertThat(ground.ratio(climb, level)).isNaN();
        assertThat(ground.ratioOrSteeper(climb, level)).isCloseTo(0.75, within(1e-9));
        assertThat(ground.ratioOrSteeper(level, climb)).isNaN();
    }

    /** Where the ground is shared the ratio is that of like ground, steeper or not. */
    @Test
    void sharedGroundGoesBeforePlainPower() {
        Ride ride = onRoad(
                8000,
                second -> (second < 4000 ? 1.1 : 1) * (isClimb(second) ? 250 : 200),
                second -> isClimb(second) ? 0.055 : 0);
        ComparableGround ground = of(ride);
        Interval first = new Interval(0, 4000);
        Interval second = new Interval(4000, 8000);
        assertThat(ground.ratioOrSteeper(first, second)).isEqualTo(ground.ratio(first, second));
    }

    private static boolean isClimb(int second) {
        return second < 3000 || (second >= 6000 && second < 6500);
    }
}
