package io.github.wattledger;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.testing.RideFolders;
import io.github.wattledger.testing.SmallPrograms;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What works without which jar, in JVMs that do not have it. Each ride is 200 W throughout, so its normalized power is 200
 * W and its work 0.2 kJ a second, by their definitions.
 */
class OptionalLibrariesTest {
    private static final String SQLITE = "sqlite-jdbc";
    private static final String TABLESAW = "tablesaw-core";
    private static final String FIT_SDK = "fit";

    /** What Tablesaw alone brings along. */
    private static final List<String> WITH_TABLESAW =
            List.of(TABLESAW, "guava", "failureaccess", "fastutil", "univocity-parsers", "classgraph", "RoaringBitmap");

    /** What Tablesaw asks for and our tables do not use. */
    private static final List<String> EXCLUDED = List.of(
            "commons-math3",
            "RoaringBitmap",
            "icu4j",
            "jsr305",
            "checker-qual",
            "error_prone_annotations",
            "j2objc-annotations",
            "listenablefuture");

    private static final Instant START = Instant.parse("2026-05-01T08:00:00Z");

    @TempDir
    private Path temp;

    private Path folder = Path.of("");
    private Path store = Path.of("");

    @BeforeEach
    void makeRides() throws IOException {
        folder = Files.createDirectory(temp.resolve("rides"));
        store = temp.resolve("season.sqlite");
        RideFolders.writeRide(folder.resolve("a.fit"), START, 1800, second -> 200);
        Files.writeString(folder.resolve("b.gpx"), track(START.plusSeconds(86_400), 600));
    }

    private static String track(Instant start, int seconds) {
        StringBuilder points = new StringBuilder("<gpx version=\"1.1\"><trk><type>cycling</type><trkseg>");
        for (int second = 0; second < seconds; second++) {
            points.append("<trkpt lat=\"")
                    .append(45 + 7e-5 * second)
                    .append("\" lon=\"9\"><time>")
                    .append(start.plusSeconds(second))
                    .append("</time><extensions><power>200</power></extensions></trkpt>");
        }
        return points.append("</trkseg></trk></gpx>").toString();
    }

    /** A jar of another name would be left in, and prove nothing. */
    @Test
    void theJarsThatAreLeftOutAreThere() {
        List<String> names = new ArrayList<>(WITH_TABLESAW);
        names.addAll(List.of(SQLITE, FIT_SDK));
        assertThat(names).allMatch(name -> Stream.of(classPath()).anyMatch(entry -> isNamed(entry, name)));
    }

    @Test
    void aMetricNeedsNoJarButTheLibrary() throws Exception {
        List<String> jars = Stream.of(classPath())
                .filter(entry -> entry.endsWith(".jar"))
                .map(entry -> Path.of(entry).getFileName().toString())
                .toList();
        assertThat(jars).isNotEmpty();
        assertThat(run(jars, "metric")).isEqualTo("200.0\n");
    }

    @Test
    void aReviewNeedsNeitherTheStoreNorTheTables() throws Exception {
        List<String> without = new ArrayList<>(WITH_TABLESAW);
        without.add(SQLITE);
        for (String name : List.of("a.fit", "b.gpx")) {
            String file = folder.resolve(name).toString();
            assertThat(run(without, "review", file))
                    .contains("normalizedPowerW=200.0,")
                    .isEqualTo(run(List.of(), "review", file));
        }
    }

    @Test
    void withoutSqliteASeasonSaysWhatToAdd() throws Exception {
        assertThat(run(List.of(SQLITE), "season", folder.toString(), store.toString()))
                .isEqualTo("SeasonStoreException: " + store + ": the season's store needs SQLite, which is not on the"
                        + " class path; add org.xerial:sqlite-jdbc to the dependencies of the program\n");
        assertThat(store).doesNotExist();
    }

