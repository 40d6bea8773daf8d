package io.github.wattledger.read.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * One of the complete FIT files that may stand one after the other in a file. Each has its own header, whose length is
 * not believed when what should follow does not: a recorder writes it last, and one that dies leaves 0, all ones, or
 * what it was at the time.
 *
 * @param fromByte where its header begins
 * @param toByte where it ends: at the next header or at the end, but not after what a right checksum closes
 * @param promisedBytes what its header says it has, checksum included
 * @param strayBytes bytes after it that belong to nothing
 * @param closed whether it ends where its header says, and with the right checksum
 */
record FitPart(int fromByte, int toByte, long promisedBytes, int strayBytes, boolean closed) {
    private static final int CHECKSUM_BYTES = 2;
    private static final int LENGTH_OFFSET = 4;
    private static final int HEADER_CHECKSUM_OFFSET = 12;
    private static final int LONG_HEADER = 14;
    private static final int MOST_PARTS = 1000;
    private static final int MOST_CHECKS = 4;

    /** The checksum's steps for a byte (FIT protocol, CRC-16 with the polynomial 0xA001). */
    private static final int[] CHECKSUM_STEPS = checksumSteps();

    /** The parts of a file that begins with a header. */
    static List<FitPart> of(byte[] content) {
        List<FitPart> parts = new ArrayList<>();
        // Headers strewn over a hostile file could each claim all the rest: only so much is summed up for them.
        long checkable = (long) MOST_CHECKS * content.length;
        int offset = 0;
        while (offset >= 0 && parts.size() < MOST_PARTS) {
            FitHeader header = FitHeader.at(content, offset);
            if (header == null) {
                break;
            }
            checkable -= header.promisedBytes();
            FitPart part = part(content, offset, header, checkable >= 0 || parts.isEmpty());
            parts.add(part);
            offset = FitHeader.next(content, part.toByte);
        }
        return parts;
    }

    private static FitPart part(byte[] content, int offset, FitHeader header, boolean mayCheck) {
        long end = offset + header.promisedBytes();
        boolean closed = mayCheck
                && header.dataBytes() > 0
                && end <= content.length
                && checksumIsRight(content, offset, (int) end);
        boolean followed = closed || (end < content.length && FitHeader.at(content, (int) end) != null);
        boolean fits = closed || (header.dataBytes() > 0 && (followed || end == content.length));
        int next = FitHeader.next(content, fits ? (int) end : offset + header.headerBytes());
        int to = fits ? (int) end : next < 0 ? content.length : next;
        int stray = (next < 0 ? content.length : next) - to;
        return new FitPart(offset, to, header.promisedBytes(), stray, closed);
    }

    private static boolean checksumIsRight(byte[] content, int from, int to) {
        int stored = (content[to - 2] & 0xFF) | (content[to - 1] & 0xFF) << 8;
        return checksum(content, from, to - CHECKSUM_BYTES) == stored;
    }

    private static int checksum(byte[] content, int from, int to) {
        int sum = 0;
        for (int i = from; i < to; i++) {
            sum = (sum >> 8) ^ CHECKSUM_STEPS[(sum ^ content[i]) & 0xFF];
        }
        return sum;
    }

    private static int[] checksumSteps() {
        int[] steps = new int[256];
        for (int value = 0; value < steps.length; value++) {
            int step = value;
            for (int bit = 0; bit < 8; bit++) {
                step = (step & 1) == 0 ? step >> 1 : (step >> 1) ^ 0xA001;
            }
            steps[value] = step;
        }
        return steps;
    }

    int sizeBytes() {
        return toByte - fromByte;
    }

    /** Whether the header gives another length than the part has. */
    boolean lengthIsWrong() {
        return promisedBytes != sizeBytes();
    }

    /** Whether bytes are missing that the header promises. */
    boolean isCutShort() {
        return promisedBytes > sizeBytes() && promisedBytes - sizeBytes() < 1L << 31;
    }

    /**
     * This part as a file of its own that the decoder reads to its last byte: with a header that gives its true length,
     * and closed by the right checksum. A file that is all of it and whole is given back itself.
     */
    byte[] asFile(byte[] content) {
        if (!lengthIsWrong()) {
            return sizeBytes() == content.length ? content : Arrays.copyOfRange(content, fromByte, toByte);
        }
        byte[] file = new byte[sizeBytes() + CHECKSUM_BYTES];
        System.arraycopy(content, fromByte, file, 0, sizeBytes());
        int headerBytes = file[0] & 0xFF;
        int dataBytes = sizeBytes() - headerBytes;
        for (int i = 0; i < 4; i++) {
            file[LENGTH_OFFSET + i] = (byte) (dataBytes >> (8 * i));
        }
        if (headerBytes == LONG_HEADER) {
            // 0 says that the header has no checksum of its own.
            file[HEADER_CHECKSUM_OFFSET] = 0;
            file[HEADER_CHECKSUM_OFFSET + 1] = 0;
        }
        int sum = checksum(file, 0, sizeBytes());
        file[sizeBytes()] = (byte) sum;
        file[sizeBytes() + 1] = (byte) (sum >> 8);
        return file;
    }
}
