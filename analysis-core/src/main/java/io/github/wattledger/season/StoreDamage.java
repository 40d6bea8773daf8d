package io.github.wattledger.season;

import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What a store has lost: rows that are not as they were written, and rows that are no longer there. What can be had from
 * the files is then read again; the rest is named.
 *
 * @param rideCounts how many sound rides the store has of each content
 * @param starts when the first ride of each content began
 */
record StoreDamage(Map<String, Integer> rideCounts, Map<String, Instant> starts) {
    /** Where the rows of a ride that is not there any more are still in the way. */
    private static final List<String> PARTS =
            Stream.concat(StoreSums.PARTS.stream(), Stream.of("series")).toList();

    /**
     * Takes damaged rows out of a store.
     *
     * @throws SQLException when the file is damaged so that SQLite cannot repair its tables
     */
    static StoreDamage takeOut(StoreDatabase database, StoreSums sums) throws SQLException {
        boolean isDamaged = database.inSnapshot(
                () -> !sums.damagedFiles().isEmpty() || !sums.damagedRides().isEmpty());
        if (isDamaged) {
            database.inTransaction(() -> takeOutRows(database, sums));
        }
        Map<String, Integer> counts = new HashMap<>();
        Map<String, Instant> starts = new HashMap<>();
        try (PreparedStatement statement = database.reading(
                        "SELECT sha256, count(*), min(start_epoch_s) FROM ride NOT INDEXED GROUP BY 1");
                ResultSet row = statement.executeQuery()) {
            while (row.next()) {
                counts.put(row.getString(1), row.getInt(2));
                starts.put(row.getString(1), Instant.ofEpochSecond(row.getLong(3)));
            }
        }
        return new StoreDamage(counts, starts);
    }

    private static void takeOutRows(StoreDatabase database, StoreSums sums) throws SQLException {
        // Looked for once more: another process may have replaced a ride before this one could write.
        List<byte[]> files = sums.damagedFiles();
        Set<Long> rides = sums.damagedRides();
        // First: a row whose key has changed stands in the wrong place, and is not found there.
        database.execute("REINDEX");
        for (byte[] path : files) {
            // As bytes: a path that was changed need not be text any more.
            database.execute("DELETE FROM file WHERE CAST(path AS BLOB) = ?", (Object) path);
        }
        for (long id : rides) {
            database.execute("DELETE FROM ride WHERE id = ?", id);
        }
        for (String part : PARTS) {
            database.execute("DELETE FROM " + part + " WHERE ride_id NOT IN (SELECT id FROM ride NOT INDEXED)");
        }
        database.requireIntegrity();
    }

    /** Whether the store has all rides of a file. */
    boolean hasAllRidesOf(FileRow file) {
        return rideCounts.getOrDefault(file.sha256(), 0) == file.rideCount();
    }
}
