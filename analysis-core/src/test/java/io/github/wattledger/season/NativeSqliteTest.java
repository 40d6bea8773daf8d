package io.github.wattledger.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.SQLiteJDBCLoader;

class NativeSqliteTest {
    private static final Instant NEWEST = Instant.parse("2026-05-10T08:00:00Z");

    @TempDir
    Path folder;

    private Path file(String name, Duration age) throws IOException {
        Path file = Files.createFile(folder.resolve(name));
        return Files.setLastModifiedTime(file, FileTime.from(NEWEST.minus(age)));
    }

    /** The names that the driver gives: version, random words, the library's own name, and a second file as a lock. */
    @Test
    void whatKilledProcessesLeftIsDeletedAfterADay() throws IOException {
        String begin = "sqlite-" + SQLiteJDBCLoader.getVersion();
        file(begin + "-a-libsqlitejdbc.so", Duration.ZERO);
        file(begin + "-b-libsqlitejdbc.so", Duration.ofHours(23));
        Path old = file(begin + "-c-libsqlitejdbc.so", Duration.ofHours(25));
        Path oldLock = file(begin + "-c-libsqlitejdbc.so.lck", Duration.ofHours(25));
        file("sqlite-0.1-d-libsqlitejdbc.so", Duration.ofDays(9));
        file("notes", Duration.ofDays(9));
        NativeSqlite.deleteLeftovers(folder);
        assertThat(old).doesNotExist();
        assertThat(oldLock).doesNotExist();
        assertThat(folder).isDirectoryNotContaining(file -> file.toString().contains("-c-"));
        try (var left = Files.list(folder)) {
            assertThat(left).hasSize(4);
        }
    }

    @Test
    void theReasonNamesTheFolderAndTheWayOut() {
        String begin = "the season's store needs a folder for temporary files from which a library can be loaded, and ";
        String end = "; name another one by starting Java with -Dorg.sqlite.tmpdir=FOLDER";
        Path missing = folder.resolve("missing");
        assertThat(NativeSqlite.reason(missing)).isEqualTo(begin + missing + " does not exist" + end);
        assertThat(NativeSqlite.reason(folder))
                .isEqualTo(begin + folder + " may hold no programs (is it mounted noexec?)" + end);
    }
}
