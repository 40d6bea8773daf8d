package io.github.wattledger.read;

import java.util.Set;

/**
 * A file format. Implementations are given with {@link ReadOptions#withFormats}, or found through
 * {@link java.util.ServiceLoader}; those from outside this library are asked first. Archives are unpacked before a format sees the content.
 */
public interface RideFormat {
    /** The format's name, for instance {@code FIT}. */
    String name();

    /**
     * How names of such files end, in lower case without the point, for instance {@code fit}. A search through folders
     * opens only files with such an ending (of any format) or with none; a file that is named is always read.
     */
    default Set<String> fileEndings() {
        return Set.of();
    }

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
     * @param request how much may be read, how, and when to end early
     * @throws UnreadableRideException when there is nothing to return; its message is one line without the file's name
     */
    ReadResult read(byte[] content, ReadRequest request) throws UnreadableRideException;
}
