package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The launcher script with a stand-in for Java, which says what it was called with and makes the files that it is asked for. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "the launcher is a script for Unix")
class LauncherTest {
    private static final String JAVA = """
            #!/bin/sh
            for word in "$@"; do
              case $word in
                -XX:ArchiveClassesAtExit=*) echo archive > "${word#*=}"; making=yes ;;
                -Dorg.sqlite.lib.path=*) folder=${word#*=} ;;
                -Dorg.sqlite.lib.name=*) [ -z "${making-}" ] || echo library > "$folder/${word#*=}" ;;
              esac
            done
            echo "$@"
            """;

    @TempDir
    Path temp;

    private Path home;

    @BeforeEach
    void layOut() throws IOException {
        home = temp.resolve("home");
        for (String folder : List.of("app/bin", "app/lib", "java/bin", "home", "elsewhere/lib")) {
            Files.createDirectories(temp.resolve(folder));
        }
        Files.copy(Path.of("src/launcher/wattledger"), temp.resolve("app/bin/wattledger"));
        Files.createFile(temp.resolve("app/lib/analysis-cli-1.jar"));
        Files.writeString(temp.resolve("java/bin/java"), JAVA);
        for (String program : List.of("app/bin/wattledger", "java/bin/java")) {
            Files.setPosixFilePermissions(temp.resolve(program), PosixFilePermissions.fromString("rwxr-xr-x"));
        }
    }

    /** What Java was called with for {@code wattledger review a.fit}. */
    private String called(Map<String, String> environment, String... command) throws Exception {
        List<String> words = new ArrayList<>(List.of(command));
        words.addAll(List.of("review", "a.fit"));
        ProcessBuilder builder = new ProcessBuilder(words).directory(temp.toFile());
        Path said = temp.resolve("said");
        builder.environment().clear();
        builder.environment().put("PATH", String.valueOf(System.getenv("PATH")));
        builder.environment().put("JAVA_HOME", temp.resolve("java").toString());
        builder.environment().putAll(environment);
        Process process =
                builder.redirectErrorStream(true).redirectOutput(said.toFile()).start();
        assertThat(process.waitFor(1, TimeUnit.MINUTES)).isTrue();
        String out = Files.readString(said);
        assertThat(process.exitValue()).as(out).isZero();
        return out;
    }

    private static String permissions(Path file) throws IOException {
        return PosixFilePermissions.toString(Files.getPosixFilePermissions(file));
    }

    @Test
    void theArchiveLiesWhereNobodyElseCanWrite() throws Exception {
        assertThat(called(Map.of("HOME", home.toString()), "app/bin/wattledger"))
                .contains("-XX:SharedArchiveFile=" + home + "/.cache/wattledger/classes-");
        assertThat(permissions(home.resolve(".cache/wattledger"))).isEqualTo("rwx------");
    }

    @Test
    void theLibraryOfSqliteIsUnpackedBesideTheArchiveOnce() throws Exception {
        Path cache = home.resolve(".cache/wattledger");
        Map<String, String> environment = Map.of("HOME", home.toString());
        String first = called(environment, "app/bin/wattledger");
        assertThat(first)
                .containsPattern("-Dorg.sqlite.lib.path=" + cache + " -Dorg.sqlite.lib.name=sqlite-\\d+-\\d+ ");
        assertThat(called(environment, "app/bin/wattledger")).isEqualTo(first);
        try (Stream<Path> files = Files.list(cache)) {
            assertThat(files.map(file -> file.getFileName().toString().replaceAll("\\d+", "N")))
                    .containsExactlyInAnyOrder("classes-N-N.jsa", "sqlite-N-N");
        }
    }

    /** The driver may have no library for a machine, or it could not be loaded from there. */
    @Test
    void withoutTheLibraryTheDriverFindsItsOwn() throws Exception {
        Files.writeString(temp.resolve("java/bin/java"), JAVA.replace("making=yes", "true"));
        assertThat(called(Map.of("HOME", home.toString()), "app/bin/wattledger"))
                .contains("-XX:SharedArchiveFile=")
                .doesNotContain("org.sqlite");
    }

    @Test
    void aFolderThatOthersCouldWriteIsClosed() throws Exception {
        Path open = Files.createDirectories(home.resolve("cache/wattledger"));
        Files.setPosixFilePermissions(open, PosixFilePermissions.fromString("rwxrwxrwx"));
        called(Map.of("XDG_CACHE_HOME", home.resolve("cache").toString()), "app/bin/wattledger");
        assertThat(permissions(open)).isEqualTo("rwx------");
    }

    /** A folder for temporary files is shared with others, who could put an archive of their own there. */
    @Test
    void withoutAHomeThereIsNoArchive() throws Exception {
        for (Map<String, String> environment :
                List.of(Map.of("TMPDIR", temp.toString()), Map.of("HOME", ""), Map.of("XDG_CACHE_HOME", "relative"))) {
            assertThat(called(environment, "app/bin/wattledger"))
                    .doesNotContain("Archive")
                    .endsWith("analysis-cli-1.jar review a.fit\n");
        }
        assertThat(temp.resolve("relative")).doesNotExist();
    }

    @Test
    void aSearchPathOfTheShellDoesNotMoveIt() throws Exception {
        Map<String, String> environment = new TreeMap<>(Map.of("HOME", home.toString()));
        environment.put("CDPATH", temp.resolve("elsewhere").toString());
        Files.createDirectories(temp.resolve("elsewhere/app/bin"));
        Files.createDirectories(temp.resolve("elsewhere/app/lib"));
        assertThat(called(environment, "sh", "app/bin/wattledger"))
                .contains("-jar " + temp.toRealPath() + "/app/lib/analysis-cli-1.jar review a.fit");
    }
}
