package io.github.wattledger.pacing;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.simulation.RaceTruth;
import io.github.wattledger.simulation.RideTape;
import io.github.wattledger.simulation.SampleRides;
import java.time.Instant;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Expected values follow from the limits in the methods page, applied by hand to rides made for the purpose. */
class PacingReviewTest {
    private static final double THRESHOLD_W = 250;
    private static final Rider RIDER =
            Rider.UNKNOWN.withThresholdPowerW(THRESHOLD_W).withThresholdHeartRateBpm(165);
    private static final int HOUR = 3600;

    private static RideReview review(Ride ride) {
        return Reviewer.review(ride, RIDER, ReviewOptions.WHOLE_RIDE);
    }

    private static RideReview review(Ride ride, Effort effort) {
        return Reviewer.review(ride, RIDER, ReviewOptions.WHOLE_RIDE.withEffort(effort));
    }

    /**
     * A level road without wind, outdoors, at the speed that the power gives: P = 0.5 rho CdA v^3 + Crr m g v (Martin et al.
     * 1998, without the change of motion).
     */
    private static Ride ride(int seconds, IntToDoubleFunction watts, IntToDoubleFunction bpm) {
        double[] power = Series.generate(seconds, watts).toArray();
        double[] speed = new double[seconds];
        double[] distance = new double[seconds];
        double felt = power[0];
        for (int second = 0; second < seconds; second++) {
            felt += (power[second] - felt) / 20;
            speed[second] = steadySpeedMps(felt);
            distance[second] = (second == 0 ? 0 : distance[second - 1]) + speed[second];
        }
        return Ride.builder(Instant.parse("2026-06-14T05:00:00Z"), seconds)
                .channel(Channel.POWER, Series.of(power))
                .channel(Channel.HEART_RATE, Series.generate(seconds, bpm))
                .channel(Channel.SPEED, Series.of(speed))
                .channel(Channel.DISTANCE, Series.of(distance))
                .channel(Channel.ALTITUDE, Series.generate(seconds, second -> 40))
                .channel(Channel.LATITUDE, Series.generate(seconds, second -> 47 + distance[second] / 111_000))
                .channel(Channel.LONGITUDE, Series.generate(seconds, second -> 8))
                .build();
    }

    private static double steadySpeedMps(double watts) {
        double speed = 8;
        for (int round = 0; round < 30; round++) {
            double force = 0.5 * 1.2 * 0.36 * speed * speed + 0.005 * 85 * 9.81;
            double slope = 3 * 0.5 * 1.2 * 0.36 * speed * speed + 0.005 * 85 * 9.81;
            speed = Math.max(0.5, speed - (force * speed - watts) / slope);
        }
        return speed;
    }

    private static Ride ride(int seconds, IntToDoubleFunction watts) {
        return ride(seconds, watts, second -> 140);
    }

    private static Finding finding(RideReview review, FindingKind kind) {
        return review.pacing()
                .finding(kind)
                .orElseThrow(() -> new AssertionError(
                        kind + " not among " + review.pacing().findings()));
    }

    private static double evidence(Finding finding, String name) {
        return finding.evidence().get(name).orElseThrow();
    }

    /** Major from 2 % of the moving time on, minor under 0.5 %, an observation under 3 s: the upper end of the price. */
    private static Severity byMinutes(Finding finding, int movingSeconds) {
        double seconds = 60 * ((Cost.Priced) finding.cost()).highMinutes();
        if (seconds < 3) {
            return Severity.OBSERVATION;
        }
        double percent = 100 * seconds / movingSeconds;
        return percent < 0.5 ? Severity.MINOR : percent < 2 ? Severity.MODERATE : Severity.MAJOR;
    }

    private static double targetW(int seconds) {
        return SustainablePower.guideW(THRESHOLD_W, seconds);
    }

