package io.github.wattledger.cli.report.text;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.cli.report.Report;
import io.github.wattledger.cli.report.words.BriefWords;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.pacing.Effort;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.RideNotes;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.testing.SampleReviews;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is asked of a brief: at most 15 lines that a message carries, with what a coach acts on. */
class TextBriefTest {
    private static final Path SAMPLES = Path.of("..", "sample-rides");

    static Stream<RideReview> reviews() {
        return Stream.of(
                SampleReviews.race(),
                SampleReviews.pricedRace(),
                SampleReviews.nothingKnown(),
                SampleReviews.named(SampleReviews.race(), "x".repeat(900) + ".fit", "Acme"),
                SampleReviews.race(Verdict.UNEVEN, SampleReviews.everyKind(), List.of()),
                SampleReviews.race(Verdict.NOT_JUDGED, List.of(), List.of()));
    }

    static List<Path> recordings() throws IOException {
        String folder = System.getenv("WATTLEDGER_REAL_RIDES");
        try (Stream<Path> samples = Files.list(SAMPLES);
                Stream<Path> real = folder == null ? Stream.empty() : Files.list(Path.of(folder))) {
            return Stream.concat(samples, real)
                    .filter(file -> file.toString().endsWith(".fit"))
                    .sorted()
                    .toList();
        }
    }

    @ParameterizedTest
    @MethodSource("reviews")
    void isShortNarrowAndWithoutATable(RideReview review) throws IOException {
        judge(review);
    }

    /** Whatever else has to go, the dearest mistake is what a coach asks for first. */
    @ParameterizedTest
    @MethodSource("recordings")
    void theDearestMistakeStays(Path recording) throws IOException, UnreadableRideException {
        RideReview review = Reviewer.review(
                recording, Rider.UNKNOWN.withThresholdPowerW(300), ReviewOptions.WHOLE_RIDE.withEffort(Effort.RACE));
        judge(review);
        List<String> mistakes = BriefWords.of(review, Units.METRIC).mistakes();
        String brief = String.join(" ", TextBrief.lines(review, Units.METRIC)).replaceAll("\\s+", " ");
        assertThat(brief).contains(mistakes.isEmpty() ? "" : mistakes.get(0));
    }

    @ParameterizedTest
    @MethodSource("recordings")
    void soIsEveryRecordings(Path recording) throws IOException, UnreadableRideException {
        judge(Reviewer.review(recording, Rider.UNKNOWN.withThresholdPowerW(250), ReviewOptions.WHOLE_RIDE));
    }

    private static void judge(RideReview review) throws IOException {
        List<String> lines = text(new TextBrief(Units.METRIC), review).lines().toList();
        assertThat(lines).hasSizeBetween(2, 15);
        assertThat(lines).allMatch(line -> Page.columns(line) <= 64).noneMatch(String::isBlank);
        assertThat(lines).noneMatch(line -> line.strip().contains("  "));
        assertThat(String.join(" ", lines)).contains("Not known: ").doesNotContain("null", "NaN");
        assertThat(text(new TextReport(Units.METRIC), review)).startsWith(text(new TextBrief(Units.METRIC), review));
    }

    /** The parts that a coach asks for, on the sample race whose mistakes are known: it was started too hard. */
    @Test
    void aRaceHasItsVerdictMistakesCapsAndUnknowns() throws IOException, UnreadableRideException {
        RideReview review = Reviewer.review(
                SAMPLES.resolve("over-hard-start.fit"),
                Rider.UNKNOWN.withThresholdPowerW(250),
                ReviewOptions.WHOLE_RIDE);
        assertThat(text(new TextBrief(Units.METRIC), review))
                .startsWith("over-hard-start.fit, 2026-06-13 06:48 (UTC-07:00), ")
                .containsPattern(
                        "Over-hard start\\. The mistakes cost [\\d.]+ min for the same energy,\\s[\\d.]+ min for the same effort")
                .contains("Dearest, for the same energy / the same effort:\n- over-hard start ")
                .contains("\n- stopped time ", "\n- fade ")
                .containsPattern("- first half, opening included: at most \\d+ W or \\d+ bpm")
                .containsPattern("- opening \\(first 69 min, normalized\\): at most \\d+ W or \\d+ bpm")
                .contains("Not known: your endurance beyond the guide; whether you rode");
    }

