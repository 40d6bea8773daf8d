package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.json.JsonSchema;
import io.github.wattledger.testing.SchemaCheck;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The rider's notes, from a file beside the ride to every report. The stops of the sample race: its README. */
class NotesTest {
    private static final Path SAMPLE = Path.of("..", "sample-rides", "over-hard-start.fit");

    @TempDir
    Path folder;

    private Path ride = SAMPLE;

    @BeforeEach
    void aRideInAFolderOfItsOwn() throws IOException {
        ride = Files.copy(SAMPLE, folder.resolve("race.fit"));
    }

    private void notes(String... lines) throws IOException {
        Files.write(folder.resolve("race.notes.toml"), List.of(lines));
    }

    private Outcome review(String... options) {
        List<String> arguments = new ArrayList<>(List.of("review", ride.toString(), "--threshold-power", "250"));
        arguments.addAll(List.of(options));
        return Outcome.of(arguments.toArray(String[]::new));
    }

    private String report(String... options) {
        Outcome outcome = review(options);
        assertThat(outcome.err()).isEmpty();
        return outcome.out().replaceAll("\\s+", " ");
    }

    @Test
    void eventAndRiderStandFirst() throws IOException {
        notes("event = \"Ebbwood 165\"", "rider = \"Runa\"", "agreed = \"open at 190 W\"");
        assertThat(report("--brief")).startsWith("Ebbwood 165, Runa (race.fit), ");
        assertThat(report())
                .startsWith("Ebbwood 165, Runa (race.fit), ")
                .contains("THE RIDER'S NOTES", "Agreed for next time: open at 190 W.");
        assertThat(report("--format", "html")).contains("<title>Ebbwood 165, Runa (race.fit): ");
    }

    /** The sample stops twice, four minutes and two and a half (its README). Noted as punctures, no stop is a mistake. */
    @Test
    void aStopForAPunctureIsNoMistake() throws IOException {
        JsonNode without = json();
        JsonNode stops = finding(without, "stopped-time");
        assertThat(stops).as("the sample has stops").isNotNull();
        notes("[[stops]]", "what = \"puncture\"", "from = \"0:13\"", "to = \"7:12\"");
        assertThat(finding(json(), "stopped-time")).isNull();
        assertThat(report()).contains("Stops that by the rider's notes were not the rider's choice, ");
    }

    @Test
    void jsonHoldsAllOfThem() throws IOException {
        notes(
                "eaten_g_per_hour = [60, 0]",
                "[[stops]]",
                "what = \"puncture\"",
                "at = \"2:38\"",
                "[[bunch]]",
                "from = \"0:00\"",
                "to = \"0:48\"");
        JsonNode json = json();
        SchemaCheck.assertFits(JsonSchema.REVIEW, json.toString());
        assertThat(json.get("notes").toString())
                .isEqualTo("{\"event\":null,\"rider\":null,\"feel\":null,\"heat\":null,\"eatenGPerHour\":[60,0],"
                        + "\"stopsNotChosen\":[{\"what\":\"puncture\",\"startSeconds\":9480,\"endSeconds\":null}],"
                        + "\"inBunch\":[{\"startSeconds\":0,\"endSeconds\":2880}],\"agreed\":null}");
        assertThat(report("--brief")).doesNotContain("whether you rode");
    }

    /** What docs/notes.md promises of food: the notes are taken, and the option goes before them. */
    @Test
    void foodInTheNotesCountsUnlessTheOptionSaysOtherwise() throws IOException {
        assertThat(eaten(json())).isEqualTo("[]");
        notes("eaten_g_per_hour = [60, 0]");
        assertThat(eaten(json())).isEqualTo("[{\"g\":60},{\"g\":0}]");
        assertThat(eaten(json("--eaten", "55"))).isEqualTo("[{\"g\":55}]");
    }

