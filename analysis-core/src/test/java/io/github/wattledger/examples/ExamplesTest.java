package io.github.wattledger.examples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import examples.JsonOfAReview;
import examples.ManyFiles;
import examples.MetricFromAnArray;
import examples.ReviewOfAFile;
import examples.ReviewOfAnUpload;
import examples.ReviewWithOwnDetector;
import examples.SeasonTable;
import examples.SlowAndHard;
import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.json.JsonSchema;
import io.github.wattledger.pacing.OwnFinding;
import io.github.wattledger.pacing.TimeLedger;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.testing.SchemaCheck;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tech.tablesaw.api.Table;

/** The examples of docs/examples do what their pages say. */
class ExamplesTest {
    private static final Path SAMPLES = Path.of("..", "sample-rides");

    @Test
    void normalizedPowerOfSteadyRidingIsThatPower() {
        double[] watts = new double[3600];
        Arrays.fill(watts, 200);
        assertThat(MetricFromAnArray.normalizedPower(watts).orElseThrow()).isCloseTo(200, within(1e-9));
    }

    @Test
    void theReviewOfTheSampleSeesItsOverHardStart() throws Exception {
        RideReview review = ReviewOfAFile.review(SAMPLES.resolve("over-hard-start.fit"));
        assertThat(review.pacing().verdict()).isEqualTo(Verdict.OVER_HARD_START);
    }

    /** The schema is the file in the repository, to which the pages lead. */
    @Test
    void theJsonOfAReviewFitsTheSchemaBesideIt(@TempDir Path temp) throws Exception {
        Path json = temp.resolve("review.json");
        Path schema = temp.resolve("review.schema.json");
        JsonOfAReview.write(SAMPLES.resolve("over-hard-start.fit"), json, schema);
        SchemaCheck.assertFits(JsonSchema.REVIEW, Files.readString(json));
        assertThat(schema)
                .hasSameTextualContentAs(
                        Path.of("src/main/resources/io/github/wattledger/json").resolve("review.schema.json"));
    }

    @Test
    void theReviewOfAnUploadIsThatOfTheFile() throws Exception {
        Path file = SAMPLES.resolve("over-hard-start.fit");
        Rider rider = Rider.UNKNOWN.withThresholdPowerW(250).withMassKg(72);
        try (InputStream body = Files.newInputStream(file)) {
            assertThat(ReviewOfAnUpload.review(body, "over-hard-start.fit", rider))
                    .isEqualTo(ReviewOfAFile.review(file));
        }
    }

    /** The season holds four races of two and a half hours (its README); everything else in it is shorter or easy. */
    @Test
    void theTableHoldsTheRacesOfTheSeason(@TempDir Path temp) throws Exception {
        Path csv = temp.resolve("hard.csv");
        Table hard = SeasonTable.hardRides(SAMPLES.resolve("season"), temp.resolve("store"), csv);
        assertThat(hard.stringColumn("file").asList())
                .contains(
                        "2026-04-19-first-race.fit.gz",
                        "2026-05-02-second-race.fit.gz",
                        "2026-05-17-third-race.fit.gz",
                        "2026-05-31-fourth-race.fit.gz")
                .noneMatch(file -> file.contains("evening"));
        List<String> lines = Files.readAllLines(csv);
        assertThat(lines).hasSize(hard.rowCount() + 1);
        assertThat(lines.get(0)).startsWith("day,startTime,file,elapsedSeconds");
    }

    /** Counted here from the cleaned seconds. */
    @Test
    void theOwnDetectorCountsTheSecondsWithoutPower() throws Exception {
        Path file = SAMPLES.resolve("even-paced.fit");
        RideReview review = ReviewOfAFile.review(file);
        assertThat(review.pacing().ownFindings()).isEmpty();
        List<OwnFinding> found = ReviewWithOwnDetector.ownFindings(file);
        assertThat(found).extracting(OwnFinding::kind).containsExactly("much-coasting");
        assertThat(found.get(0).when()).isEqualTo(review.pacing().judged());
        Ride judged = review.ride().part(review.pacing().judged());
        long coasting = IntStream.range(0, judged.seconds())
                .filter(second -> judged.state(second) == SecondState.RIDING)
                .filter(second -> judged.series(Channel.POWER).get(second) == 0)
                .count();
        assertThat(found.get(0).evidence().get("coastingSeconds")).hasValue((double) coasting);
    }

    /** Two stretches long enough and one too short, made by hand; the whole is ridden at 230 W, threshold is 250. */
    @Test
    void theDetectorWithAThresholdTellsOfEveryStretch() {
        int seconds = 2 * 3600;
        Series rpm = Series.generate(seconds, second -> {
            boolean slow = (second >= 600 && second < 1000)
                    || (second >= 3000 && second < 3299)
                    || (second >= 5000 && second < 5300);
            return slow ? 55 : 85;
        });
        Ride ride = Ride.builder(Instant.EPOCH, seconds)
                .channel(Channel.POWER, Series.generate(seconds, second -> 230))
                .channel(Channel.CADENCE, rpm)
                .build();
        ReviewOptions options = ReviewOptions.WHOLE_RIDE.withDetectors(List.of(new SlowAndHard(300, 60, 0.8)));
        Rider rider = Rider.UNKNOWN.withThresholdPowerW(250);
        assertThat(Reviewer.review(ride, rider, options).pacing().ownFindings())
                .extracting(OwnFinding::when)
                .containsExactly(new Interval(600, 1000), new Interval(5000, 5300));
        // 230 W are less than 80 % of 300 W.
        assertThat(Reviewer.review(ride, Rider.UNKNOWN.withThresholdPowerW(300), options)
                        .pacing()
                        .ownFindings())
                .isEmpty();
    }

    @Test
    void aFileThatCannotBeReadCostsNoOtherItsLine() throws Exception {
        Path race = SAMPLES.resolve("over-hard-start.fit");
        Path none = SAMPLES.resolve("no-such.fit");
        Rider rider = Rider.UNKNOWN.withThresholdPowerW(250);
        ExecutorService pool = Executors.newFixedThreadPool(2);
        try {
            Map<Path, String> lines = ManyFiles.lines(List.of(none, race), rider, pool);
            RideReview review = Reviewer.review(race, rider, ReviewOptions.WHOLE_RIDE);
            TimeLedger.Entry all = review.pacing().ledger().allAtOnce().orElseThrow();
            assertThat(lines)
                    .containsEntry(none, none + ": there is no such file; check the path")
                    .containsEntry(
                            race,
                            review.load().normalizedPowerW() + " W, " + all.minutesLow() + " to " + all.minutesHigh()
                                    + " min");
        } finally {
            pool.shutdown();
        }
    }
}