    @Test
    void aSeasonAndItsCsvNeedNoTables() throws Exception {
        assertThat(run(WITH_TABLESAW, "season-csv", folder.toString(), store.toString()))
                .startsWith("day,startTime,file,elapsedSeconds,")
                .contains("\n2026-05-01,2026-05-01T08:00:00Z,a.fit,")
                .contains("\n1200,200,2026-05-01,a.fit,false\n");
    }

    @Test
    void withoutTablesawATableSaysWhatToAdd() throws Exception {
        String sentence =
                "IllegalStateException: a table needs the library Tablesaw, which is not on the class path; add"
                        + " tech.tablesaw:tablesaw-core and io.github.classgraph:classgraph to the dependencies of the"
                        + " program; a season can be written with SeasonCsv, which does without them\n";
        assertThat(run(WITH_TABLESAW, "season-tables", folder.toString(), store.toString()))
                .isEqualTo(sentence);
        assertThat(run(WITH_TABLESAW, "ride-table", folder.resolve("a.fit").toString()))
                .isEqualTo(sentence);
    }

    @Test
    void theTablesNeedNothingOfWhatIsExcluded() throws Exception {
        String tables = run(EXCLUDED, "season-tables", folder.toString(), store.toString());
        assertThat(tables)
                .contains("\n1200,200,2026-05-01,a.fit,false\n")
                .isEqualTo(run(List.of(), "season-csv", folder.toString(), store.toString()));
        assertThat(run(EXCLUDED, "ride-table", folder.resolve("a.fit").toString())
                        .lines())
                .hasSize(1 + 1800);
    }

    @Test
    void withoutTheFitSdkAFitFileSaysWhatToAddAndOthersAreRead() throws Exception {
        Path fit = folder.resolve("a.fit");
        assertThat(run(List.of(FIT_SDK), "review", fit.toString()))
                .isEqualTo(
                        "UnreadableRideException: " + fit + ": is a FIT file, and the FIT SDK that decodes it is not on"
                                + " the class path; add com.garmin:fit to the dependencies of the program\n");
        assertThat(run(List.of(FIT_SDK), "review", folder.resolve("b.gpx").toString()))
                .contains("normalizedPowerW=200.0,");
    }

    /** A file that was skipped only for want of the SDK is read in the next run that has it, though it did not change. */
    @Test
    void withoutTheFitSdkASeasonSkipsFitFilesUntilItIsThere() throws Exception {
        String[] season = {"season", folder.toString(), store.toString()};
        assertThat(run(List.of(FIT_SDK), season))
                .isEqualTo(
                        "b.gpx: 120.0 kJ\na.fit skipped: is a FIT file, and the FIT SDK that decodes it is not on the"
                                + " class path; add com.garmin:fit to the dependencies of the program\n");
        assertThat(run(List.of(), season)).isEqualTo("a.fit: 360.0 kJ\nb.gpx: 120.0 kJ\n");
    }

    private static String[] classPath() {
        return System.getProperty("java.class.path").split(File.pathSeparator);
    }

    /** Runs one of the small programs without some jars; each must be named as the jar is, without or with its version. */
    private static String run(List<String> without, String... arguments) throws IOException, InterruptedException {
        List<String> kept = Arrays.stream(classPath())
                .filter(entry -> without.stream().noneMatch(name -> isNamed(entry, name)))
                .toList();
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "--enable-native-access=ALL-UNNAMED", // SQLite's library; JDK 24 and later warn without it
                "-cp",
                String.join(File.pathSeparator, kept),
                SmallPrograms.class.getName()));
        command.addAll(List.of(arguments));
        Process process = new ProcessBuilder(command).start();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        String err = new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(1, TimeUnit.MINUTES)).isTrue();
        assertThat(process.exitValue()).as(err).isZero();
        assertThat(err).isEmpty();
        return out;
    }

    private static boolean isNamed(String entry, String name) {
        String file = String.valueOf(Path.of(entry).getFileName());
        return file.equals(name) || file.matches(name + "-\\d.*\\.jar");
    }
}
