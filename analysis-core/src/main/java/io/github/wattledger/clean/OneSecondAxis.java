package io.github.wattledger.clean;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Samples;
import io.github.wattledger.ride.Series;

/**
 * Lays samples out on an axis of whole seconds. Samples that share a second are merged field by field: the mean for
 * rates, the last one for states.
 */
final class OneSecondAxis {
    private final Samples samples;
    private final int[] kept;
    private final long[] times;

    private OneSecondAxis(Samples samples, int[] kept) {
        this.samples = samples;
        this.kept = kept;
        this.times = new long[kept.length];
        for (int k = 0; k < kept.length; k++) {
            times[k] = samples.epochSecond(kept[k]);
        }
    }

    /** The table of the kept samples, which must be at least one. */
    static SecondTable lay(Samples samples, int[] kept, Notes notes) {
        OneSecondAxis axis = new OneSecondAxis(samples, kept);
        axis.straightenJitter(notes);
        return axis.merge(notes);
    }

    /**
     * A doubled second next to a missing one is a jittering clock: the second of two whole samples belongs to the second
     * after, or the first to the second before. Samples that share a second because each carries other fields stay.
     */
    private void straightenJitter(Notes notes) {
        int moved = 0;
        int last = times.length - 1;
        for (int k = 1; k <= last; k++) {
            if (times[k] != times[k - 1] || !carrySameField(kept[k - 1], kept[k])) {
                continue;
            }
            if (k < last && times[k + 1] > times[k] + 1) {
                times[k]++;
                moved++;
            } else if (k >= 2 && times[k - 2] < times[k] - 1) {
                times[k - 1]--;
                moved++;
            }
        }
        if (moved > 0) {
            notes.repaired(
                    "clock-jitter",
                    moved,
                    Notes.count(moved, "sample")
                            + " moved by one second: a doubled second stood next to a missing one.");
        }
    }

    private boolean carrySameField(int sample, int other) {
        for (Channel channel : samples.channels()) {
            if (channel.kind() == Channel.Kind.RATE
                    && !Double.isNaN(samples.get(channel, sample))
                    && !Double.isNaN(samples.get(channel, other))) {
                return true;
            }
        }
        return false;
    }

    private SecondTable merge(Notes notes) {
        int seconds = Math.toIntExact(times[times.length - 1] - times[0] + 1);
        SecondTable table = new SecondTable(times[0], seconds);
        for (int k = 0; k < times.length; k++) {
            table.markRecorded(row(k));
        }
        int shared = times.length - table.recordedCount();
        for (Channel channel : samples.channels()) {
            if (shared == 0 || channel.kind() == Channel.Kind.STATE) {
                takeLast(channel, table);
            } else {
                takeMean(channel, table);
            }
        }
        if (shared > 0) {
            notes.found(
                    "shared-seconds",
                    shared,
                    Notes.count(shared, "sample") + " merged into another of the same second.");
        }
        return table;
    }

    private int row(int k) {
        return (int) (times[k] - times[0]);
    }

    private void takeLast(Channel channel, SecondTable table) {
        Series values = samples.column(channel);
        double[] column = table.columnOrNew(channel);
        for (int k = 0; k < times.length; k++) {
            double value = values.get(kept[k]);
            if (!Double.isNaN(value)) {
                column[row(k)] = value;
            }
        }
    }

    private void takeMean(Channel channel, SecondTable table) {
        Series values = samples.column(channel);
        double[] column = table.columnOrNew(channel);
        int k = 0;
        while (k < times.length) {
            double sum = 0;
            int count = 0;
            int row = row(k);
            for (; k < times.length && row(k) == row; k++) {
                double value = values.get(kept[k]);
                if (!Double.isNaN(value)) {
                    sum += value;
                    count++;
                }
            }
            column[row] = count == 0 ? Double.NaN : sum / count;
        }
    }
}
