package io.github.wattledger;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.intake.OpenedRide;
import io.github.wattledger.pacing.Effort;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.Occasion;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.pacing.Remark;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Rider;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** What is known of a ride decides what is said of it: the level only by a known threshold, mistakes only of a race. */
class ReviewerOccasionTest {
    private static final int HOUR = 3600;

    /** Three hours outdoors, the first two at 215 W and the last at 165 W: it faded by 23 %. */
    private static Ride fading() {
        int seconds = 3 * HOUR;
        return Ride.builder(Instant.parse("2026-06-14T08:00:00Z"), seconds)
                .channel(Channel.POWER, Series.generate(seconds, second -> second < 2 * HOUR ? 215 : 165))
                .channel(Channel.SPEED, Series.generate(seconds, second -> 8))
                .channel(Channel.DISTANCE, Series.generate(seconds, second -> 8.0 * second))
                .channel(Channel.ALTITUDE, Series.generate(seconds, second -> 40))
                .channel(Channel.LATITUDE, Series.generate(seconds, second -> 47 + second * 7e-5))
                .channel(Channel.LONGITUDE, Series.generate(seconds, second -> 8))
                .build();
    }

    private static RideReview review(@Nullable Double deviceThresholdW, Rider rider, Effort effort) {
        RecordingDevice device = new RecordingDevice("Acme Recorder 7", deviceThresholdW, null, null, null);
        return Reviewer.review(
                OpenedRide.of(fading(), device, null), rider, ReviewOptions.WHOLE_RIDE.withEffort(effort));
    }

    private static RideReview review(@Nullable Double deviceThresholdW) {
        return review(deviceThresholdW, Rider.UNKNOWN, Effort.AUTO);
    }

    /** 0.84 of 240 W is the guide for three hours, 201 W. */
    @Test
    void aKnownThresholdGivesAVerdict() {
        for (RideReview known :
                new RideReview[] {review(240.0), review(null, Rider.UNKNOWN.withThresholdPowerW(240), Effort.AUTO)}) {
            PacingReview pacing = known.pacing();
            assertThat(pacing.occasion().reason()).isEqualTo(Occasion.Reason.HARD_FOR_ITS_LENGTH);
            assertThat(pacing.targetW()).isNotNull();
            assertThat(pacing.finding(FindingKind.FADE)).isPresent();
            assertThat(pacing.remarks()).isEmpty();
        }
    }

    @Test
    void withoutOneThereIsNoVerdictOnTheLevel() {
        PacingReview pacing = review(null).pacing();
        assertThat(pacing.verdict()).isEqualTo(Verdict.NOT_JUDGED);
        assertThat(pacing.verdictReason()).isEqualTo("threshold power is not known");
        assertThat(pacing.targetW()).isNull();
        assertThat(pacing.findings()).isEmpty();
        assertThat(pacing.ledger().entries()).isEmpty();
        assertThat(pacing.remarks()).extracting(Remark::kind).contains(FindingKind.FADE);
    }

    /** Exactly 200 W from a device is its factory setting; 201 W somebody set, and a given 200 W is believed. */
    @Test
    void theFactorySettingOfADeviceIsNotKnown() {
        RideReview factory = review(200.0);
        assertThat(factory.pacing().occasion().reason()).isEqualTo(Occasion.Reason.THRESHOLD_NOT_KNOWN);
        assertThat(factory.quality().notes())
                .filteredOn(note -> note.code().equals("threshold-doubtful"))
                .singleElement()
                .extracting(QualityNote::text)
                .asString()
                .contains("200 W", "delivered");
        assertThat(factory.pacing().findings()).isEmpty();
        assertThat(review(220.0).pacing().occasion().isRace()).isTrue();
        Rider given = Rider.UNKNOWN.withThresholdPowerW(200);
        assertThat(review(null, given, Effort.AUTO).quality().notes())
                .extracting(QualityNote::text)
                .noneMatch(message -> message.contains("delivered"));
    }

    /** The rider's own word settles that it was a race, but not how hard it was. */
    @Test
    void aRaceDayIsARace() {
        Rider racing = Rider.UNKNOWN.withRaceDays(Set.of(LocalDate.of(2026, 6, 14)));
        PacingReview pacing = review(null, racing, Effort.AUTO).pacing();
        assertThat(pacing.occasion().reason()).isEqualTo(Occasion.Reason.RACE_DAY);
        assertThat(pacing.finding(FindingKind.FADE)).isPresent();
        assertThat(pacing.targetW()).isNull();
        assertThat(pacing.finding(FindingKind.UNDER_PACED)).isEmpty();
        assertThat(pacing.finding(FindingKind.OVER_HARD_START)).isEmpty();
        Rider otherDay = Rider.UNKNOWN.withRaceDays(Set.of(LocalDate.of(2026, 6, 13)));
        assertThat(review(null, otherDay, Effort.AUTO).pacing().occasion().isRace())
                .isFalse();
    }

    /** Asked for as training it is none, whatever its numbers say: what compares its parts is a remark. */
    @Test
    void trainingGetsRemarksAlone() {
        PacingReview pacing = review(240.0, Rider.UNKNOWN, Effort.TRAINING).pacing();
        assertThat(pacing.verdict()).isEqualTo(Verdict.NOT_JUDGED);
        assertThat(pacing.findings()).isEmpty();
        assertThat(pacing.ledger().entries()).isEmpty();
        assertThat(pacing.remarks()).singleElement().satisfies(remark -> {
            assertThat(remark.kind()).isEqualTo(FindingKind.FADE);
            assertThat(remark.evidence().get("lossPercent")).isPresent();
        });
    }

    /** Two hours at 240 W and then less: a fade of a race; of a session on a trainer it is how the session was set. */
    @Test
    void aTrainerSessionThatIsNotJudgedHasNoFade() {
        Ride trainer = Ride.ofWatts(Series.generate(7200, second -> second < 3600 ? 240 : 170));
        Rider rider = Rider.UNKNOWN.withThresholdPowerW(260);
        RideReview session = Reviewer.review(trainer, rider, ReviewOptions.WHOLE_RIDE);
        assertThat(session.pacing().occasion().reason()).isEqualTo(Occasion.Reason.NOTHING_MOVED);
        assertThat(session.pacing().remarks()).noneMatch(remark -> remark.kind() == FindingKind.FADE);
        RideReview race = Reviewer.review(trainer, rider, ReviewOptions.WHOLE_RIDE.withEffort(Effort.RACE));
        assertThat(race.pacing().finding(FindingKind.FADE)).isPresent();
    }
}
