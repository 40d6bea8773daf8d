package io.github.wattledger.cli;

import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.read.UnreadableRideException.Reason;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;

/** The name of a ride on the command line. */
final class InputFile {
    private InputFile() {}

    /** @throws UnreadableRideException when no file of this system can have the name */
    static Path ride(String name) throws UnreadableRideException {
        try {
            return Path.of(name);
        } catch (InvalidPathException e) {
            throw new UnreadableRideException(
                    Reason.NO_SUCH_FILE,
                    name + ": not a file name here; letters beyond ASCII need a UTF-8 locale, for instance C.UTF-8",
                    e);
        }
    }
}
