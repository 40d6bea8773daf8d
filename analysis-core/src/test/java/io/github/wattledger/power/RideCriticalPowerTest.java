package io.github.wattledger.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import io.github.wattledger.power.CriticalPowerRefusal.Reason;
import io.github.wattledger.testing.TrialRide;
import java.util.Arrays;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Whether the curve of one ride carries a fit. The limits are this project's own. */
class RideCriticalPowerTest {
    @Test
    void acceptsARideOfSeparateTestsAndFindsItsNumbers() {
        CriticalPowerFit fit = accepted(TrialRide.watts(280, 18_000, 1), 265.0);
        assertThat(fit.criticalPowerW()).isCloseTo(280, withinPercentage(0.1));
        assertThat(fit.wPrimeJ()).isCloseTo(18_000, withinPercentage(0.1));
        assertThat(fit.efforts())
                .extracting(BestEffort::seconds)
                .containsExactly(180.0, 300.0, 480.0, 720.0, 1200.0, 1800.0);
    }

    @Test
    void threeTrialsWithRestAreEnough() {
        // 3, 12 and 30 minutes by 280 W and 18 kJ: 380, 305 and 290 W. The best 5, 8 and 20 minutes are parts of the
        // longer trials, below what the rider could have done in them.
        double[] watts = new double[3 * 3600];
        Arrays.fill(watts, 100);
        Arrays.fill(watts, 1000, 1180, 380);
        Arrays.fill(watts, 3000, 3720, 305);
        Arrays.fill(watts, 6000, 7800, 290);
        CriticalPowerFit fit = accepted(watts, 265.0);
        assertThat(fit.efforts()).extracting(BestEffort::seconds).containsExactly(180.0, 720.0, 1800.0);
        assertThat(fit.criticalPowerW()).isCloseTo(280, withinPercentage(0.1));
        assertThat(fit.wPrimeJ()).isCloseTo(18_000, withinPercentage(0.1));
    }

    @Test
    void threeSevenAndTwelveMinutesAreEnough() {
        // The field protocol of Karsten et al. 2015. The best 20 and 30 minutes hold rest and are left out.
        double[] watts = new double[2 * 3600];
        Arrays.fill(watts, 100);
        Arrays.fill(watts, 1000, 1180, 250 + 18_000 / 180.0);
        Arrays.fill(watts, 3000, 3420, 250 + 18_000 / 420.0);
        Arrays.fill(watts, 5200, 5920, 250 + 18_000 / 720.0);
        CriticalPowerFit fit = accepted(watts, null);
        assertThat(fit.efforts()).extracting(BestEffort::seconds).containsExactly(180.0, 420.0, 720.0);
        assertThat(fit.criticalPowerW()).isCloseTo(250, withinPercentage(0.1));
        assertThat(fit.wPrimeJ()).isCloseTo(18_000, withinPercentage(0.1));
    }

    @Test
    void refusesAnEvenRide() {
        // 210 W with a slow wave of 3 W: a flat curve whose level says nothing of critical power.
        double[] watts = new double[4 * 3600];
        Arrays.setAll(watts, second -> 210 + 3 * Math.sin(second / 300.0));
        assertRefused(watts, null, Reason.NO_MAXIMAL_EFFORTS, "no three maximal efforts");
    }

