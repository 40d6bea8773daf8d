package io.github.wattledger.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import io.github.wattledger.power.CriticalPowerRefusal.Reason;
import java.util.Arrays;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Whether the curve of one ride carries a fit. The limits are this project's own. */
class RideCriticalPowerTest {
    private static final int[] TESTS = {180, 300, 480, 720, 1200, 1800};

    @Test
    void acceptsARideOfSeparateTestsAndFindsItsNumbers() {
        CriticalPowerFit fit = accepted(testRide(280, 18_000, 1), 265.0);
        assertThat(fit.criticalPowerW()).isCloseTo(280, withinPercentage(0.1));
        assertThat(fit.wPrimeJ()).isCloseTo(18_000, withinPercentage(0.1));
        assertThat(fit.efforts())
                .extracting(BestEffort::seconds)
                .containsExactly(180.0, 300.0, 480.0, 720.0, 1200.0, 1800.0);
    }

    @Test
    void refusesAnEvenRide() {
        // 210 W with a slow wave of 3 W: a flat curve whose level says nothing of critical power.
        double[] watts = new double[4 * 3600];
        Arrays.setAll(watts, second -> 210 + 3 * Math.sin(second / 300.0));
        assertRefused(watts, null, Reason.NO_MAXIMAL_EFFORTS, "too close");
    }

    @Test
    void refusesAPerfectlyConstantRide() {
        double[] watts = new double[3600];
        Arrays.fill(watts, 200);
        assertRefused(watts, null, Reason.NO_MAXIMAL_EFFORTS, Reason.NEGATIVE);
    }

    @Test
    void refusesAnEasyRideWithOneHardClimb() {
        // Three minutes at 400 W in two hours at 150 W: the long efforts were not maximal.
        double[] watts = new double[7200];
        Arrays.fill(watts, 150);
        Arrays.fill(watts, 1000, 1180, 400);
        assertRefused(watts, null, Reason.NO_MAXIMAL_EFFORTS, "long efforts");
    }

    @Test
    void refusesEffortsFarBelowAKnownThreshold() {
        // The same tests at 80 % look like those of a weaker rider; the threshold tells.
        assertRefused(testRide(280, 18_000, 0.8), 265.0, Reason.NO_MAXIMAL_EFFORTS, "threshold of 265 W");
        assertThat(accepted(testRide(280, 18_000, 0.8), null).criticalPowerW()).isCloseTo(224, within(0.5));
    }

    @Test
    void refusesAShortRide() {
        double[] watts = new double[700];
        Arrays.fill(watts, 250);
        assertRefused(watts, null, Reason.TOO_SHORT, "12 minutes");
        assertRefused(new double[0], null, Reason.TOO_SHORT, "12 minutes");
    }

    @Test
    void leavesOutABestThatMissingSecondsMayHaveLowered() {
        double[] watts = testRide(280, 18_000, 1);
        // Nine minutes are gone from the 30-minute test: its window may have been better.
        int longTest = watts.length - 1800;
        Arrays.fill(watts, longTest + 600, longTest + 1140, Double.NaN);
        MeanMaximalCurve curve = MeanMaximalCurve.of(watts);
        assertThat(curve.mayBeLow(1800)).isTrue();
        CriticalPowerResult result = CriticalPower.ofCurve(curve, null);
        assertThat(result.accepted()).isPresent();
        assertThat(result.accepted().orElseThrow().efforts())
                .extracting(BestEffort::seconds)
                .doesNotContain(1800.0);
    }

    @Test
    void keepsTheFitThatWasNotBelieved() {
        CriticalPowerResult result = CriticalPower.ofCurve(MeanMaximalCurve.of(testRide(280, 18_000, 0.8)), 265.0);
        assertThat(result).isInstanceOfSatisfying(CriticalPowerRefusal.class, refusal -> {
            CriticalPowerFit fit = Objects.requireNonNull(refusal.refusedFit());
            assertThat(fit.criticalPowerW()).isCloseTo(224, within(0.5));
        });
    }

