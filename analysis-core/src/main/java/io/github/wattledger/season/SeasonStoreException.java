package io.github.wattledger.season;

import java.io.IOException;
import java.io.Serial;
import org.jspecify.annotations.Nullable;

/** The store of a season could not be used; the message is one line for people that begins with the file. */
public final class SeasonStoreException extends IOException {
    @Serial
    private static final long serialVersionUID = 1L;

    /** With a message and what led to it. */
    SeasonStoreException(String message, @Nullable Throwable cause) {
        super(message, cause);
    }
}
