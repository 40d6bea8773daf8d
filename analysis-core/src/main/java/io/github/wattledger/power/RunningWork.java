package io.github.wattledger.power;

import io.github.wattledger.ride.Series;
import java.io.Serial;
import java.io.Serializable;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;

/**
 * Running sums of one-second power, from which the work of any window is one subtraction and the best window of a length
 * is found in one pass.
 *
 * <p>Implementation: level stretches, over which power is the same in every second, are not walked. The work of a window
 * that is moved along is a straight line as long as both of its edges lie inside of level stretches, so that it is most
 * where an edge does not. Windows whose first edge lies inside of no level stretch are looked at first, then those of
 * the others whose last edge lies inside of none. How power changes elsewhere makes no difference to the time.
 *
 * <p>Whole watts are compared without any rounding, fractional ones up to that of their sums, less than a millionth of a
 * joule for any ride.
 */
final class RunningWork implements Serializable {
    @Serial
    private static final long serialVersionUID = 1L;

    /** Work of the first i seconds, joules. */
    private final double[] joules;

    /** First second of each level stretch, ascending. */
    private final int[] levelFrom;

    /** The second after the last of each level stretch. */
    private final int[] levelTo;

    /**
     * @param watts one-second power, watts: finite numbers outside of the level stretches, within them it is not read
     * @param levels in time order, none overlapping another
     */
    RunningWork(Series watts, List<Level> levels) {
        joules = runningSum(watts, levels);
        // A level second alone has no inside.
        List<Level> longer =
                levels.stream().filter(level -> level.to() - level.from() > 1).toList();
        levelFrom = longer.stream().mapToInt(Level::from).toArray();
        levelTo = longer.stream().mapToInt(Level::to).toArray();
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
        return joules.length - 1;
    }

    /** Work of a window, joules. */
    double joules(int start, int seconds) {
        return joules[start + seconds] - joules[start];
    }

    /**
     * The start of the window of this length with the most work, the earliest where several have.
     *
     * @param seconds length of the window, 1 to the number of seconds
     */
    int bestStart(int seconds) {
        int begun = bestBegunOutsideLevels(seconds);
        int ended = bestEndedOutsideLevels(seconds);
        if (ended < 0) {
            return begun;
        }
        double more = joules(ended, seconds) - joules(begun, seconds);
        return more > 0 || (more == 0 && ended < begun) ? ended : begun;
    }

    /** The best window of those whose first edge lies inside of no level stretch, the earliest of equal ones. */
    private int bestBegunOutsideLevels(int seconds) {
        int lastStart = seconds() - seconds;
        int best = 0;
        int from = 0;
        for (int level = 0; level < levelFrom.length && from <= lastStart; level++) {
            best = bestOf(from, Math.min(levelFrom[level], lastStart), seconds, best);
            from = levelTo[level];
        }
        return bestOf(from, lastStart, seconds, best);
    }

    /**
     * The best window of those whose first edge lies inside of a level stretch and whose last edge lies inside of none,
     * the earliest of equal ones; -1 where there is no such window.
     */
    private int bestEndedOutsideLevels(int seconds) {
        int lastStart = seconds() - seconds;
        int best = -1;
        int next = 0;
        for (int level = 0; level < levelFrom.length; level++) {
            int first = levelFrom[level] + 1;
            int last = Math.min(levelTo[level] - 1, lastStart);
            // Last edges inside of a level stretch are left out, as far as they belong to first edges inside of this
            // one.
            while (next < levelFrom.length && levelTo[next] <= first + seconds) {
                next++;
            }
            int from = first;
            for (int other = next; other < levelFrom.length && from <= last; other++) {
                best = bestOf(from, Math.min(levelFrom[other] - seconds, last), seconds, best);
                from = Math.max(from, levelTo[other] - seconds);
            }
            best = bestOf(from, last, seconds, best);
        }
        return best;
    }

    /** The best of the windows that start within these seconds, both included, and of the best one so far, or -1. */
    private int bestOf(int firstStart, int lastStart, int seconds, int bestSoFar) {
        int best = bestSoFar;
        double most = best < 0 ? Double.NEGATIVE_INFINITY : joules(best, seconds);
        for (int start = firstStart; start <= lastStart; start++) {
            double candidate = joules[start + seconds] - joules[start];
            if (candidate > most) {
                most = candidate;
                best = start;
            }
        }
        return best;
    }

    /** Compensated (W. Kahan 1965), so that a short best late in a long ride is as exact as one at its start. */
    private static double[] runningSum(Series watts, List<Level> levels) {
        double[] sums = new double[watts.size() + 1];
        double lost = 0;
        int second = 0;
        Iterator<Level> nextLevel = levels.iterator();
        while (second < watts.size()) {
            Level level = nextLevel.hasNext() ? nextLevel.next() : new Level(watts.size(), watts.size(), 0);
            double sum = sums[second];
            for (; second < level.from(); second++) {
                double corrected = watts.get(second) - lost;
                double next = sum + corrected;
                lost = (next - sum) - corrected;
                sum = next;
                sums[second + 1] = sum;
            }
            for (; second < level.to(); second++) {
                sums[second + 1] = sum + (second + 1 - level.from()) * level.watts();
            }
        }
        return sums;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof RunningWork that
                && Arrays.equals(joules, that.joules)
                && Arrays.equals(levelFrom, that.levelFrom)
                && Arrays.equals(levelTo, that.levelTo);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(joules);
    }
}
