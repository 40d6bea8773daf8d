package io.github.wattledger.season;

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

    private final StoreDatabase database;

    StoreSums(StoreDatabase database) {
        this.database = database;
    }

    /** Writes the sum of a file's row. */
    void sealFile(String path) throws SQLException {
        Long sum = null;
        try (ResultSet row = database.rows("SELECT * FROM file WHERE path = ?", path)) {
            if (row.next()) {
                sum = new RowSums(row).sum(row);
            }
        }
        database.execute("UPDATE file SET check_sum = ? WHERE path = ?", sum, path);
    }

    /** Writes both sums of a ride, and gives that of its numbers and judgement. */
    @Nullable Long sealRide(long id) throws SQLException {
        database.execute("UPDATE ride SET series_sum = ? WHERE id = ?", seriesSum(id), id);
        return sealNumbers(id);
    }

    /** Writes and gives the sum of a ride's numbers and judgement; null where the ride is not there. */
    @Nullable Long sealNumbers(long id) throws SQLException {
        Map<Long, CRC32> sums = new HashMap<>();
        addRides(sums, new HashMap<>(), " WHERE id = ?", id);
        addParts(sums, " WHERE ride_id = ?", id);
        CRC32 sum = sums.get(id);
        Long value = sum == null ? null : (Long) sum.getValue();
        database.execute("UPDATE ride SET check_sum = ? WHERE id = ?", value, id);
        return value;
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
        try (ResultSet row = database.rows("SELECT * FROM file")) {
            RowSums file = new RowSums(row);
            while (row.next()) {
                if (!isSum(file.written(row), file.sum(row))) {
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

    private void addRides(Map<Long, CRC32> sums, Map<Long, @Nullable Object> expected, String where, Object... values)
            throws SQLException {
        String query = "SELECT * FROM ride" + (where.isEmpty() ? " NOT INDEXED" : where);
        try (ResultSet row = database.rows(query, values)) {
            RowSums ride = new RowSums(row);
            int id = row.findColumn("id");
            while (row.next()) {
                CRC32 sum = new CRC32();
                ride.add(sum, row);
                sums.put(row.getLong(id), sum);
                expected.put(row.getLong(id), ride.written(row));
            }
        }
    }

    private void addParts(Map<Long, CRC32> sums, String where, Object... values) throws SQLException {
        for (String table : PARTS) {
            try (ResultSet row = database.rows("SELECT * FROM " + table + where + " ORDER BY 1, 2, 3", values)) {
                RowSums part = new RowSums(row);
                while (row.next()) {
                    CRC32 sum = sums.get(row.getLong(1));
                    if (sum != null) {
                        part.add(sum, row);
                    }
                }
            }
        }
    }

    private long seriesSum(long id) throws SQLException {
        CRC32 sum = new CRC32();
        try (ResultSet row = database.rows(SERIES_OF, id)) {
            RowSums series = new RowSums(row);
            while (row.next()) {
                series.add(sum, row);
            }
        }
        return sum.getValue();
    }
}
