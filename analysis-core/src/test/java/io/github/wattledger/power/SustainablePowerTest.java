package io.github.wattledger.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
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

    // Coaching convention, from memory: power over threshold for events of 3, 6 and 12 hours. A band, not an exact
    // value.
    @ParameterizedTest
    @CsvSource({"3, 0.80, 0.88", "6, 0.70, 0.78", "12, 0.58, 0.68"})
    void rangeOfTheGuideCoversTheMiddleOfCoachesBands(double hours, double low, double high) {
        SustainablePower guide = SustainablePower.guide(1, hours * 3600);
        assertThat((low + high) / 2).isBetween(guide.lowW(), guide.highW());
        assertThat(high).isLessThanOrEqualTo(guide.highW() + 0.001);
        assertThat(guide.source()).isEqualTo(SustainablePower.Source.GUIDE);
    }

    // RH-1 of the trials on simulated seasons: threshold 250 W, known to 3 %, and nothing known of endurance.
    @ParameterizedTest
    @CsvSource({"2, 223.76, 210.25, 238.14", "5, 193.24, 171.15, 218.19", "10, 172.96, 145.67, 205.36"})
    void theGuideSaysHowLittleItKnows(double hours, double watts, double lowW, double highW) {
        SustainablePower guide = SustainablePower.guide(250, hours * 3600);
        assertThat(guide.watts()).isCloseTo(watts, within(0.05));
        assertThat(guide.lowW()).isCloseTo(lowW, within(0.05));
        assertThat(guide.highW()).isCloseTo(highW, within(0.05));
        SustainablePower old = SustainablePower.guide(250, hours * 3600, ThresholdBasis.OLD);
        assertThat(old.watts()).isEqualTo(guide.watts());
        assertThat(old.lowW()).isLessThan(guide.lowW());
    }

    @Test
    void guideAgreesWithProfessionalsWithinItsRange() {
        // Pinot and Grappe 2014: 387.4 W for 20 min, 309.6 W for 2 h and 279.5 W for 4 h by their mean endurance index.
        double thresholdPowerW = 0.95 * 387.4;
        SustainablePower two = SustainablePower.guide(thresholdPowerW, 7200);
        SustainablePower four = SustainablePower.guide(thresholdPowerW, 14_400);
        assertThat(309.6).isBetween(two.lowW(), two.highW());
        assertThat(279.5).isBetween(four.lowW(), four.highW());
    }

    @Test
    void ownBestsOnAPowerLawAreContinuedByIt() {
        double[] seconds = {1200, 3600, 2 * 3600, 4 * 3600};
        double[] watts =
                Arrays.stream(seconds).map(t -> 700 * Math.pow(t, -0.12)).toArray();
        SustainablePower own =
                SustainablePower.fromBests(seconds, watts, 8 * 3600).orElseThrow();
        assertThat(own.watts()).isCloseTo(700 * Math.pow(8 * 3600, -0.12), within(1e-6));
        assertThat(own.source()).isEqualTo(SustainablePower.Source.OWN_BESTS);
        // No scatter, yet not narrower than riders repeat themselves: 2.6 % (Muriel et al. 2023).
        assertThat(own.highW() / own.watts()).isCloseTo(Math.exp(0.026), within(1e-9));
        assertThat(own.lowW() / own.watts()).isCloseTo(Math.exp(-0.026), within(1e-9));
    }

    @Test
    void rangeOfOwnBestsIsTheStandardErrorOfOneMore() {
        // Textbook formula of a straight line, worked out with plain sums.
        double[] seconds = {1200, 2400, 3600, 7200, 14_400};
        double[] watts = {290, 262, 268, 231, 226};
        double n = 5;
        double sumX = 0;
        double sumY = 0;
        double sumXx = 0;
        double sumXy = 0;
        double sumYy = 0;
        for (int i = 0; i < n; i++) {
            double x = Math.log(seconds[i]);
            double y = Math.log(watts[i]);
            sumX += x;
            sumY += y;
            sumXx += x * x;
            sumXy += x * y;
            sumYy += y * y;
        }
        double sxx = sumXx - sumX * sumX / n;
        double sxy = sumXy - sumX * sumY / n;
        double residual = Math.sqrt((sumYy - sumY * sumY / n - sxy * sxy / sxx) / (n - 2));
        double away = Math.log(20_000) - sumX / n;
        double error = residual * Math.sqrt(1 + 1 / n + away * away / sxx);
        assertThat(error).isGreaterThan(0.026);
        SustainablePower own =
                SustainablePower.fromBests(seconds, watts, 20_000).orElseThrow();
        assertThat(own.watts()).isCloseTo(Math.exp(sumY / n + sxy / sxx * away), within(1e-6));
        assertThat(Math.log(own.highW() / own.watts())).isCloseTo(error, within(1e-9));
    }

    @Test
    void ownBestsMustReachHalfOfTheDurationAndBeThree() {
        double[] seconds = {1200, 3600, 7200};
        double[] watts = {280, 250, 235};
        assertThat(SustainablePower.fromBests(seconds, watts, 14_400)).isPresent();
        assertThat(SustainablePower.fromBests(seconds, watts, 14_401)).isEmpty();
        assertThat(SustainablePower.fromBests(new double[] {600, 1200, 7200}, watts, 7200))
                .as("ten minutes say nothing of endurance")
                .isEmpty();
        assertThat(SustainablePower.fromBests(new double[] {1200, 1800, 3599}, watts, 3600))
                .as("a slope needs a lever")
                .isEmpty();
    }

    @Test
    void ownBestsThatSpanThreeTimesAreEnough() {
        double[] seconds = {1200, 1800, 3600};
        assertThat(SustainablePower.fromBests(seconds, new double[] {280, 265, 250}, 3600))
                .isPresent();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SustainablePower.fromBests(seconds, new double[] {280, 265, 250}, 0))
                .withMessageContaining("seconds");
    }

    @Test
    void aSourceKnowsWhatItRestsOn() {
        for (Ability.Source source : Ability.Source.values()) {
            // The names say it: what follows the AND is where sustainable power comes from, what stands before it where
            // critical power does.
            assertThat(source.isGuide())
                    .as("%s", source)
                    .isEqualTo(source.name().endsWith("GUIDE"));
            assertThat(source.isGiven())
                    .as("%s", source)
                    .isEqualTo(source.name().startsWith("GIVEN"));
        }
        assertThat(Ability.Source.RIDE_FIT_AND_OWN_BESTS.id()).isEqualTo("ride-fit-and-own-bests");
    }

    @Test
    void ownBestsThatRiseOrFallTooFastAreNotBelieved() {
        double[] seconds = {1200, 3600, 7200};
        assertThat(SustainablePower.fromBests(seconds, new double[] {230, 240, 250}, 7200))
                .isEmpty();
        assertThat(SustainablePower.fromBests(seconds, new double[] {250, 250, 250}, 7200))
                .as("power does not fall")
                .isEmpty();
        assertThat(SustainablePower.fromBests(seconds, new double[] {300, 200, 150}, 7200))
                .isEmpty();
    }
}
