package io.github.wattledger.season;

import io.github.wattledger.power.Durability;
import io.github.wattledger.power.RidingBest;
import io.github.wattledger.rider.RideNotes;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Reads the rides of a store without their seconds. To be used within one snapshot. */
final class RideRows {
    private final StoreDatabase database;
    private final RideParts parts;
    private final StoreSums sums;

    RideRows(StoreDatabase database, RideParts parts, StoreSums sums) {
        this.database = database;
        this.parts = parts;
        this.sums = sums;
    }

    /** Every ride, in the order of its key. */
    List<RideRow> all() throws SQLException {
        return rides(
                "SELECT * FROM ride NOT INDEXED ORDER BY sha256, session_index",
                parts.bests(RideParts.OF_ALL),
                parts.durability(),
                parts.ridingBests(RideParts.OF_ALL),
                parts.findings(),
                parts.notes(RideParts.OF_ALL));
    }

    /** See {@link RideStore#notes}. */
    Map<String, RideNotes> notes() throws SQLException {
        Map<Long, RideNotes> byRide = parts.notes(RideParts.OF_ALL);
        Map<String, RideNotes> byContent = new HashMap<>();
        if (byRide.isEmpty()) {
            return byContent;
        }
        try (PreparedStatement statement = database.reading("SELECT id, sha256 FROM ride");
                ResultSet row = statement.executeQuery()) {
            while (row.next()) {
                RideNotes notes = byRide.get(row.getLong(1));
                if (notes != null) {
                    byContent.put(row.getString(2), notes);
                }
            }
        }
        return byContent;
    }

    /** See {@link RideStore#ridesForHistory}. */
    List<RideRow> forHistory(Instant from, Instant to) throws SQLException {
        List<Long> ids = idsBetween(from, to);
        // A damaged row may hold what cannot be read, so it is left out before the rest is read.
        ids.removeAll(sums.damagedRides(" WHERE id IN " + list(ids), " WHERE ride_id IN " + list(ids)));
        String ofWhich = " WHERE ride_id IN " + list(ids);
        return rides(
                "SELECT * FROM ride WHERE id IN " + list(ids) + " ORDER BY sha256, session_index",
                parts.bests(ofWhich),
                Map.of(),
                parts.ridingBests(ofWhich),
                Map.of(),
                parts.notes(ofWhich));
    }

    private static String list(List<Long> ids) {
        return ids.stream().map(String::valueOf).collect(Collectors.joining(", ", "(", ")"));
    }

    /** Asked once, since the start has no index. */
    private List<Long> idsBetween(Instant from, Instant to) throws SQLException {
        List<Long> ids = new ArrayList<>();
        try (PreparedStatement statement = database.reading(
                        "SELECT id FROM ride WHERE start_epoch_s >= ? AND start_epoch_s < ?"
                                + " AND sha256 IN (SELECT sha256 FROM file)",
                        from.getEpochSecond(),
                        to.getEpochSecond());
                ResultSet row = statement.executeQuery()) {
            while (row.next()) {
                ids.add(row.getLong(1));
            }
        }
        return ids;
    }

    private List<RideRow> rides(
            String query,
            Map<Long, List<Best>> bests,
            Map<Long, List<Durability>> durability,
            Map<Long, List<RidingBest>> ridingBests,
            Map<Long, List<RideJudgement.Found>> findings,
            Map<Long, RideNotes> notes)
            throws SQLException {
        List<RideRow> rides = new ArrayList<>();
        try (PreparedStatement statement = database.reading(query);
                ResultSet row = statement.executeQuery()) {
            while (row.next()) {
                long id = row.getLong("id");
                Judge.Judged judged = StoreColumns.judged(
                        row,
                        bests.getOrDefault(id, List.of()),
                        durability.getOrDefault(id, List.of()),
                        ridingBests.getOrDefault(id, List.of()),
                        findings.getOrDefault(id, List.of()),
                        notes.getOrDefault(id, RideNotes.NONE));
                rides.add(new RideRow(
                        id,
                        StoreColumns.key(row),
                        StoreColumns.isCurrent(row),
                        StoreColumns.device(row),
                        StoreColumns.start(row),
                        StoreColumns.utcOffsetSeconds(row),
                        StoreColumns.format(row),
                        StoreColumns.channelCount(row),
                        judged,
                        StoreColumns.checkSum(row)));
            }
        }
        return rides;
    }
}
