package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.cli.profile.RiderFile;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class SeasonCommandTest {
    private static final Path SAMPLES = Path.of("..", "sample-rides", "season");

    @TempDir
    Path temp;

    private Path folder;

    private static Outcome run(String... args) {
        return Outcome.of(args);
    }

    @BeforeEach
    void copySamples() throws IOException {
        folder = copyTo(temp.resolve("season"));
    }

    private static Path copyTo(Path target) throws IOException {
        Files.createDirectories(target);
        try (Stream<Path> samples = Files.list(SAMPLES)) {
            for (Path sample : samples.filter(
                            path -> !path.getFileName().toString().startsWith("."))
                    .toList()) {
                Files.copy(sample, target.resolve(sample.getFileName().toString()));
            }
        }
        return target;
    }

    @Test
    void theSampleSeasonTellsItsStory() {
        Outcome outcome = run("season", folder.toString());
        assertThat(outcome.status()).isZero();
        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.out())
                // What SeasonSamples puts into them: twelve rides, 240 W in the profile, the test on 13 May.
                .contains("12 rides", "In force: 240 W (profile)", "low since 2026-05-13")
                .contains("from 95 % of the best 20 minutes\n    on 2026-05-13")
                .contains("physician");
        assertThat(outcome.out().lines()).allMatch(line -> line.length() <= 80);
        List<String> races = outcome.out()
                .lines()
                .filter(line -> line.contains("over-hard start ") || line.contains(" even "))
                .toList();
        assertThat(races.get(0)).contains("2026-04-19", "over-hard start");
        assertThat(races.get(races.size() - 1)).contains("2026-05-31", "even");
    }

    @Test
    void aSeasonSaysWhatItKnowsOfItsRider() {
        Outcome outcome = run("season", folder.toString());
        assertThat(outcome.out())
                // The profile's only threshold is of 1 March; 13 May's test of 20 min implies 255 W.
                .contains("THE RIDER, FROM OWN RIDES, on 2026-06-11", "102 days old")
                .contains("Implied by rides of the last 90 days: at least 255 W")
                .contains("by the general guide", "Name your all-out days");
    }

    @Test
    void aRideIsJudgedByTheSeasonsOwnRides() throws IOException {
        assertThat(run("season", folder.toString()).status()).isZero();
        Path profile = folder.resolve("named.toml");
        Files.writeString(
                profile,
                "all_out = [2026-04-19, 2026-05-02, 2026-05-17 ]\n" + Files.readString(folder.resolve("rider.toml")));
        String ride = folder.resolve("2026-05-31-fourth-race.fit.gz").toString();
        Outcome judged = run("review", ride, "--rider", profile.toString(), "--season", folder.toString());
        assertThat(judged.err()).isEmpty();
        assertThat(judged.out().replaceAll("\\s+", " "))
                .contains("from 3 long rides that you named as all-out: 2 h 35 min at 208 W on 2026-04-19")
                .contains("the guide alone says 207 W");
        Outcome without = run("review", ride, "--rider", profile.toString());
        assertThat(without.out().replaceAll("\\s+", " "))
                .contains("is a guide that knows nothing of your endurance")
                .doesNotContain("named");
    }

    @Test
    void ownRidesWithoutASeasonAreOneLine() {
        Outcome outcome =
                run("review", folder.resolve("2026-05-31-fourth-race.fit.gz").toString(), "--season", temp.toString());
        assertThat(outcome.status()).isEqualTo(3);
        assertThat(outcome.err().lines())
                .containsExactly("wattledger review: --season: " + temp.resolve(".wattledger-season.sqlite")
                        + ": there is no season's store; run 'wattledger season' on the folder first");
    }

    @Test
    void aProfileFromASeasonCanBeReadAndKeepsWhatTheRiderSaid() throws Exception {
        assertThat(run("season", folder.toString()).status()).isZero();
        Path given = folder.resolve("rider.toml");
        Outcome printed = run("rider", "--from-season", folder.toString(), "--rider", given.toString());
        assertThat(printed.status()).isZero();
        Path profile = Files.writeString(temp.resolve("kept.toml"), printed.out());
        assertThat(RiderFile.read(profile).rider().thresholds())
                .isEqualTo(RiderFile.read(given).rider().thresholds());
        assertThat(RiderFile.read(profile).rider().massKg())
                .isEqualTo(RiderFile.read(given).rider().massKg());
        Outcome alone = run("rider", "--from-season", folder.toString());
        Path fromRides = Files.writeString(temp.resolve("rides.toml"), alone.out());
        // 95 % of the best 20 minutes of the first six weeks, 268 W, and 3 % more.
        assertThat(RiderFile.read(fromRides).rider().thresholds().entries())
                .singleElement()
                .satisfies(entry -> assertThat(entry.powerW()).isCloseTo(1.03 * 0.95 * 268, within(1.0)));
        assertThat(run("rider").status()).isEqualTo(2);
        assertThat(run("rider", "--example", "--from-season", "x").status()).isEqualTo(2);
        assertThat(run("rider", "--example", "--rider", "x").status()).isEqualTo(2);
    }

    @Test
    void theSecondRunGivesTheSameBytes() {
        String first = run("season", folder.toString(), "--format", "json").out();
        assertThat(first).startsWith("{\n  \"schema\": \"wattledger.season/2\",\n  \"asOf\": \"2026-06-10\"");
        assertThat(run("season", folder.toString(), "--format", "json", "--workers", "1")
                        .out())
                .isEqualTo(first);
    }

    /** Two rides more than two years apart: what lies between them is one row, from its first day to its last. */
    @Test
    void monthsWithoutARideAreOneRow() throws IOException {
        Path years = Files.createDirectory(temp.resolve("years"));
        DeviceRide.write(years.resolve("first.fit"), Instant.parse("2024-01-10T09:00:00Z"), 240, 74);
        DeviceRide.write(years.resolve("last.fit"), Instant.parse("2026-06-10T09:00:00Z"), 240, 74);
        assertThat(run("season", years.toString(), "--zone", "UTC").out().lines())
                .filteredOn(line -> line.startsWith("  2024-") || line.startsWith("  2026-0"))
                .anyMatch(line -> line.matches("  2024-02-01 to 2026-05-31: 0 +0\\.0 +- +0 .*"))
                .noneMatch(line -> line.contains("2025"));
    }

    /** Whether mistakes cost nothing or could not be priced is not the same; the last two sample races have none. */
    @Test
    void aRaceWithoutAMistakeIsNotCalledUnpriced() {
        assertThat(run("season", folder.toString()).out())
                .containsPattern("2026-05-31  even .* no mistake\n")
                .containsPattern("Mistakes cost \\d\\.\\d min a race, then nothing \\(middle of the range\\)\\.")
                .doesNotContain("not priced");
    }

    @Test
    void skippedFilesAreListedAndGiveStatusFour() throws IOException {
        Files.writeString(folder.resolve("broken.fit"), "no recording");
        Outcome outcome = run("season", folder.toString());
        assertThat(outcome.status()).isEqualTo(4);
        assertThat(outcome.out()).contains("SKIPPED: 1 file", "- broken.fit: is not a recording");
    }

    /** A clock of the year 2107: the season still ends with the last ride of the samples, in every format. */
    @Test
    void aWrongClockIsSaidAndLeavesTheCalendarAlone() throws IOException {
        DeviceRide.write(folder.resolve("clock.fit"), Instant.parse("2107-12-31T09:00:00Z"), 240, 74);
        String said = "clock.fit is dated 2107-12-31, which is still to come";
        Outcome text = run("season", folder.toString());
        assertThat(text.status()).isZero();
        assertThat(text.out())
                .contains("Season 2026-04-05 to 2026-06-10: 12 rides", "NOT IN THE CALENDAR", said)
                .doesNotContain("LOAD on 2107");
        JsonNode json = JsonMapper.shared()
                .readTree(run("season", folder.toString(), "--format", "json").out());
        assertThat(json.get("asOf").asString()).isEqualTo("2026-06-10");
        assertThat(json.get("months").size()).isEqualTo(3);
        assertThat(json.get("rides").size()).isEqualTo(13);
        assertThat(json.get("rides").get(12).get("dateDoubt").asString()).isEqualTo("after-today");
        assertThat(json.get("rides").get(0).get("dateDoubt").isNull()).isTrue();
        assertThat(run("season", folder.toString(), "--format", "html").out())
                .contains("Not in the calendar: " + said, "2107-12-31 ?");
    }

    @Test
    void ridesWithoutAnyDateHaveAListAndNoCalendar() throws IOException {
        Path undated = Files.createDirectory(temp.resolve("undated"));
        DeviceRide.write(undated.resolve("reset.fit"), Instant.parse("1989-12-31T00:10:00Z"), 240, 74);
        Outcome text = run("season", undated.toString());
        assertThat(text.status()).isZero();
        assertThat(text.out())
                .contains(
                        "No ride of this season has a date that can be believed.",
                        "reset.fit is dated 1989-12-31, before power meters");
        assertThat(run("season", undated.toString(), "--format", "html").out()).contains("1989-12-31 ?");
        assertThat(run("season", undated.toString(), "--format", "json").status())
                .isZero();
    }

    @Test
    void aRideFromTwoDevicesIsCountedOnceWithTheReason() throws IOException {
        Path twice = Files.createDirectory(temp.resolve("twice"));
        DeviceRide.write(twice.resolve("one.fit"), Instant.parse("2026-05-01T09:00:00Z"), 240, 74);
        DeviceRide.write(twice.resolve("two.fit"), Instant.parse("2026-05-01T09:00:20Z"), 250, 74);
        Outcome outcome = run("season", twice.toString());
        assertThat(outcome.status()).isZero();
        assertThat(outcome.out()).contains(": 1 ride,", "THERE TWICE, counted once");
        assertThat(outcome.out()).containsPattern("- (one|two).fit is the same ride as (one|two).fit: recorded at the");
        JsonNode json = JsonMapper.shared()
                .readTree(run("season", twice.toString(), "--format", "json").out());
        assertThat(json.get("duplicates").get(0).get("reason").asString()).isEqualTo("same-time");
    }

    @Test
    void tablesAreWritten() throws IOException {
        Path tables = temp.resolve("tables");
        assertThat(run("season", folder.toString(), "--tables", tables.toString())
                        .status())
                .isZero();
        assertThat(Files.readAllLines(tables.resolve("rides.csv"))).hasSize(13);
        // 5 April to 10 June 2026, both included: 26 + 31 + 10 days.
        assertThat(Files.readAllLines(tables.resolve("days.csv"))).hasSize(1 + 67);
        assertThat(Files.readAllLines(tables.resolve("bests.csv")).get(0)).isEqualTo("seconds,watts,day,file,mayBeLow");
    }

    @Test
    void severalRidersHaveALineEach() throws IOException {
        Path team = temp.resolve("team");
        copyTo(team.resolve("anna"));
        Path bo = copyTo(team.resolve("bo-with-a-very-long-name"));
        try (Stream<Path> rides = Files.list(bo)) {
            for (Path ride :
                    rides.filter(path -> path.toString().contains("2026-05")).toList()) {
                Files.delete(ride);
            }
        }
        Outcome outcome = run("season", "--riders", team.toString());
        assertThat(outcome.status()).isZero();
        assertThat(outcome.out()).contains("2 riders as of 2026-06-10", "  anna ", "  bo-with-a-ver ", "physician");
        assertThat(outcome.out()).contains("- anna: the set threshold of 240 W looks low");
        assertThat(outcome.out()).doesNotContain("- bo-with-a-very-long-name: the set threshold");
        assertThat(outcome.out().lines()).allMatch(line -> line.length() <= 80);
        assertThat(run("season", "--riders", team.toString(), "--format", "json")
                        .out())
                .contains("\"schema\": \"wattledger.riders/2\"", "\"name\": \"anna\"");
    }

    /** The sample season has four races (sample-rides/README.md); the last three are shown. */
    @Test
    void severalRidersAreAPageOfTheirOwn() throws IOException {
        Path team = temp.resolve("team");
        copyTo(team.resolve("anna"));
        Path file = temp.resolve("new/riders.html");
        assertThat(run("season", "--riders", team.toString(), "--format", "html", "--output", file.toString()))
                .isEqualTo(new Outcome(0, "", ""));
        String page = Files.readString(file);
        assertThat(page)
                .startsWith("<!DOCTYPE html>")
                .contains("<h1>1 rider</h1>", "<th scope=\"row\" class=\"rider\">anna</th>", "Pacing of the last races")
                .doesNotContain("<a href");
        assertThat(page.split("data-path=\"riders\\[0]\\.lastRaces\\[\\d]\\.openingOverTarget", -1))
                .hasSize(1 + 3);
    }

    @Test
    void aRiderProfileThatIsWrongIsSaid() throws IOException {
        Files.writeString(folder.resolve("rider.toml"), "mass = 74\n");
        Outcome outcome = run("season", folder.toString());
        assertThat(outcome.status()).isEqualTo(3);
        assertThat(outcome.err()).contains("rider.toml", "mass");
    }

    @Test
    void aStoreThatCannotBeIsOneLine() {
        Outcome outcome = run(
                "season", folder.toString(), "--store", temp.resolve("no/store").toString());
        assertThat(outcome.status()).isEqualTo(1);
        assertThat(outcome.err()).hasLineCount(1).contains("its folder does not exist");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "season | 2 | name a FOLDER",
                "season . --workers 0 | 2 | --workers 0: expected 1 to 1024",
                "season . --workers 1025 | 2 | --workers 1025: expected 1 to 1024",
                "season . --workers many | 2 | --workers many: expected 1 to 1024",
                "season . --zone Atlantis | 2 | --zone Atlantis: no such time zone, expected for instance Europe/Lisbon",
                "season . --as-of yesterday | 2 | --as-of yesterday: expected a day such as 2026-08-31",
                "season . --format pdf | 2 | --format pdf: expected text, json or html",
                "season . --riders --tables x | 2 | --riders cannot be combined with --rider, --threshold-power, --threshold-heart-rate, --mass, --store or --tables: each rider has a folder and a profile of its own",
                "season . --riders --rider x.toml | 2 | --riders cannot be combined with --rider, --threshold-power, --threshold-heart-rate, --mass, --store or --tables: each rider has a folder and a profile of its own",
                "season . --riders --threshold-power 250 | 2 | --riders cannot be combined with --rider, --threshold-power, --threshold-heart-rate, --mass, --store or --tables: each rider has a folder and a profile of its own",
                "season . --riders --mass 70 | 2 | --riders cannot be combined with --rider, --threshold-power, --threshold-heart-rate, --mass, --store or --tables: each rider has a folder and a profile of its own",
                "season . --threshold-power 2 | 2 | --threshold-power 2: expected 30 to 700 W",
                "season . --pages= | 2 | --pages: the name is empty",
                "season . --store= | 2 | --store: the name is empty",
                "season . --page x | 2 | unknown option --page (did you mean --pages?)",
                "season - | 3 | -: a season is a folder, not standard input; name the folder of the rides",
                "season /no/such/folder | 3 | /no/such/folder: there is no such folder; check the path",
                "season --riders /no/such/folder | 3 | /no/such/folder: is no folder that can be read; check the path",
            })
    void aMistakeIsSaidInOneLine(String line, int status, String message) {
        Outcome outcome = run(line.split(" ", -1));
        assertThat(outcome.status()).isEqualTo(status);
        assertThat(outcome.out()).isEmpty();
        assertThat(outcome.err().lines().findFirst()).contains("wattledger season: " + message);
        assertThat(outcome.err().lines()).hasSize(status == 2 ? 2 : 1);
    }

    @Test
    void aFolderWithoutRidesSaysWhatWasLookedFor() throws IOException {
        Path empty = Files.createDirectory(temp.resolve("empty"));
        Files.writeString(empty.resolve("letter.txt"), "Dear coach");
        Outcome outcome = run("season", empty.toString());
        assertThat(outcome.status()).isEqualTo(3);
        assertThat(outcome.out()).isEmpty();
        assertThat(outcome.err().lines())
                .containsExactly(
                        "wattledger season: " + empty + ": holds no ride; looked in it and in all folders below"
                                + " for files that end in .csv, .fit, .gpx, .gz or .zip or have no ending");
    }

    @Test
    void anotherMassCountsForTheWholeSeason() {
        String light = run("season", folder.toString(), "--format", "json").out();
        String heavy = run("season", folder.toString(), "--mass", "200lb", "--format", "json")
                .out();
        assertThat(heavy).isNotEmpty().isNotEqualTo(light);
    }

    @Test
    void theHelpFitsThePage() {
        assertThat(run("season", "--help").out().lines()).allMatch(line -> line.length() <= 80);
    }

    @Nested
    class Progress {
        /** By hand: 500 of 1000 in 16 s is 31.25 a second, and as long again is left. */
        @Test
        void aFrameTellsRateAndTimeLeft() {
            assertThat(SeasonProgress.frame(500, 1000, 16))
                    .isEqualTo("[############------------]  500 of 1000  31/s  0:16 left");
        }

        @Test
        void nothingIsWrittenWhereNobodyLooksOn() {
            ByteArrayOutputStream err = new ByteArrayOutputStream();
            SeasonProgress progress = new SeasonProgress(new PrintStream(err, true, StandardCharsets.UTF_8), false);
            progress.progressed(1, 2);
            progress.progressed(2, 2);
            progress.end();
            assertThat(err.size()).isZero();
            assertThat(SeasonProgress.hasWatcher(Map.of("CI", "true"))).isFalse();
        }
    }
}