    @Nested
    class EvenRides {
        @ParameterizedTest
        @ValueSource(ints = {1, 2, 3, 5, 7, 10, 15})
        void raiseNothing(int hours) {
            RideReview review = review(ride(hours * HOUR, second -> targetW(hours * HOUR)));
            assertThat(review.pacing().findings()).isEmpty();
            assertThat(review.pacing().verdict()).isEqualTo(Verdict.EVEN);
            assertThat(review.pacing().targetW()).isEqualTo(targetW(hours * HOUR));
        }

        /** The ride moves a little about the target, the heart follows with its lag: still nothing. */
        @Test
        void raiseNothingWithAHeartThatFollows() {
            double[] felt = {190};
            RideReview review = review(ride(6 * HOUR, second -> 188 + 25 * Math.sin(second / 400.0), second -> {
                felt[0] += (188 + 25 * Math.sin(second / 400.0) - felt[0]) / 60;
                return 80 + 0.3 * felt[0];
            }));
            assertThat(review.pacing().findings()).isEmpty();
        }
    }

    @Nested
    class OverHardStartFinding {
        @Test
        void isTrueToTheSimulatedRace() {
            RideTape tape = SampleRides.overHardStart();
            RaceTruth truth = RaceTruth.of(tape);
            RideReview review = Reviewer.review(tape.toRecording(), Rider.UNKNOWN, ReviewOptions.WHOLE_RIDE);
            Finding start = finding(review, FindingKind.OVER_HARD_START);
            assertThat(start.when()).isEqualTo(new Interval(truth.raceStartSecond(), truth.openingEndSecond()));
            assertThat(evidence(start, "excessWorkKJ")).isCloseTo(truth.openingExcessKJ(), within(1.0));
            assertThat(evidence(start, "targetW")).isCloseTo(truth.targetW(), within(0.05));
            assertThat(evidence(start, "openingNormalizedPowerW"))
                    .isCloseTo(truth.openingNormalizedPowerW(), within(0.5));
            assertThat(review.pacing().verdict()).isEqualTo(Verdict.OVER_HARD_START);
        }

        @Test
        void isNotRaisedOnTheEvenRaceOfTheSameRider() {
            RideReview review =
                    Reviewer.review(SampleRides.evenPaced().toRecording(), Rider.UNKNOWN, ReviewOptions.WHOLE_RIDE);
            assertThat(review.pacing().findings())
                    .extracting(Finding::kind)
                    .doesNotContain(
                            FindingKind.OVER_HARD_START,
                            FindingKind.FADE,
                            FindingKind.DRIFT,
                            FindingKind.SURGES,
                            FindingKind.LATE_RESERVE);
            assertThat(review.pacing().verdict()).isEqualTo(Verdict.EVEN);
        }

        /** Opening of six hours: the first hour. Its excess over the target: hour x (220 - target). */
        @Test
        void carriesItsEvidence() {
            int seconds = 6 * HOUR;
            Ride ride = ride(seconds, second -> second < HOUR ? 220 : 180);
            Finding start = finding(review(ride), FindingKind.OVER_HARD_START);
            assertThat(start.when()).isEqualTo(new Interval(0, HOUR));
            assertThat(start.severity()).isEqualTo(byMinutes(start, seconds));
            assertThat(evidence(start, "excessWorkKJ")).isCloseTo(HOUR * (220 - targetW(seconds)) / 1000, within(1e-6));
            assertThat(evidence(start, "minutesAboveThreshold")).isZero();
            assertThat(start.startM()).isEqualTo(ride.series(Channel.DISTANCE).get(0));
            assertThat(start.endM()).isEqualTo(ride.series(Channel.DISTANCE).get(HOUR - 1));
            assertThat(requireNonNull(start.advice().capW())).isCloseTo(1.05 * targetW(seconds), within(0.5));
        }

        @Test
        void needsAnOpeningAboveTheRest() {
            // 1.11 x target throughout: a rider who keeps it up is simply better than the guide.
            PacingReview pacing =
                    review(ride(6 * HOUR, second -> 1.11 * targetW(6 * HOUR))).pacing();
            assertThat(pacing.findings()).isEmpty();
            assertThat(pacing.verdict()).isEqualTo(Verdict.EVEN);
        }

