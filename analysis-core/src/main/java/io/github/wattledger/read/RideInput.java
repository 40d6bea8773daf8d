package io.github.wattledger.read;

import java.io.InputStream;
import java.nio.file.Path;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicBoolean;

/**
 * Where a recording is read from: a file, its bytes, or a stream. All three give the same; a stream can be read once.
 */
public final class RideInput {
    private final String name;
    private final String shownName;
    private final Bytes bytes;

    /** How the bytes are had. */
    @FunctionalInterface
    private interface Bytes {
        byte[] within(ReadLimits limits) throws UnreadableRideException;
    }

    private RideInput(String name, String shownName, Bytes bytes) {
        this.name = Objects.requireNonNull(name, "name");
        this.shownName = shownName;
        this.bytes = bytes;
    }

    /** A file. Messages name it as it is given; results name it without its folder. */
    public static RideInput of(Path file) {
        Path last = file.getFileName();
        return new RideInput(
                file.toString(), last == null ? file.toString() : last.toString(), limits -> Contents.of(file, limits));
    }

    /**
     * The whole content of a file that is in memory already, for instance of an upload.
     *
     * @param content the content; neither copied nor changed
     * @param name what to call it in messages and results
     */
    public static RideInput of(byte[] content, String name) {
        Objects.requireNonNull(content, "content");
        return new RideInput(name, name, limits -> Contents.of(content, name, limits));
    }

    /**
     * A stream, which is read to its end or to the limit, once, and not closed. Whoever asks for it a second time gets an
     * {@link IllegalStateException}.
     *
     * @param name what to call it in messages and results
     */
    public static RideInput of(InputStream in, String name) {
        Objects.requireNonNull(in, "in");
        AtomicBoolean isRead = new AtomicBoolean();
        return new RideInput(name, name, limits -> {
            if (isRead.getAndSet(true)) {
                throw new IllegalStateException(
                        name + ": the stream was read already; keep its bytes to read them again");
            }
            return Contents.of(in, name, limits);
        });
    }

    /** What it is called in messages. */
    public String name() {
        return name;
    }

    /** What it is called in results: of a file its name without the folder. */
    public String shownName() {
        return shownName;
    }

    /**
     * Its bytes, not to be changed.
     *
     * @throws UnreadableRideException when they cannot be had, or are more than the limits allow; its message is one line
     *     that begins with the name
     */
    public byte[] content(ReadLimits limits) throws UnreadableRideException {
        return bytes.within(limits);
    }

    @Override
    public String toString() {
        return name;
    }
}
