package io.github.wattledger.bunch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.bunch.RoadPieces.Span;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.rig.EnergyPiece;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.junit.jupiter.api.Test;

/** What a bunch over a stretch would explain, held against generalized least squares written down at full length. */
class StretchGainsTest {
    private static final Prior PRIOR = new Prior(0.34, 0.02, 7, 1.5, 1373);

    private static RoadPieces pieces(long seed) {
        Random chance = new Random(seed);
        List<EnergyPiece> all = new ArrayList<>();
        for (int i = 0; i < 50; i++) {
            double v = 9 + chance.nextDouble();
            double angle = 2 * Math.PI * i / 50;
            double forceN = 0.6 * 0.34 * v * v + 4 + chance.nextGaussian();
            all.add(new EnergyPiece(
                    new Interval(110 * i, 110 * (i + 1)),
                    1000.0 * i,
                    1000,
                    0,
                    forceN,
                    0,
                    forceN * v,
                    v,
                    v * v,
                    Math.cos(angle),
                    Math.sin(angle)));
        }
        return new RoadPieces(all, 1.2, 1);
    }

    /** Every nuisance is a part of the covariance: T = K + H P H', z = f'T^-1 r / sqrt(f'T^-1 f), saving = f'T^-1 r / f'T^-1 f. */
    @Test
    void gainsAreThoseOfGeneralizedLeastSquares() {
        RoadPieces pieces = pieces(5);
        DragModel model = new DragModel(pieces, PRIOR, List.of(new Span(30, 42)));
        Scatter scatter = new Scatter(pieces, PRIOR, true);
        DragFit fit = DragFit.likeliest(DragFit.each(model, scatter));
        StretchGains gains = new StretchGains(fit);

        double[] numbers = new double[model.numbers()];
        double[][] slopes = new double[pieces.count()][];
        double[] rest = new double[pieces.count()];
        for (int k = 0; k < numbers.length; k++) {
            numbers[k] = fit.number(k);
        }
        for (int i = 0; i < rest.length; i++) {
            slopes[i] = model.slope(numbers, i);
            rest[i] = pieces.resistance(i) - model.expected(numbers, i);
            for (int k = 0; k < numbers.length; k++) {
                rest[i] += slopes[i][k] * (numbers[k] - model.start()[k]);
            }
        }
        RealMatrix h = MatrixUtils.createRealMatrix(slopes);
        RealMatrix p = MatrixUtils.createRealMatrix(numbers.length, numbers.length);
        for (int k = 0; k < numbers.length; k++) {
            p.setEntry(k, k, model.priorError(k) * model.priorError(k));
        }
        RealMatrix t = fit.covariance().add(h.multiply(p).multiplyTransposed(h));
        RealMatrix inverse = new LUDecomposition(t).getSolver().getInverse();
        RealVector r = MatrixUtils.createRealVector(rest);
        for (Span span : List.of(new Span(0, 10), new Span(12, 29), new Span(42, 50))) {
            RealVector f = MatrixUtils.createRealVector(new double[pieces.count()]);
            for (int i = span.from(); i < span.to(); i++) {
                f.setEntry(i, -model.loneDrag(numbers, i));
            }
            double pull = f.dotProduct(inverse.operate(r));
            double weight = f.dotProduct(inverse.operate(f));
            assertThat(gains.saving(span)).isCloseTo(pull / weight, within(1e-3));
            assertThat(gains.error(span)).isCloseTo(1 / Math.sqrt(weight), within(1e-6));
            assertThat(gains.standardErrors(span)).isCloseTo(pull / Math.sqrt(weight), within(1e-2));
        }
    }
}