        @Test
        void needsAnOpeningAboveTheTarget() {
            // 1.08 x target, then 0.9 x.
            double target = targetW(6 * HOUR);
            RideReview review = review(ride(6 * HOUR, second -> (second < HOUR ? 1.08 : 0.9) * target));
            assertThat(review.pacing().findings())
                    .extracting(Finding::kind)
                    .doesNotContain(FindingKind.OVER_HARD_START);
        }

        @ParameterizedTest
        @ValueSource(ints = {1, 3, 8, 12})
        void looksAtASixthButNotUnder20NorOver90Minutes(int hours) {
            int opening = Math.min(90 * 60, Math.max(20 * 60, hours * HOUR / 6));
            RideReview review =
                    review(ride(hours * HOUR, second -> (second < opening ? 1.2 : 0.9) * targetW(hours * HOUR)));
            assertThat(finding(review, FindingKind.OVER_HARD_START).when()).isEqualTo(new Interval(0, opening));
        }

        @Test
        void takesInThresholdRidingThatLiesWithinIt() {
            RideReview review = review(ride(6 * HOUR, second -> second < HOUR ? 245 : 175));
            assertThat(review.pacing().findings())
                    .extracting(Finding::kind)
                    .contains(FindingKind.OVER_HARD_START)
                    .doesNotContain(FindingKind.THRESHOLD_RIDING_EARLY);
        }
    }

    @Nested
    class ThresholdRidingEarlyFinding {
        @Test
        void tellsTheStretch() {
            // 12 minutes at 0.98 x threshold, one and a half hours into six: after the opening, within the first third.
            int from = 90 * 60;
            RideReview review = review(ride(6 * HOUR, second -> second >= from && second < from + 720 ? 245 : 185));
            Finding early = finding(review, FindingKind.THRESHOLD_RIDING_EARLY);
            assertThat(evidence(early, "stretchCount")).isEqualTo(1);
            // Windows of 8 minutes count down to a mean of 0.95 x threshold (237.5 W), that is with 60 s of 185 W.
            assertThat(evidence(early, "longestSeconds")).isCloseTo(720 + 2 * 60, within(2.0));
            assertThat(early.when().contains(from)).isTrue();
            assertThat(review.pacing().verdict()).isEqualTo(Verdict.UNEVEN);
        }

        @Test
        void isNoneOfTheLastTwoThirds() {
            RideReview review =
                    review(ride(6 * HOUR, second -> second >= 3 * HOUR && second < 3 * HOUR + 720 ? 245 : 185));
            assertThat(review.pacing().findings())
                    .extracting(Finding::kind)
                    .doesNotContain(FindingKind.THRESHOLD_RIDING_EARLY);
        }

        @Test
        void isPartOfAShortEvent() {
            // Over two hours the target is 0.895 x threshold: riding near threshold belongs to it.
            RideReview review = review(ride(2 * HOUR, second -> second < 1500 ? 243 : 215));
            assertThat(review.pacing().findings())
                    .extracting(Finding::kind)
                    .doesNotContain(FindingKind.THRESHOLD_RIDING_EARLY);
        }
    }

    @Nested
    class SurgesFinding {
        /** Every ten minutes 30 s at 400 W: six an hour, each 30 x 150 J above threshold, 27 kJ an hour. */
        @Test
        void countsTheWorkAboveThreshold() {
            int hours = 4;
            RideReview review = review(ride(hours * HOUR, second -> second % 600 < 30 && second >= 600 ? 400 : 190));
            Finding surges = finding(review, FindingKind.SURGES);
            int count = hours * 6 - 1;
            assertThat(evidence(surges, "count")).isEqualTo(count);
            assertThat(evidence(surges, "totalSeconds")).isEqualTo(count * 30);
            assertThat(evidence(surges, "workAboveThresholdKJ")).isCloseTo(count * 4.5, within(1e-9));
            assertThat(evidence(surges, "highestMeanW")).isCloseTo(400, within(1e-9));
            assertThat(surges.severity()).isEqualTo(byMinutes(surges, hours * HOUR));
        }

