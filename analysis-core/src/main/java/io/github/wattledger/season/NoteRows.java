package io.github.wattledger.season;

import io.github.wattledger.ride.Interval;
import io.github.wattledger.rider.RideNotes;
import io.github.wattledger.rider.StopNotChosen;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The table {@code note}: what riders wrote down about their rides, one note a row. */
final class NoteRows {
    /** Makes the table; columns are written by their order. */
    static final String SCHEMA = """
            CREATE TABLE IF NOT EXISTS note (
              ride_id INTEGER NOT NULL REFERENCES ride (id) ON DELETE CASCADE,
              position INTEGER NOT NULL,
              kind TEXT NOT NULL,
              words TEXT,
              from_s INTEGER,
              to_s INTEGER,
              eaten_g_per_hour REAL,
              PRIMARY KEY (ride_id, position)
            ) WITHOUT ROWID""";

    private static final String COLUMNS = "SELECT note.ride_id, kind, words, from_s, to_s, eaten_g_per_hour";

    private final StoreDatabase database;

    NoteRows(StoreDatabase database) {
        this.database = database;
    }

    /** What a row holds. */
    private enum Kind {
        EVENT,
        RIDER,
        FEEL,
        HEAT,
        EATEN,
        STOP,
        BUNCH,
        AGREED
    }

    private record Row(
            Kind kind,
            @Nullable String words,
            @Nullable Integer fromSecond,
            @Nullable Integer toSecond,
            @Nullable Double eatenGPerHour) {
        static Row of(Kind kind, String words) {
            return new Row(kind, words, null, null, null);
        }
    }

    /** Writes the notes of a ride in the place of those that it has. */
    void replace(long rideId, RideNotes notes) throws SQLException {
        database.execute("DELETE FROM note WHERE ride_id = ?", rideId);
        int position = 0;
        for (Row row : rows(notes)) {
            database.execute(
                    "INSERT INTO note VALUES (?, ?, ?, ?, ?, ?, ?)",
                    rideId,
                    position++,
                    row.kind().name(),
                    row.words(),
                    row.fromSecond(),
                    row.toSecond(),
                    row.eatenGPerHour());
        }
    }

    /** The notes of rides by the ride's id; rides without notes are not in it. */
    Map<Long, RideNotes> byRide(String ofWhich) throws SQLException {
        Map<Long, List<Row>> rows = new HashMap<>();
        try (PreparedStatement statement =
                        database.reading(COLUMNS + " FROM note" + ofWhich + " ORDER BY ride_id, position");
                ResultSet row = statement.executeQuery()) {
            while (row.next()) {
                rows.computeIfAbsent(row.getLong(1), absent -> new ArrayList<>())
                        .add(new Row(
                                Kind.valueOf(row.getString(2)),
                                row.getString(3),
                                whole(row, 4),
                                whole(row, 5),
                                row.getObject(6) == null ? null : (Double) row.getDouble(6)));
            }
        }
        Map<Long, RideNotes> notes = new HashMap<>();
        rows.forEach((ride, each) -> notes.put(ride, notes(each)));
        return notes;
    }

    private static @Nullable Integer whole(ResultSet row, int column) throws SQLException {
        return row.getObject(column) == null ? null : (Integer) row.getInt(column);
    }

    private static List<Row> rows(RideNotes notes) {
        List<Row> rows = new ArrayList<>();
        addWords(rows, Kind.EVENT, notes.event());
        addWords(rows, Kind.RIDER, notes.rider());
        addWords(rows, Kind.FEEL, notes.feel());
        addWords(rows, Kind.HEAT, notes.heat());
        notes.eatenGPerHour().forEach(grams -> rows.add(new Row(Kind.EATEN, null, null, null, grams)));
        notes.stopsNotChosen()
                .forEach(stop -> rows.add(new Row(Kind.STOP, stop.what(), stop.fromSecond(), stop.toSecond(), null)));
        notes.inBunch()
                .forEach(bunch -> rows.add(new Row(Kind.BUNCH, null, bunch.fromSecond(), bunch.toSecond(), null)));
        addWords(rows, Kind.AGREED, notes.agreed());
        return rows;
    }

    private static void addWords(List<Row> rows, Kind kind, @Nullable String words) {
        if (words != null) {
            rows.add(Row.of(kind, words));
        }
    }

    private static RideNotes notes(List<Row> rows) {
        Map<Kind, String> words = new EnumMap<>(Kind.class);
        List<Double> eaten = new ArrayList<>();
        List<StopNotChosen> stops = new ArrayList<>();
        List<Interval> bunches = new ArrayList<>();
        for (Row row : rows) {
            Integer from = row.fromSecond();
            Integer to = row.toSecond();
            if (row.eatenGPerHour() != null) {
                eaten.add(row.eatenGPerHour());
            } else if (from != null && row.words() != null) {
                stops.add(new StopNotChosen(row.words(), from, to));
            } else if (from != null && to != null) {
                bunches.add(new Interval(from, to));
            } else if (row.words() != null) {
                words.put(row.kind(), row.words());
            }
        }
        return new RideNotes(
                words.get(Kind.EVENT),
                words.get(Kind.RIDER),
                words.get(Kind.FEEL),
                words.get(Kind.HEAT),
                eaten,
                stops,
                bunches,
                words.get(Kind.AGREED));
    }
}
