package io.github.wattledger.season;

import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Reads the rides of a store without their seconds. */
final class RideRows {
    private final StoreDatabase database;
    private final UntilChanged<Checked> all;

    RideRows(StoreDatabase database) {
        this.database = database;
        this.all = new UntilChanged<>(database, () -> database.inSnapshot(this::allNow));
    }

    /**
     * Rides that were held against their check sums.
     *
     * @param sound those that are as they were written, in the order of their key
     * @param damaged the ids of the others, which may hold what cannot be read
     */
    record Checked(List<RideRow> sound, Set<Long> damaged) {
        Checked {
            sound = List.copyOf(sound);
            damaged = Set.copyOf(damaged);
        }
    }

    /** Every ride. */
    Checked all() throws SQLException {
        return all.get();
    }

    /** Every ride, within a transaction. */
    Checked allNow() throws SQLException {
        return checked(" NOT INDEXED", "");
    }

    /** See {@link RideStore#ridesForHistory}. To be used within one snapshot. */
    List<RideRow> forHistory(Instant from, Instant to) throws SQLException {
        String ids = idsBetween(from, to).stream().map(String::valueOf).collect(Collectors.joining(", ", "(", ")"));
        return checked(" WHERE id IN " + ids, " WHERE ride_id IN " + ids).sound();
    }

    /** Asked once, since the start has no index. */
    private List<Long> idsBetween(Instant from, Instant to) throws SQLException {
        List<Long> ids = new ArrayList<>();
        database.forEach(
                "SELECT id FROM ride WHERE start_epoch_s >= ? AND start_epoch_s < ?"
                        + " AND sha256 IN (SELECT sha256 FROM file)",
                row -> ids.add(StoreRow.required(row.large("id"))),
                from.getEpochSecond(),
                to.getEpochSecond());
        return ids;
    }

    private Checked checked(String which, String ofWhich) throws SQLException {
        List<RideRow> sound = new ArrayList<>();
        Set<Long> damaged = new HashSet<>();
        for (Map.Entry<Long, RideEntry> entry :
                RideEntry.read(database, which, ofWhich).entrySet()) {
            if (entry.getValue().isSound()) {
                sound.add(entry.getValue().row());
            } else {
                damaged.add(entry.getKey());
            }
        }
        return new Checked(sound, damaged);
    }
}