        @Test
        void leavesOutWhatIsShorterThanEightSeconds() {
            RideReview review = review(ride(4 * HOUR, second -> second % 60 < 7 ? 500 : 140));
            assertThat(review.pacing().occasion().isRace()).isTrue();
            assertThat(review.pacing().findings()).extracting(Finding::kind).doesNotContain(FindingKind.SURGES);
        }
    }

    @Nested
    class FadeFinding {
        /** A straight fall from 205 to 165 W over six hours: 193.3 W from 1:00 to 2:30 h, 168.3 W in the last hour, minus 12.9 %. */
        @Test
        void measuresTheLoss() {
            int seconds = 6 * HOUR;
            RideReview review = review(ride(seconds, second -> 205 - 40.0 * second / seconds));
            Finding fade = finding(review, FindingKind.FADE);
            assertThat(evidence(fade, "earlyPowerW")).isCloseTo(193.333, within(0.05));
            assertThat(evidence(fade, "latePowerW")).isCloseTo(168.333, within(0.05));
            assertThat(evidence(fade, "lossPercent")).isCloseTo(12.93, within(0.05));
            // 6.667 W an hour of 193.3 W.
            assertThat(evidence(fade, "slopePercentPerHour")).isCloseTo(-3.448, within(0.05));
            assertThat(fade.severity()).isEqualTo(byMinutes(fade, seconds));
            assertThat(review.pacing().verdict()).isEqualTo(Verdict.FADED);
        }

        /** Hard uphill and easy on the level, but always the same on the same grade: late there are no climbs left. */
        @Test
        void isNotTakenInByTerrain() {
            int seconds = 6 * HOUR;
            IntToDoubleFunction grade = second -> second < 4 * HOUR && second / 600 % 2 == 0 ? 0.05 : 0;
            double[] altitude = new double[seconds];
            for (int second = 1; second < seconds; second++) {
                altitude[second] = altitude[second - 1] + 4 * grade.applyAsDouble(second);
            }
            Ride ride = Ride.builder(Instant.EPOCH, seconds)
                    .channel(
                            Channel.POWER,
                            Series.generate(seconds, second -> grade.applyAsDouble(second) > 0 ? 225 : 172))
                    .channel(Channel.DISTANCE, Series.generate(seconds, second -> 4.0 * second))
                    .channel(Channel.SPEED, Series.generate(seconds, second -> 4))
                    .channel(Channel.ALTITUDE, Series.of(altitude))
                    .build();
            PacingReview pacing = review(ride).pacing();
            assertThat(pacing.occasion().isRace()).isTrue();
            assertThat(pacing.findings()).extracting(Finding::kind).doesNotContain(FindingKind.FADE);
        }
    }

    @Nested
    class DriftFinding {
        private Ride ride(double driftBpm) {
            int seconds = 6 * HOUR;
            double[] felt = {0};
            return PacingReviewTest.ride(seconds, second -> 188 + 25 * Math.sin(second / 400.0), second -> {
                felt[0] += (188 + 25 * Math.sin(second / 400.0) - felt[0]) / 60;
                double late = Math.max(0, second / (double) seconds - 0.5) * 2;
                return 80 + 0.3 * felt[0] + driftBpm * late;
            });
        }

        /** 12 bpm more by the end, rising from halfway: on average 8 bpm over the last third, on 136.4. */
        @Test
        void measuresHeartRateAtEqualPower() {
            Finding drift = finding(review(ride(12)), FindingKind.DRIFT);
            assertThat(evidence(drift, "bpmPer100W")).isCloseTo(30, within(0.5));
            assertThat(evidence(drift, "heartRateOverPredictedPercent")).isCloseTo(100 * 8 / 136.4, within(0.3));
            // A heart that beats faster costs no time by itself.
            assertThat(drift.severity()).isEqualTo(Severity.OBSERVATION);
            assertThat(drift.cost()).isInstanceOf(Cost.NotPriced.class);
        }

