package io.github.wattledger.season;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import org.jspecify.annotations.Nullable;
import org.sqlite.JDBC;

/**
 * The SQLite file of a store: its statements and transactions. What goes wrong is reported in one line for people. Not
 * for use by several threads.
 */
final class StoreDatabase implements AutoCloseable {
    /** Version of the tables, kept in {@code user_version}. */
    static final int SCHEMA_VERSION = 6;

    /**
     * The version of the analysis that made the numbers of a ride. Raise it whenever reading, cleaning or a metric
     * changes what comes out: files are then read again. Raise it, too, when a rule of judgement or of own rides changes:
     * otherwise rides that nothing else has changed about keep the judgement that they have.
     */
    static final int ANALYSIS_VERSION = 8;

    /** Marks the file as ours: the letters WLSS. */
    private static final int APPLICATION_ID = 0x574C5353;

    /** SQLITE_CORRUPT. */
    private static final int CORRUPT = 11;

    private static final int BUSY_MILLISECONDS = 60_000;

    private final Path file;
    private final Connection connection;

    /** Statements by their text: a ride takes some sixty, and preparing one costs more than running it. */
    private final Map<String, PreparedStatement> kept = new HashMap<>();

    private StoreDatabase(Path file, Connection connection) {
        this.file = file;
        this.connection = connection;
    }

    /**
     * Opens a store, and makes it where there is none.
     *
     * @param tables makes the tables of a new store, and brings those of an older one up to date; null refuses both
     * @throws SeasonStoreException when it cannot be used, with one line for people
     */
    static StoreDatabase open(Path file, @Nullable Tables tables) throws SeasonStoreException {
        Path absolute = file.toAbsolutePath();
        Path folder = absolute.getParent();
        if (Files.isDirectory(absolute)) {
            throw new SeasonStoreException(file + ": is a folder; name a file for the season's store", null);
        }
        if (folder == null || !Files.isDirectory(folder)) {
            throw new SeasonStoreException(file + ": its folder does not exist; the season's store needs one", null);
        }
        if (tables == null && !Files.exists(absolute)) {
            throw new SeasonStoreException(
                    file + ": there is no season's store; run 'wattledger season' on the folder first", null);
        }
        NativeSqlite.load(file);
        makeNew(absolute);
        try {
            // As a URI: a question mark in a plain name would be taken for the start of settings.
            Connection connection = new JDBC().connect(JDBC.PREFIX + absolute.toUri(), new Properties());
            if (connection == null) {
                throw new AssertionError("the driver refuses its own prefix");
            }
            StoreDatabase database = new StoreDatabase(file, connection);
            try {
                database.prepare(tables);
            } catch (SQLException | SeasonStoreException e) {
                connection.close();
                throw e;
            }
            return database;
        } catch (SQLException e) {
            throw failure(file, e);
        }
    }

    /**
     * Makes the file of a new store, for its owner alone: it holds heart rates by the second. SQLite gives the files beside
     * it the same permissions. A store that is there is left as it is: its owner may have opened it to others.
     */
    private static void makeNew(Path file) {
        if (Files.exists(file)
                || !file.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            return;
        }
        try {
            Files.createFile(file, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
        } catch (IOException e) {
            // SQLite will fail for the same reason, and its failure is put into words.
            return;
        }
    }

    private void prepare(@Nullable Tables tables) throws SQLException, SeasonStoreException {
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
            if (version < SCHEMA_VERSION && tables == null) {
                throw new SeasonStoreException(
                        file + ": was written by an earlier version of this program; run 'wattledger season' on the"
                                + " folder once, which brings it up to date",
                        null);
            }
            statement.execute("PRAGMA journal_mode = WAL");
            statement.execute("PRAGMA synchronous = NORMAL");
            statement.execute("PRAGMA foreign_keys = ON");
            if (tables != null && version < SCHEMA_VERSION) {
                inTransaction(() -> {
                    tables.make(this);
                    statement.execute("PRAGMA application_id = " + APPLICATION_ID);
                    statement.execute("PRAGMA user_version = " + SCHEMA_VERSION);
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

    /** What is done with each row of a query. */
    @FunctionalInterface
    interface RowUse {
        void accept(StoreRow row) throws SQLException;
    }

    /** Gives the rows of a query that is asked once, one after the other. */
    void forEach(String sql, RowUse use, @Nullable Object... values) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            bind(statement, values);
            forEach(statement, use);
        }
    }

    private static void forEach(PreparedStatement statement, RowUse use) throws SQLException {
        try (ResultSet answer = statement.executeQuery()) {
            StoreRow.Columns columns = new StoreRow.Columns(answer.getMetaData());
            while (answer.next()) {
                use.accept(columns.read(answer));
            }
        }
    }

    /**
     * Stands for all that was ever changed in the store.
     *
     * @param byOthers changes with each change that others make
     * @param own how many rows were changed from here
     */
    record Changes(long byOthers, long own) {}

    /** What was changed until now. */
    Changes changes() throws SQLException {
        try (Statement statement = connection.createStatement()) {
            return new Changes(number(statement, "PRAGMA data_version"), number(statement, "SELECT total_changes()"));
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

    /** Runs a statement that writes. */
    void execute(String sql, @Nullable Object... values) throws SQLException {
        PreparedStatement statement = kept(sql, values);
        statement.executeUpdate();
        statement.clearParameters();
    }

    /** The rows of a query that is asked for one ride after the other. */
    List<StoreRow> rows(String sql, @Nullable Object... values) throws SQLException {
        List<StoreRow> rows = new ArrayList<>();
        forEach(kept(sql, values), rows::add);
        return rows;
    }

    private PreparedStatement kept(String sql, @Nullable Object... values) throws SQLException {
        PreparedStatement statement = kept.get(sql);
        if (statement == null) {
            statement = connection.prepareStatement(sql);
            kept.put(sql, statement);
        }
        bind(statement, values);
        return statement;
    }

    /** @throws SQLException when SQLite finds that tables and indexes of the file do not hang together */
    void requireIntegrity() throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery("PRAGMA integrity_check(1)")) {
            if (!result.next() || !"ok".equals(result.getString(1))) {
                throw new SQLException("the integrity check failed", null, CORRUPT);
            }
        }
    }

    private static void bind(PreparedStatement statement, @Nullable Object... values) throws SQLException {
        for (int i = 0; i < values.length; i++) {
            statement.setObject(i + 1, values[i]);
        }
    }

    /** Makes the tables that are not there, and the columns that an older store has not. */
    @FunctionalInterface
    interface Tables {
        void make(StoreDatabase database) throws SQLException;
    }

    @FunctionalInterface
    interface Step {
        void run() throws SQLException;
    }

    @FunctionalInterface
    interface Answer<T> {
        T get() throws SQLException;
    }

    /**
     * Runs a step as one transaction: all of it happens or nothing. The write lock is taken first, so that any wait for
     * another process comes before the step.
     */
    void inTransaction(Step step) throws SQLException {
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

    /**
     * Runs queries that all see the store as it was at the first of them: another process may replace a ride meanwhile.
     */
    <T> T inSnapshot(Answer<T> answer) throws SQLException {
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

    /** Gives the answer, or throws what went wrong with one line for people. */
    <T> T guarded(Answer<T> answer) throws SeasonStoreException {
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
            // The statements are fixed: when one does not fit the tables or breaks a rule of theirs, the tables are
            // damaged.
            case 1, CORRUPT, 19, 20 -> "is damaged; delete it, and the season is read anew from its files";
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
