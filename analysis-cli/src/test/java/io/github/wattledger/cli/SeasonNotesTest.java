package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The notes of the sample season, in every report. */
class SeasonNotesTest {
    private static final Path SEASON = Path.of("..", "sample-rides", "season");
    private static final String SECOND = "2026-05-02-second-race";

    @TempDir
    Path temp;

    private Path folder;

    @BeforeEach
    void copySeason() throws IOException {
        folder = Files.createDirectory(temp.resolve("season"));
        try (Stream<Path> files = Files.list(SEASON)) {
            for (Path file : files.toList()) {
                Files.copy(file, folder.resolve(file.getFileName().toString()));
            }
        }
    }

    private Outcome season(String... options) {
        List<String> arguments = new ArrayList<>(List.of("season", folder.toString()));
        arguments.addAll(List.of(options));
        return Outcome.of(arguments.toArray(String[]::new));
    }

    private String report(String... options) {
        Outcome outcome = season(options);
        assertThat(outcome.status()).isZero();
        return outcome.out().replaceAll("\\s+", " ");
    }

    /** The words are those of the notes; how the race was opened is what its review says: 244 W. */
    private static final String RECALLED =
            "2026-05-02, Alder Ring, second race: agreed on 2026-04-19: open at 215 W at most, whoever rides away;"
                    + " opened at 244 W.";

    @Test
    void whatWasAgreedIsRecalled() {
        assertThat(report())
                .contains("- 2026-04-19, Alder Ring, first race. ", "- " + RECALLED)
                .contains("- 2026-05-17: agreed on 2026-05-02: open at 215 W, and look at it every five minutes;");
        assertThat(report("--format", "html")).contains(RECALLED);
        String race = folder.resolve(SECOND + ".fit.gz").toString();
        String recalled = "Agreed on 2026-04-19: open at 215 W at most, whoever rides away; opened at 244 W.";
        assertThat(Outcome.of("review", race, "--season", folder.toString())
                        .out()
                        .replaceAll("\\s+", " "))
                .contains("The first 26 min at 244 W", "Agreed for next time: open at 215 W", recalled);
        assertThat(Outcome.of("review", race, "--brief", "--season", folder.toString())
                        .out()
                        .replaceAll("\\s+", " "))
                .contains(recalled);
        String page = Outcome.of("review", race, "--season", folder.toString(), "--format", "html")
                .out();
        assertThat(page.substring(page.indexOf("<header"), page.indexOf("</header>")))
                .as("the head of the page says it, too")
                .contains(recalled);
        assertThat(Outcome.of("review", race).out()).doesNotContain("Agreed on");
    }

    /** Whether the cap was kept: the review of the first race names 217 W, and that of the second opened at 244 W. */
    @Test
    void whetherTheCapOfAnEarlierRaceWasKeptIsSaid() {
        String first = folder.resolve("2026-04-19-first-race.fit.gz").toString();
        assertThat(Outcome.of("review", first, "--brief", "--season", folder.toString())
                        .err())
                .contains("wattledger season");
        String report = report();
        assertThat(Outcome.of("review", first, "--brief", "--season", folder.toString())
                        .out()
                        .replaceAll("\\s+", " "))
                .contains("opening (first 26 min, normalized): at most 217 W");
        assertThat(report)
                .contains(
                        "The advice of an earlier race of like length: open at 217 W at most; not kept, at 244 W.",
                        "kept, at 204 W.",
                        "The opening kept to the cap that an earlier race of like length had named in 2 of 3 races.");
        JsonNode races = new JsonMapper()
                .readTree(season("--format", "json").out())
                .get("pacing")
                .get("races");
        assertThat(races.get(0).get("keptLastCap").isNull()).isTrue();
        assertThat(races.get(1).get("lastCapW").doubleValue()).isEqualTo(217);
        assertThat(races.get(1).get("keptLastCap").booleanValue()).isFalse();
        assertThat(races.get(3).get("keptLastCap").booleanValue()).isTrue();
    }

    /** The page of a ride agrees with its row in the season: by the same notes and own rides. */
    @Test
    void thePageOfARideSaysTheSame() throws IOException {
        Path pages = temp.resolve("pages");
        assertThat(season("--pages", pages.toString()).status()).isZero();
        try (Stream<Path> files = Files.list(pages)) {
            String page = Files.readString(files.filter(file -> file.toString().contains(SECOND))
                    .findFirst()
                    .orElseThrow());
            assertThat(page).contains("Alder Ring, second race", "opened at 244 W", "by your own rides for 2 h 34 min");
        }
    }

    @Test
    void aBadNoteIsALineOnStandardErrorOnce() throws IOException {
        Files.writeString(folder.resolve(SECOND + ".notes.toml"), "evnt = \"Alder Ring\"\n");
        Outcome outcome = season("--pages", temp.resolve("pages").toString());
        assertThat(outcome.status()).isZero();
        assertThat(outcome.err().lines().filter(line -> line.contains("notes")))
                .singleElement()
                .asString()
                .startsWith("wattledger season: ")
                .contains(SECOND + ".notes.toml", "evnt", "did you mean event?", "left out of the notes");
    }

    /** The race lasts less than three hours and was ridden without a stop. Said in each run, as any other fault. */
    @Test
    void timesThatDoNotFitTheRecordingAreNamed() throws IOException {
        Files.writeString(folder.resolve(SECOND + ".notes.toml"), """
                [[stops]]
                what = "puncture"
                at = "1:00"
                [[bunch]]
                from = "8:00"
                to = "9:00"
                """);
        for (int run = 0; run < 2; run++) {
            assertThat(season().err().lines().filter(line -> line.contains("notes.toml")))
                    .satisfiesExactly(
                            first -> assertThat(first)
                                    .startsWith("wattledger season: ")
                                    .endsWith(SECOND
                                            + ".notes.toml:1: stops: puncture, at 1:00:00, lies where the ride did"
                                            + " not stop; the note explains nothing"),
                            second -> assertThat(second)
                                    .contains(SECOND
                                            + ".notes.toml:4: bunch: 8:00:00 to 9:00:00 lies after the end of the"
                                            + " recording at ")
                                    .endsWith("; left out of the notes"));
        }
        JsonNode rides =
                new JsonMapper().readTree(season("--format", "json").out()).get("rides");
        assertThat(rides.toString()).doesNotContain("\"startSeconds\":28800").contains("\"startSeconds\":3600");
    }
}