        @Test
        void ofTwoPercentIsNone() {
            assertThat(review(ride(4)).pacing().findings()).isEmpty();
        }

        /** Power falls, heart rate falls with it as it must: decoupling rises, and yet nothing drifts. */
        @Test
        void isNotRaisedByFallingPower() {
            int seconds = 6 * HOUR;
            double[] felt = {0};
            IntToDoubleFunction watts = second -> 215 - 50.0 * second / seconds + 15 * Math.sin(second / 300.0);
            RideReview review = review(PacingReviewTest.ride(seconds, watts, second -> {
                felt[0] += (watts.applyAsDouble(second) - felt[0]) / 60;
                return 90 + 0.25 * felt[0];
            }));
            assertThat(requireNonNull(review.load().decouplingPercent())).isGreaterThan(5);
            assertThat(review.pacing().findings()).extracting(Finding::kind).doesNotContain(FindingKind.DRIFT);
        }
    }

    @Nested
    class StoppedTimeFinding {
        @Test
        void listsStopsOverAMinuteAndPricesThemAsARange() {
            int seconds = 4 * HOUR;
            Ride ride = Ride.builder(Instant.EPOCH, seconds)
                    .channel(
                            Channel.POWER,
                            Series.generate(seconds, second -> second / 60 % 100 == 50 ? 0 : targetW(4 * HOUR)))
                    .state(new Interval(5000, 5300), SecondState.STOPPED)
                    .state(new Interval(8000, 8120), SecondState.PAUSED)
                    .state(new Interval(9000, 9060), SecondState.STOPPED) // exactly a minute: not listed
                    .build();
            Finding stops = finding(review(ride, Effort.RACE), FindingKind.STOPPED_TIME);
            assertThat(evidence(stops, "stopCount")).isEqualTo(2);
            assertThat(evidence(stops, "totalMinutes")).isCloseTo(7, within(1e-9));
            assertThat(evidence(stops, "longestMinutes")).isCloseTo(5, within(1e-9));
            assertThat(stops.cost()).isInstanceOfSatisfying(Cost.Priced.class, price -> {
                assertThat(price.lowMinutes()).isEqualTo(7);
                // About 12 s for each of the two stops: slowing down and getting going again.
                assertThat(price.highMinutes()).isCloseTo(7 + 24 / 60.0, within(1e-9));
            });
            // 7.4 minutes of moving time less than four hours are 3.2 %.
            assertThat(stops.severity()).isEqualTo(Severity.MAJOR);
        }
    }

    @Nested
    class EasyRides {
        @Test
        void areNotJudgedAsRaces() {
            // 0.80 x target, fading: neither the fade nor under-pacing is reported.
            double target = targetW(4 * HOUR);
            RideReview review = review(ride(4 * HOUR, second -> target * (0.9 - 0.2 * second / (4 * HOUR))));
            assertThat(review.pacing().verdict()).isEqualTo(Verdict.NOT_JUDGED);
            assertThat(review.pacing().verdictReason()).isEqualTo("not a race effort");
            assertThat(review.pacing().findings()).isEmpty();
            assertThat(review.pacing().remarks()).isEmpty();
            assertThat(review.pacing().ledger().entries()).isEmpty();
        }

        @Test
        void areJudgedWhenAsked() {
            double target = targetW(4 * HOUR);
            Ride ride = ride(4 * HOUR, second -> 0.8 * target);
            RideReview review = review(ride, Effort.RACE);
            assertThat(review.pacing().verdict()).isEqualTo(Verdict.UNDER_PACED);
            assertThat(evidence(finding(review, FindingKind.UNDER_PACED), "shareOfTargetPercent"))
                    .isCloseTo(80, within(1e-9));
        }

