package io.github.wattledger;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.compare.Comparer;
import io.github.wattledger.intake.Origin;
import io.github.wattledger.intake.Selection;
import io.github.wattledger.pacing.Effort;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.read.ContentDigest;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.RideInput;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.simulation.FitRideWriter;
import io.github.wattledger.simulation.SampleRides;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class ReviewerTest {
    private static final Rider RIDER = Rider.UNKNOWN.withThresholdPowerW(250);

    private static double[] steady(int seconds, double watts) {
        double[] power = new double[seconds];
        Arrays.fill(power, watts);
        return power;
    }

    @Test
    void oneHourAtThresholdIsAHundred() {
        RideReview review = Reviewer.review(Ride.ofWatts(steady(3600, 250)), RIDER, ReviewOptions.WHOLE_RIDE);
        // By the definition of training stress (Allen & Coggan, Training and Racing with a Power Meter).
        assertThat(requireNonNull(review.load().trainingStress())).isCloseTo(100, within(1e-9));
        assertThat(requireNonNull(review.load().intensityFactor())).isCloseTo(1, within(1e-12));
    }

    @Nested
    class Threshold {
        @Test
        void theGivenOneGoesFirst() {
            RideReview review = Reviewer.review(Ride.ofWatts(steady(3600, 200)), RIDER, ReviewOptions.WHOLE_RIDE);
            assertThat(review.rider().thresholdPowerW()).isEqualTo(250);
            assertThat(review.rider().thresholdPowerOrigin()).isEqualTo(Origin.GIVEN);
        }

        @Test
        void theDevicesOneGoesSecond(@TempDir Path folder) throws IOException, UnreadableRideException {
            Path file = folder.resolve("ride.fit");
            Files.write(file, FitRideWriter.write(SampleRides.evenPaced()));
            RideReview review = Reviewer.review(file, Rider.UNKNOWN, ReviewOptions.WHOLE_RIDE);
            assertThat(review.rider().thresholdPowerW()).isEqualTo(250);
            assertThat(review.rider().thresholdPowerOrigin()).isEqualTo(Origin.DEVICE);
        }

        @Test
        void anEstimateGoesLast() {
            RideReview review =
                    Reviewer.review(Ride.ofWatts(steady(3600, 200)), Rider.UNKNOWN, ReviewOptions.WHOLE_RIDE);
            // 95 percent of the best 20 minutes: common practice, no source.
            assertThat(review.rider().thresholdPowerW()).isCloseTo(190, within(1e-9));
            assertThat(review.rider().thresholdPowerOrigin()).isEqualTo(Origin.ESTIMATED);
        }

        @Test
        void withoutTwentyMinutesThereIsNone() {
            RideReview review =
                    Reviewer.review(Ride.ofWatts(steady(1199, 200)), Rider.UNKNOWN, ReviewOptions.WHOLE_RIDE);
            assertThat(review.rider().thresholdPowerW()).isNull();
            assertThat(review.rider().thresholdPowerOrigin()).isNull();
            assertThat(review.load().intensityFactor()).isNull();
        }
    }

    @Nested
    class Part {
        private final Ride ride = Ride.ofWatts(steady(3 * 3600, 200));

        @Test
        void isCutOutByElapsedTime() {
            RideReview review = Reviewer.review(
                    ride, RIDER, ReviewOptions.WHOLE_RIDE.withSelection(Selection.WHOLE_RIDE.withSeconds(3600, 7200)));
            assertThat(review.load().elapsedSeconds()).isEqualTo(3600);
            assertThat(review.load().workKJ()).isEqualTo(720);
            assertThat(review.pacing().judged().fromSecond()).isEqualTo(3600);
            assertThat(review.curve().longestSeconds()).isEqualTo(3600);
        }

        /** What is judged is the part asked for (docs/methods.md), be it the whole with its way to the start. */
        @Test
        void thatIsTheWholeIsJudgedWithItsLeadIn() {
            double[] watts = steady(3 * 3600, 200);
            Arrays.fill(watts, 0, 1200, 50);
            Ride easyAtFirst = Ride.ofWatts(watts);
            ReviewOptions asked = ReviewOptions.WHOLE_RIDE.withSelection(Selection.WHOLE_RIDE.withSeconds(0, null));
            assertThat(Reviewer.review(easyAtFirst, RIDER, asked).pacing().judged())
                    .isEqualTo(new Interval(0, 3 * 3600));
            assertThat(Reviewer.review(easyAtFirst, RIDER, ReviewOptions.WHOLE_RIDE)
                            .pacing()
                            .judged()
                            .fromSecond())
                    .isEqualTo(1200);
        }

        @Test
        void thatBeginsAfterTheEndIsRefused() {
            ReviewOptions late = ReviewOptions.WHOLE_RIDE.withSelection(Selection.WHOLE_RIDE.withSeconds(20_000, null));
            assertThatThrownBy(() -> Reviewer.review(ride, RIDER, late))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessage("the part begins at 5:33:20, but the ride ends at 3:00:00; choose an earlier start");
        }

        @Test
        void byLapsOfARideWithoutLapsIsRefused() {
            ReviewOptions laps = ReviewOptions.WHOLE_RIDE.withSelection(Selection.WHOLE_RIDE.withLaps(1, 2));
            assertThatThrownBy(() -> Reviewer.review(ride, RIDER, laps))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessage("the ride has no laps; give the part in elapsed time instead");
        }
    }

    @Nested
    class Whatever {
        @ParameterizedTest
        @EnumSource(Channel.class)
        void channelIsMissingThereIsAReview(Channel missing) {
            int seconds = 3 * 3600;
            Ride.Builder ride = Ride.builder(Instant.EPOCH, seconds);
            for (Channel channel : Channel.values()) {
                if (channel != missing) {
                    Random random = new Random(7);
                    ride.channel(channel, Series.generate(seconds, i -> plausible(channel, i, random)));
                }
            }
            RideReview review = Reviewer.review(ride.build(), RIDER, ReviewOptions.WHOLE_RIDE);
            assertThat(review.load().elapsedSeconds()).isEqualTo(seconds);
            if (missing == Channel.POWER) {
                assertThat(review.pacing().verdict()).isEqualTo(Verdict.NOT_JUDGED);
                assertThat(review.pacing().leftOut()).anyMatch(line -> line.startsWith("No power"));
                assertThat(review.load().workKJ()).isNull();
            }
        }

        private double plausible(Channel channel, int second, Random random) {
            return switch (channel) {
                case POWER -> Math.max(0, 200 + 40 * random.nextGaussian());
                case HEART_RATE -> 140 + 3 * random.nextGaussian();
                case SPEED -> 8;
                case DISTANCE -> 8.0 * second;
                case ALTITUDE -> 100 + 30 * Math.sin(second / 300.0);
                case ACCUMULATED_WORK -> 200.0 * second;
                default -> 50;
            };
        }

        @ParameterizedTest
        @ValueSource(ints = {0, 1, 10, 29, 30, 31, 299, 300, 301, 1199, 1200, 2399, 2400, 2401})
        void theLengthThereIsAReview(int seconds) {
            RideReview review = Reviewer.review(
                    Ride.ofWatts(steady(seconds, 250)), RIDER, ReviewOptions.WHOLE_RIDE.withEffort(Effort.RACE));
            assertThat(review.load().elapsedSeconds()).isEqualTo(seconds);
            assertThat(review.pacing().verdict() == Verdict.NOT_JUDGED).isEqualTo(seconds < 2400);
            assertThat(review.pacing().ledger().movingMinutes()).isCloseTo(seconds / 60.0, within(1e-9));
        }
    }

    @Test
    void theDigestOfTheFileStandsInTheSource(@TempDir Path folder) throws IOException, UnreadableRideException {
        Path file = folder.resolve("ride.fit");
        Files.write(file, FitRideWriter.write(SampleRides.evenPaced()));
        String digest = ContentDigest.sha256(Files.readAllBytes(file));
        assertThat(sha256(file)).isEqualTo(digest);
        assertThat(Comparer.compare(
                                List.of(RideInput.of(file), RideInput.of(file)),
                                ReadOptions.DEFAULT,
                                0,
                                Double.POSITIVE_INFINITY)
                        .reference()
                        .source()
                        .sha256())
                .isEqualTo(digest);
    }

    private static @Nullable String sha256(Path file) throws UnreadableRideException {
        return Reviewer.review(file, Rider.UNKNOWN, ReviewOptions.WHOLE_RIDE)
                .source()
                .sha256();
    }

    @Test
    void theLedgerAccountsForEverySecond() {
        for (var tape :
                java.util.List.of(SampleRides.overHardStart(), SampleRides.evenPaced(), SampleRides.damaged())) {
            RideReview review = Reviewer.review(tape.toRecording(), Rider.UNKNOWN, ReviewOptions.WHOLE_RIDE);
            var ledger = review.pacing().ledger();
            assertThat(ledger.movingMinutes()
                            + ledger.stoppedMinutes()
                            + ledger.pausedMinutes()
                            + ledger.missingMinutes())
                    .isCloseTo(ledger.elapsedMinutes(), within(1e-9));
            assertThat(ledger.elapsedMinutes() * 60).isCloseTo(review.load().elapsedSeconds(), within(1e-6));
        }
    }
}
