package io.github.wattledger.cli;

import java.io.IOException;
import java.io.Serial;

/** A result could not be written; the message is one line for people. */
final class OutputFailure extends IOException {
    @Serial
    private static final long serialVersionUID = 1L;

    OutputFailure(String message) {
        super(message);
    }

    OutputFailure(String message, Throwable cause) {
        super(message, cause);
    }
}