        @Test
        void racesAreNotJudgedWhenTheyAreCalledTraining() {
            RideReview review = review(ride(4 * HOUR, second -> targetW(4 * HOUR)), Effort.TRAINING);
            assertThat(review.pacing().verdict()).isEqualTo(Verdict.NOT_JUDGED);
            assertThat(review.pacing().verdictReason()).isEqualTo("ridden as training");
        }

        @Test
        void justUnderTheTargetAreUnderPaced() {
            assertThat(review(ride(4 * HOUR, second -> 0.90 * targetW(4 * HOUR)))
                            .pacing()
                            .verdict())
                    .isEqualTo(Verdict.UNDER_PACED);
            assertThat(review(ride(4 * HOUR, second -> 0.93 * targetW(4 * HOUR)))
                            .pacing()
                            .findings())
                    .isEmpty();
        }
    }

    @Test
    void lateReserveComparesTheLastSixthWithWhatCameBefore() {
        int seconds = 6 * HOUR;
        RideReview review = review(ride(seconds, second -> second < 5 * HOUR ? 184 : 204));
        Finding reserve = finding(review, FindingKind.LATE_RESERVE);
        assertThat(reserve.when()).isEqualTo(new Interval(5 * HOUR, seconds));
        assertThat(evidence(reserve, "gainPercent")).isCloseTo(100 * (204 / 184.0 - 1), within(1e-6));
        assertThat(review.pacing().verdict()).isEqualTo(Verdict.NEGATIVE_SPLIT);
    }

    @Nested
    class SetApart {
        @Test
        void aLeadInEndsWhereTheRaceBegins() {
            int seconds = 5 * HOUR;
            // 8 minutes of rolling, 4 of waiting, then the race.
            RacedPart part =
                    RacedPart.find(ride(seconds, second -> second < 480 ? 80 : second < 720 ? 0 : 190), THRESHOLD_W);
            assertThat(part.interval()).isEqualTo(new Interval(720, seconds));
            assertThat(part.leadInSeconds()).isEqualTo(720);
            assertThat(part.tailSeconds()).isZero();
        }

        @Test
        void aTailBeginsWhereTheRaceEnds() {
            int seconds = 5 * HOUR;
            RacedPart part = RacedPart.find(ride(seconds, second -> second < 4 * HOUR ? 190 : 60), THRESHOLD_W);
            assertThat(part.interval()).isEqualTo(new Interval(0, 4 * HOUR));
        }

        @Test
        void underFiveMinutesIsNone() {
            int seconds = 5 * HOUR;
            RacedPart part = RacedPart.find(ride(seconds, second -> second < 299 ? 0 : 190), THRESHOLD_W);
            assertThat(part.interval()).isEqualTo(new Interval(0, seconds));
        }

        @Test
        void aRideThatIsEasyThroughoutStaysWhole() {
            RacedPart part = RacedPart.find(ride(HOUR, second -> 60), THRESHOLD_W);
            assertThat(part.interval()).isEqualTo(new Interval(0, HOUR));
        }
    }

    @Nested
    class WhatIsNotJudged {
        private String reason(Ride ride, Rider rider) {
            PacingReview pacing =
                    Reviewer.review(ride, rider, ReviewOptions.WHOLE_RIDE).pacing();
            assertThat(pacing.verdict()).isEqualTo(Verdict.NOT_JUDGED);
            return requireNonNull(pacing.verdictReason());
        }

        @Test
        void hasItsReason() {
            Ride powerless = Ride.builder(Instant.EPOCH, HOUR)
                    .channel(Channel.HEART_RATE, Series.generate(HOUR, second -> 140))
                    .build();
            assertThat(reason(powerless, RIDER)).isEqualTo("no power");
            assertThat(reason(PacingReviewTest.ride(2399, second -> 250), RIDER))
                    .isEqualTo("under 40 minutes of moving time");
            // Without 20 minutes in one piece there is not even an estimate.
            assertThat(reason(PacingReviewTest.ride(HOUR, second -> 0), Rider.UNKNOWN))
                    .isEqualTo("threshold power is not known");
        }

