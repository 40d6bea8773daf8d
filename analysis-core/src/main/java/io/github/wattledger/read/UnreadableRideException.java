package io.github.wattledger.read;

import java.io.Serial;
import org.jspecify.annotations.Nullable;

/** Nothing could be read: the message is one line that says which file, where in it, what is wrong, what to do. */
public final class UnreadableRideException extends Exception {
    @Serial
    private static final long serialVersionUID = 2L;

    private final Reason reason;

    /** Why nothing could be read, for programs. A later version may know more reasons. */
    public enum Reason {
        /** There is no such file or folder. */
        NO_SUCH_FILE,
        /** It cannot be opened or read to its end: no permission, a folder, a connection that broke. */
        NOT_ACCESSIBLE,
        /** It has no byte. */
        EMPTY,
        /** It has more bytes, samples or archived files than {@link ReadLimits} allows. */
        TOO_LARGE,
        /** No format recognizes it. */
        UNKNOWN_FORMAT,
        /** Its format is known, but the library that decodes it is not on the class path. */
        NO_DECODER,
        /** A reader from outside this library failed at it; the root cause says how. */
        READER_FAILED,
        /** It is damaged before the first sample. */
        DAMAGED,
        /** It is whole and of a known format, and yet no recording of a ride: a route, a workout, a table without a time. */
        NOT_A_RECORDING,
        /** A column was asked for that the table does not have. */
        NO_SUCH_COLUMN,
        /** It holds other sports only. */
        NO_CYCLING,
        /** A session was asked for that it does not have. */
        NO_SUCH_SESSION,
        /** It was read, but lacks what it was read for, for instance power to ride it again with. */
        NOT_SUITABLE
    }

    /**
     * With a message for people.
     *
     * @param reason why, for programs
     * @param message one line without the file's name; {@link RideFiles} puts that in front
     */
    public UnreadableRideException(Reason reason, String message) {
        this(reason, message, null);
    }

    /** With the cause kept for programmers. */
    public UnreadableRideException(Reason reason, String message, @Nullable Throwable cause) {
        super(message, cause);
        this.reason = reason;
    }

    /** Why nothing could be read, for programs. */
    public Reason reason() {
        return reason;
    }
}
