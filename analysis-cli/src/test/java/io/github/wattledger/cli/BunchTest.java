package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What the rider says of a bunch, and what a report makes of it. */
class BunchTest {
    private static final String HARD = "../sample-rides/over-hard-start.fit";
    private static final String EVEN = "../sample-rides/even-paced.fit";
    private static final String HEADING = "WORTH STAYING WITH THE BUNCH?";

    private static String report(String... words) {
        Outcome outcome = Outcome.of(words);
        assertThat(outcome.status()).as(outcome.err()).isZero();
        return outcome.out().replaceAll("\\s+", " ");
    }

    private static JsonNode bunch(String... words) {
        Outcome outcome = Outcome.of(words);
        assertThat(outcome.status()).as(outcome.err()).isZero();
        return new JsonMapper().readTree(outcome.out()).get("pacing").get("bunch");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--bunch 1:21-0:12 | --bunch 1:21-0:12: expected two times in hours and minutes, the later one last, for instance 0:12-1:21",
                "--bunch 12 | --bunch 12: expected two times in hours and minutes, the later one last, for instance 0:12-1:21",
                "--bunch 0:12-0:30,0:40-1:00 | --bunch 0:12-0:30,0:40-1:00: expected two times in hours and minutes, the later one last, for instance 0:12-1:21; --bunch may be given several times",
                "--bunch 0:10-0:30 --bunch 0:20-0:40 | --bunch 0:10-0:30: the bunches 0:10:00 to 0:30:00 and 0:20:00 to 0:40:00 overlap",
                "--bunch 2:00-9:10 | --bunch 2:00-9:10: ends after the end of the ride, which is 7:12:20 long; give times within it",
                "--bunch 0:12-1:21 --bunch 8:00-9:00 | --bunch 8:00-9:00: lies after the end of the ride, which is 7:12:20 long; give times within it",
                "--bunch 8:00-9:00 --from 1:00 | --bunch 8:00-9:00: lies after the end of the ride, which is 7:12:20 long; give times within it",
                "--bunch 0:12-1:21 --from 9:00 | --from 9:00: the part begins at 9:00:00, but the ride ends at 7:12:20; choose an earlier start",
                "--bunch 0:10-0:30 --alone | --alone cannot be combined with --bunch",
                "--next-group 50% | --next-group needs --bunch: the bunch that could have been let go",
                "--bunch 0:10-0:30 --next-group 140% | --next-group 140%: expected a share from 0% to 100%, for instance 40%",
                "--bunch 0:10-0:30 --format csv | --bunch, --alone and --next-group change nothing in --format csv"
            })
    void whatCannotBeTakenIsOneLine(String options, String message) {
        Outcome outcome = Outcome.of(("review " + HARD + " " + options).split(" ", -1));
        assertThat(outcome.status()).isEqualTo(2);
        assertThat(outcome.out()).isEmpty();
        assertThat(outcome.err().lines().findFirst().orElseThrow()).startsWith("wattledger review: " + message);
    }

    @Test
    void isForOneRide() {
        Outcome outcome = Outcome.of("review", HARD, EVEN, "--bunch", "0:10-0:30");
        assertThat(outcome.status()).isEqualTo(2);
        assertThat(outcome.err()).contains("--bunch, --alone and --next-group are for one ride");
    }

    /** Without a word nothing is said; alone, only that; where nothing was ridden too hard there is no decision. */
    @Test
    void saysNothingWhereThereIsNothingToSay() {
        assertThat(report("review", HARD)).doesNotContain(HEADING);
        assertThat(report("review", HARD, "--alone"))
                .contains(HEADING + " You say that you rode in no bunch: the prices hold as they stand.")
                .doesNotContain("whether you rode");
        assertThat(report("review", EVEN, "--bunch", "0:05-2:10")).contains("so there is no decision to judge.");
    }

    /** Where a ride is no race, a told bunch changes no number, and every report says so; without a word it says nothing. */
    @Test
    void aRideThatIsNoRaceSaysThatABunchChangesNothing() {
        String changesNothing = "What you say of a bunch changes nothing here: the ride is not judged as a race.";
        for (String[] told : new String[][] {{"--bunch", "0:12-1:21"}, {"--alone"}}) {
            String[] words = plus(new String[] {"review", HARD, "--effort", "training"}, told);
            assertThat(report(words)).contains(changesNothing);
            assertThat(report(plus(words, "--brief"))).contains(changesNothing);
            assertThat(report(plus(words, "--format", "html"))).contains(changesNothing);
        }
        assertThat(report("review", HARD, "--effort", "training")).doesNotContain(changesNothing);
        assertThat(report("review", HARD, "--effort", "training", "--brief")).doesNotContain(changesNothing);
        assertThat(report("review", HARD, "--alone")).doesNotContain(changesNothing);
    }

    private static String[] plus(String[] words, String... more) {
        return Stream.concat(Stream.of(words), Stream.of(more)).toArray(String[]::new);
    }

    /** A bunch that reaches to the end was not left; of two bunches both are told. */
    @Test
    void theEndAndTwoBunchesAreNamed() {
        assertThat(report("review", HARD, "--bunch", "0:12-7:12:20"))
                .contains("to stay with the bunch, in which you rode to the end, you say.");
        String[] two = {"review", HARD, "--bunch", "0:12-0:30", "--bunch", "0:40-1:21"};
        assertThat(report(two)).contains("which you left at 0:30:00, you say.", "which you left at 1:21:00, you say.");
        assertThat(Outcome.of(plus(two, "--brief")).out().replaceAll("\\s+", " "))
                .as("the longer one, where there is no room for both")
                .contains("Staying in the bunch until 1:21: ");
        assertThat(report("review", HARD, "--bunch", "3:00-4:00"))
                .contains(
                        "What you rode too hard early lay outside it, or cannot be ridden again, so there is no decision");
    }

    /**
     * The hard start is 0:12:06 to 1:21:02, 69 min; of these 34 lie before 0:46 and 35 after it. Two minutes of told bunch more
     * take two minutes of hard riding out of the price, not all of it.
     */
    @Test
    void aBunchForAPartOfTheStartLeavesTheRestItsPrice() {
        assertThat(report("review", HARD, "--bunch", "0:12-0:46"))
                .contains("Staying in the bunch until 0:46: open, only the rest is priced.")
                .contains("34 min of the 69 min of the over-hard start at ")
                .contains("The rest of it lay outside the bunch, and only that rest is priced.")
                .contains("(the 35 of 69 min outside the bunch ridden again without it).")
                .contains("Next time: Outside the bunch, hold this stretch to 193 W or 150 bpm. Whether to let such a"
                        + " bunch go is open. If its pace costs you later, let it go.");
        double before = allAtOnce("0:12-0:46");
        double after = allAtOnce("0:12-0:48");
        assertThat(after).isBetween(before - 1.5, before);
        assertThat(report("review", HARD, "--bunch", "0:12-0:46", "--explain", "over-hard-start"))
                .contains("0:12:06 to 0:46:00: in the bunch, as ridden.")
                .contains("Part 5 rides again only what lay outside the bunch; what lay in it stays as it was ridden.");
    }

    private static double allAtOnce(String bunch) {
        Outcome outcome = Outcome.of("review", HARD, "--bunch", bunch, "--format", "json");
        for (JsonNode entry : new JsonMapper()
                .readTree(outcome.out())
                .get("pacing")
                .get("ledger")
                .get("entries")) {
            if (entry.get("label").stringValue().equals("all of these repaired at once")) {
                return entry.get("minutesHigh").doubleValue();
            }
        }
        throw new AssertionError(outcome.err());
    }

    /** Whoever is asked until when finds the break-even where text, brief lines, page and JSON agree. */
    @Test
    void allReportsSayTheSame() {
        String[] words = {"review", HARD, "--bunch", "0:00-1:21"};
        String text = report(words);
        JsonNode decision = bunch("review", HARD, "--bunch", "0:00-1:21", "--format", "json")
                .get("decisions")
                .get(0);
        String work = percent(decision.get("breakEvenSavingEqualWork"));
        String effort = percent(decision.get("breakEvenSavingEqualNormalizedPower"));
        String sentence = "Letting it go was faster unless the bunch saved you more than " + work
                + " of the drag if the effort cost you nothing later, or " + effort
                + " if it cost you as much as normalized power says.";
        assertThat(text).contains(HEADING).contains(sentence);
        assertThat(decision.get("leftSeconds").intValue()).isEqualTo(4860); // 1:21
        assertThat(report("review", HARD, "--bunch", "0:00-1:21", "--format", "html"))
                .contains(sentence)
                .contains("in a bunch, as the rider says")
                .contains("class=\"in-bunch\"");
        Outcome brief = Outcome.of("review", HARD, "--bunch", "0:00-1:21", "--brief");
        assertThat(brief.out().lines().count()).isLessThanOrEqualTo(15);
        assertThat(brief.out().replaceAll("\\s+", " "))
                .contains("Staying in the bunch until 1:21: open, its cost in no total; equally fast had it saved "
                        + work + " to " + effort + " of the drag.");
        assertThat(report("review", HARD, "--bunch", "0:00-1:21", "--explain", "over-hard-start"))
                .contains("7. THE BUNCH, LET GO")
                .contains("Had it saved 35 %");
    }

    private static String percent(JsonNode share) {
        return Math.round(100 * share.doubleValue()) + " %";
    }

    /** By definition: a next group that shelters for a part of the way makes letting go dearer to hold against. */
    @Test
    void aNextGroupRaisesTheBreakEven() {
        JsonNode none = bunch("review", HARD, "--bunch", "0:00-1:21", "--format", "json");
        JsonNode half = bunch("review", HARD, "--bunch", "0:00-1:21", "--next-group", "50%", "--format", "json");
        String name = "breakEvenSavingEqualNormalizedPower";
        assertThat(half.get("decisions").get(0).get(name).doubleValue())
                .isGreaterThan(none.get("decisions").get(0).get(name).doubleValue());
        assertThat(half.get("nextGroupShare").doubleValue()).isEqualTo(0.5);
    }

    /** The notes of the ride say it as well as the options, which go before them. */
    @Test
    void theNotesOfTheRideSayItToo(@TempDir Path folder) throws IOException {
        Path notes = Files.writeString(folder.resolve("n.toml"), "[[bunch]]\nfrom = \"0:00\"\nto = \"1:21\"\n");
        String noted = notes.toString();
        JsonNode told = bunch("review", HARD, "--bunch", "0:00-1:21", "--format", "json");
        assertThat(bunch("review", HARD, "--notes", noted, "--format", "json")).isEqualTo(told);
        assertThat(bunch("review", HARD, "--notes", noted, "--alone", "--format", "json")
                        .get("alone")
                        .booleanValue())
                .isTrue();
        assertThat(bunch("review", HARD, "--notes", noted, "--next-group", "50%", "--format", "json")
                        .get("toldStretches"))
                .isEqualTo(told.get("toldStretches"));
    }
}
