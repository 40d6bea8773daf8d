package io.github.wattledger.bunch;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * The numbers of a {@link DragModel} that explain the pieces of a ride best, what was believed before counted in: least
 * squares, weighed by the covariance of the pieces.
 */
final class DragFit {
    /** How patchy the wind can be, m/s. */
    private static final double[] PATCHY_MPS = {0.35, 0.55, 0.8, 1.2, 1.7};

    private static final double FIRST_PATCHY_MPS = 0.55;
    private static final int MOST_ROUNDS = 4;

    /** A round that moves every number by less than this ends the search, in standard errors of the prior. */
    private static final double LEAST_STEP = 1e-3;

    private final DragModel model;
    private final double patchyMps;
    private final double[] numbers;
    private final RealMatrix covariance;
    private final double logDeterminant;
    private final DecompositionSolver pieces;
    private RealMatrix slopes;
    private RealMatrix weighedSlopes;
    private RealVector left;
    private CholeskyDecomposition information;
    private final double logLikelihood;

    private DragFit(DragModel model, RealMatrix covariance, double[] start, double patchyMps) {
        this.model = model;
        this.patchyMps = patchyMps;
        this.numbers = start.clone();
        this.covariance = covariance;
        CholeskyDecomposition decomposed = cholesky(covariance);
        this.pieces = decomposed.getSolver();
        this.logDeterminant = logDeterminant(decomposed);
        linearize();
        double longest = Double.POSITIVE_INFINITY;
        for (int round = 0; round < MOST_ROUNDS && longest > LEAST_STEP; round++) {
            longest = step();
            linearize();
        }
        this.logLikelihood = -(logDeterminant + logDeterminant(information) + explained()) / 2;
    }

    /** A fit for each patchiness of the wind. */
    static List<DragFit> each(DragModel model, Scatter scatter) {
        DragFit first = of(model, scatter, model.firstGuess(), FIRST_PATCHY_MPS);
        return Arrays.stream(PATCHY_MPS)
                .mapToObj(patchy -> of(model, scatter, first.numbers, patchy))
                .toList();
    }

    private static DragFit of(DragModel model, Scatter scatter, double[] start, double patchyMps) {
        return new DragFit(model, scatter.covariance(model, start, patchyMps), start, patchyMps);
    }

    /** The fit with the likeliest patchiness of the wind. */
    static DragFit likeliest(List<DragFit> fits) {
        return fits.stream()
                .max(Comparator.comparingDouble(DragFit::logLikelihood))
                .orElseThrow();
    }

    /** The same ride without its last bunch, though its pieces scatter as in that bunch. */
    DragFit withoutLast() {
        int kept = model.bunches().size() - 1;
        double[] start = Arrays.copyOf(numbers, DragModel.FIRST_SAVING + kept);
        return new DragFit(model.withFirst(kept), covariance, start, patchyMps);
    }

    private static CholeskyDecomposition cholesky(RealMatrix matrix) {
        return new CholeskyDecomposition(matrix, 1e-8, 0);
    }

    private static double logDeterminant(CholeskyDecomposition decomposition) {
        RealMatrix lower = decomposition.getL();
        double sum = 0;
        for (int i = 0; i < lower.getRowDimension(); i++) {
            sum += 2 * Math.log(lower.getEntry(i, i));
        }
        return sum;
    }

    /** The model as a line about its numbers. */
    private void linearize() {
        int count = model.pieces().count();
        double[][] rows = new double[count][];
        double[] rest = new double[count];
        for (int i = 0; i < count; i++) {
            rows[i] = model.slope(numbers, i);
            rest[i] = model.pieces().resistance(i) - model.expected(numbers, i);
        }
        slopes = MatrixUtils.createRealMatrix(rows);
        weighedSlopes = pieces.solve(slopes);
        left = MatrixUtils.createRealVector(rest);
        information = information(slopes, weighedSlopes);
    }

