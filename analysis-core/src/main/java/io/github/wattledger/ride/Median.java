package io.github.wattledger.ride;

import java.util.Arrays;

/**
 * The two medians of this library. They differ only for an even number of values: {@link #of} is the one of statistics
 * and is meant wherever a median is named; {@link #upperOf} serves as the scale of a robust fit.
 */
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
        double[] sorted = sorted(values);
        int middle = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }

    /**
     * The middle one of the sorted values; of an even number of values the upper of the two in the middle, so that it is
     * one of the values. The estimate of a rig has always scaled its residuals by it.
     *
     * @param values at least one value, in any order, none of them {@code NaN}; they are left as they are
     */
    public static double upperOf(double[] values) {
        return sorted(values)[values.length / 2];
    }

    private static double[] sorted(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted;
    }
}
