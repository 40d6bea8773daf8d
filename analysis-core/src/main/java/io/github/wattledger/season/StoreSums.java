package io.github.wattledger.season;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.zip.CRC32;
import org.jspecify.annotations.Nullable;

/**
 * Check sums of the rows of a store, so that a bit that a disk has changed is never taken for a number. SQLite itself
 * notices damage to the structure of its file, not to the values in it.
 *
 * <p>{@code file.check_sum} covers the other columns of its row. {@code ride.check_sum} covers the other columns of its
 * row and the rows of the ride in the tables of {@link #PARTS}. {@code ride.series_sum} covers the rows of the ride in
 * {@code series}; it stands apart because the seconds are only read when a ride is judged again. A sum is a CRC-32 (ISO
 * 3309) of the values in the order of their columns.
 */
final class StoreSums {
    /** The tables, but for {@code series}, whose rows belong to a ride; each is keyed by {@code ride_id} first. */
    static final List<String> PARTS = List.of("best", "durability", "finding", "note", "rig", "riding_best");

    private static final String SERIES_OF = "SELECT name, encoding, data FROM series WHERE ride_id = ? ORDER BY name";
    private static final byte NULL = 0;
    private static final byte WHOLE = 1;
    private static final byte REAL = 2;
    private static final byte TEXT = 3;
    private static final byte BYTES = 4;
    private static final byte END_OF_ROW = 5;

    private final StoreDatabase database;

    StoreSums(StoreDatabase database) {
        this.database = database;
    }

    /** Writes the sum of a file's row. */
    void sealFile(String path) throws SQLException {
        try (PreparedStatement statement = database.reading("SELECT * FROM file WHERE path = ?", path);
                ResultSet row = statement.executeQuery()) {
            if (row.next()) {
                database.execute("UPDATE file SET check_sum = ? WHERE path = ?", sum(Columns.of(row), row), path);
            }
        }
    }

    /** Writes both sums of a ride. */
    void sealRide(long id) throws SQLException {
        database.execute("UPDATE ride SET series_sum = ? WHERE id = ?", seriesSum(id), id);
        sealNumbers(id);
    }

    /** Writes the sum of a ride's numbers and judgement. */
    void sealNumbers(long id) throws SQLException {
        Map<Long, CRC32> sums = new HashMap<>();
        addRides(sums, new HashMap<>(), " WHERE id = " + id);
        addParts(sums, " WHERE ride_id = " + id);
        CRC32 sum = sums.get(id);
        database.execute("UPDATE ride SET check_sum = ? WHERE id = ?", sum == null ? null : (Long) sum.getValue(), id);
    }

    /** Writes the sums of all rows: what stands in a store of before the sums is taken as it is. */
    void sealAll() throws SQLException {
        for (String path : texts("SELECT path FROM file")) {
            sealFile(path);
        }
        for (String id : texts("SELECT id FROM ride NOT INDEXED")) {
            sealRide(Long.parseLong(id));
        }
    }

    private List<String> texts(String query) throws SQLException {
        List<String> texts = new ArrayList<>();
        try (PreparedStatement statement = database.reading(query);
                ResultSet row = statement.executeQuery()) {
            while (row.next()) {
                texts.add(row.getString(1));
            }
        }
        return texts;
    }

    /** The paths, as bytes, of all rows of the table {@code file} that are not as they were written. */
    List<byte[]> damagedFiles() throws SQLException {
        List<byte[]> damaged = new ArrayList<>();
        try (PreparedStatement statement = database.reading("SELECT * FROM file");
                ResultSet row = statement.executeQuery()) {
            Columns columns = Columns.of(row);
            while (row.next()) {
                if (!isSum(row.getObject("check_sum"), sum(columns, row))) {
                    damaged.add(row.getBytes("path"));
                }
            }
        }
        return damaged;
    }

    /** The ids of all rides whose numbers or judgement are not as they were written. */
    Set<Long> damagedRides() throws SQLException {
        return damagedRides("", "");
    }

