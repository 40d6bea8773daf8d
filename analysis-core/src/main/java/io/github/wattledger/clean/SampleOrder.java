package io.github.wattledger.clean;

import io.github.wattledger.ride.Samples;
import java.util.Arrays;

/**
 * Chooses the samples whose time can be believed. Where time runs backwards, the largest set of samples in time order is
 * kept, so that one sample with a wild timestamp costs itself and not the rest of the ride; where it leaps by more than a
 * day, the side with more samples is kept, and of a time that creeps on for longer than a month, the fullest month.
 */
final class SampleOrder {
    private static final long LEAP_SECONDS = 86_400;

    /** The longest ride there is room for: a month. Beyond it the timestamps, not the rider, are at fault. */
    private static final long LONGEST_SECONDS = 31 * 86_400L;

    private SampleOrder() {}

    /** The indices of the samples to keep, in an order in which time never runs backwards. */
    static int[] believable(Samples samples, Notes notes) {
        int[] ordered = inTimeOrder(samples);
        int dropped = samples.size() - ordered.length;
        if (dropped > 0) {
            notes.repaired(
                    "time-backwards",
                    dropped,
                    Notes.count(dropped, "sample") + " dropped because the time runs backwards.");
        }
        int[] together = withinAMonth(samples, withoutLeaps(samples, ordered));
        int apart = ordered.length - together.length;
        if (apart > 0) {
            notes.repaired(
                    "time-leap",
                    apart,
                    Notes.count(apart, "sample")
                            + " dropped for lying too far in time from the rest; was the clock set?");
        }
        return together;
    }

    /** A longest non-descending subsequence of the timestamps (patience sorting, n log n). */
    private static int[] inTimeOrder(Samples samples) {
        int size = samples.size();
        int[] tails = new int[size];
        int[] previous = new int[size];
        int length = 0;
        for (int i = 0; i < size; i++) {
            long time = samples.epochSecond(i);
            int position = length;
            if (length > 0 && samples.epochSecond(tails[length - 1]) > time) {
                position = firstTailAfter(samples, tails, length, time);
            }
            previous[i] = position == 0 ? -1 : tails[position - 1];
            tails[position] = i;
            length = Math.max(length, position + 1);
        }
        int[] kept = new int[length];
        int at = length == 0 ? -1 : tails[length - 1];
        for (int k = length - 1; k >= 0; k--) {
            kept[k] = at;
            at = previous[at];
        }
        return kept;
    }

    private static int firstTailAfter(Samples samples, int[] tails, int length, long time) {
        int low = 0;
        int high = length - 1;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (samples.epochSecond(tails[middle]) > time) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low;
    }

    private static int[] withoutLeaps(Samples samples, int[] ordered) {
        int bestFrom = 0;
        int bestTo = 0;
        int from = 0;
        for (int k = 1; k <= ordered.length; k++) {
            boolean ends = k == ordered.length
                    || samples.epochSecond(ordered[k]) - samples.epochSecond(ordered[k - 1]) > LEAP_SECONDS;
            if (ends) {
                if (k - from > bestTo - bestFrom) {
                    bestFrom = from;
                    bestTo = k;
                }
                from = k;
            }
        }
        return Arrays.copyOfRange(ordered, bestFrom, bestTo);
    }

    /** The month that holds the most samples; all of them where they span no more than that. */
    private static int[] withinAMonth(Samples samples, int[] ordered) {
        int last = ordered.length - 1;
        if (last < 0 || samples.epochSecond(ordered[last]) - samples.epochSecond(ordered[0]) < LONGEST_SECONDS) {
            return ordered;
        }
        int bestFrom = 0;
        int bestTo = 0;
        int from = 0;
        for (int to = 1; to <= ordered.length; to++) {
            while (samples.epochSecond(ordered[to - 1]) - samples.epochSecond(ordered[from]) >= LONGEST_SECONDS) {
                from++;
            }
            if (to - from > bestTo - bestFrom) {
                bestFrom = from;
                bestTo = to;
            }
        }
        return Arrays.copyOfRange(ordered, bestFrom, bestTo);
    }
}
