package io.github.wattledger.bunch;

import io.github.wattledger.bunch.RoadPieces.Span;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * What it would gain to suppose a bunch over any stretch of a ride: sums of the weights of its pieces, added up once for
 * all stretches.
 */
final class StretchGains {
    private final double[][] weightTo;
    private final double[] pullTo;

    /** The gain of a further stretch beside the bunches of a fit. */
    StretchGains(DragFit fit) {
        this(fit, fit.model().bunches().size());
    }

    /**
     * The gain of a stretch beside the first bunches of a fit, in place of its others.
     *
     * @param kept how many bunches are the first
     */
    StretchGains(DragFit fit, int kept) {
        int count = fit.model().pieces().count();
        RealMatrix weights = fit.weights(kept);
        RealVector left = weights.operate(fit.leftAtPrior(kept));
        weightTo = new double[count + 1][count + 1];
        pullTo = new double[count + 1];
        double[] drag = new double[count];
        for (int i = 0; i < count; i++) {
            drag[i] = fit.loneDrag(i);
        }
        for (int i = 0; i < count; i++) {
            pullTo[i + 1] = pullTo[i] - drag[i] * left.getEntry(i);
            double row = 0;
            for (int j = 0; j < count; j++) {
                row += drag[i] * weights.getEntry(i, j) * drag[j];
                weightTo[i + 1][j + 1] = weightTo[i][j + 1] + row;
            }
        }
    }

    /** The saving that a bunch over a stretch would have had, a share of the lone drag. */
    double saving(Span span) {
        return pull(span) / weight(span);
    }

    /** The standard error of that saving. */
    double error(Span span) {
        return 1 / Math.sqrt(weight(span));
    }

    /** The saving over its standard error. */
    double standardErrors(Span span) {
        return pull(span) / Math.sqrt(weight(span));
    }

    private double pull(Span span) {
        return pullTo[span.to()] - pullTo[span.from()];
    }

    private double weight(Span span) {
        return weightTo[span.to()][span.to()]
                - weightTo[span.from()][span.to()]
                - weightTo[span.to()][span.from()]
                + weightTo[span.from()][span.from()];
    }
}
