package io.github.wattledger.season;

import io.github.wattledger.rider.RideNotes;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The store of a season in one SQLite file; {@code docs/season-store.md} describes its tables. A file and its rides are
 * put in by one transaction, so that the store holds whole rides only, whatever ends the process. Several processes may use one store at
 * once. Not for use by several threads.
 */
final class RideStore implements AutoCloseable {

    private static final String INSERT_RIDE =
            "INSERT INTO ride (" + StoreTables.joined(StoreColumns.all(), RowColumn::name, ", ") + ") VALUES ("
                    + StoreTables.joined(StoreColumns.all(), column -> "?", ", ") + ")";

    private static final String UPDATE_JUDGEMENT = "UPDATE ride SET "
            + StoreTables.joined(StoreColumns.updatedByJudgement(), column -> column.name() + " = ?", ", ")
            + " WHERE id = ?";

    private final StoreDatabase database;
    private final RideParts parts;
    private final StoreSums sums;
    private final FileRows files;
    private final RideRows rows;

    private RideStore(StoreDatabase database) {
        this.database = database;
        this.parts = new RideParts(database);
        this.sums = new StoreSums(database);
        this.files = new FileRows(database);
        this.rows = new RideRows(database);
    }

    /**
     * Opens a store, and makes it where there is none.
     *
     * @throws SeasonStoreException when it cannot be used, with one line for people
     */
    static RideStore open(Path file) throws SeasonStoreException {
        return new RideStore(StoreDatabase.open(file, StoreTables::make));
    }

    /**
     * Opens a store that a season of this version has written.
     *
     * @throws SeasonStoreException when there is none, or it cannot be used, with one line for people
     */
    static RideStore openWritten(Path file) throws SeasonStoreException {
        return new RideStore(StoreDatabase.open(file, null));
    }

    @Override
    public void close() throws SeasonStoreException {
        database.close();
    }

    /** All files by path. */
    Map<String, FileRow> files() throws SeasonStoreException {
        Map<String, FileRow> byPath = new HashMap<>();
        database.guarded(files::all).sound().forEach(file -> byPath.put(file.path(), file));
        return byPath;
    }

    /** Puts a file and its rides into the store, and takes out what the path held before. */
    void put(FileRow row, List<RideIntake.NewRide> rides) throws SeasonStoreException {
        database.guarded(() -> {
            database.inTransaction(() -> {
                String before = contentOf(row.path());
                database.execute(
                        "INSERT OR REPLACE INTO file VALUES (?, ?, ?, ?, ?, ?, ?, ?, NULL)",
                        row.path(),
                        row.name(),
                        row.sizeBytes(),
                        row.modifiedNs(),
                        row.sha256(),
                        row.analysisVersion(),
                        row.problem(),
                        row.rideCount());
                sums.sealFile(row.path());
                if (!rides.isEmpty()) {
                    database.execute("DELETE FROM ride WHERE sha256 = ?", row.sha256());
                }
                for (RideIntake.NewRide ride : rides) {
                    insert(ride);
                }
                if (before != null && !before.equals(row.sha256())) {
                    deleteRidesWithoutFile(before);
                }
            });
            return row;
        });
    }

    /** Forgets files, and the rides that no other file holds. */
    void forget(List<FileRow> rows) throws SeasonStoreException {
        database.guarded(() -> {
            database.inTransaction(() -> {
                for (FileRow row : rows) {
                    database.execute("DELETE FROM file WHERE path = ?", row.path());
                    deleteRidesWithoutFile(row.sha256());
                }
            });
            return rows;
        });
    }

    /** Forgets the rides of a content that no file has. */
    void forgetRidesOf(String sha256) throws SeasonStoreException {
        database.guarded(() -> {
            database.inTransaction(() -> deleteRidesWithoutFile(sha256));
            return sha256;
        });
    }

    private void deleteRidesWithoutFile(String sha256) throws SQLException {
        database.execute(
                "DELETE FROM ride WHERE sha256 = ?1 AND NOT EXISTS (SELECT 1 FROM file WHERE file.sha256 = ?1)",
                sha256);
    }

    private @Nullable String contentOf(String path) throws SQLException {
        List<StoreRow> row = database.rows("SELECT sha256 FROM file WHERE path = ?", path);
        return row.isEmpty() ? null : row.get(0).text("sha256");
    }

    /** Keeps a new judgement of a ride in the place of the one before; does nothing where the ride is gone. */
    RideRow.Written putJudgement(RideRow ride, Judge.Judged judged) throws SeasonStoreException {
        return inItsPlace(ride, id -> {
            List<@Nullable Object> values = new ArrayList<>();
            StoreColumns.updatedByJudgement().forEach(column -> values.add(column.of(judged)));
            values.add(id);
            database.execute(UPDATE_JUDGEMENT, values.toArray());
            parts.replaceJudgement(id, judged);
            return new RideRow.Written(id, sums.sealNumbers(id));
        });
    }

