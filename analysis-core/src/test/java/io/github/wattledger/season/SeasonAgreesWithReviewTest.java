package io.github.wattledger.season;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.course.Course;
import io.github.wattledger.intake.Origin;
import io.github.wattledger.intake.Selection;
import io.github.wattledger.pacing.TimeLedger;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.power.Ability;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rider.Bounds;
import io.github.wattledger.rider.LongBest;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rider.ThresholdHistory;
import io.github.wattledger.rig.RigEstimate;
import io.github.wattledger.testing.RealRides;
import io.github.wattledger.testing.RideFolders;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.IntUnaryOperator;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The law: a season and a review say the same of a ride, whether it was just read or judged again from the store. */
class SeasonAgreesWithReviewTest {
    private static final Path SAMPLES = Path.of("..", "sample-rides");
    private static final Rider RIDER =
            Rider.UNKNOWN.withThresholdPowerW(250).withMassKg(74).withBikeMassKg(11);

    @TempDir
    Path temp;

    private Path folder;
    private SeasonRequest request;
    private int read;

    @BeforeEach
    void copySamples() throws IOException {
        folder = Files.createDirectory(temp.resolve("rides"));
        for (Path from : List.of(SAMPLES, SAMPLES.resolve("season"))) {
            copyFiles(from);
        }
        request = SeasonRequest.of(List.of(folder), temp.resolve("store.sqlite"));
    }

    private void copyFiles(Path from) throws IOException {
        try (Stream<Path> files = Files.list(from)) {
            List<Path> rides = files.filter(Files::isRegularFile)
                    .filter(file -> !file.endsWith("README.md"))
                    .toList();
            for (Path file : rides) {
                Files.copy(file, folder.resolve(file.getFileName().toString()));
            }
        }
    }

    private SeasonReview season(Rider rider) throws Exception {
        SeasonListener counting = new SeasonListener() {
            @Override
            public void found(int files, int newToRead) {
                read = newToRead;
            }
        };
        return SeasonRun.run(request.withRider(rider), Runnable::run, 1, counting);
    }

    /** What each ride cost, by a review of its file and the season's own rides. */
    private Map<String, Outcome> reviewed(SeasonReview season, Rider rider) throws Exception {
        Map<String, Outcome> costs = new HashMap<>();
        for (SeasonRide ride : season.rides()) {
            RideReview review = Reviewer.review(
                    folder.resolve(ride.source().file()),
                    rider,
                    ReviewOptions.WHOLE_RIDE
                            .withSelection(Selection.WHOLE_RIDE.withSessionIndex(
                                    ride.source().sessionIndex()))
                            .withOwnRides(
                                    ride.dateDoubt() != null
                                            ? null
                                            : StoredSeason.ridesBefore(
                                                    request.store(), rider, request.zone(), ride.day())));
            TimeLedger.Entry lost = review.pacing().ledger().allAtOnce().orElse(null);
            costs.put(
                    name(ride),
                    new Outcome(
                            review.pacing().verdict(),
                            review.pacing().verdictReason(),
                            review.pacing().targetW(),
                            review.pacing().findings().stream()
                                    .map(each -> new RideJudgement.Found(each.kind(), each.severity()))
                                    .toList(),
                            lost == null ? null : (Double) lost.minutesLow(),
                            lost == null ? null : (Double) lost.minutesHigh()));
        }
        return costs;
    }

    private static Map<String, Outcome> judged(SeasonReview season) {
        Map<String, Outcome> costs = new HashMap<>();
        for (SeasonRide ride : season.rides()) {
            RideJudgement judgement = ride.judgement();
            costs.put(
                    name(ride),
                    new Outcome(
                            judgement.verdict(),
                            judgement.verdictReason(),
                            judgement.targetW(),
                            judgement.findings(),
                            judgement.costMinutesLow(),
                            judgement.costMinutesHigh()));
        }
        return costs;
    }

