package io.github.wattledger.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import io.github.wattledger.ride.Outcome;
import io.github.wattledger.testing.TrialRide;
import java.util.Arrays;
import java.util.List;
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
        assertRefused(watts, null, "no three maximal efforts");
    }

    @Test
    void refusesAPerfectlyConstantRide() {
        double[] watts = new double[3600];
        Arrays.fill(watts, 200);
        assertRefused(
                watts,
                null,
                "no three maximal efforts of different length: its best 3 min were at 200 W, its best 30 min at 200 W");
    }

    @Test
    void refusesAnEasyRideWithOneHardClimb() {
        // Three minutes at 400 W in two hours at 150 W: the long efforts were not maximal.
        double[] watts = new double[7200];
        Arrays.fill(watts, 150);
        Arrays.fill(watts, 1000, 1180, 400);
        // Best half hour: (180 x 400 + 1,620 x 150) / 1,800 = 175 W.
        assertRefused(watts, null, "long efforts were not maximal: best 3 min 400 W, but best 30 min 175 W");
    }

    @Test
    void refusesEffortsFarBelowAKnownThreshold() {
        // The same tests at 80 % look like those of a weaker rider; the threshold tells.
        assertRefused(
                TrialRide.watts(280, 18_000, 0.8),
                265.0,
                "the ride holds no maximal efforts: its best ones point to 224 W, below the threshold of 265 W");
        assertThat(accepted(TrialRide.watts(280, 18_000, 0.8), null).criticalPowerW())
                .isCloseTo(224, within(0.5));
    }

    @Test
    void refusesAShortRide() {
        double[] watts = new double[700];
        Arrays.fill(watts, 250);
        assertRefused(watts, null, "holds no 12 minutes of power");
        assertRefused(new double[0], null, "holds no 12 minutes of power");
    }

    @Test
    void leavesOutABestThatMissingSecondsMayHaveLowered() {
        double[] watts = TrialRide.watts(280, 18_000, 1);
        // Nine minutes are gone from the 30-minute test: its window may have been better.
        int longTest = watts.length - 1800;
        Arrays.fill(watts, longTest + 600, longTest + 1140, Double.NaN);
        MeanMaximalCurve curve = MeanMaximalCurve.of(watts);
        assertThat(curve.bestWindow(1800).mayBeLow()).isTrue();
        Outcome<CriticalPowerFit> result = RideCriticalPower.ofCurve(curve, null);
        assertThat(result.found()).isPresent();
        assertThat(result.found().orElseThrow().efforts())
                .extracting(BestEffort::seconds)
                .doesNotContain(1800.0);
    }

    @Test
    void saysWhenMissingSecondsMayHaveLoweredAllLongBests() {
        double[] watts = TrialRide.watts(280, 18_000, 1);
        for (int second = 0; second < watts.length; second += 10) {
            watts[second] = Double.NaN;
        }
        assertRefused(watts, null, "seconds without power may have lowered the best 12 minutes");
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
        assertThat(RideCriticalPower.ofCurve(MeanMaximalCurve.of(watts), null).found())
                .isPresent();
        // By hand: each test spends 18 kJ, each rest keeps e^(-120 x 180 / 18,000) = 0.3012 of what is spent. After
        // six,
        // 18 (1 - 0.3012^6) / (1 - 0.3012) = 25.74 kJ are spent, 7.7 more than there are.
        assertRefused(
                watts,
                null,
                "the ride goes beyond what its own best efforts allow (280 W and 18.0 kJ would have been overdrawn by 7.7 kJ): they were not begun rested");
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
        assertRefused(
                watts,
                null,
                "its best efforts do not lie on one curve: critical power depends on the way of fitting it");
    }

    @Test
    void namesTheCriticalPowerThatWasNotBelieved() {
        // 80 % of 280 W.
        assertRefused(
                TrialRide.watts(280, 18_000, 0.8), 265.0, "its best ones point to 224 W, below the threshold of 265 W");
    }

    /** Trials of 3, 12 and 30 minutes at 100 W else. */
    private static double[] threeTrials(double threeW, double twelveW, double thirtyW) {
        double[] watts = new double[3 * 3600];
        Arrays.fill(watts, 100);
        Arrays.fill(watts, 1000, 1180, threeW);
        Arrays.fill(watts, 3000, 3720, twelveW);
        Arrays.fill(watts, 6000, 7800, thirtyW);
        return watts;
    }

    @Test
    void acceptsTrialsThatScatterLessThanTheLimits() {
        // By hand: 280 W and 18 kJ give 380, 305 and 290 W. In units of 1/3600 s the inverse times are 20, 5 and 2, on
        // which (-1, 6, -5) W stands at right angles, so that the line stays. Its sum of squares is 62, one degree of
        // freedom: s = 7.874 W. Mean inverse time 9, sum of squared deviations 186: the error of W' is 3600 s / root
        // 186
        // = 2,078 J (11.5 %), that of CP s root(1/3 + 81/186) = 6.90 W (2.5 %). The forms: 280 W; work on time, in
        // plain
        // sums, 273.57 W; time on power some 269 W. That is 3.8 % apart.
        CriticalPowerFit fit = accepted(threeTrials(379, 311, 285), null);
        assertThat(fit.criticalPowerW()).isCloseTo(280, within(1e-6));
        assertThat(fit.criticalPowerErrorW()).isCloseTo(6.904, within(0.001));
        assertThat(fit.wPrimeJ()).isCloseTo(18_000, within(1e-3));
        assertThat(fit.wPrimeErrorJ()).isCloseTo(2078.5, within(0.1));
    }

    @Test
    void refusesTrialsThatLeaveWPrimeTooUncertain() {
        // As above with 12 kJ and (-2, 12, -10) W: 13.8 W is 4.9 % of CP, but 4,157 J is 35 % of W'.
        assertRefused(
                threeTrials(280 + 200 / 3.0 - 2, 280 + 50 / 3.0 + 12, 280 + 20 / 3.0 - 10),
                null,
                "critical power 280 W with an error of 14 W, W' 12.0 kJ with an error of 4.2 kJ");
    }

    @Test
    void refusesTrialsThatLeaveCriticalPowerTooUncertain() {
        // As above with 28 kJ and (-3, 18, -15) W: 6,235 J is 22 % of W', but 20.7 W is 7.4 % of CP.
        assertRefused(
                threeTrials(280 + 28_000 / 180.0 - 3, 280 + 28_000 / 720.0 + 18, 280 + 28_000 / 1800.0 - 15),
                null,
                "critical power 280 W with an error of 21 W, W' 28.0 kJ with an error of 6.2 kJ");
    }

    @Test
    void twelveMinutesAreLongEnoughToBeLookedAt() {
        double[] watts = new double[720];
        Arrays.fill(watts, 250);
        assertRefused(watts, null, "its best 3 min were at 250 W, its best 12 min at 250 W");
    }

    @Test
    void aRideAtNoPowerHoldsNone() {
        // Nothing is missing: the rider coasted.
        assertRefused(new double[3600], null, "no 12 minutes of power");
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
    void twentyMinutesAreEnoughForAThresholdUnlessTheyHoldNoPower() {
        double[] watts = new double[1200];
        assertThat(ThresholdEstimate.of(watts)).isEmpty();
        Arrays.fill(watts, 200);
        assertThat(ThresholdEstimate.of(watts).orElseThrow().watts()).isCloseTo(190, within(1e-9));
    }

    @Test
    void rangeOfTwentyMinutesIsFortyWattsToEachSide() {
        // Borszcz et al. 2018: limits of agreement of about 40 W to either side.
        double[] watts = new double[1200];
        Arrays.fill(watts, 200);
        ThresholdEstimate estimate = ThresholdEstimate.of(watts).orElseThrow();
        assertThat(estimate.lowW()).isCloseTo(150, within(1e-9));
        assertThat(estimate.highW()).isCloseTo(230, within(1e-9));
        // 95 % of 30 W less 40 W would lie below nothing.
        Arrays.fill(watts, 30);
        assertThat(ThresholdEstimate.of(watts).orElseThrow().lowW()).isZero();
    }

    @Test
    void rangeOfAnUncertainCriticalPowerIsThatOfTheFit() {
        // Half width 3.182 (Student's t for 3 degrees of freedom, any table) x 10 W = 31.8 W, more than 9 % of 280 W.
        double[] watts = new double[1200];
        Arrays.fill(watts, 250);
        List<BestEffort> efforts =
                BestEffort.listOf(new double[] {180, 300, 600, 900, 1200}, new double[] {380, 340, 310, 300, 295});
        CriticalPowerFit fit = new CriticalPowerFit(
                CriticalPower.Form.INVERSE_TIME, 280, 10, 18_000, 500, null, null, efforts, List.of(), 0.99);
        ThresholdEstimate estimate = ThresholdEstimate.of(MeanMaximalCurve.of(watts), Outcome.of(fit))
                .orElseThrow();
        assertThat(estimate.lowW()).isCloseTo(280 - 31.82, within(0.01));
        assertThat(estimate.highW()).isCloseTo(280 + 31.82, within(0.01));
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
        return RideCriticalPower.ofRide(watts, thresholdPowerW).orElseThrow(AssertionError::new);
    }

    private static void assertRefused(double[] watts, @Nullable Double thresholdPowerW, String words) {
        assertThat(RideCriticalPower.ofRide(watts, thresholdPowerW).refusal())
                .hasValueSatisfying(reason -> assertThat(reason).contains(words));
    }
}
