package io.github.wattledger.read;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.zip.GZIPInputStream;

/**
 * What a gzip file unpacks to. It is unpacked twice, first only to count, so that nothing is held that is too large, and
 * then straight into an array of the right size.
 *
 * @param size bytes before the end or the damage
 * @param damaged whether it is cut short or its checksum is wrong
 * @param tooLarge whether it is larger than allowed; then it was not counted to the end
 */
record GzipContent(long size, boolean damaged, boolean tooLarge) {
    /** Both passes read in steps of this size, so that both come equally far in a damaged file. */
    private static final int STEP = 8192;

    static boolean looksLike(byte[] content) {
        return content.length > 2 && (content[0] & 0xFF) == 0x1F && (content[1] & 0xFF) == 0x8B && content[2] == 8;
    }

    static GzipContent measure(byte[] content, long maximumBytes) {
        byte[] step = new byte[STEP];
        long size = 0;
        try (InputStream in = new GZIPInputStream(new ByteArrayInputStream(content))) {
            for (int read = in.read(step); read >= 0; read = in.read(step)) {
                size += read;
                if (size > maximumBytes) {
                    return new GzipContent(size, false, true);
                }
            }
            return new GzipContent(size, false, false);
        } catch (IOException e) {
            return new GzipContent(size, true, false);
        }
    }

    /** What the first pass has counted. */
    byte[] unpack(byte[] content) {
        byte[] unpacked = new byte[Math.toIntExact(size)];
        try (InputStream in = new GZIPInputStream(new ByteArrayInputStream(content))) {
            int filled = fill(in, unpacked);
            return filled == unpacked.length ? unpacked : Arrays.copyOf(unpacked, filled);
        } catch (IOException e) {
            throw new AssertionError("a gzip header that the first pass has read", e);
        }
    }

    /** Fills an array as far as a stream goes; gives back how far. */
    static int fill(InputStream in, byte[] target) {
        int filled = 0;
        try {
            while (filled < target.length) {
                int read = in.read(target, filled, Math.min(STEP, target.length - filled));
                if (read < 0) {
                    return filled;
                }
                filled += read;
            }
        } catch (IOException e) {
            return filled;
        }
        return filled;
    }
}
