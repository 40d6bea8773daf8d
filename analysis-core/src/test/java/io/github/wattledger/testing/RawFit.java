package io.github.wattledger.testing;

import java.io.ByteArrayOutputStream;
import java.util.HashMap;
import java.util.Map;

/**
 * Writes FIT files byte by byte from the FIT protocol's description, without the SDK, so that a test can also write what
 * no encoder would: big-endian messages, compressed timestamps, wrong lengths.
 */
public final class RawFit {
    /** FIT time 0 is 1989-12-31T00:00:00Z (public FIT profile). */
    public static final long EPOCH_SECOND = 631_065_600L;

    /** Base types of the FIT protocol. */
    public static final int ENUM = 0x00;

    public static final int SINT8 = 0x01;
    public static final int UINT8 = 0x02;
    public static final int STRING = 0x07;
    public static final int UINT16 = 0x84;
    public static final int SINT32 = 0x85;
    public static final int UINT32 = 0x86;

    /** Message numbers of the public FIT profile. */
    public static final int FILE_ID = 0;

    public static final int SESSION = 18;
    public static final int RECORD = 20;
    public static final int EVENT = 21;
    public static final int FIELD_DESCRIPTION = 206;
    public static final int DEVELOPER_DATA_ID = 207;

    private final ByteArrayOutputStream messages = new ByteArrayOutputStream();
    private final Map<Integer, int[]> sizes = new HashMap<>();
    private final boolean bigEndian;

    private RawFit(boolean bigEndian) {
        this.bigEndian = bigEndian;
    }

    /** A file whose values have the low byte first. */
    public static RawFit littleEndian() {
        return new RawFit(false);
    }

    /** A file whose values have the high byte first. */
    public static RawFit bigEndian() {
        return new RawFit(true);
    }

    /** Defines a local message: for each field its number, its size in bytes and its base type. */
    public RawFit define(int local, int global, int... fields) {
        return define(local, global, fields, new int[0]);
    }

    /** Defines a local message with developer fields: for each its number, its size and its developer's index. */
    public RawFit define(int local, int global, int[] fields, int[] developerFields) {
        messages.write(0x40 | (developerFields.length > 0 ? 0x20 : 0) | local);
        messages.write(0);
        messages.write(bigEndian ? 1 : 0);
        writeNumber(global, 2);
        int[] fieldSizes = new int[fields.length / 3 + developerFields.length / 3];
        writeFields(fields, fieldSizes, 0);
        if (developerFields.length > 0) {
            writeFields(developerFields, fieldSizes, fields.length / 3);
        }
        sizes.put(local, fieldSizes);
        return this;
    }

    private void writeFields(int[] fields, int[] fieldSizes, int from) {
        messages.write(fields.length / 3);
        for (int i = 0; i < fields.length; i += 3) {
            messages.write(fields[i]);
            messages.write(fields[i + 1]);
            messages.write(fields[i + 2]);
            fieldSizes[from + i / 3] = fields[i + 1];
        }
    }

    /** A message with a number for each field. */
    public RawFit data(int local, long... values) {
        messages.write(local);
        return values(local, values);
    }

    /** A message whose header holds the last five bits of its time. */
    public RawFit compressed(int local, long fitSecond, long... values) {
        messages.write(0x80 | (local << 5) | (int) (fitSecond & 0x1F));
        return values(local, values);
    }

    private RawFit values(int local, long... values) {
        int[] fieldSizes = sizes.get(local);
        if (fieldSizes == null || fieldSizes.length != values.length) {
            throw new IllegalArgumentException("values do not fit the definition of " + local);
        }
        for (int i = 0; i < values.length; i++) {
            writeNumber(values[i], fieldSizes[i]);
        }
        return this;
    }

    /** Bytes as they are, for instance a string. */
    public RawFit bytes(byte... raw) {
        messages.writeBytes(raw);
        return this;
    }

    private void writeNumber(long value, int size) {
        for (int i = 0; i < size; i++) {
            int shift = 8 * (bigEndian ? size - 1 - i : i);
            messages.write((int) (value >> shift));
        }
    }

    /** The bytes of the messages so far. */
    public int messageBytes() {
        return messages.size();
    }

    /** The whole file. */
    public byte[] file() {
        return file(messages.size());
    }

    /** The whole file with a header that promises another length. */
    public byte[] file(long promisedMessageBytes) {
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        file.writeBytes(new byte[] {12, 0x20, 100, 0});
        for (int i = 0; i < 4; i++) {
            file.write((int) (promisedMessageBytes >> (8 * i)));
        }
        file.writeBytes(new byte[] {'.', 'F', 'I', 'T'});
        file.writeBytes(messages.toByteArray());
        int sum = checksum(file.toByteArray());
        file.write(sum);
        file.write(sum >> 8);
        return file.toByteArray();
    }

    /** CRC-16 with the polynomial x^16 + x^15 + x^2 + 1, bit by bit; its check value for "123456789" is 0xBB3D. */
    public static int checksum(byte[] bytes) {
        int sum = 0;
        for (byte each : bytes) {
            sum ^= each & 0xFF;
            for (int bit = 0; bit < 8; bit++) {
                sum = (sum & 1) == 0 ? sum >> 1 : (sum >> 1) ^ 0xA001;
            }
        }
        return sum;
    }
}
