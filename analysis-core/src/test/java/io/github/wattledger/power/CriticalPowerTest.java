package io.github.wattledger.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import io.github.wattledger.power.CriticalPower.Form;
import io.github.wattledger.ride.Outcome;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import java.util.stream.Stream;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class CriticalPowerTest {
    /** One rider of Mitchell et al. 2018; the file names the source of each column. */
    private record Rider(
            String name,
            List<BestEffort> trials,
            List<Double> authors,
            List<Double> inverseTime,
            List<Double> workTime,
            List<Double> timeOnPower,
            double rSquared,
            List<Double> powerLaw) {
        @Override
        public String toString() {
            return name;
        }
    }

    static Stream<Rider> riders() {
        List<Rider> riders = CertifiedFit.read("mitchell-2018.txt").lines().stream()
                .map(CriticalPowerTest::rider)
                .toList();
        assertThat(riders).hasSize(6);
        return riders.stream();
    }

    private static Rider rider(String line) {
        String[] cells = line.split("\\|", -1);
        List<BestEffort> trials = Arrays.stream(cells[1].strip().split(" "))
                .map(trial -> trial.split(":", -1))
                .map(trial -> new BestEffort(Double.parseDouble(trial[1]), Double.parseDouble(trial[0])))
                .toList();
        return new Rider(
                cells[0].strip(),
                trials,
                list(cells[2]),
                list(cells[3]),
                list(cells[4]),
                list(cells[5]),
                Double.parseDouble(cells[6].strip()),
                list(cells[7]));
    }

    private static List<Double> list(String numbers) {
        return Arrays.stream(CertifiedFit.numbersOf(numbers)).boxed().toList();
    }

    @ParameterizedTest
    @MethodSource("riders")
    void agreesWithTheAuthorsOfTheTrials(Rider rider) {
        // Within the rounding of what the authors printed.
        CriticalPowerFit fit = fitted(rider.trials, Form.INVERSE_TIME);
        assertThat(fit.criticalPowerW()).isCloseTo(rider.authors.get(0), within(0.5));
        assertThat(fit.wPrimeKJ()).isCloseTo(rider.authors.get(1), within(0.05));
    }

    @ParameterizedTest
    @MethodSource("riders")
    void eachFormAgreesWithAnIndependentFit(Rider rider) {
        assertFit(fitted(rider.trials, Form.INVERSE_TIME), rider.inverseTime, 0.01);
        assertFit(fitted(rider.trials, Form.WORK_TIME), rider.workTime, 0.01);
        assertFit(fitted(rider.trials, Form.TIME_ON_POWER), rider.timeOnPower, 0.1);
        assertThat(fitted(rider.trials, Form.INVERSE_TIME).rSquared()).isCloseTo(rider.rSquared, within(0.000005));
    }

    @ParameterizedTest
    @MethodSource("riders")
    void powerLawAgreesWithAnIndependentFit(Rider rider) {
        PowerLaw law = PowerLaw.fit(rider.trials);
        assertThat(law.powerAtOneSecondW()).isCloseTo(rider.powerLaw.get(0), within(0.0006));
        assertThat(law.exponent()).isCloseTo(rider.powerLaw.get(1), within(0.0000006));
    }

    @ParameterizedTest
    @MethodSource("riders")
    void criticalPowerFallsAndWPrimeRisesFromFormToForm(Rider rider) {
        CriticalPowerFit inverse = fitted(rider.trials, Form.INVERSE_TIME);
        CriticalPowerFit work = fitted(rider.trials, Form.WORK_TIME);
        CriticalPowerFit time = fitted(rider.trials, Form.TIME_ON_POWER);
        assertThat(List.of(time.criticalPowerW(), work.criticalPowerW(), inverse.criticalPowerW()))
                .isSorted();
        assertThat(List.of(inverse.wPrimeJ(), work.wPrimeJ(), time.wPrimeJ())).isSorted();
    }

    @ParameterizedTest
    @MethodSource("riders")
    void workWeightedByInverseSquareOfTimeIsTheInverseTimeForm(Rider rider) {
        // An error of power grows with time when it is turned into work: the weights undo just that.
        double[] weights = rider.trials.stream()
                .mapToDouble(trial -> 1 / (trial.seconds() * trial.seconds()))
                .toArray();
        CriticalPowerFit work = fitted(CriticalPowerFit.of(rider.trials, weights, Form.WORK_TIME));
        CriticalPowerFit inverse = fitted(rider.trials, Form.INVERSE_TIME);
        assertThat(work.criticalPowerW()).isCloseTo(inverse.criticalPowerW(), within(1e-6));
        assertThat(work.wPrimeJ()).isCloseTo(inverse.wPrimeJ(), within(1e-4));
        assertThat(work.criticalPowerErrorW()).isCloseTo(inverse.criticalPowerErrorW(), within(1e-6));
    }

    @Test
    void groupMeanOfThePrintedValuesIsThatOfTheAbstract() {
        // Mitchell et al. 2018: 303 ± 52 W, 17.0 ± 3.0 kJ. Guards the table the riders above come from.
        double[] criticalPowersW = {288, 314, 299, 311, 369, 308, 290, 247, 207, 353, 249, 376, 257, 376};
        double[] wPrimesKJ = {16.5, 17.9, 20.9, 16.9, 14.2, 22.9, 21.8, 13.9, 15.6, 15.5, 14.5, 14.2, 14.7, 18.2};
        assertThat(Arrays.stream(criticalPowersW).average().orElseThrow()).isCloseTo(303.14, within(0.005));
        assertThat(standardDeviation(criticalPowersW)).isCloseTo(52.27, within(0.005));
        assertThat(Arrays.stream(wPrimesKJ).average().orElseThrow()).isCloseTo(16.98, within(0.005));
        assertThat(standardDeviation(wPrimesKJ)).isCloseTo(2.99, within(0.005));
        riders().forEach(rider -> {
            assertThat(criticalPowersW).contains(rider.authors.get(0));
            assertThat(wPrimesKJ).contains(rider.authors.get(1));
        });
    }

    @Test
    void threeParametersGiveTheTimeTheyDefine() {
        // Vinetti et al. 2019, group means 177 W, 17.0 kJ, 1184 W: 17000/123 - 17000/1007 s at 300 W, 0 s at 1184 W.
        assertThat(CriticalPower.secondsAt(300, 177, 17000, 1184)).isCloseTo(121.33, within(0.005));
        assertThat(CriticalPower.secondsAt(1184, 177, 17000, 1184)).isCloseTo(0, within(1e-9));
        assertThat(CriticalPower.secondsAt(1e12, 177, 17000, 1184)).isCloseTo(-16.88, within(0.005));
        assertThat(CriticalPower.powerW(121.33, 177, 17000, 1184)).isCloseTo(300, within(0.01));
    }

    @ParameterizedTest
    @EnumSource(
            value = Form.class,
            names = {"WORK_TIME", "INVERSE_TIME", "TIME_ON_POWER"})
    void recoversTheNumbersThatMadeTheEfforts(Form form) {
        for (double criticalPowerW : new double[] {120, 250, 400}) {
            for (double wPrimeJ : new double[] {6000, 17000, 30000}) {
                List<BestEffort> efforts = Stream.of(130, 200, 330, 600, 1100, 1800)
                        .map(seconds -> new BestEffort(seconds, criticalPowerW + wPrimeJ / seconds))
                        .toList();
                CriticalPowerFit fit = fitted(efforts, form);
                assertThat(fit.criticalPowerW()).isCloseTo(criticalPowerW, withinPercentage(0.001));
                assertThat(fit.wPrimeJ()).isCloseTo(wPrimeJ, withinPercentage(0.001));
                assertThat(fit.rSquared()).isCloseTo(1, within(1e-9));
            }
        }
    }

    @Test
    void recoversThreeParameters() {
        double[] seconds = {10, 30, 60, 180, 420, 900};
        double[] watts = Arrays.stream(seconds)
                .map(t -> 250 + 20000 / (t + 20000.0 / 850))
                .toArray();
        CriticalPowerFit fit = fitted(CriticalPowerFit.of(seconds, watts, Form.THREE_PARAMETER));
        assertThat(fit.criticalPowerW()).isCloseTo(250, withinPercentage(0.1));
        assertThat(fit.wPrimeJ()).isCloseTo(20000, withinPercentage(0.1));
        assertThat(fit.maximalPowerW()).isNotNull();
        assertThat(fit.maximalPowerW()).isCloseTo(1100, withinPercentage(0.1));
        assertThat(fit.secondsAt(fit.powerW(90))).isCloseTo(90, within(1e-6));
    }

    @Test
    void threeParametersGiveALowerCriticalPowerAndALargerWPrimeThanTwo() {
        // Morton 1996, abstract: relaxing the zero time asymptote does just this.
        double[] seconds = {125, 200, 330, 600, 1100};
        double[] watts = Arrays.stream(seconds)
                .map(t -> 250 + 20000 / (t + 20000.0 / 850))
                .toArray();
        CriticalPowerFit two = fitted(CriticalPowerFit.of(seconds, watts, Form.INVERSE_TIME));
        assertThat(two.criticalPowerW()).isGreaterThan(250);
        assertThat(two.wPrimeJ()).isLessThan(20000);
    }

    /** Noise where each form takes it to be: in work, in power, in time, in power. */
    @ParameterizedTest
    @EnumSource
    void ninetyFivePercentIntervalsHoldTheTruthAboutThatOften(Form form) {
        int trials = 1000;
        int within = 0;
        int refused = 0;
        RandomGenerator random = new SplittableRandom(20260514);
        boolean three = form == Form.THREE_PARAMETER;
        double[] durations = three
                ? new double[] {8, 15, 30, 60, 120, 240, 600, 1200}
                : new double[] {180, 300, 480, 720, 1200, 1700};
        // Morton's hyperbola meets the time axis before zero; without a maximal power it does so at zero.
        double beforeZero = three ? 18000.0 / (1100 - 270) : 0;
        for (int trial = 0; trial < trials; trial++) {
            double[] seconds = durations.clone();
            double[] watts = new double[durations.length];
            for (int i = 0; i < durations.length; i++) {
                watts[i] = 270 + 18000 / (durations[i] + beforeZero);
                switch (form) {
                    case WORK_TIME -> watts[i] += random.nextGaussian(0, 1500) / durations[i];
                    case INVERSE_TIME, THREE_PARAMETER -> watts[i] += random.nextGaussian(0, 5);
                    case TIME_ON_POWER -> seconds[i] += random.nextGaussian(0, 15);
                }
            }
            Optional<CriticalPowerFit> fit =
                    CriticalPowerFit.of(seconds, watts, form).found();
            if (fit.isEmpty()) {
                refused++;
            } else if (Math.abs(fit.get().criticalPowerW() - 270) <= fit.get().criticalPowerHalfWidthW()) {
                within++;
            }
        }
        assertThat(refused).as("fits that ran to a bound").isLessThan(trials / 100);
        assertThat(100.0 * within / (trials - refused)).isBetween(90.0, 98.0);
    }

    @Test
    void residualsAreMeasuredLessFittedPowerInTheOrderOfTheEfforts() {
        CriticalPowerFit fit = fitted(
                CriticalPowerFit.of(new double[] {1200, 180, 600}, new double[] {270, 350, 282}, Form.INVERSE_TIME));
        assertThat(fit.efforts()).extracting(BestEffort::seconds).containsExactly(180.0, 600.0, 1200.0);
        for (int i = 0; i < 3; i++) {
            BestEffort effort = fit.efforts().get(i);
            double fittedW = fit.criticalPowerW() + fit.wPrimeJ() / effort.seconds();
            assertThat(fit.residualsW().get(i)).isCloseTo(effort.watts() - fittedW, within(1e-9));
        }
        assertThat(fit.residualsW().stream().mapToDouble(Double::doubleValue).sum())
                .isCloseTo(0, within(1e-9));
    }

    @Test
    void refusesTooFewDurations() {
        assertRefused(new double[] {180, 900}, new double[] {350, 290}, Form.INVERSE_TIME, "durations, at least");
        assertRefused(
                new double[] {180, 900, 900}, new double[] {350, 290, 288}, Form.WORK_TIME, "durations, at least");
        assertRefused(
                new double[] {30, 180, 900}, new double[] {600, 350, 290}, Form.THREE_PARAMETER, "durations, at least");
    }

    @Test
    void refusesDurationsCloseTogether() {
        assertRefused(
                new double[] {300, 500, 899},
                new double[] {330, 310, 290},
                Form.INVERSE_TIME,
                "lie too close together");
    }

    @Test
    void refusesDurationsTheModelIsNotFor() {
        assertRefused(
                new double[] {119, 300, 900},
                new double[] {400, 330, 290},
                Form.INVERSE_TIME,
                "outside the 2 to 30 minutes the model is for");
        assertRefused(
                new double[] {180, 300, 1801},
                new double[] {400, 330, 290},
                Form.WORK_TIME,
                "outside the 2 to 30 minutes the model is for");
    }

    @ParameterizedTest
    @EnumSource(
            value = Form.class,
            names = {"WORK_TIME", "INVERSE_TIME"})
    void refusesANegativeWPrime(Form form) {
        assertRefused(new double[] {180, 600, 1200}, new double[] {250, 260, 270}, form, "cannot be");
    }

    @Test
    void refusesACurveThatRunsToTheEdge() {
        // Longer efforts were the stronger ones: no hyperbola falls like that.
        assertRefused(
                new double[] {180, 600, 1200},
                new double[] {250, 260, 270},
                Form.TIME_ON_POWER,
                "it ran to the edge",
                "no curve through these efforts was found");
        // On the two-parameter curve exactly: no maximal power is high enough.
        assertRefused(
                new double[] {130, 300, 600, 1200},
                new double[] {250 + 18000 / 130.0, 310, 280, 265},
                Form.THREE_PARAMETER,
                "it ran to the edge",
                "no curve through these efforts was found");
    }

    @Test
    void refusesNumbersThatAreNone() {
        assertThatIllegalArgumentException().isThrownBy(() -> new BestEffort(0, 300));
        assertThatIllegalArgumentException().isThrownBy(() -> new BestEffort(300, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> new BestEffort(300, Double.NaN));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CriticalPowerFit.of(new double[] {1, 2}, new double[] {1}, Form.WORK_TIME));
        assertThatIllegalArgumentException()
                .isThrownBy(
                        () -> CriticalPowerFit.of(List.of(new BestEffort(300, 300)), new double[] {0}, Form.WORK_TIME));
    }

    @Test
    void threeParametersAreTheLeastSquaresAndTheirErrorsFollowFromTheCurve() {
        // Definition: at the least sum of squares the residuals stand at right angles on the derivatives of the curve,
        // and the errors are the roots of the diagonal of (J'J)^-1 times the residual variance. The derivatives are
        // central differences of the formula itself, which is checked above.
        double[] seconds = {8, 15, 30, 60, 120, 240, 600, 1200};
        double[] scatterW = {9, -12, 7, -4, 5, -6, 3, -2};
        double[] watts = new double[seconds.length];
        Arrays.setAll(watts, i -> CriticalPower.powerW(seconds[i], 270, 18_000, 1100) + scatterW[i]);
        CriticalPowerFit fit = fitted(CriticalPowerFit.of(seconds, watts, Form.THREE_PARAMETER));
        assertThat(fit.maximalPowerW()).isNotNull();
        assertThat(fit.maximalPowerErrorW()).isNotNull();
        double[] parameters = {fit.criticalPowerW(), fit.wPrimeJ(), fit.maximalPowerW()};
        double[][] slopes = new double[seconds.length][];
        Arrays.setAll(slopes, i -> slopesOfThree(seconds[i], parameters));
        RealMatrix jacobian = MatrixUtils.createRealMatrix(slopes);
        RealVector residuals = MatrixUtils.createRealVector(
                fit.residualsW().stream().mapToDouble(Double::doubleValue).toArray());
        for (int k = 0; k < 3; k++) {
            RealVector column = jacobian.getColumnVector(k);
            assertThat(column.cosine(residuals)).as("parameter %d", k).isCloseTo(0, within(1e-6));
        }
        double variance = residuals.dotProduct(residuals) / (seconds.length - 3);
        RealMatrix covariance =
                MatrixUtils.inverse(jacobian.transpose().multiply(jacobian)).scalarMultiply(variance);
        assertThat(fit.criticalPowerErrorW()).isCloseTo(Math.sqrt(covariance.getEntry(0, 0)), withinPercentage(0.001));
        assertThat(fit.wPrimeErrorJ()).isCloseTo(Math.sqrt(covariance.getEntry(1, 1)), withinPercentage(0.001));
        assertThat(fit.maximalPowerErrorW()).isCloseTo(Math.sqrt(covariance.getEntry(2, 2)), withinPercentage(0.001));
    }

    private static double[] slopesOfThree(double seconds, double[] parameters) {
        double[] slopes = new double[3];
        for (int k = 0; k < 3; k++) {
            double[] above = parameters.clone();
            double[] below = parameters.clone();
            above[k] += 1e-5 * parameters[k];
            below[k] -= 1e-5 * parameters[k];
            slopes[k] = (CriticalPower.powerW(seconds, above[0], above[1], above[2])
                            - CriticalPower.powerW(seconds, below[0], below[1], below[2]))
                    / (above[k] - below[k]);
        }
        return slopes;
    }

    @Test
    void halfWidthsAreStudentsTTimesTheError() {
        // Any table of Student's t, two-sided 5 %: 3.182 for 3 degrees of freedom, which five efforts and two
        // parameters
        // leave.
        List<BestEffort> efforts =
                BestEffort.listOf(new double[] {180, 300, 600, 900, 1200}, new double[] {340, 300, 270, 260, 255});
        CriticalPowerFit fit =
                new CriticalPowerFit(Form.INVERSE_TIME, 240, 2, 18_000, 500, null, null, efforts, List.of(), 0.99);
        assertThat(fit.criticalPowerHalfWidthW()).isCloseTo(3.182 * 2, within(0.001));
        assertThat(fit.wPrimeHalfWidthJ()).isCloseTo(3.182 * 500, within(0.25));
    }

    @Test
    void durationsOnTheLimitsAreTaken() {
        // Two minutes, half an hour and a factor of three are within, by the definition in docs/methods.md. 250 W and
        // 18 kJ.
        for (double[] seconds : new double[][] {{120, 600, 1200}, {300, 900, 1800}, {300, 500, 900}}) {
            double[] watts = Arrays.stream(seconds).map(t -> 250 + 18_000 / t).toArray();
            CriticalPowerFit fit = fitted(CriticalPowerFit.of(seconds, watts, Form.INVERSE_TIME));
            assertThat(fit.criticalPowerW()).isCloseTo(250, within(1e-6));
        }
    }

    @Test
    void aNegativeWPrimeIsToldInKilojoules() {
        // By hand: 240, 254 and 257 W over 3, 10 and 20 min lie on 260 W - 3,600 J / t.
        Outcome<CriticalPowerFit> result =
                CriticalPowerFit.of(new double[] {180, 600, 1200}, new double[] {240, 254, 257}, Form.INVERSE_TIME);
        assertThat(result.refusal()).contains("critical power 260 W and W' -3.6 kJ cannot be");
    }

    private static void assertFit(CriticalPowerFit fit, List<Double> expected, double percent) {
        assertThat(fit.criticalPowerW()).isCloseTo(expected.get(0), withinPercentage(percent));
        assertThat(fit.wPrimeJ()).isCloseTo(expected.get(1), withinPercentage(percent));
    }

    private static void assertRefused(double[] seconds, double[] watts, Form form, String... reasons) {
        Outcome<CriticalPowerFit> result = CriticalPowerFit.of(seconds, watts, form);
        assertThat(result.refusal())
                .hasValueSatisfying(reason -> assertThat(reason).containsAnyOf(reasons));
        assertThat(result.found()).isEmpty();
    }

    private static CriticalPowerFit fitted(List<BestEffort> efforts, Form form) {
        return fitted(CriticalPowerFit.of(efforts, form));
    }

    private static CriticalPowerFit fitted(Outcome<CriticalPowerFit> result) {
        return result.orElseThrow(AssertionError::new);
    }

    private static double standardDeviation(double[] values) {
        double mean = Arrays.stream(values).average().orElseThrow();
        double sum =
                Arrays.stream(values).map(each -> (each - mean) * (each - mean)).sum();
        return Math.sqrt(sum / (values.length - 1));
    }
}
