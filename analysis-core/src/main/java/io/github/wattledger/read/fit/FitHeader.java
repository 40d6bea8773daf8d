package io.github.wattledger.read.fit;

import org.jspecify.annotations.Nullable;

/**
 * The header in front of a FIT file's messages: 12 or 14 bytes, of which bytes 4 to 7 hold the length of the messages
 * (little endian) and bytes 8 to 11 the letters {@code .FIT} (FIT protocol).
 *
 * @param headerBytes length of the header
 * @param dataBytes length of the messages that it promises
 */
record FitHeader(int headerBytes, long dataBytes) {
    private static final int SHORT_HEADER = 12;
    private static final int LONG_HEADER = 14;
    private static final int CHECKSUM_BYTES = 2;

    /** The header that begins at an offset, or null when there is none. */
    static @Nullable FitHeader at(byte[] content, int offset) {
        if (content.length - offset < SHORT_HEADER) {
            return null;
        }
        int size = content[offset] & 0xFF;
        boolean letters = content[offset + 8] == '.'
                && content[offset + 9] == 'F'
                && content[offset + 10] == 'I'
                && content[offset + 11] == 'T';
        if (!letters || (size != SHORT_HEADER && size != LONG_HEADER)) {
            return null;
        }
        long data = (content[offset + 4] & 0xFFL)
                | (content[offset + 5] & 0xFFL) << 8
                | (content[offset + 6] & 0xFFL) << 16
                | (content[offset + 7] & 0xFFL) << 24;
        return new FitHeader(size, data);
    }

    /** The offset of the first header at or after an offset, or -1 when there is none. */
    static int next(byte[] content, int fromOffset) {
        for (int offset = Math.max(0, fromOffset); offset + SHORT_HEADER <= content.length; offset++) {
            if (content[offset + 8] == '.' && at(content, offset) != null) {
                return offset;
            }
        }
        return -1;
    }

    /** Header, messages and checksum together. */
    long promisedBytes() {
        return headerBytes + dataBytes + CHECKSUM_BYTES;
    }
}
