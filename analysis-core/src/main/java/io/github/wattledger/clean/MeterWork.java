package io.github.wattledger.clean;

import io.github.wattledger.ride.Channel;
import java.util.Locale;

/**
 * Watts from the work that the power meter itself has counted (FIT {@code accumulated_power}, joules). A head unit that
 * misses a message repeats the last power sample, and the counter stands still until the next message brings it up to
 * date; so an increase after a standstill belongs to as many seconds as it holds times the sample. Where the counter
 * falls, leaps, is absent, or stands still against a sample that it never makes good, the sample stands. A counter whose
 * total disagrees with the samples counts something else, and is not believed anywhere.
 */
final class MeterWork {
    /** Seconds between two counts over which an increase is still spread; beyond, nobody knows when it was done. */
    private static final int LONGEST_GAP_SECONDS = 3;

    /** An increase of more than this over a second is a fault of the counter, not work: above any human record. */
    private static final double MOST_JOULES_A_SECOND = 2500;

    /**
     * Most by which a counter may differ from the samples, as a share. It is 0.001 to 0.054 in 21 real recordings; two of
     * another maker count 2.0 and 5.3 times the samples.
     */
    private static final double MOST_DISAGREEMENT = 0.1;

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
        double timesSamples = work.timesSamples();
        if (!(Math.abs(timesSamples - 1) <= MOST_DISAGREEMENT)) {
            if (!Double.isNaN(timesSamples)) {
                notes.found(
                        "work-counter-disagrees",
                        String.format(
                                Locale.ROOT,
                                "The work counter adds up to %.2f times the power samples, so it counts something else: "
                                        + "power comes from the samples.",
                                timesSamples));
            }
            return false;
        }
        work.walk();
        notes.found(
                "power-from-work-counter",
                work.spreadSeconds,
                "Power comes from the work that the meter itself counted"
                        + (work.spreadSeconds == 0
                                ? "."
                                : ", which also gives " + Notes.count(work.spreadSeconds, "second")
                                        + " that the head unit had repeated or missed."));
        if (work.fallbackSeconds > 0) {
            notes.found(
                    "work-counter-not-believed",
                    work.fallbackSeconds,
                    Notes.count(work.fallbackSeconds, "second")
                            + " with the work counter absent or out of step: the power sample stands there.");
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

    /**
     * What the counter adds up to over what the samples add up to, over the steps in which both are possible; NaN without
     * any. A sample stands for all seconds since the count before.
     */
    private double timesSamples() {
        double counted = 0;
        double sampled = 0;
        int last = -1;
        for (int row = 0; row < counts.length; row++) {
            if (Double.isNaN(counts[row])) {
                continue;
            }
            int seconds = row - last;
            if (last >= 0 && seconds <= LONGEST_GAP_SECONDS && samples[row] <= MOST_JOULES_A_SECOND) {
                double increase = counts[row] - counts[last];
                if (increase >= 0 && increase <= MOST_JOULES_A_SECOND * seconds) {
                    counted += increase;
                    sampled += Math.max(0, samples[row]) * seconds;
                }
            }
            last = row;
        }
        return sampled > 0 ? counted / sampled : Double.NaN;
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
     * Gives an increase to the seconds it was done in, in proportion to their samples: those without a record since the
     * last count, those just before that showed power while the counter stood, and as many more of the standstill as it
     * takes for each second to be about as large as the sample.
     */
    private boolean spread(int lastRise, int last, int row, double increase) {
        int most = row - lastRise;
        int least = row - last + repeatedBefore(lastRise, last);
        double sample = samples[row] > 0 ? samples[row] : 1;
        long asManyAsItHolds = samples[row] > 0 ? Math.round(increase / samples[row]) : least;
        int seconds = (int) Math.min(most, Math.max(least, asManyAsItHolds));
        int from = row - seconds + 1;
        double weights = 0;
        for (int k = from; k <= row; k++) {
            weights += samples[k] > 0 ? samples[k] : sample;
        }
        if (increase * sample / weights > MOST_JOULES_A_SECOND) {
            return false;
        }
        for (int k = from; k <= row; k++) {
            watts[k] = increase * (samples[k] > 0 ? samples[k] : sample) / weights;
        }
        spreadSeconds += seconds - 1;
        return true;
    }

    /**
     * How many seconds up to the last count showed power while the counter stood. A standstill longer than a gap may be
     * is a counter at fault, whose next increase makes nothing good.
     */
    private int repeatedBefore(int lastRise, int last) {
        int repeated = 0;
        while (last - repeated > lastRise && samples[last - repeated] > 0) {
            repeated++;
        }
        return repeated <= LONGEST_GAP_SECONDS ? repeated : 0;
    }
}
