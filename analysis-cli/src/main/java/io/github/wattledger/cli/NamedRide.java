package io.github.wattledger.cli;

import io.github.wattledger.intake.OpenedRide;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.RideInput;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.read.UnreadableRideException.Reason;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A ride as the command line names it.
 *
 * @param file the file, or null for standard input
 */
record NamedRide(@Nullable Path file) {
    /** How standard input is named on the command line. */
    static final String STANDARD_INPUT = "-";

    /**
     * What the command line names.
     *
     * @throws UnreadableRideException when no file of this system can have the name
     */
    static NamedRide named(String name) throws UnreadableRideException {
        return new NamedRide(name.equals(STANDARD_INPUT) ? null : path(name));
    }

    /**
     * A file or folder that the command line names.
     *
     * @throws UnreadableRideException when no file of this system can have the name
     */
    static Path path(String name) throws UnreadableRideException {
        try {
            return Path.of(name);
        } catch (InvalidPathException e) {
            throw new UnreadableRideException(
                    Reason.NO_SUCH_FILE,
                    name + ": not a file name here; letters beyond ASCII need a UTF-8 locale, for instance C.UTF-8",
                    e);
        }
    }

    /**
     * A file for a command that reads no standard input.
     *
     * @throws UnreadableRideException when it is standard input, or no file of this system can have the name
     */
    static Path filePath(String name) throws UnreadableRideException {
        if (name.equals(STANDARD_INPUT)) {
            throw new UnreadableRideException(
                    Reason.NOT_SUITABLE,
                    "-: only 'wattledger review' reads standard input; write it into a file first");
        }
        return path(name);
    }

    /** The folder of the file; null for standard input. */
    @Nullable Path folder() {
        return file == null ? null : Objects.requireNonNullElse(file.getParent(), Path.of(""));
    }

    /** Whether both are the same file on the disk. */
    boolean isSameFile(Path other) throws IOException {
        return file != null && Files.isRegularFile(file) && Files.exists(other) && Files.isSameFile(file, other);
    }

    /**
     * Opens a session of it.
     *
     * @param sessionIndex which session, counted from 0, or null for the first of cycling
     * @param standardInput read to its end, within the limits of files, when it is what the command line names
     * @throws UnreadableRideException when it cannot be read, or is a folder
     */
    OpenedRide open(ReadOptions reading, @Nullable Integer sessionIndex, InputStream standardInput)
            throws UnreadableRideException {
        if (file == null) {
            return OpenedRide.of(RideInput.of(standardInput, toString()), reading, sessionIndex);
        }
        if (Files.isDirectory(file)) {
            throw new UnreadableRideException(
                    Reason.NOT_ACCESSIBLE,
                    file + ": is a folder; name one file in it; 'wattledger season " + file
                            + "' reviews all rides in it");
        }
        return OpenedRide.of(RideInput.of(file), reading, sessionIndex);
    }

    /** What it is called in messages. */
    @Override
    public String toString() {
        return file == null ? "standard input" : file.toString();
    }
}