    /**
     * The ids of those rides whose numbers or judgement are not as they were written.
     *
     * @param which the condition that chooses rows of the table {@code ride}, empty for all
     * @param ofWhich the condition that chooses the rows of their parts
     */
    Set<Long> damagedRides(String which, String ofWhich) throws SQLException {
        Map<Long, CRC32> sums = new HashMap<>();
        Map<Long, @Nullable Object> expected = new HashMap<>();
        addRides(sums, expected, which);
        addParts(sums, ofWhich);
        Set<Long> damaged = new HashSet<>();
        expected.forEach((id, sum) -> {
            if (!isSum(sum, Objects.requireNonNull(sums.get(id)).getValue())) {
                damaged.add(id);
            }
        });
        return damaged;
    }

    /**
     * Whether the seconds of a ride are as they were written.
     *
     * @param sum what the ride's row has as their sum
     */
    boolean areSecondsSound(long id, @Nullable Object sum) throws SQLException {
        return isSum(sum, seriesSum(id));
    }

    private static boolean isSum(@Nullable Object written, long sum) {
        return written instanceof Number number && number.longValue() == sum;
    }

    private void addRides(Map<Long, CRC32> sums, Map<Long, @Nullable Object> expected, String where)
            throws SQLException {
        try (PreparedStatement statement =
                        database.reading("SELECT * FROM ride" + (where.isEmpty() ? " NOT INDEXED" : where));
                ResultSet row = statement.executeQuery()) {
            Columns columns = Columns.of(row);
            while (row.next()) {
                CRC32 sum = new CRC32();
                columns.add(sum, row);
                sums.put(row.getLong("id"), sum);
                expected.put(row.getLong("id"), row.getObject("check_sum"));
            }
        }
    }

    private void addParts(Map<Long, CRC32> sums, String where) throws SQLException {
        for (String table : PARTS) {
            try (PreparedStatement statement =
                            database.reading("SELECT * FROM " + table + where + " ORDER BY 1, 2, 3");
                    ResultSet row = statement.executeQuery()) {
                Columns columns = Columns.of(row);
                while (row.next()) {
                    CRC32 sum = sums.get(row.getLong(1));
                    if (sum != null) {
                        columns.add(sum, row);
                    }
                }
            }
        }
    }

    private long seriesSum(long id) throws SQLException {
        CRC32 sum = new CRC32();
        try (PreparedStatement statement = database.reading(SERIES_OF, id);
                ResultSet row = statement.executeQuery()) {
            Columns columns = Columns.of(row);
            while (row.next()) {
                columns.add(sum, row);
            }
        }
        return sum.getValue();
    }

    private static long sum(Columns columns, ResultSet row) throws SQLException {
        CRC32 sum = new CRC32();
        columns.add(sum, row);
        return sum.getValue();
    }

    /**
     * The columns of a query.
     *
     * @param count how many there are
     * @param sum which of them holds the sum, from 1; 0 where none does
     */
    private record Columns(int count, int sum) {
        static Columns of(ResultSet row) throws SQLException {
            int count = row.getMetaData().getColumnCount();
            int sum = 0;
            for (int column = 1; column <= count; column++) {
                sum = row.getMetaData().getColumnName(column).equals("check_sum") ? column : sum;
            }
            return new Columns(count, sum);
        }

        /** Adds a row but for the sum that it carries itself. */
        void add(CRC32 sum, ResultSet row) throws SQLException {
            for (int column = 1; column <= count; column++) {
                if (column != this.sum) {
                    StoreSums.add(sum, row.getObject(column));
                }
            }
            sum.update(END_OF_ROW);
        }
    }

    private static void add(CRC32 sum, @Nullable Object value) throws SQLException {
        if (value == null) {
            sum.update(NULL);
        } else if (value instanceof Integer || value instanceof Long) {
            add(sum, WHOLE, number(((Number) value).longValue()));
        } else if (value instanceof Double real) {
            add(sum, REAL, number(Double.doubleToRawLongBits(real)));
        } else if (value instanceof String text) {
            add(sum, TEXT, text.getBytes(StandardCharsets.UTF_8));
        } else if (value instanceof byte[] bytes) {
            add(sum, BYTES, bytes);
        } else {
            throw new SQLException("a value of the store is of no known type: " + value.getClass());
        }
    }

    private static byte[] number(long value) {
        return ByteBuffer.allocate(Long.BYTES).putLong(value).array();
    }

    private static void add(CRC32 sum, byte type, byte[] content) {
        sum.update(type);
        sum.update(number(content.length));
        sum.update(content);
    }
}
