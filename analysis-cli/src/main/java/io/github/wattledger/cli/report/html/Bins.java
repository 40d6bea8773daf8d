package io.github.wattledger.cli.report.html;

import io.github.wattledger.ride.Series;
import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/** A long series thinned for a drawing, so that no peak and no gap is lost: two points a bin, its lowest and highest. */
final class Bins {
    private static final int MOST = 700;

    final double[] xs;
    final double[] ys;

    private Bins(double[] xs, double[] ys) {
        this.xs = xs;
        this.ys = ys;
    }

    /** Lowest and highest of each bin, in the order in which they come; a bin without a value breaks the line. */
    static Bins peaks(Series values) {
        int bins = Math.min(MOST, values.size());
        double[] xs = new double[2 * bins];
        double[] ys = new double[2 * bins];
        for (int bin = 0; bin < bins; bin++) {
            int from = (int) ((long) bin * values.size() / bins);
            int to = (int) ((long) (bin + 1) * values.size() / bins);
            int low = -1;
            int high = -1;
            for (int second = from; second < to; second++) {
                if (values.isMeasured(second)) {
                    low = low < 0 || values.get(second) < values.get(low) ? second : low;
                    high = high < 0 || values.get(second) > values.get(high) ? second : high;
                }
            }
            int first = Math.min(low, high);
            int last = Math.max(low, high);
            xs[2 * bin] = first < 0 ? from : first;
            ys[2 * bin] = first < 0 ? Double.NaN : values.get(first);
            xs[2 * bin + 1] = last < 0 ? from : last;
            ys[2 * bin + 1] = last < 0 ? Double.NaN : values.get(last);
        }
        return new Bins(xs, ys);
    }

    /** The same in another unit; what is not measured stays so. */
    Bins in(DoubleUnaryOperator unit) {
        return new Bins(xs, Arrays.stream(ys).map(unit).toArray());
    }

    double lowest() {
        double lowest = Double.POSITIVE_INFINITY;
        for (double each : ys) {
            lowest = each < lowest ? each : lowest;
        }
        return lowest;
    }

    double highest() {
        double highest = Double.NEGATIVE_INFINITY;
        for (double each : ys) {
            highest = each > highest ? each : highest;
        }
        return highest;
    }
}