        /** 0.85 x target is a race effort, what lies below it is none. */
        @Test
        void isWhatLiesBelowARaceEffort() {
            assertThat(review(PacingReviewTest.ride(4 * HOUR, second -> 0.851 * targetW(4 * HOUR)))
                            .pacing()
                            .verdict())
                    .isEqualTo(Verdict.UNDER_PACED);
            assertThat(reason(PacingReviewTest.ride(4 * HOUR, second -> 0.849 * targetW(4 * HOUR)), RIDER))
                    .isEqualTo("not a race effort");
        }
    }

    @Nested
    class LeftOut {
        private List<String> leftOut(Ride ride, Rider rider) {
            return Reviewer.review(ride, rider, ReviewOptions.WHOLE_RIDE.withEffort(Effort.RACE))
                    .pacing()
                    .leftOut();
        }

        private Ride.Builder even(int seconds) {
            return Ride.builder(Instant.EPOCH, seconds)
                    .channel(Channel.POWER, Series.generate(seconds, second -> targetW(seconds)));
        }

        @Test
        void isNothingWhereEverythingIsThere() {
            double[] felt = {190};
            Ride whole = ride(4 * HOUR, second -> 195 + 25 * Math.sin(second / 400.0), second -> {
                felt[0] += (195 + 25 * Math.sin(second / 400.0) - felt[0]) / 60;
                return 80 + 0.3 * felt[0];
            });
            assertThat(leftOut(whole, RIDER)).isEmpty();
        }

        @Test
        void isAllWithoutPower() {
            Ride powerless = Ride.builder(Instant.EPOCH, HOUR)
                    .channel(Channel.HEART_RATE, Series.generate(HOUR, second -> 140))
                    .build();
            assertThat(leftOut(powerless, RIDER))
                    .singleElement()
                    .satisfies(line -> assertThat(line).startsWith("No power:"));
        }

        @Test
        void isWhatEachSensorWouldHaveTold() {
            Ride bare = even(4 * HOUR).build();
            assertThat(leftOut(bare, RIDER))
                    .satisfiesExactlyInAnyOrder(
                            line -> assertThat(line).startsWith("No heart rate:"),
                            line -> assertThat(line).startsWith("No altitude or no distance:"));
            Ride noAltitude = even(4 * HOUR)
                    .channel(Channel.DISTANCE, Series.generate(4 * HOUR, second -> 8.0 * second))
                    .channel(Channel.HEART_RATE, Series.generate(4 * HOUR, second -> 140))
                    .build();
            assertThat(leftOut(noAltitude, RIDER))
                    .satisfiesExactlyInAnyOrder(
                            line -> assertThat(line).startsWith("Heart rate does not follow power"),
                            line -> assertThat(line).startsWith("No altitude or no distance:"));
            Ride noDistance = even(4 * HOUR)
                    .channel(Channel.ALTITUDE, Series.generate(4 * HOUR, second -> 40))
                    .build();
            assertThat(leftOut(noDistance, RIDER)).anyMatch(line -> line.startsWith("No altitude or no distance:"));
        }

        @Test
        void isWhatIsLookedForInRacesOnly() {
            assertThat(review(ride(4 * HOUR, second -> 120)).pacing().leftOut())
                    .anyMatch(line -> line.contains("looked for in races only"));
            assertThat(review(ride(4 * HOUR, second -> targetW(4 * HOUR)))
                            .pacing()
                            .leftOut())
                    .noneMatch(line -> line.contains("looked for in races only"));
        }

