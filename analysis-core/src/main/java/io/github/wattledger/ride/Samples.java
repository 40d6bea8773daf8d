package io.github.wattledger.ride;

import java.io.Serial;
import java.io.Serializable;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Set;

/**
 * The samples of a recording in the order of the file, as columns: one timestamp each, and for every channel that
 * occurs a value or {@code NaN}. Several samples may carry the same second, and time may run backwards; putting that
 * right is the cleaning's task.
 */
public final class Samples implements Serializable {
    @Serial
    private static final long serialVersionUID = 1L;

    private static final Series NOTHING = Series.of();

    private final long[] epochSeconds;
    private final EnumMap<Channel, Series> columns;

    private Samples(long[] epochSeconds, EnumMap<Channel, Series> columns) {
        this.epochSeconds = epochSeconds;
        this.columns = columns;
    }

    /** A builder to which samples are appended one by one. */
    public static Builder builder() {
        return new Builder();
    }

    /** The number of samples. */
    public int size() {
        return epochSeconds.length;
    }

    /** The timestamp of a sample in seconds since 1970-01-01T00:00:00Z. */
    public long epochSecond(int sampleIndex) {
        return epochSeconds[sampleIndex];
    }

    /** Whether at least one sample carries this channel. */
    public boolean has(Channel channel) {
        return columns.containsKey(channel);
    }

    /** The channels that at least one sample carries. */
    public Set<Channel> channels() {
        return Collections.unmodifiableSet(columns.keySet());
    }

    /**
     * A channel's values, one a sample, {@code NaN} where a sample lacks it; an empty series when no sample carries it.
     */
    public Series column(Channel channel) {
        return columns.getOrDefault(channel, NOTHING);
    }

    /** The value of a channel in one sample, {@code NaN} where it is missing. */
    public double get(Channel channel, int sampleIndex) {
        Series column = columns.get(channel);
        return column == null ? Double.NaN : column.get(sampleIndex);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Samples that
                && Arrays.equals(epochSeconds, that.epochSeconds)
                && columns.equals(that.columns);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(epochSeconds) + columns.hashCode();
    }

    @Override
    public String toString() {
        return size() + " samples with " + columns.keySet();
    }

    /** Collects samples; not safe for use by several threads. */
    public static final class Builder {
        private long[] epochSeconds = new long[1024];
        private final EnumMap<Channel, double[]> columns = new EnumMap<>(Channel.class);
        private int size;

        private Builder() {}

        /** Begins a new sample at this time; the values set next belong to it. */
        public Builder at(long epochSecond) {
            if (size == epochSeconds.length) {
                epochSeconds = Arrays.copyOf(epochSeconds, size * 2);
                for (Map.Entry<Channel, double[]> column : columns.entrySet()) {
                    double[] grown = Arrays.copyOf(column.getValue(), epochSeconds.length);
                    Arrays.fill(grown, size, grown.length, Double.NaN);
                    column.setValue(grown);
                }
            }
            epochSeconds[size++] = epochSecond;
            return this;
        }

        /**
         * Sets a value of the sample begun last; {@code NaN} leaves it missing.
         *
         * @throws IllegalStateException before the first sample
         */
        public Builder set(Channel channel, double value) {
            if (size == 0) {
                throw new IllegalStateException("no sample begun");
            }
            if (!Double.isNaN(value)) {
                double[] column = columns.get(channel);
                (column == null ? newColumn(channel) : column)[size - 1] = value;
            }
            return this;
        }

        private double[] newColumn(Channel channel) {
            double[] column = new double[epochSeconds.length];
            Arrays.fill(column, Double.NaN);
            columns.put(channel, column);
            return column;
        }

        /** How many samples have been begun. */
        public int size() {
            return size;
        }

        /** The samples so far. */
        public Samples build() {
            EnumMap<Channel, Series> built = new EnumMap<>(Channel.class);
            for (Map.Entry<Channel, double[]> column : columns.entrySet()) {
                built.put(column.getKey(), Series.of(Arrays.copyOf(column.getValue(), size)));
            }
            return new Samples(Arrays.copyOf(epochSeconds, size), built);
        }
    }
}
