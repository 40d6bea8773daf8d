package io.github.wattledger;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.clean.PowerSource;
import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.load.RideLoad;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.Occasion;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.RideFiles;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.DeviceTotals;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.testing.RealRides;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Real recordings against what their own devices computed, with the device's threshold. The reference for normalized
 * power is intensity factor times threshold, which is finer than the whole watts that are stored beside it.
 */
class RealRidesTest {
    private static RideReview review(String name) throws UnreadableRideException {
        return Reviewer.review(RealRides.file(name), Rider.UNKNOWN, ReviewOptions.WHOLE_RIDE);
    }

    /**
     * Bounds in percent: 0.5 for normalized power and 0.2 for work from the meter's counter; 1.5 for training stress, of
     * which the definition in the literature takes the plain duration, the devices here 29 s less.
     */
    @ParameterizedTest
    @CsvSource({
        "edge1000-59min.fit",
        "edge1000-two-long-stops-3h01.fit",
        "edge1030plus-no-position-1h06.fit",
        "edge510-default-threshold-54min.fit",
        "edge520-race-3h37.fit",
        "edge520plus-2h06.fit",
        "edge530-35-stops-2h49.fit",
        "edge530-62-laps-2h29.fit",
        "edge810-pedals-1h18.fit",
        "edgemtb-1h58.fit",
        "edgemtb-spike-1h19.fit",
        "fenix6-indoor-53min.fit"
    })
    void agreesWithTheDeviceWhereTheMeterCountsItsWork(String name) throws UnreadableRideException {
        RideReview review = review(name);
        DeviceTotals device = requireNonNull(review.deviceTotals());
        assertThat(review.quality().powerSource()).isEqualTo(PowerSource.WORK_COUNTER);
        assertThat(percentOff(review.load().workKJ(), device.workKJ())).isBetween(-0.2, 0.2);
        assertLoadAgrees(review, 0.5, 1.5);
    }

    /** No counter: 0.6 percent for normalized power; 4 for training stress, since power is missing for 42 s. */
    @Test
    void agreesWithTheDeviceWhereThereAreOnlySamples() throws UnreadableRideException {
        RideReview review = review("edge800-indoor-38min.fit");
        assertThat(review.quality().powerSource()).isEqualTo(PowerSource.SAMPLES);
        assertLoadAgrees(review, 0.6, 4);
    }

    /**
     * This maker starts the 30 s window anew after each of the 57 pauses: with that rule the same samples come to within
     * 0.2 percent, by ours to within 2.5. Its work is the sum of the samples.
     */
    @Test
    void explainsTheMakerThatRestartsItsWindowAfterEachPause() throws UnreadableRideException {
        RideReview review = review("big-endian-6h33-57-stops.fit");
        DeviceTotals device = requireNonNull(review.deviceTotals());
        RideLoad load = review.load();
        double devicePower = requireNonNull(device.intensityFactor())
                * requireNonNull(review.rider().thresholdPowerW());
        assertThat(percentOff(load.normalizedPowerW(), devicePower)).isBetween(-2.5, 0.0);
        assertThat(percentOff(load.workKJ(), device.workKJ())).isBetween(-2.0, 0.2);
        assertThat((double) load.timerSeconds()).isCloseTo(requireNonNull(device.timerSeconds()), within(2.0));
    }

    private static void assertLoadAgrees(RideReview review, double powerPercent, double stressPercent) {
        DeviceTotals device = requireNonNull(review.deviceTotals());
        RideLoad load = review.load();
        double devicePower = requireNonNull(device.intensityFactor())
                * requireNonNull(review.rider().thresholdPowerW());
        assertThat(percentOff(load.normalizedPowerW(), devicePower)).isBetween(-powerPercent, powerPercent);
        assertThat(requireNonNull(load.intensityFactor()))
                .isCloseTo(requireNonNull(device.intensityFactor()), within(0.005));
        assertThat(percentOff(load.trainingStress(), device.trainingStress())).isBetween(-stressPercent, stressPercent);
        assertThat((double) load.timerSeconds()).isCloseTo(requireNonNull(device.timerSeconds()), within(2.0));
    }