    @Test
    void aBadNoteStopsNoReview() throws IOException {
        notes("event = \"Ebbwood 165\"", "feeel = \"good\"");
        Outcome outcome = review("--brief");
        assertThat(outcome.status()).isZero();
        assertThat(outcome.err())
                .isEqualTo("wattledger review: " + folder.resolve("race.notes.toml")
                        + ":2: feeel: unknown key; did you mean feel?; left out of the notes" + System.lineSeparator());
        assertThat(outcome.out()).startsWith("Ebbwood 165 (race.fit), ");
    }

    /** The sample lasts 7:12:20 and stops at 2:36:19 and 5:02:59: none of these times can be right. */
    @Test
    void timesThatDoNotFitTheRecordingAreNamedAndNoFacts() throws IOException {
        notes(
                "[[stops]]",
                "what = \"puncture\"",
                "at = \"9:00:00\"",
                "[[stops]]",
                "what = \"flat\"",
                "from = \"2:10\"",
                "to = \"2:17\"",
                "[[bunch]]",
                "from = \"8:00\"",
                "to = \"9:00\"",
                "[[bunch]]",
                "from = \"0:00\"",
                "to = \"12:00\"");
        Outcome outcome = review();
        assertThat(outcome.status()).isZero();
        String file = "wattledger review: " + folder.resolve("race.notes.toml");
        assertThat(outcome.err().lines())
                .containsExactly(
                        file
                                + ":1: stops: puncture, at 9:00:00, lies after the end of the recording at 7:12:20; left out"
                                + " of the notes",
                        file
                                + ":4: stops: flat, 2:10:00 to 2:17:00, lies where the ride did not stop; the note explains"
                                + " nothing",
                        file
                                + ":8: bunch: 8:00:00 to 9:00:00 lies after the end of the recording at 7:12:20; left out of"
                                + " the notes",
                        file + ":11: bunch: 0:00:00 to 12:00:00 ends after the recording, which ends at 7:12:20; cut to"
                                + " its end");
        assertThat(outcome.out().replaceAll("\\s+", " "))
                .contains(
                        "Stops that were not the rider's choice: flat, 2:10:00 to 2:17:00 (the recording shows no stop"
                                + " there). In a bunch: 0:00:00 to 7:12:20.")
                .doesNotContain("9:00:00", "Stops that by the rider's notes were not the rider's choice");
    }

    /** A next group may stand for a bunch of the notes; one that ends after the recording is cut there, too. */
    @Test
    void aNextGroupRestsOnTheBunchThatTheRecordingHolds() throws IOException {
        notes("[[bunch]]", "from = \"0:12\"", "to = \"12:00\"");
        Outcome outcome = review("--next-group", "50%");
        assertThat(outcome.status()).isZero();
        assertThat(outcome.err()).contains("cut to its end");
    }

    @Test
    void anotherFileCanBeNamed() throws IOException {
        notes("event = \"Not this\"");
        assertThat(report("--brief", "--notes", "../sample-rides/ebbwood-notes.toml"))
                .startsWith("Ebbwood 165, Runa (race.fit), ");
    }

    @Test
    void isForOneRide() {
        Outcome outcome = review(ride.toString(), "--notes", "x.toml");
        assertThat(outcome.status()).isEqualTo(2);
        assertThat(outcome.err())
                .contains("--notes is for one ride; of several, each has its RIDE.notes.toml beside it");
    }

    private JsonNode json(String... options) {
        List<String> asJson = new ArrayList<>(List.of("--format", "json"));
        asJson.addAll(List.of(options));
        Outcome outcome = review(asJson.toArray(String[]::new));
        assertThat(outcome.err()).isEmpty();
        return new JsonMapper().readTree(outcome.out());
    }

    private static String eaten(JsonNode json) {
        return json.get("energy").get("eaten").toString();
    }

    private static @Nullable JsonNode finding(JsonNode json, String kind) {
        for (JsonNode each : json.get("pacing").get("findings")) {
            if (each.get("kind").stringValue().equals(kind)) {
                return each;
            }
        }
        return null;
    }
}
