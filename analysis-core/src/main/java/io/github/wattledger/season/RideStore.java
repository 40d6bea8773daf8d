package io.github.wattledger.season;

import io.github.wattledger.RiderContext.ThresholdSource;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.Severity;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.power.Durability;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.road.RigEstimate;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import org.jspecify.annotations.Nullable;
import org.sqlite.JDBC;

/**
 * What is kept of a season: one SQLite file, its tables described in {@code docs/season-store.md}. One transaction a
 * file, so that whatever ends the process, the store holds whole rides only. Several processes may use one store at
 * once. Not for use by several threads.
 */
final class RideStore implements AutoCloseable {
    /** Version of the tables, kept in {@code user_version}. */
    static final int SCHEMA_VERSION = 2;

    /**
     * Version of what a ride's numbers are. To be raised whenever reading, cleaning or a metric changes what comes out;
     * files are then read again.
     */
    static final int ANALYSIS_VERSION = 3;

    /** Marks the file as ours: the letters WLSS. */
    private static final int APPLICATION_ID = 0x574C5353;

    private static final int BUSY_MILLISECONDS = 60_000;

    private static final String[] SCHEMA = {
        """
        CREATE TABLE IF NOT EXISTS file (
          path TEXT PRIMARY KEY,
          name TEXT NOT NULL,
          size_bytes INTEGER NOT NULL,
          modified_ns INTEGER NOT NULL,
          sha256 TEXT NOT NULL,
          analysis_version INTEGER NOT NULL,
          problem TEXT
        ) WITHOUT ROWID""",
        "CREATE INDEX IF NOT EXISTS file_by_content ON file (sha256)",
        """
        CREATE TABLE IF NOT EXISTS ride (
          id INTEGER PRIMARY KEY,
          sha256 TEXT NOT NULL,
          session_index INTEGER NOT NULL,
          analysis_version INTEGER NOT NULL,
          format TEXT NOT NULL,
          device TEXT,
          device_threshold_power_w REAL,
          device_threshold_heart_rate_bpm REAL,
          device_rider_mass_kg REAL,
          start_epoch_s INTEGER NOT NULL,
          utc_offset_s INTEGER,
          channel_count INTEGER NOT NULL,
          elapsed_s INTEGER NOT NULL,
          timer_s INTEGER NOT NULL,
          moving_s INTEGER NOT NULL,
          power_s INTEGER NOT NULL,
          distance_m REAL,
          ascent_m REAL,
          work_kj REAL,
          average_power_w REAL,
          normalized_power_w REAL,
          average_heart_rate_bpm REAL,
          maximum_heart_rate_bpm REAL,
          efficiency_w_per_beat REAL,
          decoupling_percent REAL,
          judgement_key TEXT NOT NULL,
          threshold_power_w REAL,
          threshold_source TEXT,
          intensity_factor REAL,
          training_stress REAL,
          verdict TEXT NOT NULL,
          verdict_reason TEXT,
          target_w REAL,
          cost_low_min REAL,
          cost_high_min REAL,
          lap_count INTEGER NOT NULL,
          UNIQUE (sha256, session_index)
        )""",
        """
        CREATE TABLE IF NOT EXISTS best (
          ride_id INTEGER NOT NULL REFERENCES ride (id) ON DELETE CASCADE,
          seconds INTEGER NOT NULL,
          watts REAL NOT NULL,
          may_be_low INTEGER NOT NULL,
          PRIMARY KEY (ride_id, seconds)
        ) WITHOUT ROWID""",
        """
        CREATE TABLE IF NOT EXISTS durability (
          ride_id INTEGER NOT NULL REFERENCES ride (id) ON DELETE CASCADE,
          seconds INTEGER NOT NULL,
          after_kj REAL NOT NULL,
          fresher_w REAL NOT NULL,
          tired_w REAL NOT NULL,
          PRIMARY KEY (ride_id, seconds, after_kj)
        ) WITHOUT ROWID""",
        """
        CREATE TABLE IF NOT EXISTS finding (
          ride_id INTEGER NOT NULL REFERENCES ride (id) ON DELETE CASCADE,
          position INTEGER NOT NULL,
          kind TEXT NOT NULL,
          severity TEXT NOT NULL,
          PRIMARY KEY (ride_id, position)
        ) WITHOUT ROWID""",
        """
        CREATE TABLE IF NOT EXISTS series (
          ride_id INTEGER NOT NULL REFERENCES ride (id) ON DELETE CASCADE,
          name TEXT NOT NULL,
          encoding TEXT NOT NULL,
          data BLOB NOT NULL,
          UNIQUE (ride_id, name)
        )""",
        """
        CREATE TABLE IF NOT EXISTS rig (
          ride_id INTEGER PRIMARY KEY REFERENCES ride (id) ON DELETE CASCADE,
          total_mass_kg REAL NOT NULL,
          refusal TEXT,
          drag_area_m2 REAL,
          drag_area_error_m2 REAL,
          rolling_resistance REAL,
          rolling_resistance_error REAL,
          pieces INTEGER NOT NULL
        )""",
        "PRAGMA application_id = " + APPLICATION_ID,
        "PRAGMA user_version = " + SCHEMA_VERSION
    };

