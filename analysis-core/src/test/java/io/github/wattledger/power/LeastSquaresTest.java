package io.github.wattledger.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The path that every fit takes, against certified values; each file names its source. */
class LeastSquaresTest {
    /** 1e-6 of the value: six digits, what is asked of a nonlinear fit. */
    private static final double SIX_DIGITS_PERCENT = 1e-4;

    /** Eight digits, what is asked of a line. */
    private static final double EIGHT_DIGITS_PERCENT = 1e-6;

    @Test
    void lineGivesTheCertifiedDigits() {
        CertifiedFit certified = CertifiedFit.read("norris.txt");
        LeastSquares.Solution line = LeastSquares.line(
                certified.numbers("x"),
                certified.numbers("y"),
                LeastSquares.equalWeights(certified.numbers("x").length));
        assertCertified(line, certified, EIGHT_DIGITS_PERCENT);
        assertThat(line.rSquared()).isCloseTo(certified.numbers("rSquared")[0], within(1e-12));
    }

    @ParameterizedTest
    @ValueSource(strings = {"misra1d.txt", "misra1a.txt", "danwood.txt", "mgh09.txt", "boxbod.txt"})
    void curveGivesTheCertifiedDigitsFromEachStart(String file) {
        CertifiedFit certified = CertifiedFit.read(file);
        List<double[]> starts = certified.all("start");
        assertThat(starts).isNotEmpty();
        for (double[] start : starts) {
            LeastSquares.Solution curve = LeastSquares.curve(
                            model(file),
                            certified.numbers("x"),
                            certified.numbers("y"),
                            LeastSquares.equalWeights(certified.numbers("x").length),
                            start,
                            filled(start.length, Double.NEGATIVE_INFINITY),
                            filled(start.length, Double.POSITIVE_INFINITY))
                    .orElseThrow();
            assertCertified(curve, certified, SIX_DIGITS_PERCENT);
            assertThat(curve.isOnBound()).isFalse();
        }
    }

    @Test
    void aLineThroughLogarithmsIsAnotherEstimatorThanAPowerLaw() {
        // NIST DanWood: the certified exponent belongs to the nonlinear fit.
        CertifiedFit certified = CertifiedFit.read("danwood.txt");
        PowerLaw law = PowerLaw.fit(certified.numbers("x"), certified.numbers("y"));
        assertThat(-law.exponent()).isNotCloseTo(certified.numbers("parameters")[1], within(1e-4));
        assertThat(-law.exponent()).isCloseTo(certified.numbers("parameters")[1], within(0.2));
    }

    @Test
    void aWeightOfTwoIsTheSameAsTheObservationTwice() {
        double[] x = {1, 2, 3, 5};
        double[] y = {2.1, 3.9, 6.2, 9.7};
        LeastSquares.Solution weighted = LeastSquares.line(x, y, new double[] {1, 2, 1, 1});
        LeastSquares.Solution twice = LeastSquares.line(
                new double[] {1, 2, 2, 3, 5}, new double[] {2.1, 3.9, 3.9, 6.2, 9.7}, LeastSquares.equalWeights(5));
        for (int k = 0; k < 2; k++) {
            assertThat(weighted.parameter(k)).isCloseTo(twice.parameter(k), within(1e-12));
        }
        assertThat(weighted.residualSumOfSquares()).isCloseTo(twice.residualSumOfSquares(), within(1e-12));
    }

    @Test
    void weightsOfAnySizeGiveTheSameErrors() {
        double[] x = {1, 2, 3, 5};
        double[] y = {2.1, 3.9, 6.2, 9.7};
        LeastSquares.Solution ones = LeastSquares.line(x, y, LeastSquares.equalWeights(4));
        LeastSquares.Solution hundreds = LeastSquares.line(x, y, filled(4, 100));
        assertThat(hundreds.standardError(1)).isCloseTo(ones.standardError(1), within(1e-12));
    }

    @Test
    void aWeightOfACurveIsTheSameAsTheObservationThatOften() {
        double[] x = {1, 2, 3, 5};
        double[] y = {2.4, 4.1, 5.1, 6.9};
        LeastSquares.Solution weighted = saturating(x, y, new double[] {1, 4, 1, 1});
        LeastSquares.Solution repeated = saturating(
                new double[] {1, 2, 2, 2, 2, 3, 5},
                new double[] {2.4, 4.1, 4.1, 4.1, 4.1, 5.1, 6.9},
                LeastSquares.equalWeights(7));
        // The repeated one claims seven observations, the weighted one knows that there are four.
        double scale = Math.sqrt((7 - 2) / (4 - 2.0));
        for (int k = 0; k < 2; k++) {
            assertThat(weighted.parameter(k)).isCloseTo(repeated.parameter(k), withinPercentage(SIX_DIGITS_PERCENT));
            assertThat(weighted.standardError(k))
                    .isCloseTo(scale * repeated.standardError(k), withinPercentage(SIX_DIGITS_PERCENT));
        }
        assertThat(weighted.residualSumOfSquares()).isCloseTo(repeated.residualSumOfSquares(), within(1e-9));
    }

