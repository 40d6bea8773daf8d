package io.github.wattledger.cli.report.words;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.pacing.Effort;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Rider;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/** What a review says that it does not know. */
class UnknownWordsTest {
    private static final double THRESHOLD_W = 250;
    private static final int SECONDS = 13_000;
    private static final int BLOCK_SECONDS = 240;

    private static String reviewed(double lowW, double highW) {
        Ride ride = Ride.builder(Instant.parse("2026-06-14T06:00:00Z"), SECONDS)
                .channel(
                        Channel.POWER,
                        Series.generate(SECONDS, second -> second / BLOCK_SECONDS % 2 == 0 ? lowW : highW))
                .channel(Channel.DISTANCE, Series.generate(SECONDS, second -> 8.0 * second))
                .build();
        return UnknownWords.of(Reviewer.review(
                ride,
                Rider.UNKNOWN.withThresholdPowerW(THRESHOLD_W),
                ReviewOptions.WHOLE_RIDE.withEffort(Effort.RACE)));
    }

    /**
     * By hand: the guide for 3.61 h at 250 W is 250 x 3.61^-0.16 = 203.6 W, and the guide's own range ends 9 % above it (it
     * is 6 % at 2 h and 13 % at 5 h). Blocks of 60 and 300 W have a mean of 180 W, which refutes nothing, and a normalized
     * power near ((60^4 + 300^4) / 2)^(1/4) = 252 W, 1.24 of the guide. At an even 200 W the share is 0.98.
     */
    @Test
    void aRideBeyondTheRangeOfTheGuideLeavesItOpenWhetherTheThresholdIsHigher() {
        assertThat(reviewed(60, 300))
                .containsPattern(
                        "whether your threshold power is above 250 W \\(the ride was 1\\.2[2-5] of the guide\\)");
        assertThat(reviewed(200, 200)).startsWith("Not known: ").doesNotContain("threshold");
    }

    /** By hand as above: blocks of 170 and 230 W have a normalized power of 205 W, 1.01 of the guide. */
    @Test
    void aRideWithinTheRangeOfTheGuideSaysNothingAgainstTheThreshold() {
        assertThat(reviewed(170, 230)).startsWith("Not known: ").doesNotContain("threshold");
    }

    /**
     * Threshold is the power of about an hour: twelve minutes at 1.2 of it refute nothing, so it is not called unbelieved, though
     * so short a ride is not judged.
     */
    @Test
    void aRideTooShortToJudgeSaysNothingAgainstTheThreshold() {
        Ride short12 = Ride.ofWatts(Series.generate(720, second -> 300));
        RideReview review =
                Reviewer.review(short12, Rider.UNKNOWN.withThresholdPowerW(THRESHOLD_W), ReviewOptions.WHOLE_RIDE);
        assertThat(review.pacing().targetW()).isNull();
        assertThat(UnknownWords.of(review)).startsWith("Not known: ").doesNotContain("threshold");
        assertThat(OccasionWords.of(review)).isEqualTo("Not judged: it was ridden for less than 40 minutes.");
        assertThat(LoadWords.doubt(review)).isNull();
        assertThat(AbilityWords.of(review)).contains("No guide for this length: a guide begins at 20 min of riding.");
    }

    /** Where nothing moves there is no bunch, so that nobody needs to say whether there was one. */
    @Test
    void onATrainerNobodyRidesInABunch() {
        Ride trainer = Ride.ofWatts(Series.generate(SECONDS, second -> 200));
        assertThat(UnknownWords.of(Reviewer.review(
                        trainer,
                        Rider.UNKNOWN.withThresholdPowerW(THRESHOLD_W),
                        ReviewOptions.WHOLE_RIDE.withEffort(Effort.RACE))))
                .startsWith("Not known: ")
                .doesNotContain("bunch");
        assertThat(reviewed(200, 200)).contains("whether you rode in a bunch");
    }
}
