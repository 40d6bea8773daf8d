package io.github.wattledger.clean;

import io.github.wattledger.ride.Channel;

/**
 * Watts from the work that the power meter itself has counted (FIT {@code accumulated_power}, joules). A head unit that
 * misses a message repeats the last power sample, and the counter stands still until the next message brings it up to
 * date; so an increase after a standstill belongs to as many seconds as it holds times the sample. Where the counter
 * falls, leaps, is absent, or stands still against a sample that it never makes good, the sample stands.
 */
final class MeterWork {
    /** Seconds between two counts over which an increase is still spread; beyond, nobody knows when it was done. */
    private static final int LONGEST_GAP_SECONDS = 3;

    /** An increase of more than this over a second is a fault of the counter, not work: above any human record. */
    private static final double MOST_JOULES_A_SECOND = 2500;

    private final double[] counts;
    private final double[] watts;
    private final double[] samples;
    private int spreadSeconds;
    private int fallbackSeconds;

    private MeterWork(double[] counts, double[] watts) {
        this.counts = counts;
        this.watts = watts;
        this.samples = watts.clone();
    }

    /** Replaces the power column by the counter's watts; gives back whether there was a counter to believe. */
    static boolean replacePower(SecondTable table, Notes notes) {
        double[] counts = table.column(Channel.ACCUMULATED_WORK);
        double[] watts = table.column(Channel.POWER);
        if (counts == null || watts == null || !rises(counts)) {
            return false;
        }
        MeterWork work = new MeterWork(counts, watts);
        work.walk();
        notes.found(
                "power-from-work-counter",
                work.spreadSeconds,
                "Power comes from the meter's own work counter; " + work.spreadSeconds
                        + " seconds that the head unit had repeated or missed were filled in from it.");
        if (work.fallbackSeconds > 0) {
            notes.found(
                    "work-counter-not-believed",
                    work.fallbackSeconds,
                    "In " + work.fallbackSeconds
                            + " seconds the work counter was absent or out of step; the power sample stands there.");
        }
        return true;
    }

    private static boolean rises(double[] counts) {
        double first = Double.NaN;
        for (double count : counts) {
            if (!Double.isNaN(count)) {
                if (count > first) {
                    return true;
                }
                first = Double.isNaN(first) ? count : Math.min(first, count);
            }
        }
        return false;
    }

    private void walk() {
        int last = -1;
        int lastRise = -1;
        for (int row = 0; row < counts.length; row++) {
            if (Double.isNaN(counts[row])) {
                continue;
            }
            if (last >= 0) {
                double increase = counts[row] - counts[last];
                if (increase == 0) {
                    // Either coasting, or a standstill that the next increase makes good: the sample stands for now.
                    last = row;
                    continue;
                }
                if (increase < 0 || row - last > LONGEST_GAP_SECONDS || !spread(lastRise, last, row, increase)) {
                    fallbackSeconds++;
                }
            }
            last = row;
            lastRise = row;
        }
    }

    /**
     * Gives an increase to the seconds it was done in: those without a record since the last count, and as many seconds
     * of the standstill before as make each about as large as the sample.
     */
    private boolean spread(int lastRise, int last, int row, double increase) {
        int unrecorded = row - last;
        int standstill = last - lastRise;
        int seconds = unrecorded;
        double sample = samples[row];
        if (sample > 0) {
            long asManyAsItHolds = Math.round(increase / sample);
            seconds = (int) Math.max(unrecorded, Math.min((long) unrecorded + standstill, asManyAsItHolds));
        }
        double each = increase / seconds;
        if (each > MOST_JOULES_A_SECOND) {
            return false;
        }
        for (int k = row - seconds + 1; k <= row; k++) {
            watts[k] = each;
        }
        spreadSeconds += seconds - 1;
        return true;
    }
}
