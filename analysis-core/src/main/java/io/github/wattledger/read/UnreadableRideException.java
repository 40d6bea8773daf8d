package io.github.wattledger.read;

import java.io.Serial;

/** Nothing could be read: the message is one line that says which file, where in it, what is wrong, what to do. */
public final class UnreadableRideException extends Exception {
    @Serial
    private static final long serialVersionUID = 1L;

    /**
     * With a message for people.
     *
     * @param message one line without the file's name; {@link RideFiles} puts that in front
     */
    public UnreadableRideException(String message) {
        super(message);
    }

    /** With the cause kept for programmers. */
    public UnreadableRideException(String message, Throwable cause) {
        super(message, cause);
    }
}
