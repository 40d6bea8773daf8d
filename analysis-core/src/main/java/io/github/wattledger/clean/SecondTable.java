package io.github.wattledger.clean;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.SecondState;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The working table of the cleaning: a row for each second from the first sample to the last, a column for each channel.
 * The steps change it in place, one after the other; it never leaves this package.
 */
final class SecondTable {
    private final long firstEpochSecond;
    private final int seconds;
    private final boolean[] recorded;
    private final SecondState[] states;
    private final EnumMap<Channel, double[]> columns = new EnumMap<>(Channel.class);

    SecondTable(long firstEpochSecond, int seconds) {
        this.firstEpochSecond = firstEpochSecond;
        this.seconds = seconds;
        this.recorded = new boolean[seconds];
        this.states = new SecondState[seconds];
        Arrays.fill(states, SecondState.RIDING);
    }

    int seconds() {
        return seconds;
    }

    long firstEpochSecond() {
        return firstEpochSecond;
    }

    /** The row of a point in time, which may lie outside the table. */
    long rowOf(long epochSecond) {
        return epochSecond - firstEpochSecond;
    }

    boolean isRecorded(int row) {
        return recorded[row];
    }

    void markRecorded(int row) {
        recorded[row] = true;
    }

    int recordedCount() {
        int count = 0;
        for (boolean each : recorded) {
            if (each) {
                count++;
            }
        }
        return count;
    }

    SecondState state(int row) {
        return states[row];
    }

    void setState(int row, SecondState state) {
        states[row] = state;
    }

    boolean isPaused(int row) {
        return states[row] == SecondState.PAUSED;
    }

    Set<Channel> channels() {
        return columns.keySet();
    }

    boolean has(Channel channel) {
        return columns.containsKey(channel);
    }

    /** A channel's column itself, not a copy; null when the channel does not occur. */
    double @Nullable [] column(Channel channel) {
        return columns.get(channel);
    }

    /** A channel's column itself, made when it is not there yet. */
    double[] columnOrNew(Channel channel) {
        double[] column = columns.get(channel);
        if (column == null) {
            column = new double[seconds];
            Arrays.fill(column, Double.NaN);
            columns.put(channel, column);
        }
        return column;
    }

    void drop(Channel channel) {
        columns.remove(channel);
    }
}
