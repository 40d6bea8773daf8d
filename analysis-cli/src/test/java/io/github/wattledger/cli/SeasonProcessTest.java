package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Seasons in processes of their own, whose locale or folder for temporary files is another. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "locales of the C library and noexec are matters of Unix")
class SeasonProcessTest {
    private static final Path SAMPLE = Path.of("../sample-rides/season/2026-04-08-evening.fit.gz");

    @TempDir
    Path temp;

    private Outcome run(String locale, List<String> options, String... words) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        // Later JDKs warn of SQLite's native library; the manifest of the jar allows it, a class path cannot.
        if (Runtime.version().feature() >= 22) {
            command.add("--enable-native-access=ALL-UNNAMED");
        }
        command.addAll(options);
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), "io.github.wattledger.cli.Main"));
        command.addAll(List.of(words));
        return run(locale, command);
    }

    private Outcome run(String locale, List<String> command) throws IOException, InterruptedException {
        ProcessBuilder builder = new ProcessBuilder(command);
        builder.environment().put("LC_ALL", locale);
        Path out = temp.resolve("out");
        Path err = temp.resolve("err");
        Process process =
                builder.redirectOutput(out.toFile()).redirectError(err.toFile()).start();
        assertThat(process.waitFor(2, TimeUnit.MINUTES)).isTrue();
        return new Outcome(
                process.exitValue(),
                Files.readString(out),
                new String(Files.readAllBytes(err), StandardCharsets.ISO_8859_1));
    }

    /** First by hand, then by a job of the night, whose locale has ASCII alone. */
    @Test
    void aNameThatTheLocaleCannotExpressIsNamedAndSkipped() throws Exception {
        Path folder = Files.createDirectory(temp.resolve("rides"));
        Files.copy(SAMPLE.resolveSibling("2026-05-13-twenty-minute-test.fit.gz"), folder.resolve("plain.fit.gz"));
        // The shell makes the name, as the locale of this test may not have the letter either: Fr\u00fchling.fit.gz.
        Outcome copied = run(
                "C",
                List.of(
                        "sh",
                        "-c",
                        "cp \"$0\" \"$1/$(printf 'Fr\\303\\274hling.fit.gz')\"",
                        SAMPLE.toString(),
                        folder.toString()));
        assertThat(copied.status()).as(copied.err()).isZero();
        String[] season = {"season", folder.toString(), "--format", "json"};
        Outcome first = run("C.UTF-8", List.of(), season);
        assertThat(first.status()).as(first.err()).isZero();
        for (List<String> more : List.of(List.<String>of(), List.of("--forget-gone"))) {
            List<String> words = new ArrayList<>(List.of(season));
            words.addAll(more);
            Outcome nightly = run("C", List.of(), words.toArray(new String[0]));
            assertThat(nightly.status()).as(nightly.err()).isEqualTo(4);
            assertThat(nightly.err()).isEmpty();
            assertThat(nightly.out())
                    .doesNotContain("\uFFFD")
                    .contains(
                            "\"file\": \"plain.fit.gz\"",
                            "\"file\": \"Fr\u00fchling.fit.gz\"",
                            "the name has letters that the locale of this run cannot express; run in a UTF-8 locale, for"
                                    + " instance with LC_ALL=C.UTF-8");
        }
        // What the night could not see is still in the store.
        Outcome last = run("C.UTF-8", List.of(), season);
        assertThat(last.out()).isEqualTo(first.out());
    }

    @Test
    void aTemporaryFolderThatIsMissingIsSaidWithTheWayOut() throws Exception {
        Path folder = Files.createDirectory(temp.resolve("rides"));
        Files.copy(SAMPLE, folder.resolve("a.fit.gz"));
        Path missing = temp.resolve("missing");
        Outcome outcome = run("C.UTF-8", List.of("-Djava.io.tmpdir=" + missing), "season", folder.toString());
        assertThat(outcome.status()).isEqualTo(1);
        assertThat(outcome.out()).isEmpty();
        // Later JDKs say by themselves that the folder is missing, before the command begins.
        String ofTheCommand = outcome.err().replace("WARNING: java.io.tmpdir directory does not exist\n", "");
        assertThat(ofTheCommand)
                .isEqualTo("wattledger season: " + folder.resolve(".wattledger-season.sqlite")
                        + ": the season's store needs a folder for temporary files from which a library can be loaded,"
                        + " and " + missing + " does not exist; name another one by starting Java with"
                        + " -Dorg.sqlite.tmpdir=FOLDER\n");
        Outcome helped = run(
                "C.UTF-8",
                List.of("-Djava.io.tmpdir=" + missing, "-Dorg.sqlite.tmpdir=" + temp),
                "season",
                folder.toString());
        assertThat(helped.status()).as(helped.err()).isZero();
    }
}
