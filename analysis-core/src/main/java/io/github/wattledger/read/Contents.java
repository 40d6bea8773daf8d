package io.github.wattledger.read;

import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.read.UnreadableRideException.Reason;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Locale;

/** The bytes of a file or a stream, never more than the limits allow. */
final class Contents {
    private static final int BYTES_PER_MB = 1_000_000;

    private Contents() {}

    static byte[] of(Path file, ReadLimits limits) throws UnreadableRideException {
        try {
            if (Files.isDirectory(file)) {
                throw new UnreadableRideException(Reason.NOT_ACCESSIBLE, file + ": is a folder; name one file in it");
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
            throw new UnreadableRideException(Reason.NO_SUCH_FILE, file + ": there is no such file; check the path", e);
        } catch (AccessDeniedException e) {
            throw new UnreadableRideException(
                    Reason.NOT_ACCESSIBLE, file + ": no permission to read it; check its owner and mode", e);
        } catch (IOException e) {
            throw broken(file.toString(), e);
        }
    }

    static byte[] of(InputStream in, String name, ReadLimits limits) throws UnreadableRideException {
        try {
            return bounded(in, name, limits);
        } catch (IOException e) {
            throw broken(name, e);
        }
    }

    static byte[] of(byte[] content, String name, ReadLimits limits) throws UnreadableRideException {
        if (content.length > limits.maximumBytes()) {
            throw tooLarge(name, megabytes(content.length) + ", ", limits);
        }
        return content;
    }

    private static byte[] bounded(InputStream in, String name, ReadLimits limits)
            throws IOException, UnreadableRideException {
        byte[] content = in.readNBytes((int) limits.maximumBytes() + 1);
        if (content.length > limits.maximumBytes()) {
            throw tooLarge(name, "", limits);
        }
        return content;
    }

    private static UnreadableRideException broken(String name, IOException e) {
        // Some streams break because their thread was interrupted, and for no fault of the input.
        Cancellation.ON_INTERRUPT.check();
        return new UnreadableRideException(
                Reason.NOT_ACCESSIBLE, name + ": could not be read (" + e.getMessage() + ")", e);
    }

    private static UnreadableRideException tooLarge(String name, String size, ReadLimits limits) {
        return new UnreadableRideException(
                Reason.TOO_LARGE,
                name + ": has " + size + "more than the " + megabytes(limits.maximumBytes())
                        + " that are read; is it a ride?");
    }

    private static String megabytes(long bytes) {
        return String.format(Locale.ROOT, "%,.1f MB", bytes / (double) BYTES_PER_MB);
    }
}
