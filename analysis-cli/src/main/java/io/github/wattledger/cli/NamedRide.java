package io.github.wattledger.cli;

import io.github.wattledger.intake.OpenedRide;
import io.github.wattledger.read.ReadLimits;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.RideInput;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.read.UnreadableRideException.Reason;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;

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
     * Several of them; a usage error when more than one is standard input.
     *
     * @throws UnreadableRideException when no file of this system can have the name
     */
    static List<NamedRide> named(@Nullable CommandSpec spec, List<String> names) throws UnreadableRideException {
        if (names.stream().filter(STANDARD_INPUT::equals).count() > 1) {
            throw Usage.error(spec, "standard input can be read only once");
        }
        List<NamedRide> rides = new ArrayList<>();
        for (String name : names) {
            rides.add(named(name));
        }
        return rides;
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
     * A folder or file of a season, which nobody can send through a pipe.
     *
     * @throws UnreadableRideException when it is standard input, or no file of this system can have the name
     */
    static Path seasonPath(String name) throws UnreadableRideException {
        if (name.equals(STANDARD_INPUT)) {
            throw new UnreadableRideException(
                    Reason.NOT_SUITABLE, "-: a season is a folder, not standard input; name the folder of the rides");
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
     * Its bytes for the core. Those of standard input are read here and kept, so that they can be read again.
     *
     * @param standardInput read to its end, within the limits of files, when it is what the command line names
     * @throws UnreadableRideException when standard input cannot be read, or is too long
     */
    RideInput input(InputStream standardInput) throws UnreadableRideException {
        return file == null
                ? RideInput.of(RideInput.of(standardInput, toString()).content(ReadLimits.DEFAULT), toString())
                : RideInput.of(file);
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
