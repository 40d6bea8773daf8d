package io.github.wattledger.read;

/**
 * A file format. Implementations are found through {@link java.util.ServiceLoader}; those from outside this library are
 * asked first. Archives are unpacked before a format sees the content.
 */
public interface RideFormat {
    /** The format's name, for instance {@code FIT}. */
    String name();

    /**
     * Whether these bytes look like this format, judged by content, not by a file's name.
     *
     * @param content the whole content; not to be changed
     */
    boolean recognizes(byte[] content);

    /**
     * Reads all that can be read.
     *
     * @param content the whole content; not to be changed
     * @param options how much may be read, and how
     * @throws UnreadableRideException when there is nothing to return; its message is one line without the file's name
     */
    ReadResult read(byte[] content, ReadOptions options) throws UnreadableRideException;
}
