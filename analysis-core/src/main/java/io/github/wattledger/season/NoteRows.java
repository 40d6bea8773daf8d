package io.github.wattledger.season;

import io.github.wattledger.ride.Interval;
import io.github.wattledger.rider.RideNotes;
import io.github.wattledger.rider.StopNotChosen;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.EnumMap;
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

    /** The notes that a ride's rows hold, in the order of their position; none where there is no row. */
    static RideNotes notes(List<StoreRow> rows) throws SQLException {
        if (rows.isEmpty()) {
            return RideNotes.NONE;
        }
        List<Row> notes = new ArrayList<>();
        for (StoreRow row : rows) {
            notes.add(new Row(
                    Kind.valueOf(StoreRow.required(row.text("kind"))),
                    row.text("words"),
                    row.whole("from_s"),
                    row.whole("to_s"),
                    row.real("eaten_g_per_hour")));
        }
        return together(notes);
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

    private static RideNotes together(List<Row> rows) {
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
