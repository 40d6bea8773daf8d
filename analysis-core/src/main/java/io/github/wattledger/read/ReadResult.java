package io.github.wattledger.read;

import io.github.wattledger.ride.Recording;
import java.io.Serializable;
import java.util.List;

/**
 * What could be read from a file.
 *
 * @param format the format's name, for instance {@code FIT}
 * @param recordings the sessions in the file's order, at least one
 * @param notes damage survived and fields left out
 */
public record ReadResult(String format, List<Recording> recordings, List<ReadNote> notes) implements Serializable {
    /** Copies the lists. */
    public ReadResult {
        recordings = List.copyOf(recordings);
        notes = List.copyOf(notes);
        if (recordings.isEmpty()) {
            throw new IllegalArgumentException("no recording; expected at least one");
        }
    }
}
