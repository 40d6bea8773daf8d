package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.cli.report.html.HtmlReport;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.testing.SampleReviews;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * A page shows a ride hour by hour, section by section and lap by lap. By definition the hours and the sections each make up
 * the whole ride, so that their numbers add up to those of the whole, which the JSON report gives.
 */
class RidePartsOnPageTest {
    private static final String SAMPLE = "../sample-rides/over-hard-start.fit";

    private static String review(String format) {
        Outcome outcome = Outcome.of("review", SAMPLE, "--format", format);
        assertThat(outcome.status()).as(outcome.err()).isZero();
        return outcome.out();
    }

    private static List<Double> values(String page, String path) {
        List<Double> values = new ArrayList<>();
        Matcher number = Pattern.compile("<data value=\"([^\"]*)\" data-path=\"" + path + "\">")
                .matcher(page);
        while (number.find()) {
            values.add(Double.valueOf(number.group(1)));
        }
        return values;
    }

    private static double sum(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).sum();
    }

    /** The recording is 7:12:20 long. */
    @Test
    void thereIsARowForEachHour() {
        assertThat(values(review("html"), "splits\\.hours\\[\\d+]\\.fromSecond"))
                .containsExactly(0.0, 3600.0, 7200.0, 10_800.0, 14_400.0, 18_000.0, 21_600.0, 25_200.0);
    }

    @Test
    void hoursAddUpToTheWholeRide() {
        String page = review("html");
        JsonNode json = new JsonMapper().readTree(review("json"));
        assertThat(sum(values(page, "splits\\.hours\\[\\d+]\\.distanceM")))
                .isCloseTo(json.get("load").get("distanceM").asDouble(), within(0.01));
        JsonNode together = json.get("pacing").get("ledger").get("entries").get(allAtOnce(json));
        for (String parts : List.of("hours", "sections")) {
            assertThat(sum(values(page, "splits\\." + parts + "\\[\\d+]\\.lostLowMinutes")))
                    .as(parts)
                    .isCloseTo(together.get("minutesLow").asDouble(), within(0.05));
            assertThat(sum(values(page, "splits\\." + parts + "\\[\\d+]\\.lostHighMinutes")))
                    .as(parts)
                    .isCloseTo(together.get("minutesHigh").asDouble(), within(0.05));
        }
    }

    private static int allAtOnce(JsonNode json) {
        JsonNode entries = json.get("pacing").get("ledger").get("entries");
        for (int i = 0; i < entries.size(); i++) {
            if (entries.get(i).get("label").asString().contains("at once")) {
                return i;
            }
        }
        throw new AssertionError("no entry for all mistakes at once in " + entries);
    }

    /** Each section ends where the next begins. */
    @Test
    void sectionsFollowOneAnother() {
        String page = review("html");
        List<Double> starts = values(page, "splits\\.sections\\[\\d+]\\.startM");
        List<Double> ends = values(page, "splits\\.sections\\[\\d+]\\.endM");
        assertThat(starts).hasSizeGreaterThan(3).hasSameSizeAs(ends);
        assertThat(starts.subList(1, starts.size())).isEqualTo(ends.subList(0, ends.size() - 1));
    }

    @Test
    void aRideOfWhichNothingIsKnownHasNoParts() throws IOException {
        StringBuilder page = new StringBuilder();
        new HtmlReport(Units.METRIC).write(SampleReviews.nothingKnown(), page);
        assertThat(page.toString())
                .as("what was not looked at is not called free of mistakes")
                .contains("No parts of the ride were compared: there is no power in this file.")
                .doesNotContain("Nothing stands out");
        assertThat(page).doesNotContain("Part by part").doesNotContain("splits.hours");
    }
}
