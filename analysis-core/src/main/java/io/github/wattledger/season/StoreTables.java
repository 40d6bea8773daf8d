package io.github.wattledger.season;

import java.sql.SQLException;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Makes the tables of a store, and brings those of an older store up to date. */
final class StoreTables {
    private static final String FILE = """
            CREATE TABLE IF NOT EXISTS file (
              path TEXT PRIMARY KEY,
              name TEXT NOT NULL,
              size_bytes INTEGER NOT NULL,
              modified_ns INTEGER NOT NULL,
              sha256 TEXT NOT NULL,
              analysis_version INTEGER NOT NULL,
              problem TEXT,
              ride_count INTEGER,
              check_sum INTEGER
            ) WITHOUT ROWID""";

    private static final String RIDE = "CREATE TABLE IF NOT EXISTS ride (\n  id INTEGER PRIMARY KEY,\n  "
            + joined(StoreColumns.all(), RowColumn::declaration, ",\n  ") + ",\n  UNIQUE (sha256, session_index)\n)";

    private static final String JUDGED =
            "CREATE TABLE IF NOT EXISTS judged (id INTEGER PRIMARY KEY CHECK (id = 1), basis TEXT NOT NULL)";

    private StoreTables() {}

    static String joined(
            List<? extends RowColumn<?, ?>> columns, Function<RowColumn<?, ?>, String> text, String between) {
        return columns.stream().map(text).collect(Collectors.joining(between));
    }

    /** Makes what is not there: in an older store this may be a table, or columns of {@code file} or {@code ride}. */
    static void make(StoreDatabase database) throws SQLException {
        database.execute(FILE);
        database.execute("CREATE INDEX IF NOT EXISTS file_by_content ON file (sha256)");
        database.execute(RIDE);
        for (String table : RideParts.SCHEMA) {
            database.execute(table);
        }
        database.execute(JUDGED);
        Set<String> ofRide = columns(database, "ride");
        for (RowColumn<?, ?> column : StoreColumns.all()) {
            if (!ofRide.contains(column.name())) {
                database.execute("ALTER TABLE ride ADD COLUMN " + column.declaration());
            }
        }
        if (!columns(database, "file").contains("ride_count")) {
            database.execute("ALTER TABLE file ADD COLUMN ride_count INTEGER");
            database.execute("ALTER TABLE file ADD COLUMN check_sum INTEGER");
            database.execute(
                    "UPDATE file SET ride_count = (SELECT count(*) FROM ride WHERE ride.sha256 = file.sha256)");
        }
        new StoreSums(database).sealAll();
    }

    private static Set<String> columns(StoreDatabase database, String table) throws SQLException {
        Set<String> columns = new HashSet<>();
        database.forEach(
                "SELECT name FROM pragma_table_info(?)",
                row -> columns.add(StoreRow.required(row.text("name"))),
                table);
        return columns;
    }
}
