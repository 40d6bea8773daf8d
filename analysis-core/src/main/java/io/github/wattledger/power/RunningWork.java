package io.github.wattledger.power;

import io.github.wattledger.ride.Series;
import java.io.Serial;
import java.io.Serializable;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;

/**
 * Running sums of one-second power, from which the best window of a length is found in one pass.
 *
 * <p>Implementation: an edge is a moment between two seconds, {@code 0} before the first. Sums are kept of the edges that
 * do not lie inside of a level stretch, over which power is the same in every second. The axis is a row of segments:
 * those with an even index hold edges whose sums are kept, those with an odd one the edges inside of a level stretch.
 * Where both edges of a window that is moved along lie inside of level stretches, its work is a straight line and
 * therefore most at an end, where one of its edges is kept: such windows are passed over. Time and memory follow the
 * seconds that are not level, and how power changes in them makes no difference.
 *
 * <p>Whole watts are compared without any rounding, fractional ones up to that of their sums, less than a millionth of a
 * joule for any ride.
 */
final class RunningWork implements Serializable {
    @Serial
    private static final long serialVersionUID = 1L;

    /** The work before each kept edge, joules. */
    private final double[] joules;

    /** The first edge of each segment, and at the end one more than the last edge of all. */
    private final int[] firstEdge;

    /** Index into {@link #joules}: of the first edge of an even segment, of the last kept edge before an odd one. */
    private final int[] index;

    /** Power inside of each segment, watts; used of odd ones alone. */
    private final double[] levelWatts;

    /**
     * @param watts one-second power, watts: finite numbers outside of the level stretches, within them it is not read
     * @param levels in time order, none overlapping another
     */
    RunningWork(Series watts, List<Level> levels) {
        // A level second alone has no edge inside.
        List<Level> longer =
                levels.stream().filter(level -> level.to() - level.from() > 1).toList();
        int segments = 2 * longer.size() + 1;
        firstEdge = new int[segments + 1];
        index = new int[segments];
        levelWatts = new double[segments];
        int kept = 0;
        for (int i = 0; i < longer.size(); i++) {
            Level level = longer.get(i);
            int odd = 2 * i + 1;
            kept += level.from() + 1 - firstEdge[odd - 1];
            index[odd] = kept - 1;
            index[odd + 1] = kept;
            firstEdge[odd] = level.from() + 1;
            firstEdge[odd + 1] = level.to();
            levelWatts[odd] = level.watts();
        }
        firstEdge[segments] = watts.size() + 1;
        joules = runningSum(watts, levels, kept + watts.size() + 1 - firstEdge[segments - 1]);
    }

    /**
     * A stretch over which power is the same in every second.
     *
     * @param from its first second
     * @param to the second after its last
     * @param watts the power, watts
     */
    record Level(int from, int to, double watts) {}

    /** The number of seconds. */
    int seconds() {
        return firstEdge[firstEdge.length - 1] - 1;
    }

    /** Work of a window, joules. */
    double joules(int start, int seconds) {
        return joulesBefore(segmentOf(start + seconds), start + seconds) - joulesBefore(segmentOf(start), start);
    }

    /**
     * The start of the window of this length with the most work, the earliest where several have.
     *
     * @param seconds length of the window, 1 to the number of seconds
     */
    int bestStart(int seconds) {
        int lastStart = seconds() - seconds;
        int best = 0;
        double most = Double.NEGATIVE_INFINITY;
        int from = 0;
        int first = 0;
        int last = segmentOf(seconds);
        while (from <= lastStart) {
            // The windows from here up to, not including, this one keep both edges in their segments.
            int to = Math.min(lastStart + 1, Math.min(firstEdge[first + 1], firstEdge[last + 1] - seconds));
            if (isKept(first) && isKept(last)) {
                int ahead = index[last] + from + seconds - firstEdge[last];
                int behind = index[first] + from - firstEdge[first];
                int better = bestOf(behind, ahead, to - from, most);
                if (better >= 0) {
                    best = from + better;
                    most = joules[ahead + better] - joules[behind + better];
                }
            } else if (isKept(first) || isKept(last)) {
                for (int start = from; start < to; start++) {
                    double candidate = joulesBefore(last, start + seconds) - joulesBefore(first, start);
                    if (candidate > most) {
                        most = candidate;
                        best = start;
                    }
                }
            }
            from = to;
            if (from == firstEdge[first + 1]) {
                first++;
            }
            if (from + seconds == firstEdge[last + 1]) {
                last++;
            }
        }
        return best;
    }

    /** Which of so many windows, counted from these two kept edges on, is the first with the most work; -1: none is above. */
    private int bestOf(int behind, int ahead, int count, double above) {
        int best = -1;
        double most = above;
        for (int i = 0; i < count; i++) {
            double candidate = joules[ahead + i] - joules[behind + i];
            if (candidate > most) {
                most = candidate;
                best = i;
            }
        }
        return best;
    }

    private static boolean isKept(int segment) {
        return (segment & 1) == 0;
    }

    private int segmentOf(int edge) {
        int found = Arrays.binarySearch(firstEdge, edge);
        return found >= 0 ? found : -found - 2;
    }

    private double joulesBefore(int segment, int edge) {
        int within = edge - firstEdge[segment];
        return isKept(segment)
                ? joules[index[segment] + within]
                : joules[index[segment]] + (within + 1) * levelWatts[segment];
    }

    /** Compensated (W. Kahan 1965), so that a short best late in a long ride is as exact as one at its start. */
    private static double[] runningSum(Series watts, List<Level> levels, int kept) {
        double[] sums = new double[kept];
        double sum = 0;
        double lost = 0;
        int second = 0;
        int edges = 1;
        Iterator<Level> nextLevel = levels.iterator();
        while (second < watts.size()) {
            Level level = nextLevel.hasNext() ? nextLevel.next() : new Level(watts.size(), watts.size(), 0);
            for (; second < level.from(); second++) {
                double corrected = watts.get(second) - lost;
                double next = sum + corrected;
                lost = (next - sum) - corrected;
                sum = next;
                sums[edges++] = sum;
            }
            if (level.to() > second) {
                sum += (level.to() - second) * level.watts();
                second = level.to();
                sums[edges++] = sum;
            }
        }
        return sums;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof RunningWork that
                && Arrays.equals(joules, that.joules)
                && Arrays.equals(firstEdge, that.firstEdge)
                && Arrays.equals(levelWatts, that.levelWatts);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(joules);
    }
}
