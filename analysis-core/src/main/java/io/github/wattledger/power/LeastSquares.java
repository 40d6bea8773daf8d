package io.github.wattledger.power;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer.Optimum;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresProblem;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.stat.regression.OLSMultipleLinearRegression;

/**
 * Weighted least squares for a line and for a curve, with standard errors scaled by the residual standard deviation: a
 * weight says how much an observation counts against the others, not how large its error is.
 */
final class LeastSquares {
    private static final int MOST_EVALUATIONS = 2000;

    /** A parameter this close to its bound, relative to the bound, lies on it. */
    private static final double ON_BOUND = 1e-6;

    /** Tolerances of the search: as tight as double precision allows, since the certified fits ask for it. */
    private static final double TOLERANCE = 1e-13;

    private LeastSquares() {}

    /** A curve with parameters. */
    interface Model {
        double value(double x, double[] parameters);

        /** Writes the derivative of the value by each parameter into {@code gradient}. */
        void gradient(double x, double[] parameters, double[] gradient);
    }

    /** What was found. */
    static final class Solution {
        private final double[] parameters;
        private final double[] unscaledErrors;
        private final double[] standardErrors;
        private final double[] residuals;
        private final double residualSumOfSquares;
        private final double rSquared;
        private final boolean onBound;

        private Solution(
                double[] parameters,
                double[] unscaledErrors,
                double[] residuals,
                double[] y,
                double[] weights,
                boolean onBound) {
            this.parameters = parameters;
            this.unscaledErrors = unscaledErrors;
            this.residuals = residuals;
            this.residualSumOfSquares = weightedSum(weights, i -> residuals[i] * residuals[i]);
            double meanY = weightedSum(weights, i -> y[i]) / weightedSum(weights, i -> 1);
            double total = weightedSum(weights, i -> (y[i] - meanY) * (y[i] - meanY));
            this.rSquared = 1 - residualSumOfSquares / total;
            double scale = Math.sqrt(residualSumOfSquares / degreesOfFreedom());
            this.standardErrors =
                    Arrays.stream(unscaledErrors).map(each -> each * scale).toArray();
            this.onBound = onBound;
        }

        double parameter(int index) {
            return parameters[index];
        }

        /** {@code NaN} when there are no more observations than parameters. */
        double standardError(int index) {
            return degreesOfFreedom() > 0 ? standardErrors[index] : Double.NaN;
        }

        /** The error where a weight is the inverse of an observation's known variance. */
        double unscaledError(int index) {
            return unscaledErrors[index];
        }

        /** The weighted sum of squared residuals. */
        double residualSumOfSquares() {
            return residualSumOfSquares;
        }

        /** The share of the weighted variance about the weighted mean that the fit explains. */
        double rSquared() {
            return rSquared;
        }

        int degreesOfFreedom() {
            return residuals.length - parameters.length;
        }

        /** Whether the search ended on a bound of a parameter, where errors mean nothing. */
        boolean isOnBound() {
            return onBound;
        }
    }

    /**
     * The line {@code y = parameter(0) + parameter(1) x}.
     *
     * @param weights one for each observation, above 0
     */
    static Solution line(double[] x, double[] y, double[] weights) {
        double[] response = new double[x.length];
        double[][] design = new double[x.length][];
        for (int i = 0; i < x.length; i++) {
            double root = Math.sqrt(weights[i]);
            response[i] = root * y[i];
            design[i] = new double[] {root, root * x[i]};
        }
        OLSMultipleLinearRegression regression = new OLSMultipleLinearRegression();
        regression.setNoIntercept(true);
        regression.newSampleData(response, design);
        double[] line = regression.estimateRegressionParameters();
        double[][] variance = regression.estimateRegressionParametersVariance();
        double[] errors = {Math.sqrt(variance[0][0]), Math.sqrt(variance[1][1])};
        double[] residuals = new double[x.length];
        Arrays.setAll(residuals, i -> y[i] - line[0] - line[1] * x[i]);
        return new Solution(line, errors, residuals, y, weights, false);
    }

