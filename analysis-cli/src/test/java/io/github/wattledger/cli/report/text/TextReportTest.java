package io.github.wattledger.cli.report.text;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.RideReview;
import io.github.wattledger.cli.report.EvidenceSentences;
import io.github.wattledger.cli.report.SampleReviews;
import io.github.wattledger.pacing.Advice;
import io.github.wattledger.pacing.Evidence;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.Severity;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.ride.Interval;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class TextReportTest {
    static Stream<RideReview> reviews() {
        return Stream.of(
                SampleReviews.race(),
                SampleReviews.pricedRace(),
                SampleReviews.nothingKnown(),
                SampleReviews.named(
                        SampleReviews.race(), "x".repeat(300) + " " + "y ".repeat(100), "\u6d77\u5cb8".repeat(60)),
                SampleReviews.race(Verdict.UNEVEN, everyKind(), List.of()));
    }

    @Test
    void everythingKnown() throws IOException {
        assertThat(text(SampleReviews.race())).isEqualTo(golden("race.txt"));
    }

    @Test
    void nothingKnown() throws IOException {
        assertThat(text(SampleReviews.nothingKnown())).isEqualTo(golden("nothing-known.txt"));
    }

    @Test
    void whatADetectorOfOnesOwnFoundHasAHeadingOfItsOwn() throws IOException {
        String text = text(SampleReviews.raceWithOwnFinding());
        assertThat(text).contains("""

                        WHAT OWN DETECTORS FOUND
                          1. Much coasting (moderate), 0:05-7:31, km not known
                             sharePercent 22. <b>odd</b>Name 3.
                             Next time: Pedal <i>lightly</i> where it rolls.

                        LOAD
                        """);
        assertThat(text(SampleReviews.race())).doesNotContain("OWN DETECTORS");
    }

    @ParameterizedTest
    @MethodSource("reviews")
    void noLineIsLongerThan80ColumnsOrEndsInSpaces(RideReview review) throws IOException {
        assertThat(text(review).lines())
                .allMatch(line -> Page.columns(line) <= 80)
                .noneMatch(line -> line.endsWith(" "));
    }

    @Test
    void ourOwnWordsAreAscii() throws IOException {
        for (RideReview review : List.of(SampleReviews.pricedRace(), SampleReviews.nothingKnown())) {
            assertThat(text(review).chars()).allMatch(c -> c == '\n' || (c >= ' ' && c <= '~'));
        }
    }

    @Test
    void namesFromFilesKeepTheirLettersAndLoseTheirControlCharacters() throws IOException {
        String text = text(SampleReviews.named(
                SampleReviews.race(), "K\u00fcste\u001b[31m\r\n\u202egnp.fit", "Acme\u0000 W\u2032"));
        assertThat(text).startsWith("Review of K\u00fcste [31m gnp.fit\n").contains("Acme W'");
        assertThat(text.chars()).noneMatch(c -> c != '\n' && Character.isISOControl(c));
    }

    @ParameterizedTest
    @ValueSource(strings = {"de-DE", "ar-EG", "hi-IN-u-nu-deva", "tr-TR"})
    void theLocaleOfTheMachineChangesNothing(String tag) throws IOException {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag(tag));
            assertThat(text(SampleReviews.race())).isEqualTo(golden("race.txt"));
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void missingThingsAreSaid() throws IOException {
        assertThat(unwrapped(text(SampleReviews.nothingKnown())))
                .contains("Not judged: no power in this file.")
                .contains("no heart rate in this file", "no cadence in this file", "no distance in this file")
                .contains("Threshold power: not known", "Threshold heart rate: not known", "Mass: not known")
                .contains("No guide for this length")
                .doesNotContain(" 0 W", " 0 bpm", "NaN", "null");
    }

    @Test
    void thePricesAreSaidToBeMissingOnce() throws IOException {
        String text = text(SampleReviews.race());
        assertThat(text).containsOnlyOnce("Prices in minutes: not priced yet.").doesNotContain("Cost:");
    }

    @Test
    void pricesAreShownWithTheirEndsAndTheirMaking() throws IOException {
        assertThat(unwrapped(text(SampleReviews.pricedRace())))
                .contains("Lost: over-hard start, 4.0 to 9.2 min.")
                .contains("Lost: fade, nothing.")
                .contains("Lost: against your ability (a guide), 6.1 min.")
                .contains("The prices rest on typical values.")
                .contains("Cost: 4.0 to 9.2 min (replay: same work, same normalized power).")
                .contains("Cost: nothing (it would not have been faster).")
                .contains("Prices in minutes (stopped time): a stop costs what it lasts.");
    }

    @ParameterizedTest
    @EnumSource(Verdict.class)
    void everyVerdictIsASentenceEvenWithoutEvidence(Verdict verdict) throws IOException {
        String text = unwrapped(text(SampleReviews.race(verdict, List.of(), List.of())));
        String words = verdict.words();
        assertThat(text).contains(words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1));
        assertThat(text).doesNotContain("null", "NaN", "OptionalDouble");
    }

    @Test
    void theVerdictCarriesItsEvidence() throws IOException {
        assertThat(unwrapped(text(SampleReviews.race())))
                .contains("Over-hard start: the first 70 min at 252 W against a guide of 183 W for 7:02 h, the rest at"
                        + " 201 W, fading by 14 %.");
        Finding fade = SampleReviews.fade(new Cost.NotPriced("no"));
        assertThat(unwrapped(text(SampleReviews.race(Verdict.FADED, List.of(fade), List.of()))))
                .contains("Faded: 176 W late against 205 W early on comparable ground, 14 % less.");
        assertThat(unwrapped(text(SampleReviews.race(Verdict.EVEN, List.of(), List.of()))))
                .contains("at 214 W normalized power against a guide of 183 W for 7:02 h.")
                .contains("Nothing in the pacing.");
    }

    /** Where evidence has a number for every name that a detector gives, no name is left untranslated. */
    @Test
    void everyKindHasItsSentences() {
        for (Finding finding : everyKind()) {
            String sentences = EvidenceSentences.of(finding);
            for (Evidence.Entry entry : finding.evidence().entries()) {
                assertThat(sentences).doesNotContain(entry.name() + " ");
            }
            assertThat(sentences).endsWith(".").doesNotContain("..", "  ", "%%");
        }
    }

    @Test
    void aFindingCanLackAnyOfItsNumbers() {
        for (Finding finding : everyKind()) {
            List<Evidence.Entry> entries = finding.evidence().entries();
            for (int left = 0; left < entries.size(); left++) {
                List<Evidence.Entry> fewer = new ArrayList<>(entries);
                fewer.remove(left);
                assertThat(EvidenceSentences.of(finding(finding.kind(), new Evidence(fewer))))
                        .endsWith(".")
                        .doesNotContain("..", "  ", "NaN");
            }
            assertThat(EvidenceSentences.of(finding(finding.kind(), Evidence.none())))
                    .isEmpty();
        }
    }

    @Test
    void aNumberThatNoSentenceKnowsIsStillShown() {
        Evidence evidence = Evidence.none().with("lossPercent", 12).with("newThingW", 31.25);
        assertThat(EvidenceSentences.of(finding(FindingKind.FADE, evidence)))
                .isEqualTo("lossPercent 12. newThingW 31.");
    }

    private static List<Finding> everyKind() {
        return List.of(
                SampleReviews.overHardStart(new Cost.NotPriced("not priced yet")),
                SampleReviews.fade(new Cost.NotPriced("another reason")),
                SampleReviews.stoppedTime(new Cost.NotPriced("not priced yet")),
                finding(
                        FindingKind.THRESHOLD_RIDING_EARLY,
                        Evidence.none()
                                .with("longestSeconds", 840)
                                .with("meanPowerW", 244)
                                .with("thresholdFraction", 0.976)
                                .with("totalSeconds", 2_000)
                                .with("stretchCount", 3)),
                finding(
                        FindingKind.SURGES,
                        Evidence.none()
                                .with("count", 42)
                                .with("totalSeconds", 700)
                                .with("workAboveThresholdKJ", 91)
                                .with("workAboveThresholdKJPerHour", 13)
                                .with("wPrimeSharePerHour", 0.62)
                                .with("longestSeconds", 55)
                                .with("highestMeanW", 512)),
                finding(
                        FindingKind.DRIFT,
                        Evidence.none()
                                .with("heartRateOverPredictedPercent", 4.4)
                                .with("actualHeartRateBpm", 151)
                                .with("predictedHeartRateBpm", 144.6)
                                .with("bpmPer100W", 31)
                                .with("decouplingPercent", 7.2)),
                finding(
                        FindingKind.UNDER_PACED,
                        Evidence.none()
                                .with("normalizedPowerW", 160)
                                .with("targetW", 183)
                                .with("shareOfTargetPercent", 87.4)),
                finding(
                        FindingKind.LATE_RESERVE,
                        Evidence.none()
                                .with("lastSixthNormalizedPowerW", 221)
                                .with("restNormalizedPowerW", 195)
                                .with("gainPercent", 13.3)));
    }

    private static Finding finding(FindingKind kind, Evidence evidence) {
        return new Finding(
                kind,
                Severity.MINOR,
                new Interval(0, 100),
                null,
                null,
                evidence,
                new Cost.NotPriced("not priced yet"),
                new Advice("Ride on.", null, null),
                null);
    }

    private static String text(RideReview review) throws IOException {
        StringBuilder out = new StringBuilder();
        new TextReport().write(review, out);
        return out.toString();
    }

    /** The words without the line ends that the width put between them. */
    private static String unwrapped(String text) {
        return String.join(" ", text.trim().split("\\s+", -1));
    }

    private static String golden(String name) throws IOException {
        try (InputStream in = Objects.requireNonNull(TextReportTest.class.getResourceAsStream("/golden/" + name))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