        @Test
        void isAWPrimeThatTheRideRefutes() {
            // 210 W for four hours, 10 W above a critical power of 200 W, spend 144 kJ of 10 kJ.
            Ride ride = ride(4 * HOUR, second -> 210);
            assertThat(leftOut(ride, RIDER.withCriticalPower(200, 10)))
                    .anyMatch(line -> line.startsWith("W' balance falls far below empty"));
            assertThat(leftOut(ride, RIDER.withCriticalPower(240, 10)))
                    .noneMatch(line -> line.startsWith("W' balance"));
        }
    }

    @Test
    void theLedgerAddsUpInMinutes() {
        Ride ride = Ride.builder(Instant.EPOCH, 2 * HOUR)
                .channel(Channel.POWER, Series.generate(2 * HOUR, second -> targetW(2 * HOUR)))
                .state(new Interval(1000, 1120), SecondState.STOPPED)
                .state(new Interval(2000, 2240), SecondState.PAUSED)
                .state(new Interval(3000, 3480), SecondState.MISSING)
                .build();
        TimeLedger ledger = review(ride).pacing().ledger();
        assertThat(ledger.elapsedMinutes()).isEqualTo(120);
        assertThat(ledger.stoppedMinutes()).isEqualTo(2);
        assertThat(ledger.pausedMinutes()).isEqualTo(4);
        assertThat(ledger.missingMinutes()).isEqualTo(8);
        assertThat(ledger.movingMinutes()).isEqualTo(106);
    }

    @Test
    void theWeightiestFindingComesFirst() {
        // Without distance a start at 1.12 x target is minor; stops of a tenth of the moving time are major.
        int seconds = 4 * HOUR;
        double target = targetW(seconds);
        Ride ride = Ride.builder(Instant.EPOCH, seconds)
                .channel(Channel.POWER, Series.generate(seconds, second -> (second < 2200 ? 1.12 : 0.96) * target))
                .state(new Interval(8000, 9310), SecondState.STOPPED)
                .build();
        assertThat(review(ride, Effort.RACE).pacing().findings())
                .extracting(Finding::kind)
                .containsExactly(FindingKind.STOPPED_TIME, FindingKind.OVER_HARD_START);
    }

    /** Six hours: the opening is the first, the first third the first two. */
    @Test
    void thresholdRidingThatLiesHalfOutsideTheOpeningStaysBesideIt() {
        assertThat(review(ride(6 * HOUR, second -> second < 2 * HOUR ? 245 : 170))
                        .pacing()
                        .findings())
                .extracting(Finding::kind)
                .contains(FindingKind.OVER_HARD_START, FindingKind.THRESHOLD_RIDING_EARLY);
    }

    /** The best 20 minutes are 214 W, the estimate 203 W, and on its own estimate every steady ride is a race. */
    @Test
    void anEstimatedThresholdIsNeverJudgedBy() {
        Ride ride = ride(6 * HOUR, second -> second / HOUR == 3 ? 214 : 198);
        PacingReview pacing =
                Reviewer.review(ride, Rider.UNKNOWN, ReviewOptions.WHOLE_RIDE).pacing();
        assertThat(pacing.verdict()).isEqualTo(Verdict.NOT_JUDGED);
        assertThat(pacing.verdictReason()).isEqualTo("threshold power is not known");
        assertThat(pacing.targetW()).isNull();
        assertThat(pacing.findings()).isEmpty();
        assertThat(pacing.ledger().entries()).isEmpty();
        // Six hours at 0.99 of it refute the estimate besides.
        assertThat(pacing.leftOut()).anyMatch(line -> line.startsWith("No threshold power to go by:"));
        // Twenty minutes at 230 W of an hour at 190 W do not refute theirs: parts are compared by it.
        assertThat(Reviewer.review(
                                ride(HOUR, second -> second / 1200 == 1 ? 230 : 190),
                                Rider.UNKNOWN,
                                ReviewOptions.WHOLE_RIDE)
                        .pacing()
                        .leftOut())
                .anyMatch(line -> line.contains("estimated from this ride itself"));
    }
}
