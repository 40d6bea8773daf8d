package io.github.wattledger.season;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.HashMap;
import java.util.Map;
import org.sqlite.SQLiteJDBCLoader;

/**
 * SQLite's own library of machine code. The driver unpacks it into a folder for temporary files, and the system loads it
 * from there.
 */
final class NativeSqlite {
    /** The setting of the driver that names another folder. */
    private static final String FOLDER_SETTING = "org.sqlite.tmpdir";

    /** A process that was killed cannot take its copy away again. One that is older than this is in nobody's way. */
    private static final Duration KEPT = Duration.ofDays(1);

    private NativeSqlite() {}

    /**
     * Loads the library where that has not been done.
     *
     * @param store the store that needs it, for the message
     * @throws SeasonStoreException when the driver is missing or the library cannot be loaded, with one line that
     *     says what to do
     */
    static void load(Path store) throws SeasonStoreException {
        requireDriver(store);
        Path folder = Path.of(System.getProperty(FOLDER_SETTING, System.getProperty("java.io.tmpdir", ".")));
        try {
            SQLiteJDBCLoader.initialize();
        } catch (Exception | LinkageError e) {
            throw new SeasonStoreException(store + ": " + reason(folder), e);
        }
        deleteLeftovers(folder);
    }

    /** The driver is an optional dependency. */
    private static void requireDriver(Path store) throws SeasonStoreException {
        try {
            Class.forName("org.sqlite.SQLiteJDBCLoader", false, NativeSqlite.class.getClassLoader());
        } catch (ClassNotFoundException e) {
            throw new SeasonStoreException(
                    store + ": the season's store needs SQLite, which is not on the class path; add"
                            + " org.xerial:sqlite-jdbc to the dependencies of the program",
                    e);
        }
    }

    static String reason(Path folder) {
        String trouble = !Files.isDirectory(folder)
                ? "does not exist"
                : !Files.isWritable(folder) ? "cannot be written" : "may hold no programs (is it mounted noexec?)";
        return "the season's store needs a folder for temporary files from which a library can be loaded, and " + folder
                + " " + trouble + "; name another one by starting Java with -D" + FOLDER_SETTING + "=FOLDER";
    }

    /**
     * Deletes copies of the library that killed processes left behind: those that are a day older than the newest one, which
     * this process has just unpacked. What cannot be deleted stays.
     */
    static void deleteLeftovers(Path folder) {
        Map<Path, Instant> copies = new HashMap<>();
        String begin = "sqlite-" + SQLiteJDBCLoader.getVersion() + "-";
        try (DirectoryStream<Path> found = Files.newDirectoryStream(folder, begin + "*sqlitejdbc*")) {
            for (Path copy : found) {
                copies.put(copy, Files.getLastModifiedTime(copy).toInstant());
            }
            Instant newest =
                    copies.values().stream().max(Comparator.naturalOrder()).orElse(Instant.EPOCH);
            for (Map.Entry<Path, Instant> copy : copies.entrySet()) {
                if (copy.getValue().isBefore(newest.minus(KEPT))) {
                    Files.deleteIfExists(copy.getKey());
                }
            }
        } catch (IOException | DirectoryIteratorException e) {
            // Another user's copies, or one that another process has just deleted: nothing rests on it.
            return;
        }
    }
}
