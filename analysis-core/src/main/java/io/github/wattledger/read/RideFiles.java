package io.github.wattledger.read;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.ServiceLoader;
import java.util.stream.Collectors;

/** The door to recorded files: finds the format by content, not by name, and reads all that can be read. */
public final class RideFiles {
    private RideFiles() {}

    /**
     * Reads a file with the usual limits.
     *
     * @throws UnreadableRideException when nothing could be read; its message is one line that begins with the file
     */
    public static ReadResult read(Path file) throws UnreadableRideException {
        return read(file, ReadLimits.DEFAULT);
    }

    /**
     * Reads a file.
     *
     * @throws UnreadableRideException when nothing could be read; its message is one line that begins with the file
     */
    public static ReadResult read(Path file, ReadLimits limits) throws UnreadableRideException {
        return read(content(file, limits), file.toString(), limits);
    }

    /**
     * Reads a file's content that is already in memory.
     *
     * @param content the whole content; not changed
     * @param name what to call it in messages
     * @throws UnreadableRideException when nothing could be read; its message is one line that begins with the name
     */
    public static ReadResult read(byte[] content, String name, ReadLimits limits) throws UnreadableRideException {
        if (content.length == 0) {
            throw new UnreadableRideException(name + ": is empty (0 bytes); copy it from the device again");
        }
        List<RideFormat> formats = formats();
        for (RideFormat format : formats) {
            if (format.recognizes(content)) {
                try {
                    return format.read(content, limits);
                } catch (UnreadableRideException e) {
                    throw new UnreadableRideException(name + ": " + e.getMessage(), e);
                }
            }
        }
        String known = formats.stream().map(RideFormat::name).collect(Collectors.joining(", "));
        throw new UnreadableRideException(name + ": is not a recording in a known format (" + known
                + "); export the ride from the device or its app again");
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
                throw new UnreadableRideException(file + ": has " + size / 1_000_000 + " MB, more than the "
                        + limits.maximumBytes() / 1_000_000 + " MB that are read; is it a ride?");
            }
            return Files.readAllBytes(file);
        } catch (NoSuchFileException e) {
            throw new UnreadableRideException(file + ": there is no such file; check the path", e);
        } catch (AccessDeniedException e) {
            throw new UnreadableRideException(file + ": no permission to read it; check its owner and mode", e);
        } catch (IOException e) {
            throw new UnreadableRideException(file + ": could not be read (" + e.getMessage() + ")", e);
        }
    }

    private static List<RideFormat> formats() {
        return ServiceLoader.load(RideFormat.class).stream()
                .map(ServiceLoader.Provider::get)
                .toList();
    }
}
