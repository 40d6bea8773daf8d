package io.github.wattledger.load;

import static io.github.wattledger.load.NormalizedPowerTest.randomWatts;
import static io.github.wattledger.load.NormalizedPowerTest.steps;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Series;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Expected values follow from the published formula: hours × intensity factor squared × 100. */
class TrainingStressTest {
    @Test
    void anHourAtThresholdIsOneHundred() {
        assertThat(TrainingStress.of(steps(1, 3600, 200), 200).orElseThrow()).isCloseTo(100, within(1e-9));
    }

    @Test
    void twoHoursAtThreeQuarters() {
        assertThat(TrainingStress.of(steps(1, 7200, 150), 200).orElseThrow()).isCloseTo(112.5, within(1e-9));
    }

    @Test
    void fourHoursAtSevenTenths() {
        assertThat(TrainingStress.of(steps(1, 14_400, 210), 300).orElseThrow()).isCloseTo(196, within(1e-9));
    }

    @Test
    void secondsWithoutPowerAreNotCounted() {
        assertThat(TrainingStress.of(steps(1, 1800, 200, 900, Double.NaN, 1800, 200), 200)
                        .orElseThrow())
                .isCloseTo(100, within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void growsWithTheSquareOfPower(long seed) {
        double[] watts = randomWatts(seed, 4000, 0.01);
        double[] scaled = Arrays.stream(watts).map(power -> 1.2 * power).toArray();
        double expected = 1.44 * TrainingStress.of(watts, 250).orElseThrow();
        assertThat(TrainingStress.of(scaled, 250).orElseThrow()).isCloseTo(expected, within(1e-9 * expected));
    }

    @Test
    void emptyWithoutNormalizedPower() {
        assertThat(TrainingStress.of(steps(1, 29, 200), 200)).isEmpty();
    }

    @Test
    void nothingRiddenOrPedalledIsNoStress() {
        assertThat(TrainingStress.of(0, 200, 250)).isZero();
        assertThat(TrainingStress.of(3600, 0, 250)).isZero();
    }

    @Test
    void refusesAThresholdThatIsNoneEvenWithoutPower() {
        assertThatIllegalArgumentException().isThrownBy(() -> TrainingStress.of(Series.of(), 0));
    }

    @Test
    void refusesAThresholdThatIsNone() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> TrainingStress.of(3600, 200, 0))
                .withMessageContaining("thresholdPowerW 0.0");
        assertThatIllegalArgumentException().isThrownBy(() -> TrainingStress.of(3600, 200, Double.NaN));
        assertThatIllegalArgumentException().isThrownBy(() -> TrainingStress.of(-1, 200, 200));
        assertThatIllegalArgumentException().isThrownBy(() -> TrainingStress.intensityFactor(Double.NaN, 200));
    }
}
