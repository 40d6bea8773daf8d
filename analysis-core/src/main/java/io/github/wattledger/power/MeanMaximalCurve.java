package io.github.wattledger.power;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.io.Serial;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;

/**
 * The mean-maximal curve: for every duration from one second to the ride's length the highest mean power over that many
 * consecutive seconds, exact, over elapsed time. Paused and missing seconds count as 0 W, so that a best is never
 * overstated; {@link #mayBeLow} says where missing seconds may have lowered one. A ride without power has an empty
 * curve.
 */
public final class MeanMaximalCurve implements Serializable {
    @Serial
    private static final long serialVersionUID = 1L;

    /** Above the rounding of any sum of a ride's fractional watts, far below a joule. */
    private static final double ROUNDING_J = 1e-6;

    /** Durations of {@link #logSpacedSeconds} before equal ones are dropped: enough for a smooth line in a report. */
    private static final int LOG_SPACED_COUNT = 40;

    private static final MeanMaximalCurve EMPTY = new MeanMaximalCurve(Series.of(), new int[0], new BitSet());

    private final Series bestWatts;
    private final int[] startSeconds;
    private final BitSet mayBeLow;

    private MeanMaximalCurve(Series bestWatts, int[] startSeconds, BitSet mayBeLow) {
        this.bestWatts = bestWatts;
        this.startSeconds = startSeconds;
        this.mayBeLow = mayBeLow;
    }

    /** The curve of a ride's power over elapsed time. */
    public static MeanMaximalCurve of(Ride ride) {
        if (!ride.has(Channel.POWER)) {
            return EMPTY;
        }
        Series power = ride.series(Channel.POWER);
        double[] watts = new double[ride.seconds()];
        BitSet missing = new BitSet();
        for (int second = 0; second < watts.length; second++) {
            if (ride.state(second) == SecondState.PAUSED) {
                continue;
            }
            if (power.isMeasured(second)) {
                watts[second] = power.get(second);
            } else {
                missing.set(second);
            }
        }
        BestWindows windows = new BestWindows(watts);
        int[] starts = new int[watts.length];
        int guess = 0;
        for (int seconds = 1; seconds <= watts.length; seconds++) {
            guess = windows.bestStart(seconds, betterNeighbour(windows, seconds, guess));
            starts[seconds - 1] = guess;
        }
        Series best = Series.generate(watts.length, i -> windows.work(starts[i], i + 1) / (i + 1));
        return new MeanMaximalCurve(best, starts, lowered(watts, missing, windows, starts));
    }

    /**
     * The curve of one-second power.
     *
     * @param watts one-second power, watts, 0 or more; {@code NaN} is a missing second
     * @throws IllegalArgumentException when a reading is below 0 or infinite
     */
    public static MeanMaximalCurve of(double[] watts) {
        return of(Ride.ofWatts(watts));
    }

    /** The longest duration, seconds: the ride's length; 0 without power. */
    public int longestSeconds() {
        return bestWatts.size();
    }

    /**
     * Best mean power over this many consecutive seconds, watts.
     *
     * @param seconds 1 to {@link #longestSeconds()}
     * @throws IllegalArgumentException when the duration is out of range
     */
    public double watts(int seconds) {
        return bestWatts.get(index(seconds));
    }

    /**
     * The first second, on the ride's axis, of the window that holds the best for this duration; the earliest window
     * where several do (with fractional watts: up to rounding).
     *
     * @param seconds 1 to {@link #longestSeconds()}
     * @throws IllegalArgumentException when the duration is out of range
     */
    public int startSecond(int seconds) {
        return startSeconds[index(seconds)];
    }

    /**
     * Whether missing seconds may have lowered the best for this duration: true when some window would have beaten it,
     * had the rider spent every missing stretch at the best power this ride shows for a stretch of that length. Pauses
     * are not missing.
     *
     * @param seconds 1 to {@link #longestSeconds()}
     * @throws IllegalArgumentException when the duration is out of range
     */
    public boolean mayBeLow(int seconds) {
        return mayBeLow.get(index(seconds));
    }

    /**
     * About 40 durations for a chart or a table: spread evenly on a logarithmic axis from one second to the longest, both
     * included, in whole seconds, ascending, none twice. Short curves have fewer, an empty one none.
     */
    public List<Integer> logSpacedSeconds() {
        return logSpaced(longestSeconds());
    }

    static List<Integer> logSpaced(int longest) {
        List<Integer> durations = new ArrayList<>();
        int last = 0;
        for (int i = 0; i < LOG_SPACED_COUNT && last < longest; i++) {
            int seconds = Math.toIntExact(Math.round(Math.pow(longest, i / (LOG_SPACED_COUNT - 1.0))));
            if (seconds > last) {
                durations.add(seconds);
                last = seconds;
            }
        }
        return List.copyOf(durations);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof MeanMaximalCurve that
                && bestWatts.equals(that.bestWatts)
                && Arrays.equals(startSeconds, that.startSeconds)
                && mayBeLow.equals(that.mayBeLow);
    }

    @Override
    public int hashCode() {
        return bestWatts.hashCode();
    }

    @Override
    public String toString() {
        return "MeanMaximalCurve of 1 to " + longestSeconds() + " s";
    }

    private int index(int seconds) {
        if (seconds < 1 || seconds > longestSeconds()) {
            throw new IllegalArgumentException("seconds " + seconds + ", expected 1 to " + longestSeconds());
        }
        return seconds - 1;
    }

    /** The better of the two windows that hold the best of the previous duration and one second more. */
    private static int betterNeighbour(BestWindows windows, int seconds, int previousStart) {
        int lastStart = windows.length() - seconds;
        int same = Math.min(previousStart, lastStart);
        int earlier = Math.max(same - 1, 0);
        return windows.work(earlier, seconds) > windows.work(same, seconds) ? earlier : same;
    }

    /** Bit {@code seconds - 1} is set where {@link #mayBeLow} is true. */
    private static BitSet lowered(double[] watts, BitSet missing, BestWindows windows, int[] starts) {
        BitSet lowered = new BitSet();
        if (missing.isEmpty()) {
            return lowered;
        }
        double[] filled = watts.clone();
        int from = missing.nextSetBit(0);
        while (from >= 0) {
            int to = missing.nextClearBit(from);
            int seconds = to - from;
            Arrays.fill(filled, from, to, windows.work(starts[seconds - 1], seconds) / seconds);
            from = missing.nextSetBit(to);
        }
        BestWindows filledWindows = new BestWindows(filled);
        for (int seconds = 1; seconds <= watts.length; seconds++) {
            double bestJoules = windows.work(starts[seconds - 1], seconds);
            lowered.set(seconds - 1, filledWindows.anyAbove(seconds, bestJoules + ROUNDING_J));
        }
        return lowered;
    }
}
