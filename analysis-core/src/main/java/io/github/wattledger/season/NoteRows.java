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
import java.util.Objects;
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

    /** Rows of a ride that is not there are no notes: a changed bit can have given them its number. */
    private static final String ROWS = "SELECT ride_id, kind, words, from_s, to_s, eaten_g_per_hour FROM note"
            + " JOIN ride ON ride.id = note.ride_id";

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
        try (PreparedStatement statement = database.reading(ROWS + ofWhich + " ORDER BY ride_id, position");
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
            switch (row.kind()) {
                case EATEN -> eaten.add(Objects.requireNonNull(row.eatenGPerHour()));
                case STOP ->
                    stops.add(new StopNotChosen(
                            Objects.requireNonNull(row.words()),
                            Objects.requireNonNull(row.fromSecond()),
                            row.toSecond()));
                case BUNCH ->
                    bunches.add(new Interval(
                            Objects.requireNonNull(row.fromSecond()), Objects.requireNonNull(row.toSecond())));
                case EVENT, RIDER, FEEL, HEAT, AGREED -> words.put(row.kind(), Objects.requireNonNull(row.words()));
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
