package io.github.wattledger.season;

import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.Severity;
import io.github.wattledger.power.Durability;
import io.github.wattledger.power.RidingBest;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.rig.OffTogether;
import io.github.wattledger.rig.RigEstimate;
import java.sql.SQLException;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The tables of which several rows belong to one ride, and the table {@code rig}: how they are made, written and read.
 * Their rows go when their ride goes.
 */
final class RideParts {
    /** Makes the tables; columns are written by their order. */
    static final List<String> SCHEMA = List.of("""
            CREATE TABLE IF NOT EXISTS best (
              ride_id INTEGER NOT NULL REFERENCES ride (id) ON DELETE CASCADE,
              seconds INTEGER NOT NULL,
              watts REAL NOT NULL,
              may_be_low INTEGER NOT NULL,
              PRIMARY KEY (ride_id, seconds)
            ) WITHOUT ROWID""", """
            CREATE TABLE IF NOT EXISTS durability (
              ride_id INTEGER NOT NULL REFERENCES ride (id) ON DELETE CASCADE,
              seconds INTEGER NOT NULL,
              after_kj REAL NOT NULL,
              fresher_w REAL NOT NULL,
              tired_w REAL NOT NULL,
              PRIMARY KEY (ride_id, seconds, after_kj)
            ) WITHOUT ROWID""", """
            CREATE TABLE IF NOT EXISTS finding (
              ride_id INTEGER NOT NULL REFERENCES ride (id) ON DELETE CASCADE,
              position INTEGER NOT NULL,
              kind TEXT NOT NULL,
              severity TEXT NOT NULL,
              PRIMARY KEY (ride_id, position)
            ) WITHOUT ROWID""", """
            CREATE TABLE IF NOT EXISTS series (
              ride_id INTEGER NOT NULL REFERENCES ride (id) ON DELETE CASCADE,
              name TEXT NOT NULL,
              encoding TEXT NOT NULL,
              data BLOB NOT NULL,
              UNIQUE (ride_id, name)
            )""", """
            CREATE TABLE IF NOT EXISTS rig (
              ride_id INTEGER PRIMARY KEY REFERENCES ride (id) ON DELETE CASCADE,
              total_mass_kg REAL NOT NULL,
              refusal TEXT,
              drag_area_m2 REAL,
              drag_area_error_m2 REAL,
              rolling_resistance REAL,
              rolling_resistance_error REAL,
              pieces INTEGER NOT NULL
            )""", """
            CREATE TABLE IF NOT EXISTS riding_best (
              ride_id INTEGER NOT NULL REFERENCES ride (id) ON DELETE CASCADE,
              seconds INTEGER NOT NULL,
              watts REAL NOT NULL,
              start_s INTEGER NOT NULL,
              standing_s INTEGER NOT NULL,
              too_high_percent REAL NOT NULL,
              PRIMARY KEY (ride_id, seconds)
            ) WITHOUT ROWID""", NoteRows.SCHEMA);

    private static final String STATES = "state";
    private static final String LAPS = "lap";

    private final StoreDatabase database;
    private final NoteRows notes;

    RideParts(StoreDatabase database) {
        this.database = database;
        this.notes = new NoteRows(database);
    }

    /** Writes all parts of a ride that has none yet. */
    void insert(long id, RideIntake.NewRide taken) throws SQLException {
        for (Best best : taken.judged().bests()) {
            database.execute(
                    "INSERT INTO best VALUES (?, ?, ?, ?)", id, best.seconds(), best.watts(), best.mayBeLow() ? 1 : 0);
        }
        for (Durability each : taken.judged().durability()) {
            database.execute(
                    "INSERT INTO durability VALUES (?, ?, ?, ?, ?)",
                    id,
                    each.seconds(),
                    each.afterKJ(),
                    each.fresherW(),
                    each.tiredW());
        }
        for (RidingBest best : taken.judged().ridingBests()) {
            database.execute(
                    "INSERT INTO riding_best VALUES (?, ?, ?, ?, ?, ?)",
                    id,
                    best.seconds(),
                    best.watts(),
                    best.startSecond(),
                    best.standingSeconds(),
                    best.tooHighPercent());
        }
        insertFindings(id, taken.judged().judgement());
        notes.replace(id, taken.judged().notes());
        StoredRide ride = taken.ride();
        for (Map.Entry<Channel, RideCodec.Column> column : ride.columns().entrySet()) {
            insertSeries(id, column.getKey().name(), column.getValue());
        }
        insertSeries(id, STATES, ride.states());
        insertSeries(id, LAPS, ride.laps());
        if (ride.estimate() != null) {
            insertEstimate(id, ride.estimate());
        }
    }

    /** Writes what a new judgement of a ride updates in the place of what it has. */
    void replaceJudgement(long id, Judge.Judged judged) throws SQLException {
        database.execute("DELETE FROM finding WHERE ride_id = ?", id);
        insertFindings(id, judged.judgement());
        notes.replace(id, judged.notes());
    }

