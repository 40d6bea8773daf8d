package io.github.wattledger.season;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.CRC32;
import org.jspecify.annotations.Nullable;

/**
 * Check sums of the rows of a store, so that a bit that a disk has changed is never taken for a number. SQLite itself
 * notices damage to the structure of its file, not to the values in it.
 *
 * <p>{@code file.check_sum} covers the other columns of its row. {@code ride.check_sum} covers the other columns of its
 * row and the rows of the ride in the tables of {@link RideEntry#PARTS}. {@code ride.series_sum} covers the rows of the ride
 * in {@code series}; it stands apart because the seconds are only read when a ride is judged again. A sum is a CRC-32 (ISO
 * 3309) of the values in the order of their columns.
 */
final class StoreSums {
    private static final String SERIES_OF = "SELECT name, encoding, data FROM series WHERE ride_id = ? ORDER BY name";

    private final StoreDatabase database;
    private final RowSums sums = new RowSums();

    StoreSums(StoreDatabase database) {
        this.database = database;
    }

    /** Writes the sum of a file's row. */
    void sealFile(String path) throws SQLException {
        for (StoreRow row : database.rows("SELECT * FROM file WHERE path = ?", path)) {
            database.execute("UPDATE file SET check_sum = ? WHERE path = ?", sums.of(row), path);
        }
    }

    /** Writes both sums of a ride, and gives that of its numbers and judgement. */
    @Nullable Long sealRide(long id) throws SQLException {
        database.execute("UPDATE ride SET series_sum = ? WHERE id = ?", seriesSum(id), id);
        return sealNumbers(id);
    }

    /** Writes and gives the sum of a ride's numbers and judgement; null where the ride is not there. */
    @Nullable Long sealNumbers(long id) throws SQLException {
        RideEntry entry = RideEntry.one(database, id);
        Long sum = entry == null ? null : (Long) entry.sum();
        database.execute("UPDATE ride SET check_sum = ? WHERE id = ?", sum, id);
        return sum;
    }

    /** Writes the sums of all rows: what stands in a store of before the sums is taken as it is. */
    void sealAll() throws SQLException {
        List<String> paths = new ArrayList<>();
        database.forEach("SELECT path FROM file", row -> paths.add(StoreRow.required(row.text("path"))));
        for (String path : paths) {
            sealFile(path);
        }
        List<Long> ids = new ArrayList<>();
        database.forEach("SELECT id FROM ride NOT INDEXED", row -> ids.add(StoreRow.required(row.large("id"))));
        for (long id : ids) {
            sealRide(id);
        }
    }

    /**
     * Whether the seconds of a ride are as they were written.
     *
     * @param sum what the ride's row has as their sum
     */
    boolean areSecondsSound(long id, @Nullable Long sum) throws SQLException {
        return sum != null && sum == seriesSum(id);
    }

    private long seriesSum(long id) throws SQLException {
        CRC32 sum = new CRC32();
        for (StoreRow row : database.rows(SERIES_OF, id)) {
            sums.add(sum, row);
        }
        return sum.getValue();
    }
}