    private static String name(SeasonRide ride) {
        return ride.source().file() + " " + ride.source().sessionIndex();
    }

    /** What must be the same to the last bit. */
    private record Outcome(
            Verdict verdict,
            @Nullable String reason,
            @Nullable Double targetW,
            List<RideJudgement.Found> findings,
            @Nullable Double minutesLow,
            @Nullable Double minutesHigh) {}

    private void assertThatAllAgree() throws Exception {
        SeasonReview first = season(RIDER);
        assertThat(judged(first)).isEqualTo(reviewed(first, RIDER));
        assertThat(first.rides().stream().filter(ride -> ride.judgement().costMinutesHigh() != null))
                .as("rides with a price")
                .hasSizeGreaterThan(2);

        Rider stronger = RIDER.withThresholdPowerW(265);
        SeasonReview again = season(stronger);
        assertThat(read).as("files read for another threshold").isZero();
        assertThat(judged(again)).isEqualTo(reviewed(again, stronger)).isNotEqualTo(judged(first));

        Rider lighter = stronger.withMassKg(70);
        SeasonReview leaner = season(lighter);
        assertThat(judged(leaner)).isEqualTo(reviewed(leaner, lighter)).isNotEqualTo(judged(again));
        season(lighter);
        assertThat(read).as("files read when nothing is new").isZero();
    }

    @Test
    void onTheSampleRides() throws Exception {
        assertThatAllAgree();
    }

    @Test
    void onRealRides() throws Exception {
        copyFiles(RealRides.folder());
        assertThatAllAgree();
    }

    /** What the device knows of its rider counts as what the rider says. */
    @Test
    void onTheMassThatTheDeviceKnows() throws Exception {
        Rider rider = Rider.UNKNOWN.withThresholdPowerW(250);
        SeasonReview season = season(rider);
        assertThat(judged(season)).isEqualTo(reviewed(season, rider));
    }

