package io.github.wattledger.ride;

import java.io.Serial;
import java.io.Serializable;
import java.util.Arrays;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.function.IntToDoubleFunction;

/**
 * An immutable column of numbers, one a second (or one a sample), in which {@link Double#NaN} means "not measured".
 *
 * <p>No array escapes: factories copy what they are given, {@link #toArray()} copies what it hands out. In loops use
 * {@link #get(int)}, which costs what reading an array costs.
 */
public final class Series implements Serializable {
    @Serial
    private static final long serialVersionUID = 1L;

    private static final Series EMPTY = new Series(new double[0]);

    private final double[] values;

    private Series(double[] values) {
        this.values = values;
    }

    /**
     * A series with the values of the given array, which is copied.
     *
     * @param values any numbers; {@code NaN} is "not measured"
     */
    public static Series of(double... values) {
        return values.length == 0 ? EMPTY : new Series(values.clone());
    }

    /**
     * A series computed index by index.
     *
     * @param size the number of values, 0 or more
     * @param valueAt gives the value for each index from 0 to {@code size - 1}
     * @throws IllegalArgumentException when {@code size} is negative
     */
    public static Series generate(int size, IntToDoubleFunction valueAt) {
        if (size < 0) {
            throw new IllegalArgumentException("size " + size + ", expected 0 or more");
        }
        double[] values = new double[size];
        for (int i = 0; i < size; i++) {
            values[i] = valueAt.applyAsDouble(i);
        }
        return new Series(values);
    }

    /** A series of the given length in which nothing was measured. */
    public static Series missing(int size) {
        return generate(size, i -> Double.NaN);
    }

    /**
     * This series, which must hold readings that cannot be below 0, such as power or heart rate.
     *
     * @param name what they are, with the unit, for the message
     * @throws IllegalArgumentException when a reading is below 0 or infinite
     */
    public Series requireReadings(String name) {
        for (int i = 0; i < values.length; i++) {
            if (values[i] < 0 || Double.isInfinite(values[i])) {
                throw new IllegalArgumentException(
                        name + "[" + i + "] " + values[i] + ", expected 0 or more, or NaN for a missing one");
            }
        }
        return this;
    }

    /**
     * This series, which must hold numbers that may be below 0, such as altitude.
     *
     * @param name what they are, with the unit, for the message
     * @throws IllegalArgumentException when a value is infinite
     */
    public Series requireFinite(String name) {
        for (int i = 0; i < values.length; i++) {
            if (Double.isInfinite(values[i])) {
                throw new IllegalArgumentException(
                        name + "[" + i + "] " + values[i] + ", expected a finite number, or NaN for a missing one");
            }
        }
        return this;
    }

    /** The number of values, measured or not. */
    public int size() {
        return values.length;
    }

    /**
     * The value at an index, {@code NaN} where nothing was measured.
     *
     * @throws ArrayIndexOutOfBoundsException when the index is not within {@code 0 .. size() - 1}
     */
    public double get(int index) {
        return values[index];
    }

    /** Whether a number was measured at this index. */
    public boolean isMeasured(int index) {
        return !Double.isNaN(values[index]);
    }

    /** How many values are measured. */
    public int measuredCount() {
        return measuredCount(0, values.length);
    }

    /**
     * How many values are measured from one index up to, not including, another.
     *
     * @throws IndexOutOfBoundsException when the range does not lie within the series
     */
    public int measuredCount(int fromInclusive, int toExclusive) {
        Objects.checkFromToIndex(fromInclusive, toExclusive, values.length);
        int count = 0;
        for (int i = fromInclusive; i < toExclusive; i++) {
            if (!Double.isNaN(values[i])) {
                count++;
            }
        }
        return count;
    }

    /**
     * The mean of the measured values from one index up to, not including, another.
     *
     * @return empty where none is measured
     * @throws IndexOutOfBoundsException when the range does not lie within the series
     */
    public OptionalDouble mean(int fromInclusive, int toExclusive) {
        Objects.checkFromToIndex(fromInclusive, toExclusive, values.length);
        double sum = 0;
        int count = 0;
        for (int i = fromInclusive; i < toExclusive; i++) {
            if (!Double.isNaN(values[i])) {
                sum += values[i];
                count++;
            }
        }
        return count == 0 ? OptionalDouble.empty() : OptionalDouble.of(sum / count);
    }

    /** The highest measured value; empty where none is measured. */
    public OptionalDouble maximum() {
        double highest = Double.NaN;
        for (double value : values) {
            if (value > highest || Double.isNaN(highest)) {
                highest = value;
            }
        }
        return Double.isNaN(highest) ? OptionalDouble.empty() : OptionalDouble.of(highest);
    }

    /** Whether at least one value is measured. */
    public boolean hasAny() {
        for (double value : values) {
            if (!Double.isNaN(value)) {
                return true;
            }
        }
        return false;
    }

    /**
     * The values from one index up to, not including, another.
     *
     * @throws IndexOutOfBoundsException when the range does not lie within the series
     */
    public Series slice(int fromInclusive, int toExclusive) {
        Objects.checkFromToIndex(fromInclusive, toExclusive, values.length);
        return new Series(Arrays.copyOfRange(values, fromInclusive, toExclusive));
    }

    /** A copy of the values. */
    public double[] toArray() {
        return values.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Series that && Arrays.equals(values, that.values);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(values);
    }

    @Override
    public String toString() {
        return "Series of " + values.length + " values, " + measuredCount() + " measured";
    }
}
