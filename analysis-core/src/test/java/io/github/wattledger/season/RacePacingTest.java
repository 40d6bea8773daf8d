package io.github.wattledger.season;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.history.OwnRides;
import io.github.wattledger.history.RideTraits;
import io.github.wattledger.load.LoadNumber;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.Severity;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.rider.RideNotes;
import io.github.wattledger.rider.Rider;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class RacePacingTest {
    private static SeasonRide race(int day, double openingOverTarget, double targetW, @Nullable Double capW) {
        return ride(day, Verdict.EVEN, new RideTraits(null, null, null, openingOverTarget, 4.0, capW, null), targetW);
    }

    private static SeasonRide race(int day, double openingOverTarget, @Nullable Double capW, int seconds) {
        return ride(
                day,
                Verdict.EVEN,
                new RideTraits(null, null, null, openingOverTarget, 4.0, capW, null),
                200.0,
                seconds);
    }

    private static SeasonRide ride(int day, Verdict verdict, RideTraits traits, @Nullable Double targetW) {
        return ride(day, verdict, traits, targetW, 7200);
    }

    private static RideJudgement judgement(Verdict verdict, @Nullable Double targetW, @Nullable Double costMinutes) {
        List<RideJudgement.Found> found = costMinutes == null
                ? List.of()
                : List.of(new RideJudgement.Found(FindingKind.STOPPED_TIME, Severity.MINOR));
        return new RideJudgement(250.0, null, null, null, verdict, null, targetW, costMinutes, costMinutes, found);
    }

    private static SeasonRide ride(int day, Verdict verdict, RideTraits traits, @Nullable Double targetW, int seconds) {
        return ride(day, judgement(verdict, targetW, 1.0), traits, seconds);
    }

    /** A race with a mistake that cost so many minutes, or null for one without a mistake. */
    private static SeasonRide race(int day, @Nullable Double targetW, @Nullable Double costMinutes) {
        RideTraits traits = new RideTraits(null, null, null, null, null, null, null);
        return ride(day, judgement(Verdict.EVEN, targetW, costMinutes), traits, 7200);
    }

    private static SeasonRide ride(int day, RideJudgement judgement, RideTraits traits, int seconds) {
        Map<LoadNumber, Double> values = new EnumMap<>(LoadNumber.class);
        for (LoadNumber time :
                List.of(LoadNumber.ELAPSED_SECONDS, LoadNumber.TIMER_SECONDS, LoadNumber.MOVING_SECONDS)) {
            values.put(time, (double) seconds);
        }
        LocalDate date = LocalDate.of(2026, 5, day);
        Instant start = date.atTime(8, 0).toInstant(ZoneOffset.UTC);
        return new SeasonRide(
                new SeasonRide.Source("r" + day, "r" + day, 0, "FIT", null, start, null, 3),
                date,
                null,
                new RideNumbers(seconds, values),
                judgement,
                List.of(),
                List.of(),
                List.of(),
                false,
                traits,
                RideNotes.NONE);
    }

    @Test
    void aCapIsKeptWithinTheAccuracyOfAMeter() {
        // 220 W named after the first race: 224 W in the next opening are within 2 %, 226 W are not; no new cap, so it
        // stands.
        List<RacePacing> races =
                RacePacing.of(List.of(race(1, 1.2, 200, 220.0), race(2, 1.12, 200, null), race(3, 1.13, 200, null)));
        assertThat(races.get(0).keptLastCap()).as("no advice before it").isNull();
        assertThat(races.get(1).keptLastCap()).isTrue();
        assertThat(races.get(2).keptLastCap()).isFalse();
        assertThat(races.get(2).lastCapW()).isEqualTo(220);
    }

    /** docs/methods.md: riding times within a factor of 1.5; 2 h and 3 h are alike, 2 h and 3 h 1 s are not. */
    @Test
    void onlyACapOfARaceOfLikeLengthCounts() {
        List<RacePacing> races = RacePacing.of(List.of(
                race(1, 1.2, 220.0, 7200),
                race(2, 1.0, null, 10_800),
                race(3, 1.2, 190.0, 25_200),
                race(4, 1.0, null, 10_801),
                race(5, 1.0, null, 7200),
                race(6, 1.0, null, 25_200)));
        assertThat(races).extracting(RacePacing::lastCapW).containsExactly(null, 220.0, null, null, 220.0, 190.0);
        assertThat(races.get(2).keptLastCap()).isNull();
    }

    @Test
    void onlyTheLastRacesAreShownAndTrainingIsNone() {
        SeasonRide training = ride(4, Verdict.NOT_JUDGED, RideTraits.NONE, null);
        List<RacePacing> races = RacePacing.last(
                RacePacing.of(
                        List.of(race(1, 1.2, 200, 220.0), race(2, 1.0, 200, null), training, race(5, 1.0, 200, null))),
                2);
        assertThat(races)
                .extracting(RacePacing::day)
                .containsExactly(LocalDate.of(2026, 5, 2), LocalDate.of(2026, 5, 5));
        assertThat(races.get(0).lastCapW()).isEqualTo(220);
        assertThat(races.get(0).fadePercent()).isEqualTo(4);
        assertThat(RacePacing.last(RacePacing.of(List.of(training)), 3)).isEmpty();
    }

    /** By hand: (2 + 4) / 2 = 3 min, then (0 + 1) / 2 = 0.5 min; a race that could not be priced is no race for nothing. */
    @Test
    void aRaceWithoutAMistakeCostsNothingInTheMean() {
        PacingTrend trend = PacingTrend.of(
                List.of(
                        race(1, 200.0, 2.0),
                        race(2, 200.0, 4.0),
                        race(3, null, null),
                        race(4, 200.0, null),
                        race(5, null, null),
                        race(6, 200.0, 1.0)),
                OwnRides.of(List.of(), Rider.UNKNOWN));
        assertThat(trend.earlier())
                .isNotNull()
                .extracting(PacingTrend.Half::costMinutes)
                .isEqualTo(3.0);
        assertThat(trend.later())
                .isNotNull()
                .extracting(PacingTrend.Half::costMinutes)
                .isEqualTo(0.5);
        assertThat(trend.races())
                .extracting(RacePacing::isWithoutMistake)
                .containsExactly(false, false, false, true, false, false);
    }

    @Test
    void aDriftAloneIsNoMistake() {
        RideJudgement.Found drift = new RideJudgement.Found(FindingKind.DRIFT, Severity.OBSERVATION);
        RideJudgement.Found fade = new RideJudgement.Found(FindingKind.FADE, Severity.OBSERVATION);
        assertThat(found(drift).isWithoutMistake()).isTrue();
        assertThat(found(drift, fade).isWithoutMistake()).isFalse();
    }

    private static RideJudgement found(RideJudgement.Found... found) {
        return new RideJudgement(250.0, null, null, null, Verdict.EVEN, null, 200.0, null, null, List.of(found));
    }
}