    private static double percentOff(
            @org.jspecify.annotations.Nullable Double ours, @org.jspecify.annotations.Nullable Double theirs) {
        return (requireNonNull(ours) / requireNonNull(theirs) - 1) * 100;
    }

    /**
     * What a person read from power, heart rate, speed, altitude and laps of each ride, before there was a rule for it; only
     * rides that lie far from every limit.
     */
    @ParameterizedTest
    @CsvSource({
        "edge520-race-3h37.fit, RACE",
        "edge530-62-laps-2h29.fit, SESSION",
        "edge810-pedals-1h18.fit, SESSION",
        "watch-indoor-48min.fit, SESSION",
        "fenix6-indoor-53min-second-recorder.fit, SESSION",
        "big-endian-6h33-57-stops.fit, OUTING",
        "edge530-35-stops-2h49.fit, OUTING",
        "fenix6-indoor-53min.fit, INDOOR",
        "indoor-spikes-1h16.fit, INDOOR",
        "edge1000-59min.fit, EASY",
        "edgemtb-1h58.fit, EASY",
        "edge510-default-threshold-54min.fit, CANNOT_TELL",
        "edge520-race-3h37.csv, CANNOT_TELL",
        "edge520plus-2h06.csv, CANNOT_TELL",
        "edge520plus-2h06.gpx, CANNOT_TELL",
        "watch-power-no-heart-rate-2h55.fit, CANNOT_TELL",
    })
    void saysWhatEachRideWas(String name, Occasion.Kind kind) throws UnreadableRideException {
        PacingReview pacing = review(name).pacing();
        assertThat(pacing.occasion().kind()).isEqualTo(kind);
        if (kind == Occasion.Kind.RACE) {
            assertThat(pacing.verdict()).isNotEqualTo(Verdict.NOT_JUDGED);
            return;
        }
        // What is no race gets no finding and no lost minutes.
        assertThat(pacing.verdict()).isEqualTo(Verdict.NOT_JUDGED);
        assertThat(pacing.verdictReason()).isNotNull();
        assertThat(pacing.findings()).isEmpty();
        assertThat(pacing.ledger().entries()).isEmpty();
    }

    /**
     * The same ride in two formats, with the same threshold and the maximum heart rate that the device of the FIT file knew:
     * the same verdict, or the same refusal.
     */
    @ParameterizedTest
    @CsvSource({
        "edge520-race-3h37.fit, edge520-race-3h37.csv, 300",
        "edge520plus-2h06.fit, edge520plus-2h06.csv, 246",
        "edge520plus-2h06.fit, edge520plus-2h06.gpx, 246",
        "edge1000-two-long-stops-3h01.fit, edge1000-two-long-stops-3h01.csv, 246",
    })
    void saysTheSameOfARideInAnyFormat(String one, String other, double thresholdW) throws UnreadableRideException {
        Double maximumBpm = RideFiles.read(RealRides.file(one), ReadOptions.DEFAULT)
                .recordings()
                .get(0)
                .device()
                .maximumHeartRateBpm();
        Rider rider = Rider.UNKNOWN.withThresholdPowerW(thresholdW);
        Rider known = maximumBpm == null ? rider : rider.withMaximumHeartRateBpm(maximumBpm);
        PacingReview first = Reviewer.review(RealRides.file(one), known, ReviewOptions.WHOLE_RIDE)
                .pacing();
        PacingReview second = Reviewer.review(RealRides.file(other), known, ReviewOptions.WHOLE_RIDE)
                .pacing();
        assertThat(second.occasion().reason()).isEqualTo(first.occasion().reason());
        assertThat(second.verdict()).isEqualTo(first.verdict());
        assertThat(second.verdictReason()).isEqualTo(first.verdictReason());
        assertThat(second.findings())
                .extracting(Finding::kind)
                .containsExactlyElementsOf(
                        first.findings().stream().map(Finding::kind).toList());
    }

