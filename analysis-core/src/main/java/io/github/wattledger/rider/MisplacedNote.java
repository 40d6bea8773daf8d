package io.github.wattledger.rider;

import java.io.Serializable;

/**
 * A note of the rider that does not fit the recording: most often a mistyped time.
 *
 * @param subject what it is about
 * @param position its place among the notes of that subject, from 0
 * @param fault what does not fit
 */
public record MisplacedNote(Subject subject, int position, Fault fault) implements Serializable {
    /** What a note with a time is about. */
    public enum Subject {
        /** A stop, {@link RideNotes#stopsNotChosen()}. */
        STOP,
        /** A bunch, {@link RideNotes#inBunch()}. */
        BUNCH
    }

    /** What does not fit. */
    public enum Fault {
        /** All of it lies after the end of the recording. It counts for nothing. */
        AFTER_THE_END,
        /** It begins within the recording and ends after it. What lies within counts. */
        ENDS_AFTER_THE_END,
        /** The recording holds no stop there. The note explains nothing. */
        NO_STOP_THERE
    }
}
