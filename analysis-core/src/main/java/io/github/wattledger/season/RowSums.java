package io.github.wattledger.season;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.util.zip.CRC32;
import org.jspecify.annotations.Nullable;

/**
 * Adds rows to check sums: each value with its type and length, but for a sum that the row carries itself. The bytes of a
 * row are gathered first, since a sum of a few bytes costs as much as one of many.
 */
final class RowSums {
    private static final String SUM = "check_sum";
    private static final byte NULL = 0;
    private static final byte WHOLE = 1;
    private static final byte REAL = 2;
    private static final byte TEXT = 3;
    private static final byte BYTES = 4;
    private static final byte END_OF_ROW = 5;
    private static final int USUAL_BYTES = 1024;

    private ByteBuffer bytes = ByteBuffer.allocate(USUAL_BYTES);

    /** Whether a sum is the one that a row carries itself. */
    static boolean isOf(StoreRow row, long sum) throws SQLException {
        return row.value(SUM) instanceof Number written && written.longValue() == sum;
    }

    /** The sum of a row alone. */
    long of(StoreRow row) throws SQLException {
        CRC32 sum = new CRC32();
        add(sum, row);
        return sum.getValue();
    }

    /** Adds a row. */
    void add(CRC32 sum, StoreRow row) throws SQLException {
        bytes.clear();
        int ofSum = row.placeOf(SUM);
        for (int place = 0; place < row.size(); place++) {
            if (place != ofSum) {
                add(row.at(place));
            }
        }
        makeRoom(1);
        bytes.put(END_OF_ROW);
        sum.update(bytes.flip());
    }

    private void add(@Nullable Object value) throws SQLException {
        if (value == null) {
            makeRoom(1);
            bytes.put(NULL);
        } else if (value instanceof Integer || value instanceof Long) {
            begin(WHOLE, Long.BYTES).putLong(((Number) value).longValue());
        } else if (value instanceof Double real) {
            begin(REAL, Long.BYTES).putLong(Double.doubleToRawLongBits(real));
        } else if (value instanceof String text) {
            byte[] content = text.getBytes(StandardCharsets.UTF_8);
            begin(TEXT, content.length).put(content);
        } else if (value instanceof byte[] content) {
            begin(BYTES, content.length).put(content);
        } else {
            throw new SQLException("a value of the store is of no known type: " + value.getClass());
        }
    }

    private ByteBuffer begin(byte type, int length) {
        makeRoom(1 + Long.BYTES + length);
        return bytes.put(type).putLong(length);
    }

    private void makeRoom(int more) {
        if (bytes.remaining() < more) {
            bytes = ByteBuffer.allocate(2 * bytes.capacity() + more).put(bytes.flip());
        }
    }
}