    @Test
    void doubtsAFactoryThreshold() throws UnreadableRideException {
        assertThat(codes(review("edge510-default-threshold-54min.fit"))).contains("threshold-doubtful");
    }

    /** 95 percent of its best 20 minutes is under its normalized power over 3:48 h: an estimate that cannot be. */
    @Test
    void doesNotJudgeByAnEstimateThatTheRideRefutes() throws UnreadableRideException {
        RideReview review = review("edge500-spike-duplicates-3h48.fit");
        assertThat(codes(review)).contains("threshold-doubtful");
        assertThat(review.pacing().verdict()).isEqualTo(Verdict.NOT_JUDGED);
    }

    @ParameterizedTest
    @CsvSource({
        "sigma-cut-short-zero-power-4h39.fit, no-power-meter",
        "sigma-cut-short-zero-power-4h39.fit, damaged",
        "sigma-cut-short-zero-power-4h39.fit, no-session",
        "edge500-spike-duplicates-3h48.fit, power-spikes",
        "edge500-spike-duplicates-3h48.fit, clock-jitter",
        "edge1000-variable-interval-no-power-1h48.fit, variable-interval",
        "edge25-variable-interval-no-power-2h07.fit, variable-interval",
        "bryton-four-second-no-power-2h01.fit, variable-interval",
        "bryton-split-records-no-power-1h20.fit, shared-seconds",
        "trainer-duplicate-seconds-12min.fit, no-heart-rate-strap",
        "edge1040-no-session-33min.fit, no-session"
    })
    void saysWhatIsOddAboutARecording(String name, String code) throws UnreadableRideException {
        assertThat(codes(review(name))).contains(code);
    }

    /** The maker of this device stores 0 W although it had no meter; the recording carries no power at all. */
    @Test
    void takesPlaceholdersForMissing() throws UnreadableRideException {
        RideReview review = review("coros-zero-placeholders-1h01.fit");
        assertThat(review.load().normalizedPowerW()).isNull();
        assertThat(requireNonNull(review.deviceTotals()).averagePowerW()).isNull();
    }

    /** 9,522 records in 4,802 different seconds: read off the file by an independent survey. */
    @Test
    void mergesRecordsThatShareASecond() throws UnreadableRideException {
        RideReview review = review("bryton-split-records-no-power-1h20.fit");
        assertThat(review.quality().recordedSeconds()).isEqualTo(4802);
        assertThat(review.load().averageHeartRateBpm()).isNotNull();
        assertThat(review.load().distanceM()).isCloseTo(35_538.55, within(1.0));
    }

    @Test
    void keepsPowerOfTheRunOutOfTheBikeLeg() throws UnreadableRideException {
        RideReview review = review("triathlon-five-sessions-summary-last.fit");
        assertThat(review.source().sport()).isEqualTo("cycling");
        assertThat(review.load().averagePowerW()).isNull();
        assertThat(codes(review)).contains("other-sessions");
    }

    @Test
    void neverFailsButWithOneLine() throws IOException {
        try (Stream<Path> files = Files.walk(RealRides.folder())) {
            List<Path> recordings =
                    files.filter(file -> file.toString().endsWith(".fit")).toList();
            assertThat(recordings).isNotEmpty();
            for (Path file : recordings) {
                try {
                    RideReview review = Reviewer.review(file, Rider.UNKNOWN, ReviewOptions.WHOLE_RIDE);
                    assertThat(review.load().elapsedSeconds())
                            .as(file.toString())
                            .isPositive();
                } catch (UnreadableRideException e) {
                    assertThat(e.getMessage()).startsWith(file + ": ").doesNotContain("\n");
                }
            }
        }
    }

    private static List<String> codes(RideReview review) {
        return review.quality().notes().stream().map(QualityNote::code).toList();
    }
}
