package io.github.wattledger.season;

/** Reads what a {@link NumberWriter} wrote. */
final class NumberReader {
    private final byte[] bytes;
    private int next;

    NumberReader(byte[] bytes) {
        this.bytes = bytes;
    }

    /** The next base-128 number. */
    long next() {
        long number = 0;
        int shift = 0;
        while (true) {
            byte each = bytes[next++];
            number |= (long) (each & 0x7F) << shift;
            if (each >= 0) {
                return number;
            }
            shift += 7;
        }
    }

    /** The next eight bytes, most significant first. */
    long eightBytes() {
        long bits = 0;
        for (int i = 0; i < Long.BYTES; i++) {
            bits = (bits << 8) | (bytes[next++] & 0xFF);
        }
        return bits;
    }
}
