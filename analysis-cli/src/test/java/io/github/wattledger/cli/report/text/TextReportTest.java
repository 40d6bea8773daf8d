package io.github.wattledger.cli.report.text;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.RideReview;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.testing.SampleReviews;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
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
                SampleReviews.race(Verdict.UNEVEN, SampleReviews.everyKind(), List.of()));
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
                          1. Much coasting (moderate), 0:05:00 to 7:31:00, km not known
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
        assertThat(text).startsWith("K\u00fcste [31m gnp.fit, 2026-06-14 07:00").contains("Acme W'");
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
                .contains("Race or training? Cannot tell: there is no power in this file.")
                .contains("no heart rate in this file", "no cadence in this file", "no distance in this file")
                .contains("Threshold power: not known", "Threshold heart rate: not known", "Mass: not known")
                .contains("No guide for this length")
                .doesNotContain(" 0 W", " 0 bpm", "NaN", "null");
    }

    @Test
    void thePricesAreSaidToBeMissingOnce() throws IOException {
        String text = text(SampleReviews.race());
        assertThat(text)
                .containsOnlyOnce("Nothing is priced in minutes: not priced yet.")
                .doesNotContain("Cost:");
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
                .contains("No price in minutes for stopped time: a stop costs what it lasts.")
                .contains("The line against your ability asks another question");
    }

    @ParameterizedTest
    @EnumSource(Verdict.class)
    void everyVerdictIsASentenceEvenWithoutEvidence(Verdict verdict) throws IOException {
        String text = unwrapped(text(SampleReviews.race(verdict, List.of(), List.of())));
        String words = verdict.words();
        // Of a ride that was not judged the reason stands there.
        assertThat(text)
                .contains(
                        verdict == Verdict.NOT_JUDGED
                                ? "Not judged as a race"
                                : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1) + ".");
        assertThat(text).doesNotContain("null", "NaN", "OptionalDouble");
    }

    @Test
    void theVerdictCarriesItsEvidence() throws IOException {
        assertThat(unwrapped(text(SampleReviews.race())))
                .contains(
                        "Over-hard start. The first 70 min at 252 W against a guide of 183 W for 7 h 2 min, the rest at"
                                + " 201 W, fading by 14 %.");
        Finding fade = SampleReviews.fade(new Cost.NotPriced("no"));
        assertThat(unwrapped(text(SampleReviews.race(Verdict.FADED, List.of(fade), List.of()))))
                .contains("Faded. 176 W late against 205 W early on comparable ground, 14 % less.");
        assertThat(unwrapped(text(SampleReviews.race(Verdict.EVEN, List.of(), List.of()))))
                .containsPattern("at \\d+ W normalized power against a guide of 183 W for 7 h 2 min\\.")
                .contains("Nothing in the pacing stands out.");
    }

    private static String text(RideReview review) throws IOException {
        StringBuilder out = new StringBuilder();
        new TextReport(Units.METRIC).write(review, out);
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