    /** The sample as it comes, judged by the threshold that its device stored: all that a coach asks for has room. */
    @Test
    void theSampleAsItComesNamesItsThreeMistakesAndBothCaps() throws IOException, UnreadableRideException {
        RideReview review =
                Reviewer.review(SAMPLES.resolve("over-hard-start.fit"), Rider.UNKNOWN, ReviewOptions.WHOLE_RIDE);
        assertThat(text(new TextBrief(Units.METRIC), review))
                .contains("\n- over-hard start ", "\n- stopped time ", "\n- fade ")
                .contains("\n- first half, opening included: ", "\n- opening (first 69 min, normalized): ")
                .doesNotContain("in the report")
                .endsWith("""
                        Not known: whether the device's threshold of 250 W still holds;
                        your endurance beyond the guide; whether you rode in a bunch.
                        """);
    }

    /** The third race of the sample season was simulated without a mistake; its threshold was 240 W. */
    @Test
    void aRaceWithoutAMistakeSaysSo() throws IOException, UnreadableRideException {
        Path race = SAMPLES.resolve("season/2026-05-17-third-race.fit.gz");
        assertThat(text(
                        new TextBrief(Units.METRIC),
                        Reviewer.review(race, Rider.UNKNOWN.withThresholdPowerW(240), ReviewOptions.WHOLE_RIDE)))
                .contains("\nEven. No mistake was found.\n");
    }

    /** Without a threshold power the start and surges cannot be seen: that is no all-clear. */
    @Test
    void whatWasNotLookedAtIsNotCalledFree() throws IOException {
        RideReview review = Reviewer.review(
                Ride.ofWatts(Series.generate(7200, second -> 200)),
                Rider.UNKNOWN,
                ReviewOptions.WHOLE_RIDE.withEffort(Effort.RACE));
        assertThat(text(new TextBrief(Units.METRIC), review)).contains("Even.").doesNotContain("No mistake");
    }

    /** A name of 300 letters leaves the mistakes their room; where they have too little, a line says how many are left out. */
    @Test
    void aLongEventIsCutAndMistakesThatHaveNoRoomAreCounted() throws IOException, UnreadableRideException {
        String name = "e".repeat(30) + "...";
        assertThat(named("e".repeat(300), null))
                .startsWith(name + " (over-hard-start.fit),\n")
                .contains("\n- over-hard start ", "\n- stopped time ", "\n- fade ")
                .doesNotContain("more in the report");
        assertThat(named("e".repeat(300), "r".repeat(300)))
                .startsWith(name + ",\n" + "r".repeat(30) + "... (over-hard-start.fit),\n")
                .contains("\n- over-hard start ", "\n- and 2 more in the report\n")
                .doesNotContain("- fade ");
    }

    private static String named(String event, @Nullable String rider) throws IOException, UnreadableRideException {
        RideNotes notes = new RideNotes(event, rider, null, null, List.of(), List.of(), List.of(), null);
        return text(
                new TextBrief(Units.METRIC),
                Reviewer.review(
                        SAMPLES.resolve("over-hard-start.fit"),
                        Rider.UNKNOWN.withThresholdPowerW(250),
                        ReviewOptions.WHOLE_RIDE.withNotes(notes)));
    }

    @Test
    void mistakesWithoutAPriceAreNamedAllTheSame() throws IOException {
        assertThat(text(new TextBrief(Units.METRIC), SampleReviews.race()))
                .contains("Over-hard start.\n")
                .contains("Weightiest, without a price in minutes:\n- over-hard start, km 2.1 to 31.2\n");
    }

    private static String text(Report report, RideReview review) throws IOException {
        StringBuilder out = new StringBuilder();
        report.write(review, out);
        return out.toString();
    }
}
