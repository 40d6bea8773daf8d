package io.github.wattledger.cli;

import io.github.wattledger.season.SeasonStoreException;
import java.io.IOException;
import java.io.Serial;

/** The store of a season that an option names cannot be read; the message is one line for people. */
final class UnreadableStoreException extends IOException {
    @Serial
    private static final long serialVersionUID = 1L;

    /**
     * @param option the option that names it
     * @param cause what is wrong, with the file
     */
    UnreadableStoreException(String option, SeasonStoreException cause) {
        super(option + ": " + cause.getMessage(), cause);
    }
}
