package io.github.wattledger.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class TrialCriticalPowerTest {
    private static final double[] SECONDS = {180, 300, 480, 720, 1200, 300, 720, 1200};
    private static final double[] WATTS = {350, 312, 288, 276, 266, 310, 247, 263};

    @Test
    void theEffortThatWasNotMaximalIsSetAside() {
        // RH-20, from a reference in another language.
        TrialCriticalPower trials =
                TrialCriticalPower.of(SECONDS, WATTS).found().orElseThrow();
        assertThat(trials.setAside()).containsExactly(new BestEffort(720, 247));
        assertThat(trials.criticalPowerW()).isCloseTo(250.99, within(0.01));
        assertThat(trials.criticalPowerErrorW()).isCloseTo(3.68, within(0.01));
        assertThat(trials.wPrimeJ()).isCloseTo(17_710, within(1.0));
        assertThat(trials.wPrimeErrorJ()).isCloseTo(1358, within(1.0));
        assertThat(trials.isWithoutReservation()).isTrue();
    }

    @Test
    void theLineThroughTheOthersWeighsEachByItsPower() {
        // RH-20: without the ratio, trimmed and untrimmed.
        List<BestEffort> kept = TrialCriticalPower.trimmed(BestEffort.listOf(SECONDS, WATTS), new ArrayList<>());
        LeastSquares.Solution line = TrialCriticalPower.relativeLine(kept);
        assertThat(line.parameter(0)).isCloseTo(249.91, within(0.01));
        assertThat(line.standardError(0)).isCloseTo(0.95, within(0.01));
        assertThat(line.parameter(1)).isCloseTo(18_178, within(1.0));
        assertThat(line.standardError(1)).isCloseTo(358, within(1.0));
        LeastSquares.Solution all = TrialCriticalPower.relativeLine(BestEffort.listOf(SECONDS, WATTS));
        assertThat(all.parameter(0)).isCloseTo(241.87, within(0.01));
        assertThat(all.standardError(0)).isCloseTo(7.53, within(0.01));
        assertThat(all.parameter(1)).isCloseTo(19_819, within(1.0));
        assertThat(all.standardError(1)).isCloseTo(3031, within(1.0));
    }

    @Test
    void eightKnownTrialsFindBothInNineOfTenSeasons() {
        // RH-21: 92 +- 3 % of 300 riders, critical power within 3 % and W' within 20 %.
        double[] seconds = {180, 300, 480, 720, 1200, 180, 300, 480};
        Random random = new Random(21);
        int within = 0;
        int riders = 300;
        for (int rider = 0; rider < riders; rider++) {
            double criticalPowerW = 180 + 160 * random.nextDouble();
            double ratio = Math.max(35, Math.min(90, 60 + 12 * random.nextGaussian()));
            double[] watts = new double[seconds.length];
            for (int i = 0; i < watts.length; i++) {
                watts[i] = criticalPowerW * (1 + ratio / seconds[i]) * Math.exp(0.02 * random.nextGaussian());
                if (random.nextDouble() < 0.05) {
                    watts[i] *= 1 - (0.03 + 0.12 * random.nextDouble());
                }
            }
            TrialCriticalPower trials =
                    TrialCriticalPower.of(seconds, watts).found().orElseThrow();
            boolean isClose = Math.abs(trials.criticalPowerW() / criticalPowerW - 1) < 0.03
                    && Math.abs(trials.wPrimeJ() / (criticalPowerW * ratio) - 1) < 0.20;
            within += isClose ? 1 : 0;
        }
        assertThat(within / (double) riders).isBetween(0.89, 0.95);
    }

    @Test
    void fewOrLopsidedTrialsAreRefused() {
        assertThat(TrialCriticalPower.of(
                                new double[] {180, 300, 480, 720, 1200}, new double[] {350, 312, 288, 276, 266})
                        .refusal())
                .hasValueSatisfying(reason -> assertThat(reason).contains("5 named trials"));
        double[] short6 = {180, 300, 480, 600, 180, 300};
        double[] watts6 = {350, 312, 288, 280, 348, 310};
        assertThat(TrialCriticalPower.of(short6, watts6).refusal())
                .hasValueSatisfying(reason -> assertThat(reason).contains("12 minutes"));
        double[] six = {180, 300, 480, 720, 1200, 300};
        double[] six6 = {350, 312, 288, 276, 266, 310};
        assertThat(TrialCriticalPower.of(six, six6).found().orElseThrow().isWithoutReservation())
                .isFalse();
    }

    @Test
    void unnamedEffortsBoundCriticalPowerFromBelow() {
        // P / (1 + 60 / t): 300 W for 5 min is 250 W; 20 min at 252 W is 240 W; 2 min are too short, 40 too long.
        assertThat(TrialCriticalPower.atLeastW(BestEffort.listOf(
                                new double[] {120, 300, 1200, 2400}, new double[] {500, 300, 252, 300}))
                        .orElseThrow())
                .isCloseTo(250, within(1e-9));
        assertThat(TrialCriticalPower.atLeastW(List.of())).isEmpty();
    }
}