    /**
     * A curve, by Levenberg-Marquardt from a starting point. Steps beyond a bound are cut back to it; the search then
     * need not end at the best point on that bound, so a solution on a bound can only be refused.
     *
     * @param weights one for each observation, above 0
     * @param low lower bound of each parameter
     * @param high upper bound of each parameter
     * @return the solution, or empty when the search did not converge or the efforts do not separate the parameters
     */
    static Optional<Solution> curve(
            Model model, double[] x, double[] y, double[] weights, double[] start, double[] low, double[] high) {
        double[] roots = Arrays.stream(weights).map(Math::sqrt).toArray();
        double[] target = new double[y.length];
        Arrays.setAll(target, i -> roots[i] * y[i]);
        LeastSquaresProblem problem = new LeastSquaresBuilder()
                .start(clamp(start, low, high))
                .target(target)
                .model(point -> values(model, x, roots, point), point -> jacobian(model, x, roots, point))
                .parameterValidator(point -> new ArrayRealVector(clamp(point.toArray(), low, high), false))
                .maxEvaluations(MOST_EVALUATIONS)
                .maxIterations(MOST_EVALUATIONS)
                .build();
        try {
            Optimum optimum = new LevenbergMarquardtOptimizer()
                    .withCostRelativeTolerance(TOLERANCE)
                    .withParameterRelativeTolerance(TOLERANCE)
                    .withOrthoTolerance(TOLERANCE)
                    .optimize(problem);
            double[] parameters = optimum.getPoint().toArray();
            double[] errors = optimum.getSigma(0).toArray();
            double[] residuals = new double[x.length];
            Arrays.setAll(residuals, i -> y[i] - model.value(x[i], parameters));
            if (!areFinite(parameters) || !areFinite(errors) || !areFinite(residuals)) {
                return Optional.empty();
            }
            return Optional.of(
                    new Solution(parameters, errors, residuals, y, weights, isOnBound(parameters, low, high)));
        } catch (MathRuntimeException e) {
            return Optional.empty();
        }
    }

    /** Weights of 1 for {@code count} observations. */
    static double[] equalWeights(int count) {
        double[] weights = new double[count];
        Arrays.fill(weights, 1);
        return weights;
    }

    /**
     * How many standard errors on each side of an estimate make its 95 % confidence interval (Student's t).
     *
     * @param degreesOfFreedom observations less parameters, at least 1
     */
    static double errorsWithin95Percent(int degreesOfFreedom) {
        return new TDistribution(degreesOfFreedom).inverseCumulativeProbability(0.975);
    }

    private static double[] values(Model model, double[] x, double[] roots, double[] point) {
        double[] values = new double[x.length];
        Arrays.setAll(values, i -> roots[i] * model.value(x[i], point));
        return values;
    }

    private static double[][] jacobian(Model model, double[] x, double[] roots, double[] point) {
        double[][] jacobian = new double[x.length][point.length];
        for (int i = 0; i < x.length; i++) {
            double[] row = jacobian[i];
            double root = roots[i];
            model.gradient(x[i], point, row);
            Arrays.setAll(row, k -> root * row[k]);
        }
        return jacobian;
    }

    private static double[] clamp(double[] point, double[] low, double[] high) {
        double[] within = new double[point.length];
        Arrays.setAll(within, k -> Math.min(high[k], Math.max(low[k], point[k])));
        return within;
    }

    private static boolean isOnBound(double[] point, double[] low, double[] high) {
        return IntStream.range(0, point.length).anyMatch(k -> isClose(point[k], low[k]) || isClose(point[k], high[k]));
    }

    private static boolean isClose(double value, double bound) {
        return Double.isFinite(bound) && Math.abs(value - bound) <= ON_BOUND * Math.max(Math.abs(bound), ON_BOUND);
    }

    private static boolean areFinite(double[] values) {
        return Arrays.stream(values).allMatch(Double::isFinite);
    }

    private static double weightedSum(double[] weights, IntToDoubleFunction value) {
        double sum = 0;
        for (int i = 0; i < weights.length; i++) {
            sum += weights[i] * value.applyAsDouble(i);
        }
        return sum;
    }
}
