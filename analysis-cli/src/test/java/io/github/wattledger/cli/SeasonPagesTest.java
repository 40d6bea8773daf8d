package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SeasonPagesTest {
    private static final Path SAMPLES = Path.of("../sample-rides/season");
    private static final String EVENING = "2026-04-08-evening.fit.gz";
    private static final String TEST = "2026-05-13-twenty-minute-test.fit.gz";

    private static void season(Path folder, Path pages) {
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = Main.run(
                new String[] {"season", folder.toString(), "--pages", pages.toString()},
                new PrintStream(OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
        assertThat(status).as(err.toString(StandardCharsets.UTF_8)).isZero();
    }

    private static List<String> in(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> String.valueOf(file.getFileName()))
                    .sorted()
                    .toList();
        }
    }

    @Test
    void aPageIsNamedByDayFileAndDigest(@TempDir Path temp) throws IOException {
        Path folder = Files.createDirectories(temp.resolve("rides/a \"<b>&"));
        Files.copy(SAMPLES.resolve(EVENING), folder.resolve("x ' <i> %20 #1?.fit.gz"));
        season(temp.resolve("rides"), temp.resolve("pages"));
        List<String> names = in(temp.resolve("pages"));
        assertThat(names).hasSize(2).contains("index.html");
        assertThat(names.get(0)).matches("2026-04-08-x-i-20-1-fit-gz-[0-9a-f]{8}\\.html");
        assertThat(Files.readString(temp.resolve("pages/index.html"))).contains("href=\"" + names.get(0) + "\"");
    }

    /** Unlike the store, pages are meant to be shown: they are as open as any other new file of their owner. */
    @Test
    void pagesAndTablesAreAsOpenAsOtherFiles(@TempDir Path temp) throws IOException {
        assumeTrue(temp.getFileSystem().supportedFileAttributeViews().contains("posix"));
        Path folder = Files.createDirectories(temp.resolve("rides"));
        Files.copy(SAMPLES.resolve(EVENING), folder.resolve(EVENING));
        Path written = temp.resolve("written");
        assertThat(Outcome.of(
                                "season",
                                folder.toString(),
                                "--pages",
                                written.toString(),
                                "--tables",
                                written.toString())
                        .status())
                .isZero();
        Set<PosixFilePermission> usual = Files.getPosixFilePermissions(Files.createFile(temp.resolve("any")));
        for (String name : in(written)) {
            assertThat(Files.getPosixFilePermissions(written.resolve(name)))
                    .as(name)
                    .isEqualTo(usual);
        }
    }

    /** Somebody names the folder of a site of their own: neither its start page nor another file is lost. */
    @Test
    void whatTheProgramDidNotMakeIsNotOverwritten(@TempDir Path temp) throws IOException {
        Path folder = Files.createDirectories(temp.resolve("rides"));
        Files.copy(SAMPLES.resolve(EVENING), folder.resolve(EVENING));
        Path pages = Files.createDirectories(temp.resolve("site"));
        Path index = Files.writeString(pages.resolve("index.html"), "<!DOCTYPE html><title>My club</title>");
        String[] words = {"season", folder.toString(), "--pages", pages.toString()};
        Outcome refused = Outcome.of(words);
        assertThat(refused.status()).isEqualTo(1);
        assertThat(refused.out()).isEmpty();
        assertThat(refused.err())
                .isEqualTo("wattledger season: cannot write " + index
                        + ": there is a file that this program did not make; name another folder, or move the file"
                        + " away\n");
        assertThat(Files.readString(index)).contains("My club");
        assertThat(in(pages)).containsExactly("index.html");
        Files.delete(index);
        for (int again = 0; again < 2; again++) {
            season(folder, pages);
            assertThat(in(pages)).hasSize(2);
        }
        Path ride = pages.resolve(in(pages).get(0));
        Files.writeString(ride, "");
        assertThat(Outcome.of(words).err()).contains("cannot write " + ride + ": there is a file");
        assertThat(ride).isEmptyFile();
    }

    @Test
    void aRideWhoseFileIsGoneKeepsItsRowWithoutALink(@TempDir Path temp) throws IOException {
        Path folder = Files.createDirectories(temp.resolve("rides"));
        Files.copy(SAMPLES.resolve(EVENING), folder.resolve(EVENING));
        Files.copy(SAMPLES.resolve(TEST), folder.resolve(TEST));
        season(folder, temp.resolve("first"));
        assertThat(in(temp.resolve("first"))).hasSize(3);
        Files.delete(folder.resolve(EVENING));
        season(folder, temp.resolve("second"));
        assertThat(in(temp.resolve("second"))).hasSize(2);
        String page = Files.readString(temp.resolve("second/index.html"));
        assertThat(page).contains(EVENING).doesNotContain("href=\"2026-04-08").contains("href=\"2026-05-13");
        assertThat(page).contains("No longer there, kept from the store");
    }
}
