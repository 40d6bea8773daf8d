package io.github.wattledger.read;

import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.cancel.CancelledException;
import io.github.wattledger.read.UnreadableRideException.Reason;
import io.github.wattledger.read.fit.FitFormat;
import io.github.wattledger.read.fit.FitRoutes;
import io.github.wattledger.read.gpx.GpxFormat;
import io.github.wattledger.read.gpx.GpxRoutes;
import java.nio.file.Path;

/**
 * The door to courses that nobody may have ridden yet: GPX routes and tracks, FIT courses, or a recorded ride of the course.
 * Times in the file are not read. Gzip is unpacked.
 */
public final class RouteFiles {
    private RouteFiles() {}

    /**
     * Reads a file with the usual limits.
     *
     * @throws UnreadableRideException when there is no route in it; its message is one line that begins with the file
     */
    public static RouteResult read(Path file) throws UnreadableRideException {
        return read(RideInput.of(file), ReadLimits.DEFAULT);
    }

    /**
     * Reads a file, bytes or a stream.
     *
     * @throws UnreadableRideException when there is no route in it; its message is one line that begins with the name
     * @throws CancelledException when the thread was interrupted
     */
    public static RouteResult read(RideInput input, ReadLimits limits) throws UnreadableRideException {
        byte[] content = input.content(limits);
        try {
            return read(unpacked(content, limits), limits);
        } catch (UnreadableRideException e) {
            throw new UnreadableRideException(e.reason(), input.name() + ": " + e.getMessage(), e);
        }
    }

    private static byte[] unpacked(byte[] content, ReadLimits limits) throws UnreadableRideException {
        if (content.length == 0) {
            throw new UnreadableRideException(Reason.EMPTY, "is empty (0 bytes); export the course again");
        }
        if (!GzipContent.looksLike(content)) {
            return content;
        }
        GzipContent gzip = GzipContent.measure(content, limits.maximumBytes());
        if (gzip.tooLarge()) {
            throw new UnreadableRideException(Reason.TOO_LARGE, "unpacks to more than is read; is it a course?");
        }
        return gzip.unpack(content);
    }

    private static RouteResult read(byte[] content, ReadLimits limits) throws UnreadableRideException {
        if (new FitFormat().recognizes(content)) {
            return FitRoutes.read(content, limits.maximumSamples(), Cancellation.ON_INTERRUPT);
        }
        if (new GpxFormat().recognizes(content)) {
            return GpxRoutes.read(content, limits.maximumSamples(), Cancellation.ON_INTERRUPT);
        }
        throw new UnreadableRideException(
                Reason.UNKNOWN_FORMAT,
                "is not a course in a known format (FIT, GPX); export it from where it was planned as GPX");
    }
}
