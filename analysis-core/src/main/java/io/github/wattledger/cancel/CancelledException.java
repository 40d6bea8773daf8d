package io.github.wattledger.cancel;

import java.io.Serial;

/**
 * The work ended before it was done, because its thread was interrupted or its time was up. There is no result, and
 * nothing was changed. An interrupted thread is still interrupted.
 */
public final class CancelledException extends RuntimeException {
    @Serial
    private static final long serialVersionUID = 1L;

    private final Reason reason;

    /** What ended the work. */
    public enum Reason {
        /** The thread was interrupted. */
        INTERRUPT,
        /** The time that the caller allowed was up. */
        DEADLINE
    }

    CancelledException(Reason reason, String message) {
        super(message);
        this.reason = reason;
    }

    /** What ended the work. */
    public Reason reason() {
        return reason;
    }
}
