package io.github.wattledger.cli.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

/** The checks of the fuzzing see what they are there for; a check that sees nothing would let everything pass. */
class PromisesTest {
    private final Promises promises = new Promises();

    @Test
    void aMessageIsOneLineOfWordsForPeople() {
        promises.message("review", "wattledger review: ride.fit: is cut short\n", 1);
        assertThat(promises.broken()).isEmpty();
        promises.message("review", "wattledger review: a\nwattledger review: b\n", 1);
        promises.message("review", "Exception in thread main\n", 1);
        promises.message("review", "wattledger review: internal failure: java.lang.IllegalStateException\n", 1);
        promises.message("review", "wattledger review: a\u0007b\n", 1);
        assertThat(promises.broken()).hasSizeGreaterThanOrEqualTo(4);
    }

    @Test
    void aTextHasEightyColumnsAndNoMissingNumber() {
        promises.text("x".repeat(80) + "\n\"NaN\" in the file\n");
        assertThat(promises.broken()).isEmpty();
        promises.text("x".repeat(81));
        promises.text("mean power NaN W");
        assertThat(promises.broken()).hasSize(2);
    }

    @Test
    void aPageHasNoMissingNumberOutsideOfItsScript() {
        String page = "<!DOCTYPE html><script>null</script><p>\"NaN\"</p>%s</html>";
        promises.page(page.formatted("<p>200 W</p>"));
        assertThat(promises.broken()).isEmpty();
        promises.page(page.formatted("<p>NaN W</p>"));
        promises.page(page.formatted("<path d=\"M0 NaN\"/>"));
        assertThat(promises.broken()).hasSize(2);
    }

    @Test
    void jsonParsesAndHasOnlyFiniteNumbers() {
        promises.json("{\"a\": 1}", "");
        assertThat(promises.broken()).isEmpty();
        promises.json("{\"a\": NaN}", "");
        promises.json("{\"a\": 1e999}", "");
        promises.json("{\"a\": 1", "");
        promises.json("{}", "review");
        assertThat(promises.broken()).hasSizeGreaterThanOrEqualTo(4);
    }

    /** Totals that no ride has, one at a time: 1,000 s cannot be 40 km. */
    @Nested
    class Totals {
        private void check(String load, String rest) {
            JsonNode review = promises.json(
                    "{\"load\":{\"elapsedSeconds\":1000,\"timerSeconds\":1000,\"movingSeconds\":900,\"stoppedSeconds\":100,"
                            + load + "}," + rest + "}",
                    "");
            new RideTotals(promises).review(review);
        }

        private static final String CURVE = "\"curve\":[{\"seconds\":1,\"watts\":300},{\"seconds\":60,\"watts\":200}]";

        @Test
        void ofARideAreBelieved() {
            check("\"distanceM\":8000,\"ascentM\":100,\"averagePowerW\":150,\"workKJ\":150", CURVE);
            assertThat(promises.broken()).isEmpty();
        }

        @Test
        void beyondWhatIsPossibleAreNot() {
            check("\"distanceM\":40000", CURVE);
            check("\"ascentM\":9000", CURVE);
            check("\"averagePowerW\":301", CURVE);
            check("\"workKJ\":301", CURVE);
            check("\"averageHeartRateBpm\":150,\"maximumHeartRateBpm\":140", CURVE);
            check("\"ascentM\":1", "\"curve\":[{\"seconds\":1,\"watts\":300},{\"seconds\":60,\"watts\":4}]");
            check("\"ascentM\":1", "\"curve\":[{\"seconds\":1,\"watts\":300},{\"seconds\":60,\"watts\":400}]");
            assertThat(promises.broken()).hasSize(7);
        }
    }

    @Test
    void aSampleRideCutAndPutTogetherIsRead() throws IOException {
        FuzzRides rides = FuzzRides.of(Path.of("..", "sample-rides"));
        FuzzRides.Seed seed = rides.any(new java.util.Random(1), true);
        assertThat(FitMessages.checksum("123456789".getBytes(java.nio.charset.StandardCharsets.US_ASCII)))
                .isEqualTo(0xBB3D);
        assertThat(seed.file().length).isGreaterThan(10_000);
    }
}
