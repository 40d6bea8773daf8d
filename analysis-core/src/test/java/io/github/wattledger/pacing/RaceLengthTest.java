package io.github.wattledger.pacing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.intake.Selection;
import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rider.Rider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A part of a race keeps the target of the race, and its opening. */
class RaceLengthTest {
    private static final int HOUR = 3600;
    private static final double THRESHOLD_W = 250;

    /** Ten minutes of rolling, six hours of racing, half an hour home. */
    private static Ride race() {
        return new RideByHand()
                .riding(600, 60)
                .riding(6 * HOUR, 190)
                .riding(1800, 60)
                .build();
    }

    private static RaceLength ofPart(int fromSecond, int toSecond) {
        Ride whole = race();
        return RaceLength.ofPart(whole, whole.part(new Interval(fromSecond, toSecond)), THRESHOLD_W);
    }

    /** The opening of six hours is the first hour of racing, which begins at 600 s. */
    @ParameterizedTest
    @CsvSource({
        "600, 4200, 3600",
        "0, 3600, 3600",
        "2400, 6000, 1800",
        "4200, 7800, 0",
        "15000, 22200, 0",
    })
    void aPartHasWhatFallsIntoItOfTheOpeningOfTheRace(int fromSecond, int toSecond, int openingSeconds) {
        RaceLength length = ofPart(fromSecond, toSecond);
        assertThat(length.movingSeconds()).isEqualTo(6 * HOUR);
        assertThat(length.openingSeconds()).isEqualTo(openingSeconds);
    }

    /** From half of the race on, what somebody chose is the race itself. */
    @Test
    void aLongPartIsTheRace() {
        assertThat(ofPart(600, 600 + 3 * HOUR)).isEqualTo(new RaceLength(3 * HOUR, 1800));
        assertThat(ofPart(600, 600 + 3 * HOUR - 60).movingSeconds()).isEqualTo(6 * HOUR);
    }

    @Test
    void aRaceIsAsLongAsItsRacedPart() {
        Ride ride = race();
        assertThat(RaceLength.of(ride, RacedPart.find(ride, THRESHOLD_W))).isEqualTo(new RaceLength(6 * HOUR, HOUR));
    }

    /** An hour of six: the target is that of six hours, 0.75 of threshold, and not that of one, threshold itself. */
    @Test
    void aReviewOfAnHourKeepsTheTargetOfTheRace() {
        PacingReview hour = Reviewer.review(
                        race(),
                        Rider.UNKNOWN.withThresholdPowerW(THRESHOLD_W),
                        ReviewOptions.WHOLE_RIDE.withSelection(Selection.WHOLE_RIDE.withSeconds(7800, 11_400)))
                .pacing();
        assertThat(hour.targetW()).isCloseTo(SustainablePower.guideW(THRESHOLD_W, 6 * HOUR), within(1e-9));
        assertThat(hour.verdict()).isEqualTo(Verdict.EVEN);
    }
}