    @Test
    void thresholdIsTheHigherOfTwentyMinutesAndCriticalPower() {
        // CP 280 W and W' 18 kJ hold 295 W for 20 minutes: 95 % of it is 280.25 W, above critical power.
        ThresholdEstimate twenty = ThresholdEstimate.of(MeanMaximalCurve.of(testRide(280, 18_000, 1)))
                .orElseThrow();
        assertThat(twenty.watts()).isCloseTo(280.25, within(0.01));
        assertThat(twenty.basis()).isEqualTo(ThresholdEstimate.Basis.TWENTY_MINUTES);
        assertThat(twenty.criticalPowerW()).isCloseTo(280, within(0.1));
        // With 12 kJ it is 290 W for 20 minutes, 95 % of it 275.5 W: critical power is the higher.
        ThresholdEstimate critical = ThresholdEstimate.of(MeanMaximalCurve.of(testRide(280, 12_000, 1)))
                .orElseThrow();
        assertThat(critical.watts()).isCloseTo(280, within(0.1));
        assertThat(critical.basis()).isEqualTo(ThresholdEstimate.Basis.CRITICAL_POWER);
        assertThat(critical.lowW()).isCloseTo(280 * 0.91, within(0.5));
        assertThat(critical.highW()).isCloseTo(280 * 1.09, within(0.5));
    }

    @Test
    void thereIsNoThresholdWithoutTwentyMinutes() {
        double[] watts = new double[1199];
        Arrays.fill(watts, 250);
        assertThat(ThresholdEstimate.of(MeanMaximalCurve.of(watts))).isEmpty();
        assertThat(ThresholdEstimate.of(MeanMaximalCurve.of(new double[0]))).isEmpty();
    }

    @Test
    void anEvenRideStillGivesAtLeastNinetyFivePercentOfTwentyMinutes() {
        double[] watts = new double[7200];
        Arrays.fill(watts, 200);
        ThresholdEstimate estimate =
                ThresholdEstimate.of(MeanMaximalCurve.of(watts)).orElseThrow();
        assertThat(estimate.watts()).isCloseTo(190, within(1e-9));
        assertThat(estimate.criticalPowerW()).isNull();
    }

    /** Constant tests to exhaustion by critical power and W′, with half an hour at 100 W between them. */
    static double[] testRide(double criticalPowerW, double wPrimeJ, double share) {
        int length = Arrays.stream(TESTS).sum() + TESTS.length * 1800;
        double[] watts = new double[length];
        Arrays.fill(watts, 100);
        int second = 0;
        for (int test : TESTS) {
            second += 1800;
            Arrays.fill(watts, second, second + test, share * (criticalPowerW + wPrimeJ / test));
            second += test;
        }
        return watts;
    }

    private static CriticalPowerFit accepted(double[] watts, @Nullable Double thresholdPowerW) {
        CriticalPowerResult result = CriticalPower.ofCurve(MeanMaximalCurve.of(watts), thresholdPowerW);
        assertThat(result).isInstanceOf(CriticalPowerFit.class);
        return (CriticalPowerFit) result;
    }

    private static void assertRefused(double[] watts, @Nullable Double thresholdPowerW, Reason reason, String words) {
        assertThat(CriticalPower.ofCurve(MeanMaximalCurve.of(watts), thresholdPowerW))
                .isInstanceOfSatisfying(CriticalPowerRefusal.class, refusal -> {
                    assertThat(refusal.reason()).isEqualTo(reason);
                    assertThat(refusal.text()).contains(words);
                });
    }

    private static void assertRefused(
            double[] watts, @Nullable Double thresholdPowerW, Reason reason, Reason orReason) {
        assertThat(CriticalPower.ofCurve(MeanMaximalCurve.of(watts), thresholdPowerW))
                .isInstanceOfSatisfying(
                        CriticalPowerRefusal.class,
                        refusal -> assertThat(refusal.reason()).isIn(reason, orReason));
    }
}