    /** What slopes and prior say of the first numbers together. */
    private CholeskyDecomposition information(RealMatrix slopes, RealMatrix weighedSlopes) {
        RealMatrix inverse = slopes.transposeMultiply(weighedSlopes);
        for (int k = 0; k < inverse.getRowDimension(); k++) {
            for (int l = 0; l < k; l++) {
                // Equal but for rounding, which the decomposition would refuse.
                inverse.setEntry(k, l, inverse.getEntry(l, k));
            }
            inverse.addToEntry(k, k, 1 / square(model.priorError(k)));
        }
        return cholesky(inverse);
    }

    /** Moves the numbers, and says by how much at most, in standard errors of the prior. */
    private double step() {
        double[] start = model.start();
        RealVector right = weighedSlopes.preMultiply(left);
        for (int k = 0; k < numbers.length; k++) {
            right.addToEntry(k, (start[k] - numbers[k]) / square(model.priorError(k)));
        }
        RealVector step = information.getSolver().solve(right);
        double longest = 0;
        for (int k = 0; k < numbers.length; k++) {
            numbers[k] += step.getEntry(k);
            longest = Math.max(longest, Math.abs(step.getEntry(k)) / model.priorError(k));
        }
        return longest;
    }

    /** The squares of what is left and of how far the numbers went from the prior, each over its variance. */
    private double explained() {
        double sum = left.dotProduct(pieces.solve(left));
        double[] start = model.start();
        for (int k = 0; k < numbers.length; k++) {
            sum += square((numbers[k] - start[k]) / model.priorError(k));
        }
        return sum;
    }

    /** The covariance of the pieces about the model. */
    RealMatrix covariance() {
        return covariance;
    }

    DragModel model() {
        return model;
    }

    /** How patchy the wind is in all, m/s. */
    double patchyMps() {
        return Scatter.windMps(numbers, patchyMps);
    }

    double logLikelihood() {
        return logLikelihood;
    }

    double number(int which) {
        return numbers[which];
    }

    /** The standard error of a number. */
    double error(int which) {
        return Math.sqrt(information.getSolver().getInverse().getEntry(which, which));
    }

    /** The drag alone in a piece, m2 (m/s)2. */
    double loneDrag(int piece) {
        return model.loneDrag(numbers, piece);
    }

    /**
     * The inverse of the covariance of the pieces, what is not known of the numbers counted in.
     *
     * @param kept how many of the bunches are in the model
     */
    RealMatrix weights(int kept) {
        RealMatrix slopes = firstColumns(this.slopes, kept);
        RealMatrix weighed = firstColumns(weighedSlopes, kept);
        RealMatrix known = information(slopes, weighed).getSolver().solve(weighed.transpose());
        return pieces.getInverse().subtract(weighed.multiply(known));
    }

    /**
     * What is left of the pieces where every number stands at its prior, the model taken for a line about this fit.
     *
     * @param kept how many of the bunches are in the model
     */
    RealVector leftAtPrior(int kept) {
        DragModel reduced = model.withFirst(kept);
        double[] some = Arrays.copyOf(numbers, reduced.numbers());
        double[] rest = new double[left.getDimension()];
        for (int i = 0; i < rest.length; i++) {
            rest[i] = model.pieces().resistance(i) - reduced.expected(some, i);
        }
        double[] moved = new double[some.length];
        for (int k = 0; k < moved.length; k++) {
            moved[k] = some[k] - reduced.start()[k];
        }
        return MatrixUtils.createRealVector(rest)
                .add(firstColumns(slopes, kept).operate(MatrixUtils.createRealVector(moved)));
    }

    private static RealMatrix firstColumns(RealMatrix matrix, int kept) {
        return matrix.getSubMatrix(0, matrix.getRowDimension() - 1, 0, DragModel.FIRST_SAVING + kept - 1);
    }

    private static double square(double value) {
        return value * value;
    }
}
