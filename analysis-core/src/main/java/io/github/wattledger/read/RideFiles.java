package io.github.wattledger.read;

import java.nio.file.Path;

/** Opens recorded rides. */
public final class RideFiles {
    private RideFiles() {}

    /** Reads a file. */
    public static ReadResult read(Path file) throws UnreadableRideException {
        throw new UnreadableRideException(file.toString());
    }
}
