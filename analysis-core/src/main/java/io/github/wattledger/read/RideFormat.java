package io.github.wattledger.read;

/** A file format. Implementations are found through {@link java.util.ServiceLoader}. */
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
     * @param limits how much may be read
     * @throws UnreadableRideException when there is nothing to return
     */
    ReadResult read(byte[] content, ReadLimits limits) throws UnreadableRideException;
}
