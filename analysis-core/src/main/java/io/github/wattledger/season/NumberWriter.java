package io.github.wattledger.season;

import java.util.Arrays;

/** Writes base-128 numbers, low bits first, and groups of eight bytes. A stream of the JDK takes a lock for each byte. */
final class NumberWriter {
    private static final int MOST_BYTES_OF_A_NUMBER = 10;

    private byte[] bytes;
    private int size;

    /** @param expectedSize about how many bytes will be written */
    NumberWriter(int expectedSize) {
        this.bytes = new byte[Math.max(expectedSize, MOST_BYTES_OF_A_NUMBER)];
    }

    /** Writes a number, 0 or more. */
    void write(long number) {
        makeRoom();
        long rest = number;
        while (rest > 0x7F) {
            bytes[size++] = (byte) ((rest & 0x7F) | 0x80);
            rest >>>= 7;
        }
        bytes[size++] = (byte) rest;
    }

    /** Writes eight bytes, most significant first. */
    void writeEightBytes(long bits) {
        makeRoom();
        for (int shift = Long.SIZE - Byte.SIZE; shift >= 0; shift -= Byte.SIZE) {
            bytes[size++] = (byte) (bits >>> shift);
        }
    }

    private void makeRoom() {
        if (bytes.length - size < MOST_BYTES_OF_A_NUMBER) {
            bytes = Arrays.copyOf(bytes, 2 * bytes.length);
        }
    }

    /** What was written. */
    byte[] toByteArray() {
        return Arrays.copyOf(bytes, size);
    }
}