    private void insertFindings(long id, RideJudgement judgement) throws SQLException {
        int position = 0;
        for (RideJudgement.Found found : judgement.findings()) {
            database.execute(
                    "INSERT INTO finding VALUES (?, ?, ?, ?)",
                    id,
                    position++,
                    found.kind().name(),
                    found.severity().name());
        }
    }

    private void insertSeries(long id, String name, RideCodec.Column column) throws SQLException {
        database.execute(
                "INSERT INTO series VALUES (?, ?, ?, ?)",
                id,
                name,
                column.encoding().name(),
                column.bytes().toArray());
    }

    private void insertEstimate(long id, KeptEstimate kept) throws SQLException {
        RigEstimate estimate = kept.estimate().found().orElse(null);
        database.execute(
                "INSERT INTO rig VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
                id,
                kept.totalMassKg(),
                kept.estimate().refusal().orElse(null),
                estimate == null ? null : estimate.dragAreaM2(),
                estimate == null ? null : estimate.dragAreaErrorM2(),
                estimate == null ? null : estimate.rollingResistance(),
                estimate == null ? null : estimate.rollingResistanceError(),
                estimate == null ? 0 : estimate.pieces());
    }

    /** A row of the table {@code best}. */
    static Best best(StoreRow row) throws SQLException {
        return new Best(whole(row, "seconds"), real(row, "watts"), whole(row, "may_be_low") != 0);
    }

    /** A row of the table {@code durability}. */
    static Durability durability(StoreRow row) throws SQLException {
        return new Durability(
                whole(row, "seconds"), real(row, "after_kj"), real(row, "fresher_w"), real(row, "tired_w"));
    }

    /** A row of the table {@code riding_best}. */
    static RidingBest ridingBest(StoreRow row) throws SQLException {
        return new RidingBest(
                whole(row, "seconds"),
                real(row, "watts"),
                whole(row, "start_s"),
                whole(row, "standing_s"),
                real(row, "too_high_percent"));
    }

    /** A row of the table {@code finding}. */
    static RideJudgement.Found finding(StoreRow row) throws SQLException {
        return new RideJudgement.Found(
                FindingKind.valueOf(StoreRow.required(row.text("kind"))),
                Severity.valueOf(StoreRow.required(row.text("severity"))));
    }

    private static int whole(StoreRow row, String column) throws SQLException {
        return StoreRow.required(row.whole(column));
    }

    private static double real(StoreRow row, String column) throws SQLException {
        return StoreRow.required(row.real(column));
    }

    /**
     * The packed seconds of a ride.
     *
     * @param columns the channels
     * @param states the states
     * @param laps the bounds of the laps
     */
    record Packed(Map<Channel, RideCodec.Column> columns, RideCodec.Column states, RideCodec.Column laps) {}

    /** The packed seconds of the ride with an id. */
    Packed packed(long id) throws SQLException {
        Map<Channel, RideCodec.Column> columns = new EnumMap<>(Channel.class);
        Map<String, RideCodec.Column> others = new HashMap<>();
        for (StoreRow series : database.rows("SELECT name, encoding, data FROM series WHERE ride_id = ?", id)) {
            String name = StoreRow.required(series.text("name"));
            RideCodec.Column column = new RideCodec.Column(
                    RideCodec.Encoding.valueOf(StoreRow.required(series.text("encoding"))),
                    new RideCodec.Bytes(series.bytes("data")));
            if (name.equals(STATES) || name.equals(LAPS)) {
                others.put(name, column);
            } else {
                columns.put(Channel.valueOf(name), column);
            }
        }
        RideCodec.Column states = others.get(STATES);
        RideCodec.Column laps = others.get(LAPS);
        if (states == null || laps == null) {
            throw new SQLException("a ride of the store has no states or laps");
        }
        return new Packed(columns, states, laps);
    }

    /** The drag area and rolling resistance kept of the ride with an id, or null. */
    @Nullable KeptEstimate estimate(long id) throws SQLException {
        List<StoreRow> rig = database.rows("SELECT * FROM rig WHERE ride_id = ?", id);
        if (rig.isEmpty()) {
            return null;
        }
        StoreRow row = rig.get(0);
        String refusal = row.text("refusal");
        Outcome<RigEstimate> estimate = refusal != null
                ? Outcome.refused(refusal)
                : Outcome.of(new RigEstimate(
                        real(row, "drag_area_m2"),
                        real(row, "drag_area_error_m2"),
                        real(row, "rolling_resistance"),
                        real(row, "rolling_resistance_error"),
                        whole(row, "pieces"),
                        OffTogether.NOTHING));
        return new KeptEstimate(real(row, "total_mass_kg"), estimate);
    }
}
