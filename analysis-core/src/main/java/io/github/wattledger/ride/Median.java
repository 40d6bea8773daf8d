package io.github.wattledger.ride;

import java.util.Arrays;

/** The median, in the one meaning that this library has for it. */
public final class Median {
    private Median() {}

    /**
     * The middle one of the sorted values; of an even number of values the mean of the two in the middle.
     *
     * @param values any number of values in any order, none of them {@code NaN}; they are left as they are
     * @return the median, {@code NaN} when there is no value
     */
    public static double of(double[] values) {
        if (values.length == 0) {
            return Double.NaN;
        }
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int middle = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }
}
