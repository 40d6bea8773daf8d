package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** {@code wattledger compare} from its arguments to what it prints. */
class CompareCommandTest {
    private static final String HARD = "../sample-rides/over-hard-start.fit";
    private static final String EVEN = "../sample-rides/even-paced.fit";

    @TempDir
    Path temp;

    private static Outcome run(String... arguments) {
        return Outcome.of(arguments);
    }

    @Test
    void theTextFitsAndTellsWhoWasAhead() {
        Outcome result = run("compare", HARD, EVEN, EVEN);
        assertThat(result.err()).isEmpty();
        assertThat(result.status()).isZero();
        assertThat(result.out().lines())
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(80));
        // By the story of the samples the even race took less time over the same roads.
        assertThat(result.out())
                .startsWith("Ride 2 is ")
                .contains(" ahead of ride 1 at km 16")
                .contains("Ride 3 is ");
    }

    @Test
    void theOtherWayRoundSignsTurn() {
        JsonNode one = json(HARD, EVEN);
        JsonNode other = json(EVEN, HARD);
        assertThat(gap(one)).isNegative();
        // Points of one ride lie up to 50 m from those of the other, and with them the last that is compared.
        assertThat(gap(other)).isCloseTo(-gap(one), within(15.0));
    }

    private static JsonNode json(String first, String second) {
        return new JsonMapper()
                .readTree(run("compare", first, second, "--format", "json").out());
    }

    private static double gap(JsonNode json) {
        return json.get("others").get(0).get("gap").get("elapsedSeconds").asDouble();
    }

    @Test
    void aPartBeginsWithoutAGap() {
        JsonNode json = new JsonMapper()
                .readTree(run("compare", HARD, EVEN, "--from", "40km", "--to", "80km", "--format", "json")
                        .out());
        JsonNode other = json.get("others").get(0);
        assertThat(other.get("fromM").asDouble()).isBetween(40_000.0, 40_100.0);
        assertThat(other.get("toM").asDouble()).isBetween(79_900.0, 80_000.0);
        assertThat(other.get("gapSeconds").get(other.get("fromPoint").asInt()).asDouble())
                .isZero();
    }

    @Test
    void oneRideIsTooFew() {
        Outcome result = run("compare", HARD);
        assertThat(result.status()).isEqualTo(2);
        assertThat(result.err().lines())
                .containsExactly("wattledger compare: give two rides or more", "See 'wattledger compare --help'.");
    }

    @Test
    void aPartThatEndsBeforeItBeginsIsWrongUsage() {
        Outcome result = run("compare", HARD, EVEN, "--from", "80km", "--to", "40km");
        assertThat(result.status()).isEqualTo(2);
        assertThat(result.err().lines())
                .containsExactly(
                        "wattledger compare: --to 40km: must come after --from", "See 'wattledger compare --help'.");
    }

    /** The first recording shows 40 km when as much time has gone as another command leaves out from 40 km on. */
    @Test
    void aTimeAndADistanceNameTheSamePlace() throws IOException {
        JsonNode part = new JsonMapper()
                .readTree(run("what-if", HARD, "--from", "40km", "--with-power", "+5%", "--format", "json")
                        .out());
        int second = part.get("source").get("startSeconds").asInt();
        assertThat(second).isBetween(3600, 2 * 3600);
        JsonNode byTime = new JsonMapper()
                .readTree(run("compare", HARD, EVEN, "--from", second + "s", "--format", "json")
                        .out());
        JsonNode byDistance = new JsonMapper()
                .readTree(run("compare", HARD, EVEN, "--from", "40km", "--format", "json")
                        .out());
        // A second of a descent is up to 20 m, points lie 100 m apart.
        assertThat(byTime.get("others").get(0).get("fromM").asDouble())
                .isCloseTo(byDistance.get("others").get(0).get("fromM").asDouble(), within(100.0));
    }

    @Test
    void theReportNeverOverwritesARide() throws IOException {
        Path ride = Files.copy(Path.of(EVEN), temp.resolve("even.fit"));
        Outcome result = run("compare", HARD, ride.toString(), "--output", ride.toString());
        assertThat(result.status()).isEqualTo(2);
        assertThat(result.err().lines().findFirst())
                .contains("wattledger compare: --output " + ride + ": would overwrite the ride itself");
        assertThat(ride).hasSameBinaryContentAs(Path.of(EVEN));
    }

    @Test
    void aFileThatIsNoRideIsOneLine() throws IOException {
        Path broken = Files.writeString(temp.resolve("broken.fit"), "not a ride");
        Outcome result = run("compare", HARD, broken.toString());
        assertThat(result.status()).isEqualTo(3);
        assertThat(result.out()).isEmpty();
        assertThat(result.err().lines()).hasSize(1);
        assertThat(result.err()).contains("broken.fit");
    }

    @Test
    void aRideElsewhereIsOneLineThatSaysWhatToDo() throws IOException {
        StringBuilder table = new StringBuilder("time,latitude,longitude,distance,power\n");
        for (int second = 0; second < 1200; second++) {
            table.append(second)
                    .append(",-20.")
                    .append(100_000 + 7 * second)
                    .append(",57.5,")
                    .append(8 * second)
                    .append(",200\n");
        }
        Path elsewhere = Files.writeString(temp.resolve("elsewhere.csv"), table);
        Outcome result = run("compare", HARD, elsewhere.toString());
        assertThat(result.status()).isEqualTo(3);
        assertThat(result.err().lines()).hasSize(1);
        assertThat(result.err()).contains("shares no course with the first ride; compare rides over the same roads");
    }

    @Test
    void theReportCanGoToAFile() throws IOException {
        Path target = temp.resolve("compare.html");
        Outcome result = run("compare", HARD, EVEN, "--format", "html", "--output", target.toString());
        assertThat(result.status()).isZero();
        assertThat(result.out()).isEmpty();
        assertThat(Files.readString(target)).startsWith("<!DOCTYPE html>");
    }
}
