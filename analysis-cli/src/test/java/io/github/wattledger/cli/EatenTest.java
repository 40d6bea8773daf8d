package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What the rider says was eaten, and what a report makes of it. */
class EatenTest {
    private static final String HARD = "../sample-rides/over-hard-start.fit";

    private static JsonNode energy(String... more) {
        String[] words = new String[more.length + 4];
        words[0] = "review";
        words[1] = HARD;
        words[2] = "--format";
        words[3] = "json";
        System.arraycopy(more, 0, words, 4, more.length);
        Outcome outcome = Outcome.of(words);
        assertThat(outcome.status()).as(outcome.err()).isZero();
        return new JsonMapper().readTree(outcome.out()).get("energy");
    }

    @ParameterizedTest
    @ValueSource(strings = {"181", "-5", "much", "60//40", "60/181", "nan", "1e2"})
    void whatCannotBeTakenIsRefusedByName(String eaten) {
        Outcome outcome = Outcome.of("review", HARD, "--eaten=" + eaten);
        assertThat(outcome.status()).isEqualTo(2);
        assertThat(outcome.err().lines().findFirst())
                .contains("wattledger review: --eaten " + eaten
                        + ": expected grams of carbohydrate an hour from 0 to 180,"
                        + " for instance 55, or hour by hour as in 60/60/40");
    }

    /** 62,5 could be 62.5 g, or 62 g and then 5 g. */
    @ParameterizedTest
    @ValueSource(strings = {"62,5", "60,60,40"})
    void aCommaIsNotGuessedAt(String eaten) {
        Outcome outcome = Outcome.of("review", HARD, "--eaten=" + eaten);
        assertThat(outcome.status()).isEqualTo(2);
        assertThat(outcome.err().lines().findFirst())
                .contains("wattledger review: --eaten " + eaten + ": write the decimals with a point and the hours with"
                        + " a slash, such as 62.5 or 60/60/40");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"--format csv", "--format splits", "--explain fade"})
    void isRefusedWhereItWouldChangeNothing(String other) {
        String[] words = other.split(" ", -1);
        Outcome outcome = Outcome.of("review", HARD, "--eaten", "55", words[0], words[1]);
        assertThat(outcome.status()).isEqualTo(2);
        assertThat(outcome.err())
                .contains("--eaten is for --format text, json and html, and not together with --explain");
    }

    @Test
    void isForOneRide() {
        Outcome outcome = Outcome.of("review", HARD, "../sample-rides/even-paced.fit", "--eaten", "55");
        assertThat(outcome.status()).isEqualTo(2);
        assertThat(outcome.err()).contains("--eaten is for one ride");
    }

    /** Two hours of 60 g, and 40 g in every hour after: 120 g by two hours, and by the definition 40 g more an hour. */
    @Test
    void isCountedUpToTheLastThird() {
        JsonNode lastThird = energy("--eaten", "60/60g/40").get("lastThird");
        double hours = lastThird.get("untilSeconds").asInt() / 3600.0;
        assertThat(hours).isGreaterThan(2);
        assertThat(lastThird.get("eatenG").asDouble()).isCloseTo(120 + 40 * (hours - 2), within(0.01));
        assertThat(lastThird.get("intakeWouldTell").asBoolean()).isFalse();
        assertThat(energy().get("lastThird").get("eatenG").isNull()).isTrue();
    }

    @Test
    void textAndPageSayTheRangesAndWhatWasEaten() {
        String text = Outcome.of("review", HARD, "--eaten", "55").out();
        assertThat(text)
                .contains(
                        "ENERGY, as ranges", "Carbohydrate used: ", "Eaten, as you say: 55 g of carbohydrate an hour.")
                .contains("They are no diagnosis");
        String page =
                Outcome.of("review", HARD, "--eaten", "55", "--format", "html").out();
        assertThat(page).contains("Energy, as ranges", "Eaten, as you say: 55 g of carbohydrate an hour.");
    }
}
