package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.json.JsonSchema;
import io.github.wattledger.testing.SchemaCheck;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.MissingNode;
import tools.jackson.databind.node.ObjectNode;

/** {@code wattledger plan} from its arguments to what it prints, and a review held against the plan. */
class PlanCommandTest {
    private static final String COURSE = "../docs/examples/ebbwood-165.gpx";
    private static final String RIDE = "../sample-rides/over-hard-start.fit";
    private static final String[] RIDER = {"--threshold-power", "250", "--mass", "74", "--bicycle-mass", "11"};

    @TempDir
    Path temp;

    private static Outcome plan(String... more) {
        String[] words = new String[2 + RIDER.length + more.length];
        words[0] = "plan";
        words[1] = COURSE;
        System.arraycopy(RIDER, 0, words, 2, RIDER.length);
        System.arraycopy(more, 0, words, 2 + RIDER.length, more.length);
        return Outcome.of(words);
    }

    @Test
    void theTextFitsAndSaysWhatToDo() {
        Outcome result = plan();
        assertThat(result.err()).isEmpty();
        assertThat(result.status()).isZero();
        assertThat(result.out().lines())
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(80));
        assertThat(result.out())
                .startsWith("Ebbwood 165: 16")
                .contains(
                        "HOW TO BEGIN",
                        "CAPS BY GROUND",
                        "First feed",
                        "Second feed",
                        "physician",
                        "rules of your event");
    }

    @Test
    void theJsonHasTheNumbersOfTheText() {
        JsonNode json = new JsonMapper().readTree(plan("--format", "json").out());
        SchemaCheck.assertFits(JsonSchema.PLAN, json.toString());
        assertThat(json.get("schema").stringValue()).isEqualTo(JsonSchema.PLAN.id());
        assertThat(json.get("course").get("sha256").stringValue()).hasSize(64);
        int cap = json.get("opening").get("capW").asInt();
        int byCaps = (int) Math.round(json.get("opening").get("byCapsW").asDouble());
        assertThat(plan().out().replaceAll("\\s+", " "))
                .contains("stay under " + cap
                        + " W normalized; on each climb the caps hold from the first one on. By the caps it is about "
                        + byCaps + " W.");
    }

    @Test
    void aHotDayComesWithItsWords() {
        assertThat(plan("--temperature", "20").out()).doesNotContain("Heat is expected");
        assertThat(plan("--temperature", "31").out()).contains("Heat is expected", "emergency");
    }

    @Test
    void theCardIsOnePageOfLargeFigures() {
        String card = plan("--format", "html", "--stops", "0:15").out();
        assertThat(card)
                .startsWith("<!DOCTYPE html>")
                .contains(
                        "A5",
                        "Ebbwood 165",
                        "most likely about ",
                        "Normalized power ",
                        "time standing ",
                        "15 min",
                        "First ",
                        " normalized</p>",
                        "On each climb its cap holds from the first one on; by the caps it is about ",
                        "physician");
        assertThat(card).doesNotContain("<script", "http:");
    }

    /** A course at 2,100 m or so says what height leaves, in the text and on the card; the same course by the sea does not. */
    @Test
    void aHighCourseSaysWhatHeightLeaves() throws IOException {
        String low = Files.readString(Path.of(COURSE));
        String high = Pattern.compile("<ele>([-0-9.]+)</ele>")
                .matcher(low)
                .replaceAll(each -> "<ele>" + (2000 + Double.parseDouble(each.group(1))) + "</ele>");
        String file = Files.writeString(temp.resolve("high.gpx"), high).toString();
        assertThat(Outcome.of("plan", file, "--threshold-power", "250").out().replaceAll("\\s+", " "))
                .contains("on average. A rider who lives near the sea holds", "lower them by as much");
        assertThat(Outcome.of("plan", file, "--threshold-power", "250", "--format", "html")
                        .out())
                .contains("A rider who lives near the sea holds");
        assertThat(plan().out()).doesNotContain("near the sea");
    }

    /** A range and the dietitian for an adult, nothing at all for somebody who may be under 18. */
    @Test
    void carbohydrateComesAsARangeAndNotForMinors() throws IOException {
        assertThat(plan().out()).contains("WHAT IT ASKS OF THE BODY", "g of carbohydrate an hour", "dietitian");
        Path young = Files.writeString(temp.resolve("young.toml"), "birth_year = 2010\n");
        assertThat(plan("--rider", young.toString(), "--day", "2026-06-14").out())
                .doesNotContain("carbohydrate", "WHAT IT ASKS");
    }

    /** The season of the sample: five races, of which three were opened too hard, and no long stops. */
    @Test
    void ownRidesStandBesideThePlan() {
        Path store = temp.resolve("season.sqlite");
        assertThat(Outcome.of("season", "../sample-rides", "--store", store.toString())
                        .status())
                .isZero();
        String[] own = {"--season", store.toString(), "--day", "2026-06-14", "--threshold-heart-rate", "165"};
        Outcome result = plan(own);
        assertThat(result.err()).isEmpty();
        assertThat(result.out().replaceAll("\\s+", " "))
                .contains(
                        "what your own long rides allow",
                        "You opened your last 5 races at a median of 1.1",
                        "whichever comes first",
                        "never a goal",
                        "from your own rides");
        assertThat(result.out().lines())
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(80));
        String[] asJson = {"--format", "json", "--season", store.toString(), "--day", "2026-06-14"};
        JsonNode json = new JsonMapper().readTree(plan(asJson).out());
        SchemaCheck.assertFits(JsonSchema.PLAN, json.toString());
        assertThat(json.get("rider").get("lastRaces").asInt()).isEqualTo(5);
        assertThat(json.get("target").get("sustainable").get("source").stringValue())
                .isEqualTo("own-rides");
        // Before the first ride nothing is known.
        assertThat(plan("--season", store.toString(), "--day", "2026-04-01")
                        .out()
                        .replaceAll("\\s+", " "))
                .contains("the guide from threshold power 250 W")
                .doesNotContain("You opened");
        Outcome none = plan("--season", temp.resolve("nowhere").toString());
        assertThat(none.status()).isEqualTo(3);
        assertThat(none.err())
                .isEqualTo("wattledger plan: --season: " + temp.resolve("nowhere")
                        + ": there is no season's store; run 'wattledger season' on the folder first\n");
    }

    /** docs/plan.md: without --rider the profile in the folder of the season counts, and a plan without one says so. */
    @Test
    void theProfileOfTheSeasonIsTaken() throws IOException {
        Path folder = Files.createDirectory(temp.resolve("rides"));
        Files.copy(Path.of("../sample-rides/even-paced.fit"), folder.resolve("even-paced.fit"));
        assertThat(Outcome.of("season", folder.toString()).status()).isZero();
        String[] words = {"--season", folder.toString(), "--day", "2026-06-14"};
        String none = "No rider profile was read: none stands in the folder of the course or of the season, and --rider"
                + " names none.";
        assertThat(plan(words).out().replaceAll("\\s+", " ")).contains(none, "carbohydrate");
        Path profile = Files.writeString(folder.resolve("rider.toml"), "birth_year = 2010\n");
        assertThat(plan(words).out().replaceAll("\\s+", " ")).doesNotContain(none, "carbohydrate");
        Path store = folder.resolve(SeasonStoreFile.NAME);
        assertThat(plan("--season", store.toString(), "--day", "2026-06-14").out())
                .doesNotContain("carbohydrate");
        Files.delete(profile);
        assertThat(plan().out().replaceAll("\\s+", " ")).doesNotContain(none);
    }

    /** No cap above 95 % of threshold power 250 W: 237.5 W is the most that a plan can give. */
    @Test
    void aPowerThatNoPlanGivesIsNotCalledWhatWasAsked() {
        assertThat(plan("--target", "500").out().replaceAll("\\s+", " "))
                .contains(
                        "You asked for 500 W; 237 W is the most: no cap may lie above 95 % of threshold power nor above a"
                                + " known critical power. By the guide from threshold power 250 W you can hold",
                        ", so this is more than can be expected.")
                .doesNotContain("as you ask");
        assertThat(plan("--time", "3:00").out().replaceAll("\\s+", " "))
                .contains("Your time asks for more than normalized power 237 W, and that is the most: no cap may lie");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--target 200 --time 7:00 | a target and a goal time are given",
                "--wind 3 | a wind needs both its speed and where it comes from",
                "--surface 5-3=0.01 | --surface 5-3=0.01: expected two places, the nearer one first, and a rolling resistance, such as 12-30.5=0.012",
                "--surface 5-9=0.01 --surface 200-300=0.01 | --surface 200-300=0.01: begins after the end of the course, which is 165.1 km long",
                "--time 0:05 | --time 0:05: expected 0:20:00 to 111:06:40",
                "--stops soon | --stops soon: expected a time such as 7:30 (hours and minutes) or 45min",
                "--ascent 40000 | --ascent 40000: expected 0 to 30000 m",
                "--wind 30 | --wind 30: expected 0 to 20 m/s",
                "--fastest 200 | --fastest 200: expected 18 to 108 km/h",
                "--route x | expected a number from 1"
            })
    void whatDoesNotFitIsWrongUsage(String words, String message) {
        Outcome result = plan(words.split(" "));
        assertThat(result.status()).isEqualTo(2);
        assertThat(result.err()).contains(message);
    }

    @Test
    void aPlanNeedsAThreshold() {
        Outcome result = Outcome.of("plan", COURSE);
        assertThat(result.status()).isEqualTo(2);
        assertThat(result.err()).contains("a plan needs your threshold power");
    }

    @Test
    void whatIsNoCourseGetsOneLine() throws IOException {
        Path file = Files.writeString(temp.resolve("notes.txt"), "not a course");
        Outcome result = Outcome.of("plan", file.toString(), "--threshold-power", "250");
        assertThat(result.status()).isEqualTo(3);
        assertThat(result.err().lines()).hasSize(1).first().asString().contains("is not a course in a known format");
    }

    @Test
    void aReviewOfACourseNamesThePlan() {
        Outcome result = Outcome.of("review", COURSE);
        assertThat(result.status()).isEqualTo(3);
        assertThat(result.err()).contains("wattledger plan");
    }

    /** By the story of the sample the rider began far too hard. */
    @Test
    void aRideIsHeldAgainstThePlan() {
        Path file = temp.resolve("plan.json");
        assertThat(plan("--format", "json", "--output", file.toString()).status())
                .isZero();
        Outcome result = Outcome.of("review", RIDE, "--threshold-power", "250", "--plan", file.toString());
        assertThat(result.err()).isEmpty();
        assertThat(result.status()).isZero();
        assertThat(result.out()).contains("AGAINST THE PLAN", "slower than planned", "over-hard", "First feed");
        assertThat(result.out().replaceAll("\\s+", " "))
                .contains(
                        "Kept: within 5 % of the cap on the whole. Above: more than 5 % above it for over 8 min in all."
                                + " Descents are left out.",
                        " to planned riding power the day stops in all ");
        assertThat(result.out().indexOf("AGAINST THE PLAN"))
                .isLessThan(result.out().indexOf("These are numbers about effort"));
        assertThat(result.out().lines())
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(80));
    }

    /** The sections add up to the whole, in JSON and on the page as in the text; a ride that is no race is held against it, too. */
    @Test
    void jsonAndPageHoldTheRideAgainstThePlan() {
        Path file = temp.resolve("plan.json");
        plan("--format", "json", "--output", file.toString());
        String[] base = {"review", RIDE, "--threshold-power", "250", "--plan", file.toString(), "--effort", "training"};
        JsonNode json = new JsonMapper().readTree(with(base, "--format", "json").out());
        SchemaCheck.assertFits(JsonSchema.REVIEW, json.toString());
        JsonNode against = json.get("againstPlan");
        double sum = 0;
        for (JsonNode section : against.get("sections")) {
            sum += section.get("differenceSeconds").asDouble();
        }
        assertThat(against.get("differenceSeconds").asDouble()).isCloseTo(sum, within(0.01));
        assertThat(against.get("opening").get("isAboveCap").asBoolean()).isTrue();
        assertThat(with(base, "--format", "html").out())
                .contains("<h2 id=\"against-plan\">Against the plan</h2>", "First feed", "againstPlan.sections[0]");
        assertThat(with(base).out()).contains("AGAINST THE PLAN", "above it.");
        JsonNode without = new JsonMapper()
                .readTree(Outcome.of("review", RIDE, "--format", "json").out());
        assertThat(without.get("againstPlan").isNull()).isTrue();
        Outcome csv = with(base, "--format", "csv");
        assertThat(csv.status()).isEqualTo(2);
        assertThat(csv.err()).contains("--plan is for --format text, json and html");
    }

    /** The opening of the ride is at 249 W and harder than its middle, by the truth of its simulation. */
    @Test
    void thePlanDecidesWhetherTheStartWasOverHard() throws IOException {
        JsonNode start = overHardStart(200);
        assertThat(start.get("evidence").get("plannedCapW").asDouble()).isEqualTo(200);
        assertThat(start.get("advice").asString()).contains(" to 200 W");
        String[] base = {
            "review",
            RIDE,
            "--threshold-power",
            "250",
            "--plan",
            temp.resolve("plan.json").toString()
        };
        assertThat(with(base, "--brief").out())
                .contains("against the 200 W of the plan")
                .doesNotContain("AGAINST THE");
        assertThat(with(base, "--explain", "over-hard-start").out()).contains("plannedCapW");
        assertThat(overHardStart(260).isMissingNode()).isTrue();
    }

    @Test
    void aPlanWithoutAnOpeningIsRefused() throws IOException {
        Path file = temp.resolve("plan.json");
        plan("--format", "json", "--output", file.toString());
        ObjectNode plan = (ObjectNode) new JsonMapper().readTree(Files.readString(file));
        ((ObjectNode) plan.get("opening")).put("capW", -5);
        Files.writeString(file, plan.toString());
        Outcome refused = Outcome.of("review", RIDE, "--plan", file.toString());
        assertThat(refused.status()).isEqualTo(3);
        assertThat(refused.err()).contains("plan.json: an opening of", "under -5.0 W, expected more than 0 of both");
    }

    private JsonNode overHardStart(double plannedCapW) throws IOException {
        Path file = temp.resolve("plan.json");
        plan("--format", "json", "--output", file.toString());
        ObjectNode plan = (ObjectNode) new JsonMapper().readTree(Files.readString(file));
        ((ObjectNode) plan.get("opening")).put("capW", plannedCapW);
        Files.writeString(file, plan.toString());
        JsonNode review = new JsonMapper()
                .readTree(Outcome.of(
                                "review",
                                RIDE,
                                "--threshold-power",
                                "250",
                                "--plan",
                                file.toString(),
                                "--format",
                                "json")
                        .out());
        for (JsonNode finding : review.get("pacing").get("findings")) {
            if (finding.get("kind").asString().equals("over-hard-start")) {
                return finding;
            }
        }
        return MissingNode.getInstance();
    }

    private static Outcome with(String[] words, String... more) {
        String[] all = Arrays.copyOf(words, words.length + more.length);
        System.arraycopy(more, 0, all, words.length, more.length);
        return Outcome.of(all);
    }

    @Test
    void whatIsNoPlanGetsOneLine() throws IOException {
        Path file = Files.writeString(temp.resolve("plan.json"), "{\"schema\": \"something\"}");
        Outcome result = Outcome.of("review", RIDE, "--plan", file.toString());
        assertThat(result.status()).isEqualTo(3);
        assertThat(result.err()).contains("is no plan (wattledger.plan/1); make it with");
        Outcome broken = Outcome.of(
                "review", RIDE, "--plan", Files.writeString(file, "{").toString());
        assertThat(broken.status()).isEqualTo(3);
        assertThat(broken.err()).contains("is no JSON", "make it with 'wattledger plan --format json'");
        Path gone = temp.resolve("gone.json");
        assertThat(Outcome.of("review", RIDE, "--plan", gone.toString()).err())
                .isEqualTo("wattledger review: " + gone + ": there is no such file; check the path\n");
    }
}
