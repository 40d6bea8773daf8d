package io.github.wattledger.simulation.trial;

import java.util.Arrays;

/** Numbers in order. */
final class Quantiles {
    private final double[] sorted;

    private Quantiles(double[] sorted) {
        this.sorted = sorted;
    }

    static Quantiles of(double... values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return new Quantiles(sorted);
    }

    /** The number below which a share of all lies; {@code NaN} of none. */
    double at(double share) {
        int index = (int) Math.ceil(share * sorted.length) - 1;
        return sorted.length == 0 ? Double.NaN : sorted[Math.max(0, index)];
    }
}
