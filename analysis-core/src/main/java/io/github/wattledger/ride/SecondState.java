package io.github.wattledger.ride;

/** What a rider (or the recorder) was doing in one second of a ride. */
public enum SecondState {
    /** Recorded and under way. */
    RIDING,
    /** Recorded with the timer running, but standing still. */
    STOPPED,
    /** The timer was stopped, by hand or by auto-pause. */
    PAUSED,
    /** The timer ran, but nothing was recorded. */
    MISSING
}
