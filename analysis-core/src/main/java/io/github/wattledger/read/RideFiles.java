package io.github.wattledger.read;

import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.cancel.CancelledException;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * The door to recorded files: finds the format by content, not by name, unpacks gzip and zip archives, and reads all
 * that can be read.
 */
public final class RideFiles {
    private RideFiles() {}

    /**
     * Reads a file with the usual options.
     *
     * @throws UnreadableRideException when nothing could be read; its message is one line that begins with the file
     */
    public static ReadResult read(Path file) throws UnreadableRideException {
        return read(file, ReadOptions.DEFAULT);
    }

    /**
     * Reads a file.
     *
     * @throws UnreadableRideException when nothing could be read; its message is one line that begins with the file
     */
    public static ReadResult read(Path file, ReadOptions options) throws UnreadableRideException {
        return read(RideInput.of(file), options);
    }

    /**
     * Reads a file, bytes or a stream.
     *
     * @throws UnreadableRideException when nothing could be read; its message is one line that begins with the name
     * @throws CancelledException when the thread was interrupted
     */
    public static ReadResult read(RideInput input, ReadOptions options) throws UnreadableRideException {
        return read(input.content(options.limits()), input.name(), options, Cancellation.ON_INTERRUPT);
    }

    /**
     * Reads a content that is already in memory.
     *
     * @param content the whole content; not changed
     * @param name what to call it in messages
     * @param cancellation when to end early
     * @throws UnreadableRideException when nothing could be read; its message is one line that begins with the name
     * @throws CancelledException when it ends early
     */
    public static ReadResult read(byte[] content, String name, ReadOptions options, Cancellation cancellation)
            throws UnreadableRideException {
        try {
            return new Unpacking(options, cancellation).read(content);
        } catch (UnreadableRideException e) {
            throw new UnreadableRideException(e.reason(), name + ": " + e.getMessage(), e);
        }
    }

    /** How names of recordings and of archives end, in lower case without the point: for a search through folders. */
    public static Set<String> fileEndings() {
        Set<String> endings = new TreeSet<>(Unpacking.FILE_ENDINGS);
        endings.addAll(new Formats(List.of()).fileEndings());
        return Collections.unmodifiableSet(endings);
    }
}
