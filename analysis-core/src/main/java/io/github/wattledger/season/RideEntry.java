package io.github.wattledger.season;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.CRC32;
import org.jspecify.annotations.Nullable;

/**
 * All rows that a store has of a ride, but for its seconds. They are added to its check sum as they come, so that they can be
 * held against the sum that was written before they are taken for numbers.
 */
final class RideEntry {
    /** The tables of the parts, in the order in which the sum has them; each is keyed by {@code ride_id} first. */
    static final List<String> PARTS = List.of("best", "durability", "finding", "note", "rig", "riding_best");

    private static final String IN_ORDER = " ORDER BY 1, 2, 3";

    private final StoreRow ride;
    private final Map<String, List<StoreRow>> parts = new HashMap<>();
    private final CRC32 sum = new CRC32();

    private RideEntry(StoreRow ride) {
        this.ride = ride;
    }

    /**
     * Reads entries that are asked for once, in the order of their key. To be used within one snapshot or transaction. A part
     * whose ride is not there is passed over: a changed bit can have given it another number.
     *
     * @param which what chooses rows of the table {@code ride}
     * @param ofWhich what chooses the rows of their parts
     * @return the entries by the ride's id
     */
    static Map<Long, RideEntry> read(StoreDatabase database, String which, String ofWhich) throws SQLException {
        RowSums sums = new RowSums();
        Map<Long, RideEntry> entries = new LinkedHashMap<>();
        database.forEach("SELECT * FROM ride" + which + " ORDER BY sha256, session_index", row -> {
            RideEntry entry = new RideEntry(row);
            sums.add(entry.sum, row);
            entries.put(entry.id(), entry);
        });
        for (String part : PARTS) {
            database.forEach(rowsOf(part) + ofWhich + IN_ORDER, row -> {
                RideEntry entry = entries.get(row.large("ride_id"));
                if (entry != null) {
                    entry.add(part, row, sums);
                }
            });
        }
        return entries;
    }

    /** The entry of a ride, or null where it is not there. To be used within one transaction. */
    static @Nullable RideEntry one(StoreDatabase database, long id) throws SQLException {
        RowSums sums = new RowSums();
        List<StoreRow> rides = database.rows("SELECT * FROM ride WHERE id = ?", id);
        if (rides.isEmpty()) {
            return null;
        }
        RideEntry entry = new RideEntry(rides.get(0));
        sums.add(entry.sum, entry.ride);
        for (String part : PARTS) {
            for (StoreRow row : database.rows(rowsOf(part) + " WHERE ride_id = ?" + IN_ORDER, id)) {
                entry.add(part, row, sums);
            }
        }
        return entry;
    }

    private static String rowsOf(String part) {
        return "SELECT * FROM " + part;
    }

    private void add(String part, StoreRow row, RowSums sums) throws SQLException {
        sums.add(sum, row);
        parts.computeIfAbsent(part, absent -> new ArrayList<>()).add(row);
    }

    /** The ride's place in the table. */
    long id() throws SQLException {
        return StoreRow.required(ride.large("id"));
    }

    /** The sum of all rows. */
    long sum() {
        return sum.getValue();
    }

    /** Whether all rows are as they were written. */
    boolean isSound() throws SQLException {
        return RowSums.isOf(ride, sum.getValue());
    }

    /** The ride without its seconds; to be asked of a sound entry. */
    RideRow row() throws SQLException {
        return new RideRow(
                id(),
                StoreColumns.key(ride),
                StoreColumns.isCurrent(ride),
                StoreColumns.device(ride),
                StoreColumns.start(ride),
                StoreColumns.utcOffsetSeconds(ride),
                StoreColumns.format(ride),
                StoreColumns.channelCount(ride),
                StoreColumns.judged(
                        ride,
                        each("best", RideParts::best),
                        each("durability", RideParts::durability),
                        each("riding_best", RideParts::ridingBest),
                        each("finding", RideParts::finding),
                        NoteRows.notes(rows("note"))),
                estimateMassKg(),
                StoreColumns.checkSum(ride));
    }

    private List<StoreRow> rows(String part) {
        return parts.getOrDefault(part, List.of());
    }

    /** Takes a row of a part apart. */
    @FunctionalInterface
    private interface Part<T> {
        T of(StoreRow row) throws SQLException;
    }

    private <T> List<T> each(String table, Part<T> part) throws SQLException {
        List<T> all = new ArrayList<>();
        for (StoreRow row : rows(table)) {
            all.add(part.of(row));
        }
        return all;
    }

    private @Nullable Double estimateMassKg() throws SQLException {
        List<StoreRow> rig = rows("rig");
        return rig.isEmpty() ? null : rig.get(0).real("total_mass_kg");
    }
}
