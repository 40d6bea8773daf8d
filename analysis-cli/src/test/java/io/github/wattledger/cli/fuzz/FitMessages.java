package io.github.wattledger.cli.fuzz;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Takes a FIT file apart into its messages and puts messages together to a file, by the description of the FIT protocol
 * and without the SDK, so that a file can be changed in one place and still carry a right check sum.
 */
final class FitMessages {
    /** Message number of the public FIT profile. */
    static final int RECORD = 20;

    private static final int CHECKSUM_BYTES = 2;

    private final byte[] file;
    private final Map<Integer, Layout> layouts = new HashMap<>();
    private final List<Message> messages = new ArrayList<>();

    private FitMessages(byte[] file) {
        this.file = file;
    }

    /** One field of a message: where it begins in the message's bytes, and how long it is. */
    record Field(int number, int offset, int size) {}

    /** What a definition says of the data messages that follow. */
    record Layout(int global, boolean isBigEndian, List<Field> fields, int dataBytes) {}

    /** A message with its header byte; the bytes are not to be changed. */
    static final class Message {
        private final byte[] bytes;
        private final @Nullable Layout layout;

        /**
         * A message.
         *
         * @param layout of a data message; null for a definition and for bytes that are no message
         */
        Message(byte[] bytes, @Nullable Layout layout) {
            this.bytes = bytes;
            this.layout = layout;
        }

        byte[] bytes() {
            return bytes;
        }

        @Nullable Layout layout() {
            return layout;
        }

        boolean isRecord() {
            return layout != null && layout.global() == RECORD;
        }
    }

    /** The messages of the first part of a file; what cannot be taken apart is one last message as it is. */
    static List<Message> of(byte[] file) {
        return new FitMessages(file).split();
    }

    private List<Message> split() {
        int at = file[0] & 0xFF;
        int end = Math.min(file.length - CHECKSUM_BYTES, at + number(4, 4, false));
        while (at < end) {
            int next = file[at];
            boolean isCompressed = (next & 0x80) != 0;
            int local = isCompressed ? (next >> 5) & 3 : next & 15;
            int length;
            Layout layout = null;
            if (!isCompressed && (next & 0x40) != 0) {
                length = define(local, at, (next & 0x20) != 0);
            } else {
                layout = layouts.get(local);
                length = layout == null ? end - at : 1 + layout.dataBytes();
            }
            length = Math.min(length, end - at);
            messages.add(new Message(Arrays.copyOfRange(file, at, at + length), layout));
            at += length;
        }
        return messages;
    }

    /** Notes a definition and gives its length in bytes. */
    private int define(int local, int at, boolean hasDeveloperFields) {
        boolean isBigEndian = file[at + 2] == 1;
        int global = number(at + 3, 2, isBigEndian);
        int count = file[at + 5] & 0xFF;
        List<Field> fields = new ArrayList<>();
        int offset = 1;
        int from = at + 6;
        for (int i = 0; i < count; i++) {
            int size = file[from + 3 * i + 1] & 0xFF;
            fields.add(new Field(file[from + 3 * i] & 0xFF, offset, size));
            offset += size;
        }
        int length = 6 + 3 * count;
        if (hasDeveloperFields) {
            int developerFields = file[at + length] & 0xFF;
            for (int i = 0; i < developerFields; i++) {
                offset += file[at + length + 1 + 3 * i + 1] & 0xFF;
            }
            length += 1 + 3 * developerFields;
        }
        layouts.put(local, new Layout(global, isBigEndian, fields, offset - 1));
        return length;
    }

    private int number(int at, int size, boolean isBigEndian) {
        int value = 0;
        for (int i = 0; i < size; i++) {
            value |= (file[at + i] & 0xFF) << (8 * (isBigEndian ? size - 1 - i : i));
        }
        return value;
    }

    /** A file of these messages, with a header and a check sum that are right. */
    static byte[] file(List<Message> messages) {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        for (Message message : messages) {
            all.writeBytes(message.bytes());
        }
        byte[] content = all.toByteArray();
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        file.writeBytes(new byte[] {12, 0x20, 100, 0});
        for (int i = 0; i < 4; i++) {
            file.write(content.length >> (8 * i));
        }
        file.writeBytes(new byte[] {'.', 'F', 'I', 'T'});
        file.writeBytes(content);
        int sum = checksum(file.toByteArray());
        file.write(sum);
        file.write(sum >> 8);
        return file.toByteArray();
    }

    /** CRC-16 with the polynomial x^16 + x^15 + x^2 + 1, bit by bit; its check value for "123456789" is 0xBB3D. */
    static int checksum(byte[] bytes) {
        int sum = 0;
        for (byte each : bytes) {
            sum ^= each & 0xFF;
            for (int bit = 0; bit < 8; bit++) {
                sum = (sum & 1) == 0 ? sum >> 1 : (sum >> 1) ^ 0xA001;
            }
        }
        return sum;
    }

    /**
     * A part of a ride: the records from one on, and the other messages but for those that repeat without end.
     *
     * @param every keeps one record of so many
     */
    static List<Message> cut(List<Message> messages, int fromRecord, int records, int every) {
        int mostOfAKind = 60;
        List<Message> cut = new ArrayList<>();
        Map<Integer, Integer> kinds = new HashMap<>();
        int record = 0;
        for (Message message : messages) {
            Layout layout = message.layout();
            if (message.isRecord()) {
                int place = record++ - fromRecord;
                if (place >= 0 && place < records * every && place % every == 0) {
                    cut.add(message);
                }
            } else if (layout == null || kinds.merge(layout.global(), 1, Integer::sum) <= mostOfAKind) {
                cut.add(message);
            }
        }
        return cut;
    }
}
