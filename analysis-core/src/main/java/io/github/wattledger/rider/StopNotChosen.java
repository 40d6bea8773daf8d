package io.github.wattledger.rider;

import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * A stop that was not the rider's choice, as the rider wrote it down. Seconds are counted from the first second of the
 * whole recording.
 *
 * @param what what it was, for instance a puncture
 * @param fromSecond when it began, 0 or more; without an end, a second within or beside the stop
 * @param toSecond when it ended, after {@code fromSecond}; null stands for the end of the stop that lies there
 */
public record StopNotChosen(
        String what, int fromSecond, @Nullable Integer toSecond) implements Serializable {
    /** A rider reads a clock to the minute. */
    static final int READING_SECONDS = 60;

    /** @throws IllegalArgumentException when the text is blank or the seconds are negative or out of order */
    public StopNotChosen {
        if (what.isBlank()) {
            throw new IllegalArgumentException("what is blank, expected words");
        }
        if (fromSecond < 0 || (toSecond != null && toSecond <= fromSecond)) {
            throw new IllegalArgumentException(
                    "stop from " + fromSecond + " to " + toSecond + ", expected 0 <= from < to");
        }
    }

    /**
     * The part of a recorded stop that this note explains; empty where the two lie apart. Both ends of the note may be off
     * by a minute. A note without an end explains the whole stop.
     *
     * @param stop a stop of the recording, seconds of the whole recording
     */
    public Interval within(Interval stop) {
        int noted = toSecond == null ? fromSecond + 1 : toSecond;
        int from = Math.max(stop.fromSecond(), fromSecond - READING_SECONDS);
        int to = Math.min(stop.toSecond(), noted + READING_SECONDS);
        if (from >= to) {
            return new Interval(stop.fromSecond(), stop.fromSecond());
        }
        return toSecond == null ? stop : new Interval(from, to);
    }

    /**
     * Whether there is a second at the noted time, or a minute beside it, in which nobody is known to have ridden. A gap in
     * the recording may be the stop: the device may have been switched off.
     *
     * @param ride the whole recording
     */
    public boolean liesAtAStopOf(Ride ride) {
        int noted = toSecond == null ? fromSecond + 1 : toSecond;
        int from = Math.max(0, fromSecond - READING_SECONDS);
        int to = Math.min(ride.seconds(), noted + READING_SECONDS);
        for (int second = from; second < to; second++) {
            if (ride.state(second) != SecondState.RIDING) {
                return true;
            }
        }
        return false;
    }

    /** This stop, which begins before a second, as far as it lies before that second. */
    StopNotChosen endingBy(int second) {
        return toSecond == null || toSecond <= second ? this : new StopNotChosen(what, fromSecond, second);
    }
}
