package io.github.wattledger.ride;

import java.io.Serializable;
import java.util.Optional;

/**
 * A half-open stretch of whole seconds, {@code [fromSecond, toSecond)}, counted from the first second of a ride.
 *
 * @param fromSecond the first second of the stretch, 0 or more
 * @param toSecond the second after the last one, not before {@code fromSecond}
 */
public record Interval(int fromSecond, int toSecond) implements Serializable {
    /** @throws IllegalArgumentException when the bounds are negative or out of order */
    public Interval {
        if (fromSecond < 0 || toSecond < fromSecond) {
            throw new IllegalArgumentException(
                    "interval [" + fromSecond + ", " + toSecond + "), expected 0 <= fromSecond <= toSecond");
        }
    }

    /** Its length in seconds. */
    public int seconds() {
        return toSecond - fromSecond;
    }

    /** Whether the stretch holds no second at all. */
    public boolean isEmpty() {
        return fromSecond == toSecond;
    }

    /** Whether the second lies within the stretch. */
    public boolean contains(int second) {
        return second >= fromSecond && second < toSecond;
    }

    /** How many seconds the two stretches share. */
    public int overlapSeconds(Interval other) {
        return Math.max(0, Math.min(toSecond, other.toSecond) - Math.max(fromSecond, other.fromSecond));
    }

    /** The seconds that the two stretches share; empty where they share none. */
    public Optional<Interval> common(Interval other) {
        int shared = overlapSeconds(other);
        int from = Math.max(fromSecond, other.fromSecond);
        return shared == 0 ? Optional.empty() : Optional.of(new Interval(from, from + shared));
    }

    /** The same stretch, moved by a number of seconds. */
    public Interval shifted(int seconds) {
        return new Interval(fromSecond + seconds, toSecond + seconds);
    }

    /** Both bounds as a watch shows them, {@code 0:12:06 to 1:21:02}. */
    @Override
    public String toString() {
        return clock(fromSecond) + " to " + clock(toSecond);
    }

    /**
     * Elapsed seconds as a watch shows them, {@code h:mm:ss}.
     *
     * @param seconds 0 or more
     */
    public static String clock(int seconds) {
        return seconds / 3600 + ":" + twoDigits(seconds / 60 % 60) + ":" + twoDigits(seconds % 60);
    }

    private static String twoDigits(int number) {
        return number < 10 ? "0" + number : String.valueOf(number);
    }
}
