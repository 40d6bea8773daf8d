package io.github.wattledger.ride;

import java.io.Serializable;

/**
 * The recorder's timer was started or stopped, by hand or by itself.
 *
 * @param epochSecond when, in seconds since 1970-01-01T00:00:00Z
 * @param kind what happened to the timer
 */
public record TimerEvent(long epochSecond, Kind kind) implements Serializable {
    /** What happened to the timer. */
    public enum Kind {
        /** It runs from here on. */
        START,
        /** It stands from here on. */
        STOP
    }
}