    /** Replaces a ride that an earlier version of the analysis made from the same seconds; does nothing where it is gone. */
    RideRow.Written renew(RideRow before, RideIntake.NewRide ride) throws SeasonStoreException {
        return inItsPlace(before, id -> {
            database.execute("DELETE FROM ride WHERE id = ?", id);
            return insert(ride);
        });
    }

    /** Writes a ride, given its place in the table. */
    @FunctionalInterface
    private interface Writing {
        RideRow.Written at(long id) throws SQLException;
    }

    /** Writes a ride where it is now, as one transaction; does nothing where it is gone. */
    private RideRow.Written inItsPlace(RideRow ride, Writing writing) throws SeasonStoreException {
        RideRow.Written[] written = {new RideRow.Written(ride.id(), null)};
        return database.guarded(() -> {
            database.inTransaction(() -> {
                StoreRow now = ofKey(ride.key());
                if (now != null) {
                    written[0] = writing.at(id(now));
                }
            });
            return written[0];
        });
    }

    /**
     * The row of a ride, or null where it is gone. By its content: another process that reads the same files may have put the
     * same ride in a new place.
     */
    private @Nullable StoreRow ofKey(StoredRide.Key key) throws SQLException {
        List<StoreRow> rows = database.rows(
                "SELECT * FROM ride WHERE sha256 = ? AND session_index = ?", key.sha256(), key.sessionIndex());
        return rows.isEmpty() ? null : rows.get(0);
    }

    private static long id(StoreRow row) throws SQLException {
        return StoreRow.required(row.large("id"));
    }

    /** What the rides were last judged by, all of them together; empty where that is not known. See {@link JudgementBasis}. */
    Optional<String> basis() throws SeasonStoreException {
        return database.guarded(() -> {
            List<StoreRow> rows = database.rows("SELECT basis FROM judged");
            return rows.isEmpty()
                    ? Optional.empty()
                    : Optional.ofNullable(rows.get(0).text("basis"));
        });
    }

    /** Keeps what the rides are judged by now. */
    void putBasis(String basis) throws SeasonStoreException {
        database.guarded(() -> {
            database.inTransaction(() -> database.execute("INSERT OR REPLACE INTO judged VALUES (1, ?)", basis));
            return basis;
        });
    }

    /** What riders wrote down about their rides, by content; contents without notes are not in it. */
    Map<String, RideNotes> notes() throws SeasonStoreException {
        Map<String, RideNotes> byContent = new HashMap<>();
        for (RideRow ride : rides()) {
            if (!ride.judged().notes().isEmpty()) {
                byContent.put(ride.key().sha256(), ride.judged().notes());
            }
        }
        return byContent;
    }

    /** Every ride that is as it was written, in the order of its key, without its seconds. */
    List<RideRow> rides() throws SeasonStoreException {
        return database.guarded(rows::all).sound();
    }

    /**
     * The rides with a file that began within some time, in the order of their key. A ride that is not as it was written says
     * nothing.
     *
     * @param from the first instant, included
     * @param to the last instant, excluded
     */
    List<RideRow> ridesForHistory(Instant from, Instant to) throws SeasonStoreException {
        return database.guarded(() -> database.inSnapshot(() -> rows.forHistory(from, to)));
    }

    /** A ride with its seconds; empty when it is no longer there, or its seconds are not as they were written. */
    Optional<StoredRide> stored(RideRow ride) throws SeasonStoreException {
        return database.guarded(() -> database.inSnapshot(() -> {
            StoreRow row = ofKey(ride.key());
            return row != null && sums.areSecondsSound(id(row), StoreColumns.secondsSum(row))
                    ? Optional.of(stored(id(row), row))
                    : Optional.empty();
        }));
    }

    private StoredRide stored(long id, StoreRow row) throws SQLException {
        RideParts.Packed packed = parts.packed(id);
        return new StoredRide(
                StoreColumns.key(row),
                StoreColumns.device(row),
                StoreColumns.setting(row),
                StoreColumns.start(row),
                StoreColumns.utcOffsetSeconds(row),
                StoreColumns.format(row),
                StoreColumns.channelCount(row),
                StoreColumns.lapCount(row),
                packed.columns(),
                packed.states(),
                packed.laps(),
                StoreColumns.numbers(row).elapsedSeconds(),
                parts.estimate(id));
    }

    private RideRow.Written insert(RideIntake.NewRide taken) throws SQLException {
        database.execute(INSERT_RIDE, StoreColumns.values(taken));
        List<StoreRow> last = database.rows("SELECT last_insert_rowid() AS id");
        long id = id(last.get(0));
        parts.insert(id, taken);
        return new RideRow.Written(id, sums.sealRide(id));
    }

    /** Takes out what is not as it was written, and says what else was lost; see {@link StoreDamage}. */
    StoreDamage takeOutDamage() throws SeasonStoreException {
        return database.guarded(() -> StoreDamage.takeOut(database, files, rows));
    }
}