    @Test
    void whenTheFilesAreGone() throws Exception {
        Rider stronger = RIDER.withThresholdPowerW(265);
        Map<String, Outcome> expected = reviewed(season(stronger), stronger);
        season(RIDER);
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.toList()) {
                Files.delete(file);
            }
        }
        assertThat(judged(season(stronger))).isEqualTo(expected);
    }

    /** Three hours with a hard first one, by a device with these settings. */
    private Path rideOf(String start, RideFolders.Settings settings) throws IOException {
        emptyFolder();
        Path file = folder.resolve("by-device.fit");
        RideFolders.writeRide(
                file,
                Instant.parse(start),
                3 * 3600,
                second -> (second < 3600 ? 260 : 190) + 10 * (second / 7 % 5),
                settings);
        return file;
    }

    private void emptyFolder() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.toList()) {
                Files.delete(file);
            }
        }
    }

    /**
     * No rider has a threshold of 5 W, of 900 W or of 250 beats, or weighs 10 kg or 300 kg (facts; the bounds stand in
     * {@link Bounds}). Such a setting of a device is as good as none.
     */
    @ParameterizedTest
    @CsvSource({"5, 165, 10", "900, 165, 300", "5, 250, 10", "5, 20, 74", "250, 250, 10", "250, 165, 10"})
    void onADeviceWhoseSettingsNobodyCanHave(int thresholdW, int thresholdBpm, double massKg) throws Exception {
        Path file = rideOf("2026-06-15T08:00:00Z", new RideFolders.Settings(thresholdW, thresholdBpm, massKg));
        SeasonReview season = season(Rider.UNKNOWN);
        RideReview review = Reviewer.review(file, Rider.UNKNOWN, ReviewOptions.WHOLE_RIDE);

        assertThat(judged(season)).isEqualTo(reviewed(season, Rider.UNKNOWN)).hasSize(1);
        RideJudgement row = season.rides().get(0).judgement();
        assertThat(row.thresholdSource()).isEqualTo(review.rider().thresholdPowerOrigin());
        if (row.thresholdSource() == Origin.ESTIMATED) {
            // A season estimates from all its rides. Nobody rides three hours beyond threshold, by its definition.
            assertThat(row.intensityFactor()).isLessThan(1.05);
            assertThat(review.load().intensityFactor()).isLessThan(1.05);
        } else {
            assertThat(row.thresholdPowerW()).isEqualTo(review.rider().thresholdPowerW());
            assertThat(row.trainingStress()).isCloseTo(review.load().trainingStress(), within(1e-9));
        }

        RideReview withoutThem = Reviewer.review(
                rideOf(
                        "2026-06-15T08:00:00Z",
                        new RideFolders.Settings(
                                thresholdW == 250 ? 250 : null,
                                thresholdBpm == 165 ? 165 : null,
                                massKg == 74 ? 74.0 : null)),
                Rider.UNKNOWN,
                ReviewOptions.WHOLE_RIDE);
        assertThat(review.load()).isEqualTo(withoutThem.load());
        assertThat(review.pacing()).isEqualTo(withoutThem.pacing());
    }

    /**
     * The store keeps no positions, and yet a ride outdoors stays one when it is judged again from there; a ride indoors
     * stays indoors, and one whose file names no place stays without one.
     */
    @Test
    void onRidesIndoorsOutdoorsAndWithoutAPlace() throws Exception {
        emptyFolder();
        IntUnaryOperator watts = second -> (second < 3600 ? 260 : 190) + 10 * (second / 7 % 5);
        RideFolders.writeRide(
                folder.resolve("nowhere.fit"),
                Instant.parse("2026-06-13T08:00:00Z"),
                3 * 3600,
                watts,
                RideFolders.Settings.NONE);
        RideFolders.writeIndoorRide(
                folder.resolve("indoors.fit"), Instant.parse("2026-06-13T12:20:00Z"), 3 * 3600, watts);
        Files.copy(SAMPLES.resolve("season/2026-05-02-second-race.fit.gz"), folder.resolve("outdoors.fit.gz"));
        for (double thresholdW : new double[] {270, 275}) {
            Rider rider = RIDER.withThresholdPowerW(thresholdW);
            SeasonReview season = season(rider);
            assertThat(read).isEqualTo(thresholdW == 270 ? 3 : 0);
            Map<String, Outcome> judged = judged(season);
            assertThat(judged).isEqualTo(reviewed(season, rider)).hasSize(3);
            Outcome nowhere = requireNonNull(judged.get("nowhere.fit 0"));
            assertThat(judged.get("indoors.fit 0"))
                    .isEqualTo(new Outcome(
                            Verdict.NOT_JUDGED, "an indoor ride", nowhere.targetW(), List.of(), null, null));
            assertThat(nowhere.verdict()).isEqualTo(Verdict.OVER_HARD_START);
        }
    }

    /** A race day settles it, in a season as in a review, and the store judges again when it is named. */
    @Test
    void onRaceDays() throws Exception {
        rideOf("2026-06-15T08:00:00Z", RideFolders.Settings.NONE);
        Rider racing = Rider.UNKNOWN.withRaceDays(Set.of(LocalDate.of(2026, 6, 15)));
        SeasonReview before = season(Rider.UNKNOWN);
        assertThat(judged(before)).isEqualTo(reviewed(before, Rider.UNKNOWN));
        assertThat(before.rides().get(0).judgement().verdict()).isEqualTo(Verdict.NOT_JUDGED);
        SeasonReview after = season(racing);
        assertThat(read).isZero();
        assertThat(judged(after)).isEqualTo(reviewed(after, racing));
        assertThat(after.rides().get(0).judgement().verdict()).isNotEqualTo(Verdict.NOT_JUDGED);
    }

    /** 05:00 UTC is 22:00 of the day before in Los Angeles (UTC-7 in June), so the threshold of that day holds. */
    @Test
    void onTheDayOfATimeZone() throws Exception {
        Path file = rideOf("2026-06-15T05:00:00Z", RideFolders.Settings.NONE);
        Rider rider = Rider.UNKNOWN
                .withThresholds(new ThresholdHistory(List.of(
                        new ThresholdHistory.Entry(LocalDate.of(2026, 6, 1), 270.0, null),
                        new ThresholdHistory.Entry(LocalDate.of(2026, 6, 15), 300.0, null))))
                .withLongBests(Stream.of(1, 2, 5)
                        .map(hours -> new LongBest(3600 * hours, 260 - 10.0 * hours, LocalDate.of(2026, 6, 14)))
                        .toList());
        for (ZoneId zone : List.of(ZoneId.of("America/Los_Angeles"), ZoneOffset.UTC)) {
            boolean isUtc = zone.equals(ZoneOffset.UTC);
            request = request.withZone(zone);
            SeasonRide row = season(rider).rides().get(0);
            RideReview review = Reviewer.review(file, rider, request.reviewOptions());

            assertThat(row.day()).isEqualTo(LocalDate.of(2026, 6, isUtc ? 15 : 14));
            assertThat(row.day()).isEqualTo(review.rider().day());
            assertThat(row.judgement().thresholdPowerW()).isEqualTo(isUtc ? 300 : 270);
            assertThat(review.rider().thresholdPowerW()).isEqualTo(isUtc ? 300 : 270);
            assertThat(row.judgement().trainingStress()).isEqualTo(review.load().trainingStress());
            assertThat(row.judgement().targetW()).isEqualTo(review.pacing().targetW());
            Ability.Source source = review.ability().source();
            assertThat(source != null && source.isGuide())
                    .as("a best of the day of the ride itself is no measure of it")
                    .isEqualTo(!isUtc);
        }
    }

    /** A rider of 25 kg on a bicycle of 4 kg, the lightest of both that are believed. */
    @Test
    void onTheLightestRiderOnTheLightestBicycle() throws Exception {
        Rider child = Rider.UNKNOWN
                .withThresholdPowerW(250)
                .withMassKg(Bounds.RIDER_MASS_KG.low())
                .withBikeMassKg(Bounds.BIKE_MASS_KG.low());
        SeasonReview season = season(child);
        assertThat(season.skipped()).isEmpty();
        assertThat(judged(season)).isEqualTo(reviewed(season, child));
    }

    /** Wind tells only where directions are known; where only the store is left, another mass makes do without. */
    @Test
    void anotherMassWithoutTheFileIsJudgedByWhatTheStoreTells() throws Exception {
        season(RIDER);
        Rider lighter = RIDER.withMassKg(70);
        Path race = folder.resolve("2026-05-02-second-race.fit.gz");
        RideReview whole = Reviewer.review(race, lighter, ReviewOptions.WHOLE_RIDE);
        RideReview stored = Reviewer.review(RideCodec.slim(whole.ride()), lighter, ReviewOptions.WHOLE_RIDE);
        assertThat(estimate(stored.ride())).isNotEqualTo(estimate(whole.ride()));
        Files.delete(race);

        SeasonRide ride = season(lighter).rides().stream()
                .filter(each -> each.source().file().equals("2026-05-02-second-race.fit.gz"))
                .findFirst()
                .orElseThrow();
        TimeLedger.Entry lost = stored.pacing().ledger().allAtOnce().orElseThrow();
        assertThat(ride.judgement().costMinutesLow()).isEqualTo(lost.minutesLow());
        assertThat(ride.judgement().costMinutesHigh()).isEqualTo(lost.minutesHigh());
    }

    private static io.github.wattledger.ride.Outcome<RigEstimate> estimate(Ride ride) {
        return RigEstimate.of(ride, Course.of(ride).orElse(null), 81);
    }
}
