package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.pacing.FindingKind;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** {@code wattledger review --explain} through the real core. */
class ExplainTest {
    private static final String RIDE =
            Path.of("..", "sample-rides", "over-hard-start.fit").toString();

    private static String run(String... args) {
        Outcome outcome = Outcome.of(args);
        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.status()).isZero();
        return outcome.out();
    }

    private static String threeDecimals(JsonNode number) {
        return String.format(Locale.ROOT, "%.3f", number.asDouble());
    }

    /** Every number that a report gives of a finding stands in its explanation. */
    @Test
    void everyNumberOfEveryFindingIsThere() {
        JsonNode pacing = JsonMapper.shared()
                .readTree(run("review", RIDE, "--format", "json"))
                .get("pacing");
        assertThat(pacing.get("findings").size()).isGreaterThan(3);
        for (JsonNode finding : pacing.get("findings")) {
            String kind = finding.get("kind").asString();
            String explanation = run("review", RIDE, "--explain", kind);
            assertThat(explanation.lines()).as(kind).allMatch(line -> line.length() <= 80);
            for (String name : finding.get("evidence").propertyNames()) {
                assertThat(explanation)
                        .as(kind)
                        .containsPattern(name + " +"
                                + threeDecimals(finding.get("evidence").get(name)));
            }
            JsonNode minutes = finding.get("costMinutes");
            assertThat(explanation)
                    .as(kind)
                    .contains(
                            minutes.isNull()
                                    ? "None: "
                                    : threeDecimals(minutes.get("low")) + " to " + threeDecimals(minutes.get("high"))
                                            + " min");
        }
    }

    /** From the normalized power of the opening by its factor, the two ends and their seconds to the minutes. */
    @Test
    void aHardStartCanBeFollowedToItsMinutes() {
        String[] words = run("review", RIDE, "--explain", "over-hard-start").split("\\s+");
        double overMiddle = after(words, "overMiddlePercent") / 100;
        double factor = after(words, "seconds", "times");
        assertThat(factor).isCloseTo(1 / (1 + overMiddle), within(1e-5));

        int work = indexOf(words, "same", "energy");
        int normalized = indexOf(words, "same", "effort");
        int recorded = indexOf(words, "as", "recorded");
        // The columns after the label: share, work, normalized power, moving seconds, saved seconds.
        assertThat(words[work + 1 + 2]).isEqualTo(words[recorded + 1 + 2]);
        assertThat(words[normalized + 1 + 3]).isEqualTo(words[recorded + 1 + 3]);
        double moving = Double.parseDouble(words[recorded + 1 + 4]);
        double savedWork = Double.parseDouble(words[work + 1 + 5]);
        double savedNormalized = Double.parseDouble(words[normalized + 1 + 5]);
        assertThat(moving - Double.parseDouble(words[work + 1 + 4])).isCloseTo(savedWork, within(0.002));
        int price = indexOf(words, "THE", "PRICE");
        assertThat(Double.parseDouble(words[price + 2])).isCloseTo(savedWork / 60, within(0.001));
        assertThat(Double.parseDouble(words[price + 4])).isCloseTo(savedNormalized / 60, within(0.001));
    }

    private static double after(String[] words, String... row) {
        return Double.parseDouble(words[indexOf(words, row) + row.length].replace(",", ""));
    }

    /** Index of the first of some words in a row. */
    private static int indexOf(String[] words, String... row) {
        for (int i = 0; i + row.length <= words.length; i++) {
            if (List.of(words).subList(i, i + row.length).equals(List.of(row))) {
                return i;
            }
        }
        throw new AssertionError(String.join(" ", row) + " not in " + String.join(" ", words));
    }

    @Test
    void thresholdTargetAndRigAreNamedWithTheirSource() {
        String explanation = run("review", RIDE, "--threshold-power", "248", "--mass", "73", "--explain", "fade");
        assertThat(explanation.replaceAll("\\s+", " "))
                .contains("Threshold power: 248 W, as given.", "by the guide", "rider 73 kg (as given)")
                .contains("(estimated from this ride)", "(typical")
                .contains("Judged: 0:12:06 to 7:12:20");
    }

    @Test
    void whatWasNotFoundIsALine() {
        assertThat(run("review", RIDE, "--explain", "late-reserve"))
                .isEqualTo("No finding late-reserve in over-hard-start.fit.\n");
        assertThat(run("review", RIDE, "--effort", "training", "--explain", "fade"))
                .isEqualTo("No finding fade in over-hard-start.fit. The pacing was not judged: ridden as\ntraining.\n");
    }

    @ParameterizedTest
    @EnumSource(FindingKind.class)
    void everyKindCanBeAskedFor(FindingKind kind) {
        assertThat(run("review", RIDE, "--explain", kind.id())).contains("over-hard-start.fit");
    }

    /** A kind that has no price says why, and shows no steps. */
    @Test
    void whatIsNotPricedSaysWhy() {
        assertThat(run("review", RIDE, "--explain", "drift"))
                .contains("None: a heart that beats faster costs no time by itself.")
                .doesNotContain("RIDDEN AGAIN");
    }
}