    private static LeastSquares.Solution saturating(double[] x, double[] y, double[] weights) {
        return LeastSquares.curve(
                        model("misra1a.txt"),
                        x,
                        y,
                        weights,
                        new double[] {8, 0.3},
                        filled(2, 0),
                        filled(2, Double.POSITIVE_INFINITY))
                .orElseThrow();
    }

    @Test
    void tellsWhenTheSearchEndsOnABound() {
        CertifiedFit certified = CertifiedFit.read("misra1d.txt");
        LeastSquares.Solution curve = LeastSquares.curve(
                        model("misra1d.txt"),
                        certified.numbers("x"),
                        certified.numbers("y"),
                        LeastSquares.equalWeights(certified.numbers("x").length),
                        new double[] {300, 0.0003},
                        new double[] {0, 0},
                        new double[] {400, 1})
                .orElseThrow();
        assertThat(curve.isOnBound()).isTrue();
    }

    @Test
    void studentsTIsThatOfTheTables() {
        // Any table of Student's t, two-sided 5 %: 12.706, 2.776, 2.228 for 1, 4 and 10 degrees of freedom.
        assertThat(LeastSquares.errorsWithin95Percent(1)).isCloseTo(12.706, within(0.0005));
        assertThat(LeastSquares.errorsWithin95Percent(4)).isCloseTo(2.776, within(0.0005));
        assertThat(LeastSquares.errorsWithin95Percent(10)).isCloseTo(2.228, within(0.0005));
    }

    private static void assertCertified(LeastSquares.Solution fit, CertifiedFit certified, double percent) {
        double[] parameters = certified.numbers("parameters");
        for (int k = 0; k < parameters.length; k++) {
            assertThat(fit.parameter(k))
                    .as("parameter %d of %s", k, certified.name())
                    .isCloseTo(parameters[k], withinPercentage(percent));
        }
        double[] errors = certified.numbers("standardErrors");
        for (int k = 0; k < errors.length; k++) {
            assertThat(fit.standardError(k))
                    .as("standard error %d of %s", k, certified.name())
                    .isCloseTo(errors[k], withinPercentage(percent));
        }
        assertThat(fit.residualSumOfSquares())
                .isCloseTo(certified.numbers("residualSumOfSquares")[0], withinPercentage(percent));
    }

    private static double[] filled(int count, double value) {
        double[] values = new double[count];
        Arrays.fill(values, value);
        return values;
    }

    private static LeastSquares.Model model(String file) {
        return switch (file) {
            case "misra1d.txt" -> new NumericalModel((x, b) -> b[0] * b[1] * x / (1 + b[1] * x));
            case "misra1a.txt", "boxbod.txt" -> new NumericalModel((x, b) -> b[0] * (1 - Math.exp(-b[1] * x)));
            case "danwood.txt" -> new NumericalModel((x, b) -> b[0] * Math.pow(x, b[1]));
            case "mgh09.txt" -> new NumericalModel((x, b) -> b[0] * (x * x + x * b[1]) / (x * x + x * b[2] + b[3]));
            default -> throw new IllegalArgumentException(file);
        };
    }

    private interface Formula {
        double at(double x, double[] parameters);
    }

    /** Derivatives by central differences, so that the formula stands here only once, as it is published. */
    private record NumericalModel(Formula formula) implements LeastSquares.Model {
        @Override
        public double value(double x, double[] parameters) {
            return formula.at(x, parameters);
        }

        @Override
        public void gradient(double x, double[] parameters, double[] gradient) {
            for (int k = 0; k < parameters.length; k++) {
                double step = 1e-5 * Math.max(Math.abs(parameters[k]), 1e-6);
                double[] above = parameters.clone();
                double[] below = parameters.clone();
                above[k] += step;
                below[k] -= step;
                gradient[k] = (formula.at(x, above) - formula.at(x, below)) / (above[k] - below[k]);
            }
        }
    }
}
