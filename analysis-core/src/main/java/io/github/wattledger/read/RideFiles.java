package io.github.wattledger.read;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Collections;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;

/**
 * The door to recorded files: finds the format by content, not by name, unpacks gzip and zip archives, and reads all
 * that can be read.
 */
public final class RideFiles {
    private static final int BYTES_PER_MB = 1_000_000;

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
        return read(content(file, options.limits()), file.toString(), options);
    }

    /**
     * Reads a file's content that is already in memory, with the usual options but for the limits.
     *
     * @throws UnreadableRideException when nothing could be read; its message is one line that begins with the name
     */
    public static ReadResult read(byte[] content, String name, ReadLimits limits) throws UnreadableRideException {
        return read(content, name, ReadOptions.DEFAULT.withLimits(limits));
    }

    /**
     * Reads a file's content that is already in memory.
     *
     * @param content the whole content; not changed
     * @param name what to call it in messages
     * @throws UnreadableRideException when nothing could be read; its message is one line that begins with the name
     */
    public static ReadResult read(byte[] content, String name, ReadOptions options) throws UnreadableRideException {
        try {
            return new Unpacking(options).read(content);
        } catch (UnreadableRideException e) {
            throw new UnreadableRideException(name + ": " + e.getMessage(), e);
        }
    }

    /** How names of recordings and of archives end, in lower case without the point: for a search through folders. */
    public static Set<String> fileEndings() {
        Set<String> endings = new TreeSet<>(Unpacking.FILE_ENDINGS);
        endings.addAll(new Formats().fileEndings());
        return Collections.unmodifiableSet(endings);
    }

    /**
     * A file's bytes.
     *
     * @throws UnreadableRideException when they cannot be had; its message is one line that begins with the file
     */
    public static byte[] content(Path file, ReadLimits limits) throws UnreadableRideException {
        try {
            if (Files.isDirectory(file)) {
                throw new UnreadableRideException(file + ": is a folder; name one file in it");
            }
            long size = Files.size(file);
            if (size > limits.maximumBytes()) {
                throw tooLarge(file.toString(), megabytes(size) + ", ", limits);
            }
            // A device or a pipe says that its size is 0 and may never end.
            try (InputStream in = Files.newInputStream(file)) {
                return bounded(in, file.toString(), limits);
            }
        } catch (NoSuchFileException e) {
            throw new UnreadableRideException(file + ": there is no such file; check the path", e);
        } catch (AccessDeniedException e) {
            throw new UnreadableRideException(file + ": no permission to read it; check its owner and mode", e);
        } catch (IOException e) {
            throw new UnreadableRideException(file + ": could not be read (" + e.getMessage() + ")", e);
        }
    }

    /**
     * The bytes of a stream, which is read to its end and not closed.
     *
     * @param name what to call it in messages
     * @throws UnreadableRideException when they cannot be had, or are more than the limits allow; its message is one line
     *     that begins with the name
     */
    public static byte[] content(InputStream in, String name, ReadLimits limits) throws UnreadableRideException {
        try {
            return bounded(in, name, limits);
        } catch (IOException e) {
            throw new UnreadableRideException(name + ": could not be read (" + e.getMessage() + ")", e);
        }
    }

    private static byte[] bounded(InputStream in, String name, ReadLimits limits)
            throws IOException, UnreadableRideException {
        byte[] content = in.readNBytes((int) limits.maximumBytes() + 1);
        if (content.length > limits.maximumBytes()) {
            throw tooLarge(name, "", limits);
        }
        return content;
    }

    private static UnreadableRideException tooLarge(String name, String size, ReadLimits limits) {
        return new UnreadableRideException(name + ": has " + size + "more than the " + megabytes(limits.maximumBytes())
                + " that are read; is it a ride?");
    }

    private static String megabytes(long bytes) {
        return String.format(Locale.ROOT, "%,.1f MB", bytes / (double) BYTES_PER_MB);
    }
}
