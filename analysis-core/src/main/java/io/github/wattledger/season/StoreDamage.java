package io.github.wattledger.season;

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
            Stream.concat(RideEntry.PARTS.stream(), Stream.of("series")).toList();

    /**
     * Takes damaged rows out of a store.
     *
     * @throws SQLException when the file is damaged so that SQLite cannot repair its tables
     */
    static StoreDamage takeOut(StoreDatabase database, FileRows files, RideRows rides) throws SQLException {
        if (files.all().areDamaged() || !rides.all().damaged().isEmpty()) {
            database.inTransaction(() -> takeOutRows(database, files, rides));
        }
        Map<String, Integer> counts = new HashMap<>();
        Map<String, Instant> starts = new HashMap<>();
        for (RideRow ride : rides.all().sound()) {
            counts.merge(ride.key().sha256(), 1, Integer::sum);
            starts.merge(ride.key().sha256(), ride.start(), (one, other) -> one.isBefore(other) ? one : other);
        }
        return new StoreDamage(counts, starts);
    }

    private static void takeOutRows(StoreDatabase database, FileRows files, RideRows rides) throws SQLException {
        // Looked for once more: another process may have replaced a ride before this one could write.
        List<byte[]> damagedPaths = files.damagedPaths();
        Set<Long> damagedRides = rides.allNow().damaged();
        // First: a row whose key has changed stands in the wrong place, and is not found there.
        database.execute("REINDEX");
        for (byte[] path : damagedPaths) {
            database.execute("DELETE FROM file WHERE CAST(path AS BLOB) = ?", (Object) path);
        }
        for (long id : damagedRides) {
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
