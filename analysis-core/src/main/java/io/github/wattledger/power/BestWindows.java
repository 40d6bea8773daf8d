package io.github.wattledger.power;

/**
 * Finds the window of a given length with the largest sum, exactly, without looking at every window.
 *
 * <p>Implementation: work above a steady level instead of work is summed up, so that the running sum wanders rather than
 * climbs. For a block of window starts the best window in it gains at most the highest running sum among its ends less
 * the lowest among its starts. Both are looked up in tables of moving maxima and block minima; where the bound cannot
 * reach the best found so far, the whole block is passed over. The search begins with a good guess, the window next to
 * the best of the previous length, so nearly all blocks are. On adversarial input no block is passed over and the cost
 * is that of the plain double loop.
 *
 * <p>Whole watts are compared without any rounding. Fractional ones are rounded in the running sums only, by less than a
 * millionth of a joule for any ride.
 */
final class BestWindows {
    /** Starts in a narrow block: few enough to try one by one. A power of two. */
    private static final int NARROW = 16;

    /** Starts in a wide block, a multiple of {@link #NARROW}: few enough blocks in a day-long ride. A power of two. */
    private static final int WIDE = 256;

    /**
     * The level is rounded to this fraction of a watt, a power of two, so that multiples of it are exact in binary and
     * whole watts stay exact.
     */
    private static final double LEVEL_STEPS_PER_WATT = 64;

    private final int length;
    private final double level;

    /** Work of the first i seconds, joules. */
    private final double[] work;

    /** {@link #work} less i times the level. */
    private final double[] excess;

    private final double[] highestOfNarrow;
    private final double[] highestOfWide;
    private final double[] lowestOfNarrow;
    private final double[] lowestOfWide;

    /** @param watts finite numbers; the array is copied */
    BestWindows(double[] watts) {
        length = watts.length;
        level = level(watts);
        work = runningSum(watts);
        excess = new double[length + 1];
        for (int i = 0; i <= length; i++) {
            excess[i] = work[i] - level * i;
        }
        highestOfNarrow = excess.clone();
        widenMaxima(highestOfNarrow, 1, NARROW);
        highestOfWide = highestOfNarrow.clone();
        widenMaxima(highestOfWide, NARROW, WIDE);
        lowestOfNarrow = blockMinima(excess, NARROW);
        lowestOfWide = blockMinima(lowestOfNarrow, WIDE / NARROW);
    }

    /** The number of seconds searched. */
    int length() {
        return length;
    }

    /** Work of a window, joules. */
    double work(int start, int seconds) {
        return work[start + seconds] - work[start];
    }

    /**
     * The start of the window of this length with the most work, the earliest where several have.
     *
     * @param seconds length of the window, 1 to the number of watts
     * @param guess a start that may be good; any valid start gives the same answer
     */
    int bestStart(int seconds, int guess) {
        int starts = length - seconds + 1;
        int best = guess;
        double bestExcess = excess[guess + seconds] - excess[guess];
        for (int wide = 0, wideFrom = 0; wideFrom < starts; wide++, wideFrom += WIDE) {
            if (isBeaten(highestOfWide[wideFrom + seconds] - lowestOfWide[wide], wideFrom, bestExcess, best)) {
                continue;
            }
            int wideTo = Math.min(wideFrom + WIDE, starts);
            for (int from = wideFrom; from < wideTo; from += NARROW) {
                double bound = highestOfNarrow[from + seconds] - lowestOfNarrow[from / NARROW];
                if (isBeaten(bound, from, bestExcess, best)) {
                    continue;
                }
                int to = Math.min(from + NARROW, wideTo);
                for (int start = from; start < to; start++) {
                    double candidate = excess[start + seconds] - excess[start];
                    if (candidate > bestExcess || (candidate == bestExcess && start < best)) {
                        bestExcess = candidate;
                        best = start;
                    }
                }
            }
        }
        return best;
    }

    /** Whether some window of this length holds more work than this many joules. */
    boolean anyAbove(int seconds, double joules) {
        int starts = length - seconds + 1;
        double limit = joules - level * seconds;
        for (int wide = 0, wideFrom = 0; wideFrom < starts; wide++, wideFrom += WIDE) {
            if (highestOfWide[wideFrom + seconds] - lowestOfWide[wide] <= limit) {
                continue;
            }
            int wideTo = Math.min(wideFrom + WIDE, starts);
            for (int from = wideFrom; from < wideTo; from += NARROW) {
                if (highestOfNarrow[from + seconds] - lowestOfNarrow[from / NARROW] <= limit) {
                    continue;
                }
                int to = Math.min(from + NARROW, wideTo);
                for (int start = from; start < to; start++) {
                    if (excess[start + seconds] - excess[start] > limit) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    /** A block that could only tie matters as long as it lies before the best window found: the earliest is wanted. */
    private static boolean isBeaten(double bound, int from, double bestExcess, int best) {
        return bound < bestExcess || (bound == bestExcess && from >= best);
    }

    /**
     * Mean of the seconds above 0 W. Any level gives the same result; this one keeps the running sum flat where the
     * rider pedals, which makes the bounds tight, and quite flat where power is constant.
     */
    private static double level(double[] watts) {
        double sum = 0;
        int count = 0;
        for (double power : watts) {
            if (power > 0) {
                sum += power;
                count++;
            }
        }
        return count == 0 ? 0 : Math.rint(sum / count * LEVEL_STEPS_PER_WATT) / LEVEL_STEPS_PER_WATT;
    }

    /** Compensated (W. Kahan 1965), so that a short best late in a long ride is as exact as one at its start. */
    private static double[] runningSum(double[] watts) {
        double[] sums = new double[watts.length + 1];
        double sum = 0;
        double lost = 0;
        for (int i = 0; i < watts.length; i++) {
            double corrected = watts[i] - lost;
            double next = sum + corrected;
            lost = (next - sum) - corrected;
            sum = next;
            sums[i + 1] = sum;
        }
        return sums;
    }

    /** Turns the maximum of {@code from} values from each index on into that of {@code to} values, in place. */
    private static void widenMaxima(double[] maxima, int from, int to) {
        for (int width = from; width < to; width *= 2) {
            for (int i = 0; i + width < maxima.length; i++) {
                maxima[i] = Math.max(maxima[i], maxima[i + width]);
            }
        }
    }

    private static double[] blockMinima(double[] values, int width) {
        double[] minima = new double[(values.length + width - 1) / width];
        for (int block = 0; block < minima.length; block++) {
            double minimum = Double.POSITIVE_INFINITY;
            int to = Math.min((block + 1) * width, values.length);
            for (int i = block * width; i < to; i++) {
                minimum = Math.min(minimum, values[i]);
            }
            minima[block] = minimum;
        }
        return minima;
    }
}
