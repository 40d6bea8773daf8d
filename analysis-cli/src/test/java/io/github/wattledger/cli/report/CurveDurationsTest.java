package io.github.wattledger.cli.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The contract: about 40 durations, spread evenly on a log axis from 1 s to the ride's length, both ends included. */
class CurveDurationsTest {
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 40, 41, 600, 3_599, 25_320, 54_000, 2_000_000})
    void theyRiseFromOneSecondToTheLongest(int longest) {
        int[] durations = CurveDurations.upTo(longest);
        assertThat(durations[0]).isEqualTo(1);
        assertThat(durations[durations.length - 1]).isEqualTo(longest);
        for (int i = 1; i < durations.length; i++) {
            assertThat(durations[i]).isGreaterThan(durations[i - 1]);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {25_320, 54_000})
    void aLongRideHasAboutFortyEvenlySpread(int longest) {
        int[] durations = CurveDurations.upTo(longest);
        assertThat(durations.length).isBetween(30, 40);
        // 40 points have 39 steps; from 60 s on, rounding to a second moves a ratio by less than 2 percent.
        double step = Math.pow(longest, 1.0 / 39);
        for (int i = 1; i < durations.length; i++) {
            if (durations[i - 1] >= 60) {
                assertThat((double) durations[i] / durations[i - 1]).isCloseTo(step, within(0.02 * step));
            }
        }
    }

    @Test
    void withoutPowerThereIsNone() {
        assertThat(CurveDurations.upTo(0)).isEmpty();
    }
}
