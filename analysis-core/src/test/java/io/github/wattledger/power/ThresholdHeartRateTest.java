package io.github.wattledger.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class ThresholdHeartRateTest {
    private static final int HOUR = 3600;

    @Test
    void isTheMeanOverTheSteadyTwentyMinutesNearThreshold() {
        double[] watts = filled(HOUR, 180);
        double[] bpm = filled(HOUR, 140);
        Arrays.fill(watts, 1000, 2200, 250);
        Arrays.fill(bpm, 1000, 2200, 171);
        ThresholdHeartRate found = ThresholdHeartRate.of(watts, bpm, 250).orElseThrow();
        assertThat(found.heartRateBpm()).isCloseTo(171, within(1e-9));
        assertThat(found.meanPowerW()).isCloseTo(250, within(1e-9));
        assertThat(found.fromSecond()).isEqualTo(1000);
        assertThat(found.seconds()).isEqualTo(1200);
    }

    @Test
    void refusesAnUnsteadyEffortOfTheSameMean() {
        double[] watts = new double[HOUR];
        // Minutes at 350 W and at 150 W: the mean is threshold, the effort is not.
        Arrays.setAll(watts, second -> second / 60 % 2 == 0 ? 350 : 150);
        assertThat(ThresholdHeartRate.of(watts, filled(HOUR, 165), 250)).isEmpty();
    }

    @Test
    void refusesARideFarFromThreshold() {
        assertThat(ThresholdHeartRate.of(filled(HOUR, 200), filled(HOUR, 150), 250))
                .isEmpty();
        assertThat(ThresholdHeartRate.of(filled(HOUR, 290), filled(HOUR, 180), 250))
                .isEmpty();
    }

    @Test
    void refusesHolesInPowerOrHeartRate() {
        double[] watts = filled(1200, 250);
        watts[600] = Double.NaN;
        assertThat(ThresholdHeartRate.of(watts, filled(1200, 170), 250)).isEmpty();
        double[] bpm = filled(1200, 170);
        Arrays.fill(bpm, 0, 61, Double.NaN);
        assertThat(ThresholdHeartRate.of(filled(1200, 250), bpm, 250)).isEmpty();
        bpm[0] = 170;
        assertThat(ThresholdHeartRate.of(filled(1200, 250), bpm, 250)).isPresent();
    }

    @Test
    void refusesAShortRideAndAThresholdThatIsNone() {
        assertThat(ThresholdHeartRate.of(filled(1199, 250), filled(1199, 170), 250))
                .isEmpty();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ThresholdHeartRate.of(filled(1200, 250), filled(1200, 170), 0));
    }

    private static double[] filled(int seconds, double value) {
        double[] values = new double[seconds];
        Arrays.fill(values, value);
        return values;
    }
}
