package io.github.wattledger.season;

import io.github.wattledger.RiderContext.ThresholdSource;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.Severity;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.power.Durability;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.rig.RigEstimate;
import java.nio.file.Path;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What is kept of a season: one SQLite file, its tables described in {@code docs/season-store.md}. One transaction a
 * file, so that whatever ends the process, the store holds whole rides only. Several processes may use one store at
 * once. Not for use by several threads.
 */
final class RideStore implements AutoCloseable {
    /**
     * Version of what a ride's numbers are. To be raised whenever reading, cleaning or a metric changes what comes out;
     * files are then read again.
     */
    static final int ANALYSIS_VERSION = 4;

    private static final String STATES = "state";
    private static final String LAPS = "lap";

    private final StoreDatabase database;

    private RideStore(StoreDatabase database) {
        this.database = database;
    }

    /**
     * Opens a store, and makes it where there is none.
     *
     * @throws SeasonStoreException when it cannot be used, with one line for people
     */
    static RideStore open(Path file) throws SeasonStoreException {
        return new RideStore(StoreDatabase.open(file));
    }

    @Override
    public void close() throws SeasonStoreException {
        database.close();
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

    /** All files by path. */
    Map<String, FileRow> files() throws SeasonStoreException {
        return database.guarded(() -> {
            Map<String, FileRow> files = new HashMap<>();
            try (PreparedStatement statement = database.reading("SELECT * FROM file");
                    ResultSet row = statement.executeQuery()) {
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
        database.guarded(() -> {
            database.inTransaction(() -> {
                String before = contentOf(row.path());
                database.execute(
                        "INSERT OR REPLACE INTO file VALUES (?, ?, ?, ?, ?, ?, ?)",
                        row.path(),
                        row.name(),
                        row.sizeBytes(),
                        row.modifiedNs(),
                        row.sha256(),
                        row.analysisVersion(),
                        row.problem());
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

    private void deleteRidesWithoutFile(String sha256) throws SQLException {
        database.execute(
                "DELETE FROM ride WHERE sha256 = ?1 AND NOT EXISTS (SELECT 1 FROM file WHERE file.sha256 = ?1)",
                sha256);
    }

    private @Nullable String contentOf(String path) throws SQLException {
        try (PreparedStatement statement = database.reading("SELECT sha256 FROM file WHERE path = ?", path)) {
            try (ResultSet row = statement.executeQuery()) {
                return row.next() ? row.getString(1) : null;
            }
        }
    }

    /** Keeps a new judgement of a ride. */
    void putJudgement(StoredRide.Key key, RideJudgement judgement, String judgementKey) throws SeasonStoreException {
        database.guarded(() -> {
            database.inTransaction(() -> {
                database.execute(
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
                    database.execute("DELETE FROM finding WHERE ride_id = ?", id);
                    insertFindings(id, judgement);
                }
            });
            return key;
        });
    }

    /** Puts a ride in the place of what an earlier version of the analysis made of the same seconds. */
    void renew(RideIntake.NewRide ride) throws SeasonStoreException {
        StoredRide.Key key = ride.ride().key();
        database.guarded(() -> {
            database.inTransaction(() -> {
                database.execute(
                        "DELETE FROM ride WHERE sha256 = ? AND session_index = ?", key.sha256(), key.sessionIndex());
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
        return database.guarded(() -> {
            List<EstimatedRide> rides = new ArrayList<>();
            try (PreparedStatement statement = database.reading(
                    "SELECT ride.*, rig.total_mass_kg FROM ride JOIN rig ON rig.ride_id = ride.id"
                            + " WHERE ride.analysis_version = ? ORDER BY ride.sha256, ride.session_index",
                    ANALYSIS_VERSION)) {
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
        return database.guarded(() -> database.inSnapshot(() -> {
            Map<Long, List<Best>> bests = bests();
            Map<Long, List<RideJudgement.Found>> findings = findings();
            Map<Long, List<Durability>> durability = durability();
            List<RideRow> rides = new ArrayList<>();
            try (PreparedStatement statement = database.reading("SELECT * FROM ride ORDER BY sha256, session_index");
                    ResultSet row = statement.executeQuery()) {
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
        return database.guarded(() -> {
            try (PreparedStatement statement = database.reading(
                    "SELECT * FROM ride WHERE sha256 = ? AND session_index = ?", key.sha256(), key.sessionIndex())) {
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
                database.reading("SELECT name, encoding, data FROM series WHERE ride_id = ?", row.getLong("id"))) {
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
        try (PreparedStatement statement = database.reading("SELECT * FROM rig WHERE ride_id = ?", rideId)) {
            try (ResultSet row = statement.executeQuery()) {
                if (!row.next()) {
                    return null;
                }
                String refusal = row.getString("refusal");
                Outcome<RigEstimate> estimate = refusal != null
                        ? Outcome.refused(refusal)
                        : Outcome.of(new RigEstimate(
                                row.getDouble("drag_area_m2"),
                                row.getDouble("drag_area_error_m2"),
                                row.getDouble("rolling_resistance"),
                                row.getDouble("rolling_resistance_error"),
                                row.getInt("pieces")));
                return new KeptEstimate(row.getDouble("total_mass_kg"), estimate);
            }
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
        database.execute(
                "INSERT INTO ride (" + String.join(", ", values.keySet()) + ") VALUES (?"
                        + ", ?".repeat(values.size() - 1) + ")",
                values.values().toArray());
        Long id = id(ride.key());
        if (id == null) {
            throw new SQLException("the ride just inserted is not there");
        }
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
        insertFindings(id, judgement);
        for (Map.Entry<Channel, RideCodec.Column> column : ride.columns().entrySet()) {
            insertSeries(id, column.getKey().name(), column.getValue());
        }
        insertSeries(id, STATES, ride.states());
        insertSeries(id, LAPS, ride.laps());
        KeptEstimate kept = ride.estimate();
        if (kept != null) {
            Optional<RigEstimate> estimate = kept.estimate().found();
            database.execute(
                    "INSERT INTO rig VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
                    id,
                    kept.totalMassKg(),
                    kept.estimate().refusal().orElse(null),
                    estimate.map(RigEstimate::dragAreaM2).orElse(null),
                    estimate.map(RigEstimate::dragAreaErrorM2).orElse(null),
                    estimate.map(RigEstimate::rollingResistance).orElse(null),
                    estimate.map(RigEstimate::rollingResistanceError).orElse(null),
                    estimate.map(RigEstimate::pieces).orElse(0));
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

    private @Nullable Long id(StoredRide.Key key) throws SQLException {
        try (PreparedStatement statement = database.reading(
                "SELECT id FROM ride WHERE sha256 = ? AND session_index = ?", key.sha256(), key.sessionIndex())) {
            try (ResultSet row = statement.executeQuery()) {
                return row.next() ? (Long) row.getLong(1) : null;
            }
        }
    }

    private Map<Long, List<Best>> bests() throws SQLException {
        Map<Long, List<Best>> bests = new HashMap<>();
        try (PreparedStatement statement = database.reading(
                        "SELECT ride_id, seconds, watts, may_be_low FROM best ORDER BY ride_id, seconds");
                ResultSet row = statement.executeQuery()) {
            while (row.next()) {
                bests.computeIfAbsent(row.getLong(1), absent -> new ArrayList<>())
                        .add(new Best(row.getInt(2), row.getDouble(3), row.getInt(4) != 0));
            }
        }
        return bests;
    }

    private Map<Long, List<Durability>> durability() throws SQLException {
        Map<Long, List<Durability>> durability = new HashMap<>();
        try (PreparedStatement statement = database.reading("SELECT ride_id, seconds, after_kj, fresher_w, tired_w"
                        + " FROM durability ORDER BY ride_id, seconds, after_kj");
                ResultSet row = statement.executeQuery()) {
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
        try (PreparedStatement statement =
                        database.reading("SELECT ride_id, kind, severity FROM finding ORDER BY ride_id, position");
                ResultSet row = statement.executeQuery()) {
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

    private static @Nullable Integer integer(ResultSet row, String column) throws SQLException {
        int value = row.getInt(column);
        return row.wasNull() ? null : value;
    }
}
