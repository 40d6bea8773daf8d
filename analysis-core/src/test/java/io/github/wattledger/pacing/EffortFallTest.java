package io.github.wattledger.pacing;

import static io.github.wattledger.pacing.RaceByHand.HOUR;
import static io.github.wattledger.pacing.RaceByHand.race;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Series;
import java.util.List;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The fall of a line that is level to a known second and straight from there on. */
class EffortFallTest {
    private static final int SECONDS = 4 * HOUR;
    private static final int BLOCK_SECONDS = 600;

    private static EffortFall fall(IntToDoubleFunction watts, int fromSecond) {
        Race race = race(Series.generate(SECONDS, watts).toArray());
        GroundAndTime efforts =
                race.ground().compare(List.of(new Interval(0, SECONDS / 2), new Interval(SECONDS / 2, SECONDS)));
        return EffortFall.of(race, efforts, fromSecond);
    }

    /** 200 W up to the knee, 20 W less for each hour after it. */
    private static double falling(int second, int knee) {
        return 200 - 20 * Math.max(0, second - knee) / 3600.0;
    }

    /**
     * Two hours at 200 W and two that end at 160 W: 190 W on average, which is an effort of 1. The blocks begin with the
     * fall, so that the line is exact but for the half second by which the middle of a block of seconds lies off: 20 W an
     * hour are 20 / 190.
     */
    @Test
    void isExactWhereABlockBeginsWithIt() {
        EffortFall fall = fall(second -> falling(second, 2 * HOUR), 0);
        assertThat(fall.onsetSecond()).isEqualTo(2 * HOUR);
        assertThat(fall.slopePerHour()).isCloseTo(-20 / 190.0, within(1e-4));
        assertThat(fall.blocks()).isEqualTo(24);
    }

    @ParameterizedTest
    @ValueSource(ints = {3900, 5500, 7450, 9100, 10_300})
    void beginsWithinABlockOfTheKnee(int knee) {
        assertThat((double) fall(second -> falling(second, knee), 1200).onsetSecond())
                .isCloseTo(knee, within((double) BLOCK_SECONDS));
    }

    /** A meter that scatters by 3 % moves it by no more than a quarter of an hour. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void isFoundInANoisyRide(long seed) {
        Random random = new Random(seed);
        EffortFall fall = fall(second -> falling(second, 7200) * (1 + 0.03 * random.nextGaussian()), 1200);
        assertThat((double) fall.onsetSecond()).isCloseTo(7200, within(900.0));
    }

    @Test
    void aLevelRideHasNone() {
        EffortFall none = fall(second -> 200, 1200);
        assertThat(none.slopePerHour()).isCloseTo(0, within(1e-9));
        assertThat(none.blocks()).isEqualTo(22);
    }

    @Test
    void aRisingRideHasNone() {
        EffortFall none = fall(second -> 180 + second / 360.0, 1200);
        assertThat(none.slopePerHour()).isZero();
        assertThat(none.onsetSecond()).isEqualTo(1200);
    }

    /** Coasting is no part of a block: every other minute at 0 W makes half as many. */
    @Test
    void blocksAreOfComparableSeconds() {
        assertThat(fall(second -> second / 60 % 2 == 0 ? 200 : 0, 0).blocks()).isEqualTo(12);
    }
}
