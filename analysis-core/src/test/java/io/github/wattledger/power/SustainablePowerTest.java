package io.github.wattledger.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SustainablePowerTest {
    // Common targets of coaches, no single source; given to two digits (the 0.895 at two hours rounded down).
    @ParameterizedTest
    @CsvSource({"2, 0.89", "4, 0.80", "8, 0.72", "12, 0.67"})
    void fallsWithTheLengthOfTheEvent(double hours, double fractionOfThreshold) {
        assertThat(SustainablePower.guideW(250, hours * 3600) / 250).isCloseTo(fractionOfThreshold, within(0.006));
    }

    @Test
    void anHourIsThePowerThatDefinesThreshold() {
        assertThat(SustainablePower.guideW(250, 3600)).isCloseTo(250, within(1e-9));
    }

    @Test
    void thresholdIsNinetyFivePercentOfTwentyMinutes() {
        // Common practice, no source.
        assertThat(SustainablePower.guideW(250, 1200) * 0.95).isCloseTo(250, within(1e-9));
    }

    @Test
    void scalesWithThresholdAndNeverRisesWithDuration() {
        double previousW = Double.POSITIVE_INFINITY;
        for (int seconds = 1200; seconds <= 15 * 3600; seconds += 60) {
            double sustainableW = SustainablePower.guideW(200, seconds);
            assertThat(sustainableW).isLessThan(previousW);
            assertThat(SustainablePower.guideW(300, seconds)).isCloseTo(1.5 * sustainableW, within(1e-9));
            previousW = sustainableW;
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -5, Double.NaN})
    void refusesAThresholdThatIsNone(double thresholdPowerW) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SustainablePower.guideW(thresholdPowerW, 3600))
                .withMessageContaining("thresholdPowerW");
    }

    @Test
    void saysNothingOfUnderTwentyMinutes() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SustainablePower.guideW(250, 1199))
                .withMessageContaining("seconds 1199.0, expected at least 1200");
    }
}
