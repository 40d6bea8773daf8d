package io.github.wattledger.cli.report.words;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.pacing.Effort;
import io.github.wattledger.pacing.Evidence;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.Occasion.WorkLap;
import io.github.wattledger.pacing.Remark;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Rider;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What the first lines say of the occasion, so that nobody needs the long report to know what to do. */
class OccasionWordsTest {
    private static final int TWO_HOURS = 7200;

    /** By hand: 300 W for two hours are an intensity factor of 300 / 250 = 1.20. */
    private static final String DOUBT =
            "An intensity factor of 1.20 over 2.0 h contradicts a threshold of 250 W: the threshold looks too low.";

    private static RideReview tooHardForItsThreshold(Effort effort) {
        return Reviewer.review(
                Ride.builder(Instant.parse("2026-06-13T06:00:00Z"), TWO_HOURS)
                        .channel(Channel.POWER, Series.generate(TWO_HOURS, second -> 300))
                        .channel(Channel.DISTANCE, Series.generate(TWO_HOURS, second -> 8.0 * second))
                        .build(),
                Rider.UNKNOWN.withThresholdPowerW(250),
                ReviewOptions.WHOLE_RIDE.withEffort(effort));
    }

    private static RideReview withoutPower(Rider rider, Effort effort) {
        Ride ride = Ride.builder(Instant.parse("2026-06-13T06:00:00Z"), TWO_HOURS)
                .channel(Channel.HEART_RATE, Series.generate(TWO_HOURS, second -> 150))
                .channel(Channel.DISTANCE, Series.generate(TWO_HOURS, second -> 8.0 * second))
                .build();
        return Reviewer.review(ride, rider, ReviewOptions.WHOLE_RIDE.withEffort(effort));
    }

    private static List<WorkLap> everySecondLap(int laps) {
        return IntStream.rangeClosed(1, laps)
                .mapToObj(number -> new WorkLap(2 * number, 60, 200 + 10 * number))
                .toList();
    }

    @Test
    void whyAThresholdIsNotBelievedStandsWhereItIsSaid() {
        assertThat(OccasionWords.of(tooHardForItsThreshold(Effort.AUTO)))
                .isEqualTo("Race or training? Cannot tell without the true threshold power. " + DOUBT
                        + " Give the true one with --threshold-power, or --effort race.");
        assertThat(OccasionWords.of(tooHardForItsThreshold(Effort.RACE)))
                .isEqualTo("Judged as a race, as asked. " + DOUBT
                        + " So parts of the ride are compared and nothing is said of the level. Give the true one with"
                        + " --threshold-power.");
    }

    @Test
    void whatWasJudgedByDoesNotPassOffADoubtedThreshold() {
        assertThat(RiderWords.judgedBy(tooHardForItsThreshold(Effort.AUTO), Units.METRIC))
                .startsWith("Threshold power: not known. 250 W, as given, is not believed. " + DOUBT
                        + " Give the true one with --threshold-power.");
        assertThat(AbilityWords.of(tooHardForItsThreshold(Effort.AUTO)))
                .contains("No guide for this length: threshold power is not known.");
    }

    @Test
    void aRaceThatCannotBeJudgedSaysWhoCalledItOne() {
        assertThat(OccasionWords.of(withoutPower(Rider.UNKNOWN, Effort.RACE)))
                .isEqualTo("Not judged, though asked to be judged as a race: no power.");
        assertThat(OccasionWords.of(
                        withoutPower(Rider.UNKNOWN.withRaceDays(Set.of(LocalDate.of(2026, 6, 13))), Effort.AUTO)))
                .isEqualTo("Not judged, though the rider profile names this day as a race day: no power.");
    }

    @Test
    void aRemarkOfABriefHasItsNumbers() {
        Evidence evidence = new Evidence(List.of(
                new Evidence.Entry("latePowerW", 115),
                new Evidence.Entry("earlyPowerW", 173),
                new Evidence.Entry("lossPercent", 34)));
        Remark fade = new Remark(FindingKind.FADE, new Interval(1380, 3290), 10_600.0, 24_800.0, evidence);
        assertThat(RemarkWords.brief(fade, Units.METRIC))
                .isEqualTo(
                        "fade, 0:23:00 to 0:54:50: on like ground power was 115 W late against 173 W early, a loss of"
                                + " 34 %");
    }

    @Test
    void moreThanFourLapsAreCounted() {
        assertThat(OccasionWords.laps(everySecondLap(4)))
                .isEqualTo("laps 2, 4, 6, 8, about 0:01:00 each at 210, 220, 230, 240 W, with rests");
        assertThat(OccasionWords.laps(everySecondLap(5)))
                .isEqualTo("5 laps, from lap 2 to lap 10, about 0:01:00 each at 210 to 250 W, with rests");
    }
}