    private static final String STATES = "state";
    private static final String LAPS = "lap";

    private final Path file;
    /** Statements that write, by their text: a ride takes some forty, and preparing one costs more than running it. */
    private final Map<String, PreparedStatement> writing = new HashMap<>();

    private final Connection connection;

    private RideStore(Path file, Connection connection) {
        this.file = file;
        this.connection = connection;
    }

    /** A file as it was when it was read. */
    record FileRow(
            String path,
            String name,
            long sizeBytes,
            long modifiedNs,
            String sha256,
            int analysisVersion,
            @Nullable String problem) {
        static FileRow of(FoundFile file, String sha256, @Nullable String problem) {
            return new FileRow(
                    file.path().toString(),
                    file.name(),
                    file.sizeBytes(),
                    file.modifiedNs(),
                    sha256,
                    ANALYSIS_VERSION,
                    problem);
        }

        boolean isStillOf(FoundFile found) {
            return sizeBytes == found.sizeBytes()
                    && modifiedNs == found.modifiedNs()
                    && analysisVersion == ANALYSIS_VERSION;
        }
    }

    /**
     * A ride without its seconds.
     *
     * @param isCurrent whether its numbers are of this version of the analysis
     */
    record RideRow(
            StoredRide.Key key,
            boolean isCurrent,
            StoredRide.Device device,
            Instant start,
            @Nullable Integer utcOffsetSeconds,
            String format,
            int channelCount,
            Judge.Judged judged) {}

    /**
     * Opens a store, and makes it where there is none.
     *
     * @throws SeasonStoreException when it cannot be used, with one line for people
     */
    static RideStore open(Path file) throws SeasonStoreException {
        Path absolute = file.toAbsolutePath();
        Path folder = absolute.getParent();
        if (Files.isDirectory(absolute)) {
            throw new SeasonStoreException(file + ": is a folder; name a file for the season's store", null);
        }
        if (folder == null || !Files.isDirectory(folder)) {
            throw new SeasonStoreException(file + ": its folder does not exist; the season's store needs one", null);
        }
        try {
            // As a URI: a question mark in a plain name would be taken for the start of settings.
            Connection connection = new JDBC().connect(JDBC.PREFIX + absolute.toUri(), new Properties());
            if (connection == null) {
                throw new AssertionError("the driver refuses its own prefix");
            }
            RideStore store = new RideStore(file, connection);
            try {
                store.prepare();
            } catch (SQLException | SeasonStoreException e) {
                connection.close();
                throw e;
            }
            return store;
        } catch (SQLException e) {
            throw failure(file, e);
        }
    }

