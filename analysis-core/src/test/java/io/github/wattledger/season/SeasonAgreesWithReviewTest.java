package io.github.wattledger.season;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.course.Course;
import io.github.wattledger.pacing.TimeLedger;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rig.RigEstimate;
import io.github.wattledger.testing.RealRides;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

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

    /** What each ride cost, by a review of its file alone. */
    private Map<String, Outcome> reviewed(SeasonReview season, Rider rider) throws UnreadableRideException {
        Map<String, Outcome> costs = new HashMap<>();
        for (SeasonRide ride : season.rides()) {
            RideReview review = Reviewer.review(
                    folder.resolve(ride.source().file()),
                    rider,
                    ReviewOptions.WHOLE_RIDE.withSessionIndex(ride.source().sessionIndex()));
            TimeLedger.Entry lost = review.pacing().ledger().allAtOnce().orElse(null);
            costs.put(
                    name(ride),
                    new Outcome(
                            review.pacing().verdict(),
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
                    new Outcome(judgement.verdict(), judgement.costMinutesLow(), judgement.costMinutesHigh()));
        }
        return costs;
    }

    private static String name(SeasonRide ride) {
        return ride.source().file() + " " + ride.source().sessionIndex();
    }

    /** What must be the same to the last bit. */
    private record Outcome(
            Verdict verdict,
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
        Map<String, Outcome> expected = reviewed(season(RIDER), stronger);
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.toList()) {
                Files.delete(file);
            }
        }
        assertThat(judged(season(stronger))).isEqualTo(expected);
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