    @Test
    void refusesAPerfectlyConstantRide() {
        double[] watts = new double[3600];
        Arrays.fill(watts, 200);
        assertRefused(watts, null, Reason.NO_MAXIMAL_EFFORTS, "no three maximal efforts");
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
        assertRefused(TrialRide.watts(280, 18_000, 0.8), 265.0, Reason.NO_MAXIMAL_EFFORTS, "threshold of 265 W");
        assertThat(accepted(TrialRide.watts(280, 18_000, 0.8), null).criticalPowerW())
                .isCloseTo(224, within(0.5));
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
        double[] watts = TrialRide.watts(280, 18_000, 1);
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
    void saysWhenMissingSecondsMayHaveLoweredAllLongBests() {
        double[] watts = TrialRide.watts(280, 18_000, 1);
        for (int second = 0; second < watts.length; second += 10) {
            watts[second] = Double.NaN;
        }
        assertRefused(watts, null, Reason.MISSING_SECONDS, "12 minutes");
    }

    @Test
    void refusesAFitThatTheRideItselfOverdraws() {
        // The same six tests with two minutes of rest between them: none after the first was begun rested, so more than
        // this critical power and W' must have been there.
        double[] rested = TrialRide.watts(280, 18_000, 1);
        double[] hurried = new double[rested.length];
        int length = 0;
        int rest = 0;
        for (double each : rested) {
            rest = each == 100 ? rest + 1 : 0;
            if (rest <= 120) {
                hurried[length++] = each;
            }
        }
        double[] watts = Arrays.copyOf(hurried, length);
        assertThat(CriticalPower.ofCurve(MeanMaximalCurve.of(watts), null).accepted())
                .isPresent();
        assertRefused(watts, null, Reason.CONTRADICTED_BY_RIDE, "rested");
    }

    @Test
    void refusesBestsThatLieOnNoHyperbola() {
        // By hand, inverse time: 3, 8, 12 and 30 minutes leave residuals of 5, -13, -3 and 12 W about 259 W and 24.6
        // kJ; time
        // on power follows the 30 minutes and comes out some 6 % higher.
        double[] seconds = {180, 300, 480, 720, 1200, 1800};
        double[] bestsW = {400, 300, 297, 290, 285, 284};
        double[] watts = new double[6 * 3600];
        Arrays.fill(watts, 100);
        for (int i = 0; i < seconds.length; i++) {
            int from = (i + 1) * 3000;
            Arrays.fill(watts, from, from + (int) seconds[i], bestsW[i]);
        }
        assertRefused(watts, null, Reason.TOO_UNCERTAIN, "one curve");
    }

    @Test
    void keepsTheFitThatWasNotBelieved() {
        CriticalPowerResult result = CriticalPower.ofRide(TrialRide.watts(280, 18_000, 0.8), 265.0);
        assertThat(result).isInstanceOfSatisfying(CriticalPowerRefusal.class, refusal -> {
            CriticalPowerFit fit = Objects.requireNonNull(refusal.refusedFit());
            assertThat(fit.criticalPowerW()).isCloseTo(224, within(0.5));
        });
    }

    @Test
    void aRideAtNoPowerHoldsNone() {
        // Nothing is missing: the rider coasted.
        assertRefused(new double[3600], null, Reason.TOO_SHORT, "no 12 minutes of power");
    }

    @Test
    void thresholdIsTheHigherOfTwentyMinutesAndCriticalPower() {
        // CP 280 W and W' 18 kJ hold 295 W for 20 minutes: 95 % of it is 280.25 W, above critical power.
        ThresholdEstimate twenty =
                ThresholdEstimate.of(TrialRide.watts(280, 18_000, 1)).orElseThrow();
        assertThat(twenty.watts()).isCloseTo(280.25, within(0.01));
        assertThat(twenty.basis()).isEqualTo(ThresholdEstimate.Basis.TWENTY_MINUTES);
        assertThat(twenty.criticalPowerW()).isCloseTo(280, within(0.1));
        // With 12 kJ it is 290 W for 20 minutes, 95 % of it 275.5 W: critical power is the higher.
        ThresholdEstimate critical =
                ThresholdEstimate.of(TrialRide.watts(280, 12_000, 1)).orElseThrow();
        assertThat(critical.watts()).isCloseTo(280, within(0.1));
        assertThat(critical.basis()).isEqualTo(ThresholdEstimate.Basis.CRITICAL_POWER);
        assertThat(critical.lowW()).isCloseTo(280 * 0.91, within(0.5));
        assertThat(critical.highW()).isCloseTo(280 * 1.09, within(0.5));
    }

    @Test
    void thereIsNoThresholdWithoutTwentyMinutes() {
        double[] watts = new double[1199];
        Arrays.fill(watts, 250);
        assertThat(ThresholdEstimate.of(watts)).isEmpty();
        assertThat(ThresholdEstimate.of(new double[0])).isEmpty();
    }

    @Test
    void anEvenRideStillGivesAtLeastNinetyFivePercentOfTwentyMinutes() {
        double[] watts = new double[7200];
        Arrays.fill(watts, 200);
        ThresholdEstimate estimate = ThresholdEstimate.of(watts).orElseThrow();
        assertThat(estimate.watts()).isCloseTo(190, within(1e-9));
        assertThat(estimate.criticalPowerW()).isNull();
    }

    private static CriticalPowerFit accepted(double[] watts, @Nullable Double thresholdPowerW) {
        CriticalPowerResult result = CriticalPower.ofRide(watts, thresholdPowerW);
        assertThat(result).isInstanceOf(CriticalPowerFit.class);
        return (CriticalPowerFit) result;
    }

    private static void assertRefused(double[] watts, @Nullable Double thresholdPowerW, Reason reason, String words) {
        assertThat(CriticalPower.ofRide(watts, thresholdPowerW))
                .isInstanceOfSatisfying(CriticalPowerRefusal.class, refusal -> {
                    assertThat(refusal.reason()).isEqualTo(reason);
                    assertThat(refusal.text()).contains(words);
                });
    }
}