    private void prepare() throws SQLException, SeasonStoreException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA busy_timeout = " + BUSY_MILLISECONDS);
            int version = number(statement, "PRAGMA user_version");
            if (version > SCHEMA_VERSION) {
                throw new SeasonStoreException(
                        file + ": was written by a later version of this program (store version " + version
                                + ", this one knows " + SCHEMA_VERSION + "); use that, or another store",
                        null);
            }
            boolean empty = number(statement, "SELECT count(*) FROM sqlite_master") == 0;
            if (!empty && number(statement, "PRAGMA application_id") != APPLICATION_ID) {
                throw new SeasonStoreException(
                        file + ": is the database of another program; name another file for the season's store", null);
            }
            statement.execute("PRAGMA journal_mode = WAL");
            statement.execute("PRAGMA synchronous = NORMAL");
            statement.execute("PRAGMA foreign_keys = ON");
            if (version < SCHEMA_VERSION) {
                inTransaction(() -> {
                    for (String part : SCHEMA) {
                        statement.execute(part);
                    }
                });
            }
        }
    }

    private static int number(Statement statement, String query) throws SQLException {
        try (ResultSet result = statement.executeQuery(query)) {
            result.next();
            return result.getInt(1);
        }
    }

    /** All files by path. */
    Map<String, FileRow> files() throws SeasonStoreException {
        return guarded(() -> {
            Map<String, FileRow> files = new HashMap<>();
            try (Statement statement = connection.createStatement();
                    ResultSet row = statement.executeQuery("SELECT * FROM file")) {
                while (row.next()) {
                    FileRow each = new FileRow(
                            row.getString("path"),
                            row.getString("name"),
                            row.getLong("size_bytes"),
                            row.getLong("modified_ns"),
                            row.getString("sha256"),
                            row.getInt("analysis_version"),
                            row.getString("problem"));
                    files.put(each.path(), each);
                }
            }
            return files;
        });
    }

    /** Puts a file and its rides into the store, in the place of what the same path held before. */
    void put(FileRow row, List<RideIntake.NewRide> rides) throws SeasonStoreException {
        guarded(() -> {
            inTransaction(() -> {
                String before = contentOf(row.path());
                execute(
                        "INSERT OR REPLACE INTO file VALUES (?, ?, ?, ?, ?, ?, ?)",
                        row.path(),
                        row.name(),
                        row.sizeBytes(),
                        row.modifiedNs(),
                        row.sha256(),
                        row.analysisVersion(),
                        row.problem());
                if (!rides.isEmpty()) {
                    execute("DELETE FROM ride WHERE sha256 = ?", row.sha256());
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
        guarded(() -> {
            inTransaction(() -> {
                for (FileRow row : rows) {
                    execute("DELETE FROM file WHERE path = ?", row.path());
                    deleteRidesWithoutFile(row.sha256());
                }
            });
            return rows;
        });
    }

    private void deleteRidesWithoutFile(String sha256) throws SQLException {
        execute(
                "DELETE FROM ride WHERE sha256 = ?1 AND NOT EXISTS (SELECT 1 FROM file WHERE file.sha256 = ?1)",
                sha256);
    }

    private @Nullable String contentOf(String path) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement("SELECT sha256 FROM file WHERE path = ?")) {
            bind(statement, path);
            try (ResultSet row = statement.executeQuery()) {
                return row.next() ? row.getString(1) : null;
            }
        }
    }

    /** Keeps a new judgement of a ride. */
    void putJudgement(StoredRide.Key key, RideJudgement judgement, String judgementKey) throws SeasonStoreException {
        guarded(() -> {
            inTransaction(() -> {
                execute(
                        """
                        UPDATE ride SET judgement_key = ?, threshold_power_w = ?, threshold_source = ?,
                          intensity_factor = ?, training_stress = ?, verdict = ?, verdict_reason = ?, target_w = ?,
                          cost_low_min = ?, cost_high_min = ?
                        WHERE sha256 = ? AND session_index = ?""",
                        judgementKey,
                        judgement.thresholdPowerW(),
                        sourceId(judgement),
                        judgement.intensityFactor(),
                        judgement.trainingStress(),
                        judgement.verdict().name(),
                        judgement.verdictReason(),
                        judgement.targetW(),
                        judgement.costMinutesLow(),
                        judgement.costMinutesHigh(),
                        key.sha256(),
                        key.sessionIndex());
                Long id = id(key);
                if (id != null) {
                    execute("DELETE FROM finding WHERE ride_id = ?", id);
                    insertFindings(id, judgement);
                }
            });
            return key;
        });
    }

    /** Puts a ride in the place of what an earlier version of the analysis made of the same seconds. */
    void renew(RideIntake.NewRide ride) throws SeasonStoreException {
        StoredRide.Key key = ride.ride().key();
        guarded(() -> {
            inTransaction(() -> {
                execute("DELETE FROM ride WHERE sha256 = ? AND session_index = ?", key.sha256(), key.sessionIndex());
                insert(ride);
            });
            return key;
        });
    }

    /**
     * A ride whose drag area and rolling resistance are kept.
     *
     * @param totalMassKg with what mass of rider and bicycle they were estimated
     */
    record EstimatedRide(
            String sha256,
            StoredRide.Device device,
            Instant start,
            @Nullable Integer utcOffsetSeconds,
            double totalMassKg) {}

    /** All rides whose drag area and rolling resistance are kept. */
    List<EstimatedRide> estimatedRides() throws SeasonStoreException {
        return guarded(() -> {
            List<EstimatedRide> rides = new ArrayList<>();
            try (PreparedStatement statement = connection.prepareStatement(
                    "SELECT ride.*, rig.total_mass_kg FROM ride JOIN rig ON rig.ride_id = ride.id"
                            + " WHERE ride.analysis_version = ? ORDER BY ride.sha256, ride.session_index")) {
                bind(statement, ANALYSIS_VERSION);
                try (ResultSet row = statement.executeQuery()) {
                    while (row.next()) {
                        rides.add(new EstimatedRide(
                                row.getString("sha256"),
                                device(row),
                                Instant.ofEpochSecond(row.getLong("start_epoch_s")),
                                integer(row, "utc_offset_s"),
                                row.getDouble("total_mass_kg")));
                    }
                }
            }
            return rides;
        });
    }

    /** Every ride, in the order of its key, without its seconds. */
    List<RideRow> rides() throws SeasonStoreException {
        return guarded(() -> inSnapshot(() -> {
            Map<Long, List<Best>> bests = bests();
            Map<Long, List<RideJudgement.Found>> findings = findings();
            Map<Long, List<Durability>> durability = durability();
            List<RideRow> rides = new ArrayList<>();
            try (Statement statement = connection.createStatement();
                    ResultSet row = statement.executeQuery("SELECT * FROM ride ORDER BY sha256, session_index")) {
                while (row.next()) {
                    long id = row.getLong("id");
                    rides.add(ride(
                            row,
                            bests.getOrDefault(id, List.of()),
                            durability.getOrDefault(id, List.of()),
                            findings.getOrDefault(id, List.of())));
                }
            }
            return rides;
        }));
    }

    /** A ride with its seconds; empty when it is no longer there. */
    Optional<StoredRide> stored(StoredRide.Key key) throws SeasonStoreException {
        return guarded(() -> {
            try (PreparedStatement statement =
                    connection.prepareStatement("SELECT * FROM ride WHERE sha256 = ? AND session_index = ?")) {
                bind(statement, key.sha256(), key.sessionIndex());
                try (ResultSet row = statement.executeQuery()) {
                    return row.next() ? Optional.of(stored(key, row)) : Optional.empty();
                }
            }
        });
    }

    private StoredRide stored(StoredRide.Key key, ResultSet row) throws SQLException {
        Map<Channel, RideCodec.Column> columns = new EnumMap<>(Channel.class);
        Map<String, RideCodec.Column> others = new HashMap<>();
        try (PreparedStatement statement =
                connection.prepareStatement("SELECT name, encoding, data FROM series WHERE ride_id = ?")) {
            bind(statement, row.getLong("id"));
            try (ResultSet series = statement.executeQuery()) {
                while (series.next()) {
                    RideCodec.Column column = new RideCodec.Column(
                            RideCodec.Encoding.valueOf(series.getString("encoding")),
                            new RideCodec.Bytes(series.getBytes("data")));
                    String name = series.getString("name");
                    if (name.equals(STATES) || name.equals(LAPS)) {
                        others.put(name, column);
                    } else {
                        columns.put(Channel.valueOf(name), column);
                    }
                }
            }
        }
        RideCodec.Column states = others.get(STATES);
        RideCodec.Column laps = others.get(LAPS);
        if (states == null || laps == null) {
            throw new SQLException("a ride of the store has no states or laps");
        }
        return new StoredRide(
                key,
                device(row),
                Instant.ofEpochSecond(row.getLong("start_epoch_s")),
                integer(row, "utc_offset_s"),
                row.getString("format"),
                row.getInt("channel_count"),
                row.getInt("lap_count"),
                columns,
                states,
                laps,
                row.getInt("elapsed_s"),
                estimate(row.getLong("id")));
    }

    private @Nullable KeptEstimate estimate(long rideId) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement("SELECT * FROM rig WHERE ride_id = ?")) {
            bind(statement, rideId);
            try (ResultSet row = statement.executeQuery()) {
                if (!row.next()) {
                    return null;
                }
                RigEstimate estimate = new RigEstimate(
                        row.getString("refusal"),
                        realOrNaN(row, "drag_area_m2"),
                        realOrNaN(row, "drag_area_error_m2"),
                        realOrNaN(row, "rolling_resistance"),
                        realOrNaN(row, "rolling_resistance_error"),
                        row.getInt("pieces"));
                return new KeptEstimate(row.getDouble("total_mass_kg"), estimate);
            }
        }
    }

    @Override
    public void close() throws SeasonStoreException {
        try {
            connection.close();
        } catch (SQLException e) {
            throw failure(file, e);
        }
    }

    private void insert(RideIntake.NewRide taken) throws SQLException {
        StoredRide ride = taken.ride();
        RideNumbers numbers = taken.judged().numbers();
        RideJudgement judgement = taken.judged().judgement();
        Map<String, @Nullable Object> values = new LinkedHashMap<>();
        values.put("sha256", ride.key().sha256());
        values.put("session_index", ride.key().sessionIndex());
        values.put("analysis_version", ANALYSIS_VERSION);
        values.put("format", ride.format());
        values.put("device", ride.device().name());
        values.put("device_threshold_power_w", ride.device().thresholdPowerW());
        values.put("device_threshold_heart_rate_bpm", ride.device().thresholdHeartRateBpm());
        values.put("device_rider_mass_kg", ride.device().riderMassKg());
        values.put("start_epoch_s", ride.start().getEpochSecond());
        values.put("utc_offset_s", ride.utcOffsetSeconds());
        values.put("channel_count", ride.channelCount());
        values.put("elapsed_s", numbers.elapsedSeconds());
        values.put("timer_s", numbers.timerSeconds());
        values.put("moving_s", numbers.movingSeconds());
        values.put("power_s", numbers.powerSeconds());
        values.put("distance_m", numbers.distanceM());
        values.put("ascent_m", numbers.ascentM());
        values.put("work_kj", numbers.workKJ());
        values.put("average_power_w", numbers.averagePowerW());
        values.put("normalized_power_w", numbers.normalizedPowerW());
        values.put("average_heart_rate_bpm", numbers.averageHeartRateBpm());
        values.put("maximum_heart_rate_bpm", numbers.maximumHeartRateBpm());
        values.put("efficiency_w_per_beat", numbers.efficiencyWPerBeat());
        values.put("decoupling_percent", numbers.decouplingPercent());
        values.put("judgement_key", taken.judged().key());
        values.put("threshold_power_w", judgement.thresholdPowerW());
        values.put("threshold_source", sourceId(judgement));
        values.put("intensity_factor", judgement.intensityFactor());
        values.put("training_stress", judgement.trainingStress());
        values.put("verdict", judgement.verdict().name());
        values.put("verdict_reason", judgement.verdictReason());
        values.put("target_w", judgement.targetW());
        values.put("cost_low_min", judgement.costMinutesLow());
        values.put("cost_high_min", judgement.costMinutesHigh());
        values.put("lap_count", ride.lapCount());
        execute(
                "INSERT INTO ride (" + String.join(", ", values.keySet()) + ") VALUES (?"
                        + ", ?".repeat(values.size() - 1) + ")",
                values.values().toArray());
        Long id = id(ride.key());
        if (id == null) {
            throw new SQLException("the ride just inserted is not there");
        }
        for (Best best : taken.judged().bests()) {
            execute("INSERT INTO best VALUES (?, ?, ?, ?)", id, best.seconds(), best.watts(), best.mayBeLow() ? 1 : 0);
        }
        for (Durability each : taken.judged().durability()) {
            execute(
                    "INSERT INTO durability VALUES (?, ?, ?, ?, ?)",
                    id,
                    each.seconds(),
                    each.afterKJ(),
                    each.fresherW(),
                    each.tiredW());
        }
        insertFindings(id, judgement);
        for (Map.Entry<Channel, RideCodec.Column> column : ride.columns().entrySet()) {
            insertSeries(id, column.getKey().name(), column.getValue());
        }
        insertSeries(id, STATES, ride.states());
        insertSeries(id, LAPS, ride.laps());
        KeptEstimate kept = ride.estimate();
        if (kept != null) {
            RigEstimate estimate = kept.estimate();
            execute(
                    "INSERT INTO rig VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
                    id,
                    kept.totalMassKg(),
                    estimate.refusal(),
                    nullIfNaN(estimate.dragAreaM2()),
                    nullIfNaN(estimate.dragAreaErrorM2()),
                    nullIfNaN(estimate.rollingResistance()),
                    nullIfNaN(estimate.rollingResistanceError()),
                    estimate.pieces());
        }
    }

    private static @Nullable Double nullIfNaN(double value) {
        return Double.isNaN(value) ? null : (Double) value;
    }

    private void insertSeries(long id, String name, RideCodec.Column column) throws SQLException {
        execute(
                "INSERT INTO series VALUES (?, ?, ?, ?)",
                id,
                name,
                column.encoding().name(),
                column.bytes().toArray());
    }

    private void insertFindings(long id, RideJudgement judgement) throws SQLException {
        int position = 0;
        for (RideJudgement.Found found : judgement.findings()) {
            execute(
                    "INSERT INTO finding VALUES (?, ?, ?, ?)",
                    id,
                    position++,
                    found.kind().name(),
                    found.severity().name());
        }
    }

    private @Nullable Long id(StoredRide.Key key) throws SQLException {
        try (PreparedStatement statement =
                connection.prepareStatement("SELECT id FROM ride WHERE sha256 = ? AND session_index = ?")) {
            bind(statement, key.sha256(), key.sessionIndex());
            try (ResultSet row = statement.executeQuery()) {
                return row.next() ? (Long) row.getLong(1) : null;
            }
        }
    }

    private Map<Long, List<Best>> bests() throws SQLException {
        Map<Long, List<Best>> bests = new HashMap<>();
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(
                        "SELECT ride_id, seconds, watts, may_be_low FROM best ORDER BY ride_id, seconds")) {
            while (row.next()) {
                bests.computeIfAbsent(row.getLong(1), absent -> new ArrayList<>())
                        .add(new Best(row.getInt(2), row.getDouble(3), row.getInt(4) != 0));
            }
        }
        return bests;
    }

    private Map<Long, List<Durability>> durability() throws SQLException {
        Map<Long, List<Durability>> durability = new HashMap<>();
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("SELECT ride_id, seconds, after_kj, fresher_w, tired_w"
                        + " FROM durability ORDER BY ride_id, seconds, after_kj")) {
            while (row.next()) {
                durability
                        .computeIfAbsent(row.getLong(1), absent -> new ArrayList<>())
                        .add(new Durability(row.getInt(2), row.getDouble(3), row.getDouble(4), row.getDouble(5)));
            }
        }
        return durability;
    }

    private Map<Long, List<RideJudgement.Found>> findings() throws SQLException {
        Map<Long, List<RideJudgement.Found>> findings = new HashMap<>();
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(
                        "SELECT ride_id, kind, severity FROM finding ORDER BY ride_id, position")) {
            while (row.next()) {
                findings.computeIfAbsent(row.getLong(1), absent -> new ArrayList<>())
                        .add(new RideJudgement.Found(
                                FindingKind.valueOf(row.getString(2)), Severity.valueOf(row.getString(3))));
            }
        }
        return findings;
    }

    private static RideRow ride(
            ResultSet row, List<Best> bests, List<Durability> durability, List<RideJudgement.Found> findings)
            throws SQLException {
        RideNumbers numbers = new RideNumbers(
                row.getInt("elapsed_s"),
                row.getInt("timer_s"),
                row.getInt("moving_s"),
                row.getInt("power_s"),
                real(row, "distance_m"),
                real(row, "ascent_m"),
                real(row, "work_kj"),
                real(row, "average_power_w"),
                real(row, "normalized_power_w"),
                real(row, "average_heart_rate_bpm"),
                real(row, "maximum_heart_rate_bpm"),
                real(row, "efficiency_w_per_beat"),
                real(row, "decoupling_percent"));
        String source = row.getString("threshold_source");
        RideJudgement judgement = new RideJudgement(
                real(row, "threshold_power_w"),
                source == null ? null : ThresholdSource.valueOf(source),
                real(row, "intensity_factor"),
                real(row, "training_stress"),
                Verdict.valueOf(row.getString("verdict")),
                row.getString("verdict_reason"),
                real(row, "target_w"),
                real(row, "cost_low_min"),
                real(row, "cost_high_min"),
                findings);
        return new RideRow(
                new StoredRide.Key(row.getString("sha256"), row.getInt("session_index")),
                row.getInt("analysis_version") == ANALYSIS_VERSION,
                device(row),
                Instant.ofEpochSecond(row.getLong("start_epoch_s")),
                integer(row, "utc_offset_s"),
                row.getString("format"),
                row.getInt("channel_count"),
                new Judge.Judged(numbers, judgement, row.getString("judgement_key"), bests, durability));
    }

    private static StoredRide.Device device(ResultSet row) throws SQLException {
        return new StoredRide.Device(
                row.getString("device"),
                real(row, "device_threshold_power_w"),
                real(row, "device_threshold_heart_rate_bpm"),
                real(row, "device_rider_mass_kg"));
    }

    private static @Nullable String sourceId(RideJudgement judgement) {
        ThresholdSource source = judgement.thresholdSource();
        return source == null ? null : source.name();
    }

    private static @Nullable Double real(ResultSet row, String column) throws SQLException {
        double value = row.getDouble(column);
        return row.wasNull() ? null : value;
    }

    private static double realOrNaN(ResultSet row, String column) throws SQLException {
        Double value = real(row, column);
        return value == null ? Double.NaN : value;
    }

    private static @Nullable Integer integer(ResultSet row, String column) throws SQLException {
        int value = row.getInt(column);
        return row.wasNull() ? null : value;
    }

    private void execute(String sql, @Nullable Object... values) throws SQLException {
        PreparedStatement statement = writing.get(sql);
        if (statement == null) {
            statement = connection.prepareStatement(sql);
            writing.put(sql, statement);
        }
        bind(statement, values);
        statement.executeUpdate();
        statement.clearParameters();
    }

    private static void bind(PreparedStatement statement, @Nullable Object... values) throws SQLException {
        for (int i = 0; i < values.length; i++) {
            statement.setObject(i + 1, values[i]);
        }
    }

    @FunctionalInterface
    private interface Step {
        void run() throws SQLException;
    }

    @FunctionalInterface
    private interface Answer<T> {
        T get() throws SQLException;
    }

    /** All of it or nothing; the write lock is taken first, so that waiting for another process is at its beginning. */
    private void inTransaction(Step step) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("BEGIN IMMEDIATE");
            try {
                step.run();
                statement.execute("COMMIT");
            } catch (SQLException e) {
                rollBack(statement, e);
                throw e;
            }
        }
    }

    /** All queries see the store as it was at the first: another process may put a ride in again between them. */
    private <T> T inSnapshot(Answer<T> answer) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("BEGIN");
            try {
                T result = answer.get();
                statement.execute("COMMIT");
                return result;
            } catch (SQLException e) {
                rollBack(statement, e);
                throw e;
            }
        }
    }

    private static void rollBack(Statement statement, SQLException because) {
        try {
            statement.execute("ROLLBACK");
        } catch (SQLException e) {
            // SQLite has rolled back by itself where the disk was full.
            because.addSuppressed(e);
        }
    }

    private <T> T guarded(Answer<T> answer) throws SeasonStoreException {
        try {
            return answer.get();
        } catch (SQLException e) {
            throw failure(file, e);
        }
    }

    /** SQLite's result codes, https://www.sqlite.org/rescode.html, in words. */
    private static SeasonStoreException failure(Path file, SQLException e) {
        String reason = switch (e.getErrorCode() & 0xFF) {
            case 5, 6 -> "is in use by another process; try again";
            case 8 -> "cannot be written (read-only); keep the season's store in another place";
            case 10 -> "could not be read or written (input or output failed); check the disk";
            case 11 -> "is damaged; delete it, and the season is read anew";
            case 13 -> "no space is left on the disk; make room and run again, what was done is kept";
            case 14 ->
                "cannot be created or opened here; check the folder's permission, or keep the season's store in"
                        + " another place";
            case 26 -> "is no season store; name another file";
            default -> "the season's store failed: " + e.getMessage();
        };
        return new SeasonStoreException(file + ": " + reason, e);
    }
}
