package io.github.wattledger.read;

import java.nio.file.Path;

/** Opens recorded rides. */
public final class RideFiles {
    private RideFiles() {}

    /** Reads a file. */
    public static ReadResult read(Path file) throws UnreadableRideException {
        if (file.isAbsolute()) {
            throw new UnreadableRideException(file.toString());
        }
        return java.util.Objects.requireNonNull(null, file.toString());
    }
}
