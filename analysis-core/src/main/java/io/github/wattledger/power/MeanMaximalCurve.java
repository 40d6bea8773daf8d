package io.github.wattledger.power;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.io.Serial;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * The mean-maximal curve: for a duration from one second to the ride's length the highest mean power over that many
 * consecutive seconds, exact, over elapsed time. Paused and missing seconds count as 0 W, so that a best is never
 * overstated; {@link Window#mayBeLow} says where missing seconds may have lowered one. A ride without power has an empty
 * curve.
 *
 * <p>The curve holds running sums and is asked duration by duration: each question costs one pass over the recorded
 * seconds, a few hundredths of a millisecond for a ride of twelve hours, whatever its power looks like. Answers are not
 * kept. It is immutable and may be asked by several threads.
 */
public final class MeanMaximalCurve implements Serializable {
    @Serial
    private static final long serialVersionUID = 2L;

    /** Above the rounding of any sum of a ride's fractional watts, far below a joule. */
    private static final double ROUNDING_J = 1e-6;

    /** Durations of {@link #logSpacedSeconds} before equal ones are dropped: enough for a smooth line in a report. */
    private static final int LOG_SPACED_COUNT = 40;

    private static final MeanMaximalCurve EMPTY = new MeanMaximalCurve(new RunningWork(Series.of(), List.of()), null);

    /** As recorded. */
    private final RunningWork work;

    /**
     * With every missing stretch at the best power this ride shows for a stretch of that length; null where no second is
     * missing.
     */
    private final @Nullable RunningWork filledWork;

    private MeanMaximalCurve(RunningWork work, @Nullable RunningWork filledWork) {
        this.work = work;
        this.filledWork = filledWork;
    }

    /**
     * The window that holds the best for a duration.
     *
     * @param seconds its length, seconds
     * @param watts its mean power, watts: the highest of all windows of that length
     * @param startSecond its first second, on the ride's axis; the earliest where several windows hold the best (with
     *     fractional watts: up to rounding)
     * @param mayBeLow whether missing seconds may have lowered the best: true when some window would have beaten it, had
     *     the rider spent every missing stretch at the best power this ride shows for a stretch of that length; pauses are
     *     not missing
     */
    public record Window(int seconds, double watts, int startSecond, boolean mayBeLow) implements Serializable {}

    /** The curve of a ride's power over elapsed time. */
    public static MeanMaximalCurve of(Ride ride) {
        if (!ride.has(Channel.POWER)) {
            return EMPTY;
        }
        Series power = ride.series(Channel.POWER);
        List<Unrecorded> stretches = new ArrayList<>();
        int to = 0;
        for (int from = 0; from < ride.seconds(); from = to) {
            Recorded recorded = Recorded.in(ride, power, from);
            to = from + 1;
            while (to < ride.seconds() && Recorded.in(ride, power, to) == recorded) {
                to++;
            }
            if (recorded != Recorded.POWER) {
                stretches.add(new Unrecorded(from, to, recorded == Recorded.MISSING));
            }
        }
        RunningWork work = new RunningWork(
                power,
                stretches.stream()
                        .map(stretch -> new RunningWork.Level(stretch.from(), stretch.to(), 0))
                        .toList());
        boolean hasMissing = stretches.stream().anyMatch(Unrecorded::isMissing);
        return new MeanMaximalCurve(work, hasMissing ? filled(power, work, stretches) : null);
    }

    /**
     * The curve of one-second power.
     *
     * @param watts one-second power, watts, 0 or more; {@code NaN} is a missing second
     * @throws IllegalArgumentException when a reading is below 0 or infinite
     */
    public static MeanMaximalCurve of(Series watts) {
        return of(Ride.ofWatts(watts));
    }

    /** {@link #of(Series)} for an array, which is copied. */
    public static MeanMaximalCurve of(double[] watts) {
        return of(Series.of(watts));
    }

    private static RunningWork filled(Series power, RunningWork work, List<Unrecorded> stretches) {
        Map<Integer, Double> bestOfLength = new HashMap<>();
        List<RunningWork.Level> levels = new ArrayList<>();
        for (Unrecorded stretch : stretches) {
            double watts = 0;
            if (stretch.isMissing()) {
                watts = bestOfLength.computeIfAbsent(
                        stretch.to() - stretch.from(),
                        seconds -> work.joules(work.bestStart(seconds), seconds) / seconds);
            }
            levels.add(new RunningWork.Level(stretch.from(), stretch.to(), watts));
        }
        return new RunningWork(power, levels);
    }

    /** The longest duration, seconds: the ride's length; 0 without power. */
    public int longestSeconds() {
        return work.seconds();
    }

    /**
     * Best mean power over this many consecutive seconds, watts, in one pass over the recorded seconds.
     *
     * @param seconds 1 to {@link #longestSeconds()}
     * @throws IllegalArgumentException when the duration is out of range
     */
    public double bestWatts(int seconds) {
        return watts(bestStart(seconds), seconds);
    }

    /**
     * The window that holds the best for this duration, and whether missing seconds may have lowered it: in one pass over
     * the recorded seconds, two where the ride has missing ones.
     *
     * @param seconds 1 to {@link #longestSeconds()}
     * @throws IllegalArgumentException when the duration is out of range
     */
    public Window bestWindow(int seconds) {
        int start = bestStart(seconds);
        boolean mayBeLow = filledWork != null
                && filledWork.joules(filledWork.bestStart(seconds), seconds) > work.joules(start, seconds) + ROUNDING_J;
        return new Window(seconds, watts(start, seconds), start, mayBeLow);
    }

    /**
     * {@link #bestWatts} of every duration from one second to {@link #longestSeconds()}, watts: the value at index 0 is
     * that of one second. Each takes a pass of its own, so that the cost grows with the square of the ride's length: 43,200
     * passes for a ride of twelve hours, a good part of a second.
     */
    public Series everyBestWatts() {
        return Series.generate(longestSeconds(), index -> bestWatts(index + 1));
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

    /** Whether two rides had the same power, and lacked it in the same seconds. */
    @Override
    public boolean equals(Object other) {
        return other instanceof MeanMaximalCurve that
                && work.equals(that.work)
                && Objects.equals(filledWork, that.filledWork);
    }

    @Override
    public int hashCode() {
        return work.hashCode();
    }

    @Override
    public String toString() {
        return "MeanMaximalCurve of 1 to " + longestSeconds() + " s";
    }

    private double watts(int start, int seconds) {
        return work.joules(start, seconds) / seconds;
    }

    private int bestStart(int seconds) {
        if (seconds < 1 || seconds > longestSeconds()) {
            throw new IllegalArgumentException("seconds " + seconds + ", expected 1 to " + longestSeconds());
        }
        return work.bestStart(seconds);
    }

    /** A stretch of seconds without power, from the first to before the last; those that are not missing are paused. */
    private record Unrecorded(int from, int to, boolean isMissing) {}

    /** What a second holds of power. */
    private enum Recorded {
        POWER,
        MISSING,
        PAUSED;

        static Recorded in(Ride ride, Series power, int second) {
            if (ride.state(second) == SecondState.PAUSED) {
                return PAUSED;
            }
            return power.isMeasured(second) ? POWER : MISSING;
        }
    }
}
