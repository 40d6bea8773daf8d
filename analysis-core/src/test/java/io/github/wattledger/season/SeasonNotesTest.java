package io.github.wattledger.season;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.Reviewer;
import io.github.wattledger.history.Agreement;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.rider.RideNotes;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rider.StopNotChosen;
import io.github.wattledger.season.RideJudgement.Found;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A season judges by the notes, keeps them, and recalls what was agreed. Checked against reviews of the same files. */
class SeasonNotesTest {
    private static final Path SAMPLES = Path.of("..", "sample-rides");
    private static final Rider RIDER = Rider.UNKNOWN.withThresholdPowerW(250).withMassKg(74);
    private static final String RACE = "over-hard-start.fit";
    private static final String EARLIER = "2026-05-31-fourth-race.fit.gz";

    /** Every kind of note. */
    private static final RideNotes ALL = new RideNotes(
            "Ebbwood 165",
            "Runa",
            "strong, then empty",
            "warm",
            List.of(70.0, 60.5),
            List.of(new StopNotChosen("level crossing", 100, null), new StopNotChosen("puncture", 300, 420)),
            List.of(new Interval(0, 2880), new Interval(4000, 4500)),
            "open at 190 W");

    @TempDir
    Path temp;

    private final Map<String, RideNotes> notes = new HashMap<>();
    private Path folder;
    private SeasonRequest request;
    private int read;

    @BeforeEach
    void copyRaces() throws Exception {
        folder = Files.createDirectory(temp.resolve("rides"));
        Files.copy(SAMPLES.resolve(RACE), folder.resolve(RACE));
        Files.copy(SAMPLES.resolve("season").resolve(EARLIER), folder.resolve(EARLIER));
        request = SeasonRequest.of(List.of(folder), temp.resolve("store.sqlite"))
                .withRider(RIDER)
                .withNotes(file -> notes.getOrDefault(file.getFileName().toString(), RideNotes.NONE));
    }

    private SeasonReview season(SeasonRequest asked) throws Exception {
        return SeasonRun.run(asked, Runnable::run, 1, new SeasonListener() {
            @Override
            public void found(int files, int newToRead) {
                read = newToRead;
            }
        });
    }

    private static SeasonRide ride(SeasonReview season, String file) {
        return season.rides().stream()
                .filter(ride -> ride.source().file().equals(file))
                .findFirst()
                .orElseThrow();
    }

    private static List<FindingKind> kinds(SeasonRide ride) {
        return ride.judgement().findings().stream().map(Found::kind).toList();
    }

    @Test
    void everyKindOfNoteIsKeptWhenTheFileIsGone() throws Exception {
        notes.put(RACE, ALL);
        assertThat(ride(season(request), RACE).notes()).isEqualTo(ALL);
        Files.delete(folder.resolve(RACE));
        notes.clear();
        SeasonReview later = season(request);
        assertThat(later.goneFiles()).containsExactly(RACE);
        assertThat(ride(later, RACE).notes()).isEqualTo(ALL);
        assertThat(ride(later, EARLIER).notes()).isEqualTo(RideNotes.NONE);
    }

    @Test
    void aNotedStopIsJudgedAsAReviewJudgesItWithoutReadingTheFileAgain() throws Exception {
        SeasonRide plain = ride(season(request), RACE);
        PacingReview review = Reviewer.review(folder.resolve(RACE), RIDER, request.reviewOptions())
                .pacing();
        Interval firstToLast = review.findings().stream()
                .filter(finding -> finding.kind() == FindingKind.STOPPED_TIME)
                .findFirst()
                .orElseThrow()
                .when();
        List<StopNotChosen> stops = List.of(
                new StopNotChosen("closed road", firstToLast.fromSecond(), null),
                new StopNotChosen("puncture", firstToLast.toSecond() - 1, null));
        assertThat(kinds(plain)).contains(FindingKind.STOPPED_TIME);
        notes.put(RACE, new RideNotes(null, null, null, null, List.of(), stops, List.of(), null));

        SeasonRide noted = ride(season(request), RACE);
        assertThat(read).as("files read").isZero();
        assertThat(kinds(noted)).doesNotContain(FindingKind.STOPPED_TIME);
        PacingReview withNotes = Reviewer.review(
                        folder.resolve(RACE),
                        RIDER,
                        request.reviewOptions()
                                .withNotes(notes.get(RACE))
                                .withOwnRides(season(request).ownRides(RIDER)))
                .pacing();
        assertThat(noted.judgement().costMinutesHigh())
                .isEqualTo(withNotes.ledger().allAtOnce().orElseThrow().minutesHigh());

        notes.clear();
        assertThat(ride(season(request), RACE).judgement()).isEqualTo(plain.judgement());
    }

    @Test
    void withoutAReaderTheNotesOfTheStoreHold() throws Exception {
        notes.put(RACE, ALL);
        season(request);
        assertThat(ride(season(request.withNotes(null)), RACE).notes()).isEqualTo(ALL);
    }

    @Test
    void ofTwoCopiesTheOneWithNotesCounts() throws Exception {
        Files.copy(folder.resolve(RACE), folder.resolve("copy.fit"));
        notes.put(RACE, ALL);
        assertThat(season(request).rides().stream().map(SeasonRide::notes)).contains(ALL);
    }

    @Test
    void whatWasAgreedIsRecalledAtTheNextRaceAndByTheStore() throws Exception {
        notes.put(EARLIER, new RideNotes(null, null, null, null, List.of(), List.of(), List.of(), "open at 190 W"));
        SeasonReview season = season(request);
        Agreement agreed = new Agreement(LocalDate.of(2026, 5, 31), "open at 190 W");
        assertThat(season.pacing().recalls()).singleElement().satisfies(recall -> {
            assertThat(recall.race().source().file()).isEqualTo(RACE);
            assertThat(recall.agreed()).isEqualTo(agreed);
        });
        assertThat(StoredSeason.ridesBefore(request.store(), RIDER, ZoneOffset.UTC, LocalDate.of(2026, 6, 13))
                        .agreedBefore(LocalDate.of(2026, 6, 13)))
                .isEqualTo(agreed);
        // The opening over the target times the target, both of the review.
        PacingReview review = Reviewer.review(
                        folder.resolve(RACE), RIDER, request.reviewOptions().withOwnRides(season.ownRides(RIDER)))
                .pacing();
        assertThat(ride(season, RACE).openingW())
                .isEqualTo(Objects.requireNonNull(review.numbers().openingOverTarget())
                        * Objects.requireNonNull(review.targetW()))
                .isEqualTo(review.openingW());
    }
}
