package io.github.wattledger.pacing;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.pacing.price.Price;
import io.github.wattledger.pacing.price.PricePlan;
import io.github.wattledger.pacing.price.PriceSteps;
import io.github.wattledger.pacing.price.Repair;
import io.github.wattledger.power.Ability;
import io.github.wattledger.power.WPrimeBalance;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.RigChoice;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Each detector on rides made by hand, on both sides of its limits. Limits and definitions are those of {@code
 * docs/methods.md}; what follows from them is worked out beside the rides.
 */
class DetectorsTest {
    private static final double THRESHOLD_W = 250;
    private static final double TARGET_W = 200;
    private static final double CP_W = 260;
    private static final int HOUR = 3600;
    private static final Thresholds THRESHOLDS = new Thresholds(THRESHOLD_W, false, 165.0);

    private static Ability ability(@Nullable Double targetW) {
        return new Ability(null, null, Ability.Source.GUIDE, null, targetW, 4 * HOUR, null);
    }

    /** Critical power 260 W and W' 20 kJ, as given. */
    private static Ability spending() {
        return new Ability(CP_W, 20.0, Ability.Source.GIVEN_AND_GUIDE, null, TARGET_W, 4 * HOUR, null);
    }

    private static Race race(Ride ride, Ability ability) {
        return new Race(ride, 0, THRESHOLDS, ability, JudgementLimits.USUAL, null);
    }

    private static Race race(double[] watts) {
        return race(Ride.ofWatts(watts), ability(TARGET_W));
    }

    private static Race race(Ride ride) {
        return race(ride, ability(TARGET_W));
    }

    private static double[] steady(int seconds, double watts) {
        double[] all = new double[seconds];
        Arrays.fill(all, watts);
        return all;
    }

    private static Ride.Builder ride(int seconds, IntToDoubleFunction watts, IntToDoubleFunction bpm) {
        return Ride.builder(Instant.EPOCH, seconds)
                .channel(Channel.POWER, Series.generate(seconds, watts))
                .channel(Channel.HEART_RATE, Series.generate(seconds, bpm));
    }

    private static Found found(Detector detector, Race race) {
        return detector.detect(race).orElseThrow();
    }

    /** The stretches that the repair of a finding changes. */
    private static List<Interval> repaired(Found found) {
        return ((Repair) found.price())
                .stretches().stream().map(Repair.Stretch::when).toList();
    }

    private static double evidence(Found finding, String name) {
        return finding.evidence().get(name).orElseThrow();
    }

    @Nested
    class SurgesWithoutWPrime {
        /** At 200 W, with seconds at 420 W: 170 J of each lie above threshold. */
        private Race surging(int seconds) {
            double[] watts = steady(HOUR, 200);
            Arrays.fill(watts, 1000, 1000 + seconds, 420);
            return race(watts);
        }

        /** The usual W' is 17 kJ: 10 s are a tenth of it, 25 s a quarter, 50 s a half, in an hour. */
        @ParameterizedTest
        @CsvSource({"10, MINOR", "24, MINOR", "25, MODERATE", "49, MODERATE", "50, MAJOR"})
        void areGradedByTheShareAnHour(int seconds, Severity severity) {
            assertThat(found(new Surges(), surging(seconds)).severity()).isEqualTo(severity);
        }

        @Test
        void areNotToldUnderATenthAnHour() {
            assertThat(new Surges().detect(surging(9))).isEmpty();
        }

        @Test
        void carryTheirNumbers() {
            double[] watts = steady(2 * HOUR, 200);
            Arrays.fill(watts, 0, 10, 420);
            Arrays.fill(watts, 3000, 3020, 335);
            Found surges = found(new Surges(), race(watts));
            // 10 x 170 + 20 x 85 = 3,400 J in two hours, a tenth of 17 kJ each hour.
            assertThat(surges.when()).isEqualTo(new Interval(0, 3020));
            assertThat(evidence(surges, "count")).isEqualTo(2);
            assertThat(evidence(surges, "totalSeconds")).isEqualTo(30);
            assertThat(evidence(surges, "longestSeconds")).isEqualTo(20);
            assertThat(evidence(surges, "highestMeanW")).isCloseTo(420, within(1e-9));
            assertThat(evidence(surges, "workAboveThresholdKJ")).isCloseTo(3.4, within(1e-9));
            assertThat(evidence(surges, "workAboveThresholdKJPerHour")).isCloseTo(1.7, within(1e-9));
            assertThat(evidence(surges, "wPrimeSharePerHour")).isCloseTo(0.1, within(1e-9));
            assertThat(evidence(surges, "usualWPrimeKJ")).isEqualTo(17);
            assertThat(surges.evidence().get("wPrimeKJ")).isEmpty();
            assertThat(surges.evidence().get("drainedCount")).isEmpty();
            // 1.2 x threshold.
            assertThat(surges.advice().capW()).isEqualTo(300.0);
            assertThat(surges.advice().text()).contains("below 300 W:");
        }

        @Test
        void areEightSecondsAboveTheLimitWithLapsesOfTwo() {
            double[] watts = steady(HOUR, 200);
            Arrays.fill(watts, 0, 8, 400);
            Arrays.fill(watts, 200, 207, 400); // seven seconds
            Arrays.fill(watts, 300, 310, 400);
            Arrays.fill(watts, 304, 306, 200); // a lapse of two
            Arrays.fill(watts, 400, 411, 400);
            Arrays.fill(watts, 404, 407, 200); // of three: two halves of four seconds
            Arrays.fill(watts, 500, 520, 300); // not above 1.2 x threshold
            Arrays.fill(watts, HOUR - 8, HOUR, 400);
            assertThat(repaired(found(new Surges(), race(watts))))
                    .containsExactly(new Interval(0, 8), new Interval(300, 310), new Interval(HOUR - 8, HOUR));
        }
    }

    @Nested
    class SurgesOnWPrime {
        /** Surges at 410 W, 150 W above critical power, in hours at 150 W, 110 W below it. */
        private Race surging(int hours, Interval... surges) {
            double[] watts = steady(hours * HOUR, 150);
            for (Interval surge : surges) {
                Arrays.fill(watts, surge.fromSecond(), surge.toSecond(), 410);
            }
            return race(Ride.ofWatts(watts), spending());
        }

        /** 100 s spend 15,000 J and leave a quarter of 20 kJ exactly. In four hours they are 0.19 of W' an hour. */
        @Test
        void drainWhereLessThanAQuarterIsLeft() {
            Found quarter = found(new Surges(), surging(4, new Interval(1000, 1100)));
            assertThat(quarter.severity()).isEqualTo(Severity.MINOR);
            assertThat(evidence(quarter, "drainedCount")).isZero();
            Found less = found(new Surges(), surging(4, new Interval(1000, 1101)));
            assertThat(less.severity()).isEqualTo(Severity.MODERATE);
            assertThat(evidence(less, "drainedCount")).isEqualTo(1);
        }

        /** In twelve hours one is 0.06 of W' an hour: told only for what it left. */
        @Test
        void areToldForOneThatDrained() {
            assertThat(found(new Surges(), surging(12, new Interval(1000, 1101)))
                            .severity())
                    .isEqualTo(Severity.MODERATE);
            assertThat(new Surges().detect(surging(12, new Interval(1000, 1100))))
                    .isEmpty();
        }

        /** In eight hours two are 0.19 of W' an hour and three 0.28. */
        @Test
        void areMajorFromThreeThatDrained() {
            Interval first = new Interval(1000, 1101);
            Interval second = new Interval(6000, 6101);
            assertThat(found(new Surges(), surging(8, first, second)).severity())
                    .isEqualTo(Severity.MODERATE);
            assertThat(found(new Surges(), surging(8, first, second, new Interval(12_000, 12_101)))
                            .severity())
                    .isEqualTo(Severity.MAJOR);
        }

        /** The last sixth of four hours begins at 12,000 s. */
        @Test
        void mayDrainInTheLastSixth() {
            assertThat(evidence(found(new Surges(), surging(4, new Interval(11_899, 12_000))), "drainedCount"))
                    .isEqualTo(1);
            assertThat(evidence(found(new Surges(), surging(4, new Interval(11_900, 12_001))), "drainedCount"))
                    .isZero();
        }

        @Test
        void carryWhatTheySpent() {
            // 50 s spend 7,500 J; back to within a joule after 5,000 s at e^(-110 t / 20,000). 101 s then spend 15,150
            // J.
            Found surges = found(new Surges(), surging(4, new Interval(1000, 1050), new Interval(6000, 6101)));
            assertThat(evidence(surges, "wPrimeKJ")).isEqualTo(20);
            assertThat(surges.evidence().get("usualWPrimeKJ")).isEmpty();
            assertThat(evidence(surges, "wPrimeSpentKJ")).isCloseTo(22.65, within(1e-9));
            assertThat(evidence(surges, "mostWPrimeSpentKJ")).isCloseTo(15.15, within(1e-9));
            assertThat(evidence(surges, "wPrimeSharePerHour")).isCloseTo(22.65 / 4 / 20, within(1e-9));
            assertThat(evidence(surges, "lowestWPrimeShare")).isCloseTo(4850 / 20_000.0, within(1e-4));
            // A tenth, 2,000 J, is missing after ln(15,150 / 2,000) x 20,000 / 110 = 368.15 s.
            assertThat(evidence(surges, "secondsToRecover")).isEqualTo(369);
            // Work above threshold power is told beside it: 151 s x 160 J.
            assertThat(evidence(surges, "workAboveThresholdKJ")).isCloseTo(24.16, within(1e-9));
        }

        @Test
        void tellOfTheOneThatLeftLeastWhereverItStands() {
            Found surges = found(new Surges(), surging(4, new Interval(1000, 1101), new Interval(9000, 9050)));
            assertThat(evidence(surges, "lowestWPrimeShare")).isCloseTo(4850 / 20_000.0, within(1e-9));
            assertThat(evidence(surges, "mostWPrimeSpentKJ")).isCloseTo(15.15, within(1e-9));
            assertThat(evidence(surges, "secondsToRecover")).isEqualTo(369);
        }

        @Test
        void doNotTellOfARecoveryThatDidNotCome() {
            Found surges = found(new Surges(), surging(4, new Interval(4 * HOUR - 101, 4 * HOUR)));
            assertThat(surges.evidence().get("secondsToRecover")).isEmpty();
            assertThat(evidence(surges, "lowestWPrimeShare")).isCloseTo(4850 / 20_000.0, within(1e-9));
        }
    }

    @Nested
    class WPrimeOfARace {
        private Race above(int seconds) {
            double[] watts = steady(HOUR, 100);
            Arrays.fill(watts, 600, 600 + seconds, CP_W + 200);
            return race(Ride.ofWatts(watts), spending());
        }

        /** 110 s spend 22 kJ: a tenth of W' below empty. */
        @Test
        void isUsedDownToATenthBelowEmpty() {
            WPrimeBalance balance = requireNonNull(above(110).wPrimeBalance());
            assertThat(balance.minimumJ()).isCloseTo(-2000, within(1e-6));
            assertThat(balance.wPrimeJ()).isEqualTo(20_000);
            assertThat(balance.criticalPowerW()).isEqualTo(CP_W);
            assertThat(above(110).wPrimeIsRefuted()).isFalse();
            assertThat(above(111).wPrimeBalance()).isNull();
            assertThat(above(111).wPrimeIsRefuted()).isTrue();
        }

        @Test
        void isNotRefutedWhereItIsNotKnownOrThereIsNoPower() {
            Race unknown = race(steady(HOUR, 400));
            assertThat(unknown.wPrimeBalance()).isNull();
            assertThat(unknown.wPrimeIsRefuted()).isFalse();
            Ride powerless = Ride.builder(Instant.EPOCH, HOUR).build();
            assertThat(race(powerless, spending()).wPrimeBalance()).isNull();
            assertThat(race(powerless, spending()).wPrimeIsRefuted()).isFalse();
        }
    }

    @Nested
    class OfARace {
        @Test
        void fortyMinutesOfMovingTimeAreEnough() {
            assertThat(race(steady(2400, 200)).isLongEnough()).isTrue();
            assertThat(race(steady(2399, 200)).isLongEnough()).isFalse();
        }

        @Test
        void meansAreOverMeasuredMovingSeconds() {
            Ride ride = ride(10, second -> 200, second -> second == 2 ? Double.NaN : 100 + second)
                    .state(new Interval(4, 8), SecondState.STOPPED)
                    .build();
            // Seconds 0, 1, 3, 8 and 9: 100, 101, 103, 108 and 109 bpm.
            assertThat(race(ride).mean(Channel.HEART_RATE, new Interval(0, 10))).isCloseTo(104.2, within(1e-9));
            assertThat(race(ride).mean(Channel.HEART_RATE, new Interval(4, 8))).isNaN();
            assertThat(race(ride).mean(Channel.TEMPERATURE, new Interval(0, 10)))
                    .isNaN();
        }

        @Test
        void costsSayWhyThereIsNone() {
            // Power alone cannot be replayed, since it says nothing of the road.
            Race race = race(steady(HOUR, 200));
            PricePlan stops =
                    new PricePlan.Known(new Price(new Cost.Priced(3, 3, "as it is"), new PriceSteps.Stops(List.of())));
            List<Detection> detections = List.of(
                    detection(FindingKind.DRIFT, new Interval(0, 60), new PricePlan.None("costs no time")),
                    detection(FindingKind.STOPPED_TIME, new Interval(0, 60), stops));
            RigChoice rig = RigChoice.ofNoRide(null, null, null, null, Position.HOODS);
            assertThat(PricedFindings.of(race, null, detections, rig, ability(TARGET_W))
                            .findings())
                    .extracting(Finding::cost)
                    .containsExactly(new Cost.NotPriced("no distance in this file"), new Cost.Priced(3, 3, "as it is"));
            assertThat(PricedFindings.withoutPrices(race, detections).findings())
                    .extracting(Finding::cost)
                    .containsOnly(new Cost.NotPriced("not a race effort"));
        }

        private Detection detection(FindingKind kind, Interval when, PricePlan price) {
            return new Detection(
                    kind, new Found(Severity.MINOR, when, Evidence.none(), new Advice("none", null, null), price));
        }

        @Test
        void aFindingTakesTheNearestDistanceWithinIt() {
            Ride ride = Ride.builder(Instant.EPOCH, 100)
                    .channel(
                            Channel.DISTANCE,
                            Series.generate(100, second -> second == 20 || second == 59 ? Double.NaN : 10.0 * second))
                    .build();
            Detection detection = detection(FindingKind.FADE, new Interval(20, 60), new PricePlan.None("not asked"));
            Finding finding = PricedFindings.withoutPrices(race(ride), List.of(detection))
                    .findings()
                    .get(0);
            assertThat(finding.startM()).isEqualTo(210.0);
            assertThat(finding.endM()).isEqualTo(580.0);
        }
    }

    @Nested
    class ThresholdRiding {
        private final ThresholdRidingEarly detector = new ThresholdRidingEarly();

        /** Six hours at 0 W but for stretches at 237.5 W, 0.95 x threshold: a window that leaves them lies below. */
        private Race riding(Interval... stretches) {
            double[] watts = new double[6 * HOUR];
            for (Interval stretch : stretches) {
                Arrays.fill(watts, stretch.fromSecond(), stretch.toSecond(), 237.5);
            }
            return race(watts);
        }

        @ParameterizedTest
        @CsvSource({"480, MINOR", "899, MINOR", "900, MODERATE", "1799, MODERATE", "1800, MAJOR"})
        void isGradedByItsLength(int seconds, Severity severity) {
            Found early = found(detector, riding(new Interval(2000, 2000 + seconds)));
            assertThat(early.severity()).isEqualTo(severity);
            assertThat(early.when()).isEqualTo(new Interval(2000, 2000 + seconds));
        }

        @Test
        void isNotToldUnderEightMinutes() {
            assertThat(detector.detect(riding(new Interval(2000, 2479)))).isEmpty();
        }

        @Test
        void addsUpItsStretches() {
            Interval first = new Interval(0, 960);
            Interval second = new Interval(3000, 3500);
            Found early = found(detector, riding(first, second));
            assertThat(early.when()).isEqualTo(new Interval(0, 3500));
            assertThat(evidence(early, "stretchCount")).isEqualTo(2);
            assertThat(evidence(early, "totalSeconds")).isEqualTo(1460);
            assertThat(evidence(early, "longestSeconds")).isEqualTo(960);
            assertThat(evidence(early, "meanPowerW")).isCloseTo(237.5, within(1e-9));
            assertThat(evidence(early, "thresholdFraction")).isCloseTo(0.95, within(1e-12));
            // 0.9 x threshold, a ceiling that leaves the target reachable.
            assertThat(early.advice().capW()).isEqualTo(225.0);
            assertThat(repaired(early)).containsExactly(first, second);
            Found later = found(detector, riding(new Interval(100, 600), new Interval(3000, 3960)));
            assertThat(evidence(later, "longestSeconds")).isEqualTo(960);
        }

        /** The first third of six hours ends at 7,200 s. */
        @Test
        void mustLieInTheFirstThird() {
            assertThat(detector.detect(riding(new Interval(6720, 7200)))).isPresent();
            assertThat(detector.detect(riding(new Interval(6721, 7300)))).isEmpty();
            assertThat(detector.detect(riding(new Interval(0, 480)))).isPresent();
        }

        @Test
        void belongsToAnEventWhoseTargetIsNotBelowEightyFivePercent() {
            Ride ride = riding(new Interval(2000, 3000)).ride();
            assertThat(detector.detect(race(ride, ability(212.4)))).isPresent();
            assertThat(detector.detect(race(ride, ability(212.5)))).isEmpty();
            assertThat(detector.detect(race(ride, ability(null)))).isEmpty();
        }
    }

    @Nested
    class Fading {
        /** Six hours, each at its power: the second sixth at 200 W, the last at what is asked for. */
        private Race fading(double lastW) {
            double[] hours = {200, 200, 190, 186, 182, lastW};
            double[] watts = new double[6 * HOUR];
            Arrays.setAll(watts, second -> hours[second / HOUR]);
            return race(watts);
        }

        @ParameterizedTest
        @CsvSource({"179.8, MINOR", "174.2, MINOR", "173.8, MODERATE", "160.2, MODERATE", "159.8, MAJOR"})
        void isGradedByTheLoss(double lastW, Severity severity) {
            assertThat(found(new Fade(), fading(lastW)).severity()).isEqualTo(severity);
        }

        @Test
        void isNotToldUnderTenPercent() {
            assertThat(new Fade().detect(fading(180.2))).isEmpty();
        }

        /** Twenty minutes of opening at 200 W, then blocks of ten minutes. */
        private Race blocks(double... blocksW) {
            double[] watts = steady(1200 + 600 * blocksW.length, 200);
            for (int block = 0; block < blocksW.length; block++) {
                Arrays.fill(watts, 1200 + 600 * block, 1800 + 600 * block, blocksW[block]);
            }
            return race(watts);
        }

        @Test
        void slopeIsTheMedianOfAllPairs() {
            // By hand, watts an hour: 60, -54, -60, -168, -120, -72; in order the middle two are -72 and -60. The mean
            // of
            // the blocks is 180.5 W.
            Found even = found(new Fade(), blocks(190, 200, 172, 160));
            assertThat(evidence(even, "comparedBlocks")).isEqualTo(4);
            assertThat(evidence(even, "slopePercentPerHour")).isCloseTo(-66 / 180.5 * 100, within(1e-9));
            // Six blocks have fifteen pairs: 24, -30, -44, -27, -48; -84, -78, -44, -66; -72, -24, -60; 24, -54; -132.
            // The
            // eighth in order is -48. The mean of the blocks is 185.67 W.
            Found odd = found(new Fade(), blocks(200, 204, 190, 178, 182, 160));
            assertThat(evidence(odd, "comparedBlocks")).isEqualTo(6);
            assertThat(evidence(odd, "slopePercentPerHour")).isCloseTo(-48 / (1114 / 6.0) * 100, within(1e-9));
        }

        @Test
        void beginsWithTheBlockThatHasLostHalfOfIt() {
            // 200 W to 164 W is a loss of 18 %; half of it is lost at 182 W. The fourth hour lies below.
            double[] hours = {200, 200, 190, 180, 170, 164};
            double[] watts = new double[6 * HOUR];
            Arrays.setAll(watts, second -> hours[second / HOUR]);
            assertThat(found(new Fade(), race(watts)).when()).isEqualTo(new Interval(3 * HOUR, 6 * HOUR));
        }

        @Test
        void beginsWithTheLastBlockWhereNoneHasLostHalfOfIt() {
            // Against the second sixth, 200 W, the last has lost 18 %, but against the first block 3.5 %.
            assertThat(found(new Fade(), blocks(170, 168, 166, 164)).when()).isEqualTo(new Interval(3000, 3600));
        }

        @Test
        void advisesTheTargetOrWhatWasLeft() {
            assertThat(found(new Fade(), fading(160)).advice().capW()).isEqualTo(200.0);
            Race withoutTarget = race(fading(160).ride(), ability(null));
            assertThat(found(new Fade(), withoutTarget).advice().capW()).isEqualTo(160.0);
        }

        @Test
        void comparesFiveMinutesOfPedallingAtLeast() {
            Race race = race(steady(HOUR, 30));
            assertThat(LikeGround.of(race, new Interval(0, 300), new Interval(900, 1300)))
                    .contains(new LikeGround(30, 30));
            assertThat(LikeGround.of(race, new Interval(0, 299), new Interval(900, 1300)))
                    .isEmpty();
            // Under 30 W a rider coasts.
            assertThat(LikeGround.of(race(steady(HOUR, 29.9)), new Interval(0, 300), new Interval(900, 1300)))
                    .isEmpty();
        }
    }

    @Nested
    class Grades {
        /** At 10 m/s over one grade after another, 1,000 m each; the middle of each lies far from the next. */
        private GradeBands bands(double... grades) {
            int seconds = 100 * grades.length;
            double[] altitude = new double[seconds];
            for (int second = 1; second < seconds; second++) {
                altitude[second] = altitude[second - 1] + 10 * grades[second / 100];
            }
            return GradeBands.of(Ride.builder(Instant.EPOCH, seconds)
                    .channel(Channel.DISTANCE, Series.generate(seconds, second -> 10.0 * second))
                    .channel(Channel.ALTITUDE, Series.of(altitude))
                    .build());
        }

        @Test
        void haveTheirEdgesAtMinus4AndMinus1AndAHalf() {
            // -4, -1.5, 1.5, 4 and 7 %; both sides of each.
            double[] grades = {
                -0.045, -0.035, -0.02, -0.01, 0.01, 0.02, 0.035, 0.045, 0.065, 0.075,
            };
            int[] expected = {0, 1, 1, 2, 2, 3, 3, 4, 4, 5};
            GradeBands bands = bands(grades);
            for (int i = 0; i < grades.length; i++) {
                assertThat(bands.of(100 * i + 50)).as("%s", grades[i]).isEqualTo(expected[i]);
            }
        }

        /**
         * Altitude every third second only, and none in the last third: known seconds lie on 4.1 %, the others are unknown. So
         * is the last known one, 198: only 195 lies within 50 m before it and none after, and 30 m tell no grade.
         */
        @Test
        void arePassedOverWhereNothingWasMeasured() {
            GradeBands bands = GradeBands.of(Ride.builder(Instant.EPOCH, 300)
                    .channel(Channel.DISTANCE, Series.generate(300, second -> 10.0 * second))
                    .channel(
                            Channel.ALTITUDE,
                            Series.generate(
                                    300, second -> second % 3 == 0 && second < 200 ? 0.41 * second : Double.NaN))
                    .build());
            for (int second = 0; second < 300; second++) {
                assertThat(bands.of(second))
                        .as("second %d", second)
                        .isEqualTo(second % 3 == 0 && second < 198 ? 4 : GradeBands.UNKNOWN);
            }
        }

        /** Standing at the end of what was measured, with as long unmeasured after it, is looked through once: second by second it would take hours. */
        @Test
        @Timeout(60)
        void areFoundInOnePassOverALongUnmeasuredTail() {
            int seconds = 2_000_000;
            int measured = seconds / 2;
            GradeBands bands = GradeBands.of(Ride.builder(Instant.EPOCH, seconds)
                    .channel(
                            Channel.DISTANCE,
                            Series.generate(seconds, second -> second < measured ? Math.min(second, 200) : Double.NaN))
                    .channel(Channel.ALTITUDE, Series.generate(seconds, second -> 5))
                    .build());
            assertThat(bands.of(100)).isEqualTo(2);
            assertThat(bands.of(measured - 1)).isEqualTo(2);
            assertThat(bands.of(measured)).isEqualTo(GradeBands.UNKNOWN);
        }

        /** Fifty metres before and after: 5 s on each side. A step of 4 m is 4 % over those 100 m and over none else. */
        @Test
        void lookFiftyMetresBothWays() {
            GradeBands bands = GradeBands.of(Ride.builder(Instant.EPOCH, 100)
                    .channel(Channel.DISTANCE, Series.generate(100, second -> 10.0 * second))
                    .channel(Channel.ALTITUDE, Series.generate(100, second -> second < 50 ? 0 : 4.1))
                    .build());
            for (int second = 0; second < 100; second++) {
                // The step lies between 490 and 500 m.
                assertThat(bands.of(second)).as("second %d", second).isEqualTo(second >= 45 && second <= 54 ? 4 : 2);
            }
        }

        @Test
        void areUnknownWhereNothingMoves() {
            GradeBands bands = GradeBands.of(Ride.builder(Instant.EPOCH, 200)
                    .channel(Channel.DISTANCE, Series.generate(200, second -> 40.0))
                    .channel(
                            Channel.ALTITUDE, Series.generate(200, second -> second < 100 ? Double.NaN : 10.0 + second))
                    .build());
            assertThat(bands.of(50)).isEqualTo(GradeBands.UNKNOWN);
            assertThat(bands.of(150)).isEqualTo(GradeBands.UNKNOWN);
        }

        @Test
        void areOneWithoutAltitudeOrDistance() {
            GradeBands noDistance = GradeBands.of(Ride.builder(Instant.EPOCH, 100)
                    .channel(Channel.ALTITUDE, Series.generate(100, second -> 1.0 * second))
                    .build());
            GradeBands noAltitude = GradeBands.of(Ride.builder(Instant.EPOCH, 100)
                    .channel(Channel.DISTANCE, Series.generate(100, second -> 10.0 * second))
                    .build());
            for (GradeBands bands : List.of(noDistance, noAltitude)) {
                assertThat(bands.of(0)).isEqualTo(bands.of(99)).isNotEqualTo(GradeBands.UNKNOWN);
            }
        }
    }

    @Nested
    class HeartRate {
        /** Power that alternates between 170 and 230 W every five minutes, 200 W on average. */
        private static double alternatingW(int second) {
            return second / 300 % 2 == 0 ? 170 : 230;
        }

        /** Power as the heart feels it, by definition: a first-order lag of 60 s. */
        private static double[] felt(double[] watts) {
            double[] felt = new double[watts.length];
            double now = 0;
            for (int second = 0; second < watts.length; second++) {
                now += (watts[second] - now) * (1 - Math.exp(-1 / 60.0));
                felt[second] = now;
            }
            return felt;
        }

        /** A heart that follows at 80 bpm and 30 for 100 W, times a factor from a second on. */
        private Ride.Builder following(double[] watts, int from, double factor) {
            double[] felt = felt(watts);
            return ride(
                    watts.length,
                    second -> watts[second],
                    second -> (80 + 0.3 * felt[second]) * (second < from ? 1 : factor));
        }

        private double[] alternating(int seconds) {
            double[] watts = new double[seconds];
            Arrays.setAll(watts, HeartRate::alternatingW);
            return watts;
        }

        private Race without(int seconds, int missing) {
            double[] watts = alternating(seconds);
            double[] felt = felt(watts);
            return race(ride(
                            seconds,
                            second -> watts[second],
                            second -> second >= 1200 && second < 1200 + missing ? Double.NaN : 80 + 0.3 * felt[second])
                    .build());
        }

        /** The line is drawn from minute 20 to half-way. */
        @Test
        void needsTwentyMinutesOfWhichItCoversFourFifths() {
            // Eighty minutes hold just twenty.
            assertThat(without(4800, 0).heartRateModel().isUsable()).isTrue();
            assertThat(without(4800, 1).heartRateModel().isUsable()).isFalse();
            // Two hours hold forty, four fifths of them are 1,920 s.
            assertThat(without(7200, 480).heartRateModel().isUsable()).isTrue();
            assertThat(without(7200, 481).heartRateModel().isUsable()).isFalse();
        }

        @Test
        void mustRiseWithPower() {
            double[] watts = alternating(7200);
            double[] felt = felt(watts);
            Race falling = race(ride(7200, second -> watts[second], second -> 200 - 0.3 * felt[second])
                    .build());
            assertThat(falling.heartRateModel().isUsable()).isFalse();
            Race level = race(ride(7200, second -> watts[second], second -> 140).build());
            assertThat(level.heartRateModel().isUsable()).isFalse();
        }

        @Test
        void goesWithAPowerCapButNotAboveItsThreshold() {
            // 80 + 0.3 x 210 = 143 bpm.
            Ride ride = following(alternating(7200), 7200, 1).build();
            Advice advice = Caps.advise(race(ride), "Up to %s.", 210.4);
            assertThat(advice.text()).isEqualTo("Up to 210 W or 143 bpm.");
            assertThat(advice.capW()).isEqualTo(210.0);
            assertThat(advice.capBpm()).isEqualTo(143.0);
            assertThat(capBpm(ride, 140.0)).isEqualTo(140.0);
            assertThat(capBpm(ride, null)).isEqualTo(143.0);
            Advice without = Caps.advise(race(steady(7200, 200)), "Up to %s.", 210.4);
            assertThat(without.text()).isEqualTo("Up to 210 W.");
            assertThat(without.capBpm()).isNull();
        }

        private @Nullable Double capBpm(Ride ride, @Nullable Double thresholdBpm) {
            Race race = new Race(
                    ride,
                    0,
                    new Thresholds(THRESHOLD_W, false, thresholdBpm),
                    ability(TARGET_W),
                    JudgementLimits.USUAL,
                    null);
            return Caps.advise(race, "%s", 210).capBpm();
        }

        @Test
        void atEqualPowerIsComparedOverTenMinutesOfWork() {
            Race race = race(following(alternating(7200), 7200, 1).build());
            assertThat(HeartRateAtEqualPower.of(race, new Interval(4000, 4600))).hasValueSatisfying(heart -> {
                assertThat(heart.percentOver()).isCloseTo(0, within(1e-9));
                // Felt power is a mixture of 170 and 230 W.
                assertThat(heart.actualBpm()).isBetween(80 + 0.3 * 170, 80 + 0.3 * 230);
            });
            assertThat(HeartRateAtEqualPower.of(race, new Interval(4000, 4599))).isEmpty();
        }

        @Test
        void atEqualPowerIsComparedWhereAFifthIsMissingAtMost() {
            double[] watts = alternating(7200);
            double[] felt = felt(watts);
            for (int missing : new int[] {200, 201}) {
                Race race = race(ride(
                                7200,
                                second -> watts[second],
                                second -> second >= 5000 && second < 5000 + missing
                                        ? Double.NaN
                                        : 80 + 0.3 * felt[second])
                        .build());
                assertThat(HeartRateAtEqualPower.of(race, new Interval(4500, 5500))
                                .isPresent())
                        .as("%d of 1,000 s missing", missing)
                        .isEqualTo(missing == 200);
            }
        }

        @Test
        void atEqualPowerLeavesOutWhatIsNoWork() {
            // From 4,000 s on 60 W, under 0.4 x threshold; the heart still feels more for a minute or two.
            double[] watts = alternating(7200);
            Arrays.fill(watts, 4000, 7200, 60);
            Race race = race(following(watts, 7200, 1).build());
            assertThat(HeartRateAtEqualPower.of(race, new Interval(4600, 7200))).isEmpty();
        }

        /** The last third of two hours begins at 4,800 s. */
        @ParameterizedTest
        @CsvSource({"1.031, MINOR", "1.049, MINOR", "1.051, MODERATE", "1.079, MODERATE", "1.081, MAJOR"})
        void driftIsGradedByItsRise(double factor, Severity severity) {
            Found drift = found(
                    new Drift(), race(following(alternating(7200), 4800, factor).build()));
            assertThat(drift.severity()).isEqualTo(severity);
            assertThat(drift.when()).isEqualTo(new Interval(4800, 7200));
            assertThat(evidence(drift, "heartRateOverPredictedPercent")).isCloseTo((factor - 1) * 100, within(1e-6));
            assertThat(evidence(drift, "actualHeartRateBpm"))
                    .isCloseTo(factor * evidence(drift, "predictedHeartRateBpm"), within(1e-6));
            assertThat(evidence(drift, "bpmPer100W")).isCloseTo(30, within(1e-6));
        }

        @Test
        void driftIsNotToldUnderThreePercent() {
            assertThat(new Drift()
                            .detect(race(
                                    following(alternating(7200), 4800, 1.029).build())))
                    .isEmpty();
        }

        /** Three hours; from half-way on power and heart rate fall to a share of what they were. */
        private Race crash(double power, double heart) {
            double[] watts = alternating(3 * HOUR);
            for (int second = 5400; second < watts.length; second++) {
                watts[second] *= power;
            }
            return race(following(watts, 5400, heart)
                    .channel(Channel.TEMPERATURE, Series.generate(3 * HOUR, second -> second < 5400 ? 12 : 18))
                    .build());
        }

        @Test
        void crashTellsWhatCameBefore() {
            Found crash = found(new EnergyCrash(), crash(0.8, 0.93));
            assertThat(crash.when()).isEqualTo(new Interval(5400, 3 * HOUR));
            assertThat(crash.severity()).isEqualTo(Severity.MODERATE);
            // Minute 20 to half-way is seven times ten minutes, 200 W on average.
            assertThat(evidence(crash, "earlyPowerW")).isCloseTo(200, within(1e-9));
            assertThat(evidence(crash, "lossPercent")).isCloseTo(20, within(1e-9));
            assertThat(evidence(crash, "heartRateOverPredictedPercent")).isCloseTo(-7, within(1e-6));
            assertThat(evidence(crash, "actualHeartRateBpm"))
                    .isCloseTo(0.93 * evidence(crash, "predictedHeartRateBpm"), within(1e-6));
            assertThat(evidence(crash, "hoursBefore")).isCloseTo(1.5, within(1e-12));
            assertThat(evidence(crash, "workBeforeKJ")).isCloseTo(5400 * 200 / 1000.0, within(1e-9));
            assertThat(evidence(crash, "temperatureC")).isCloseTo(18, within(1e-9));
        }

        @ParameterizedTest
        @CsvSource({
            "0.84, 0.949, MODERATE",
            "0.71, 0.901, MODERATE",
            "0.69, 0.93, MAJOR",
            "0.80, 0.899, MAJOR",
        })
        void crashIsGradedByWhatItTook(double power, double heart, Severity severity) {
            assertThat(found(new EnergyCrash(), crash(power, heart)).severity()).isEqualTo(severity);
        }

        /** Ten minutes at 0.75 after ten at full power are 0.875 over twenty. */
        @Test
        void crashTakesTwentyMinutes() {
            double[] watts = alternating(3 * HOUR);
            for (int second = 3 * HOUR - 600; second < watts.length; second++) {
                watts[second] *= 0.75;
            }
            assertThat(new EnergyCrash()
                            .detect(race(following(watts, 7200, 0.93).build())))
                    .isEmpty();
        }

        @Test
        void crashNeedsBothToHaveFallen() {
            assertThat(new EnergyCrash().detect(crash(0.86, 0.93))).isEmpty();
            assertThat(new EnergyCrash().detect(crash(0.8, 0.951))).isEmpty();
        }
    }

    @Nested
    class Openings {
        /** Two hours; the opening, twenty minutes, at a multiple of the target, the rest at nine tenths of it. */
        private Race opening(double ofTarget) {
            double[] watts = steady(2 * HOUR, 0.9 * TARGET_W);
            Arrays.fill(watts, 0, 1200, ofTarget * TARGET_W);
            return race(watts);
        }

        @ParameterizedTest
        @CsvSource({"1.11, MINOR", "1.14, MINOR", "1.16, MODERATE", "1.24, MODERATE", "1.26, MAJOR"})
        void areGradedByTheTarget(double ofTarget, Severity severity) {
            assertThat(found(new OverHardStart(), opening(ofTarget)).severity()).isEqualTo(severity);
        }

        @Test
        void areNotToldUpToATenthAbove() {
            assertThat(new OverHardStart().detect(opening(1.09))).isEmpty();
        }

        @Test
        void carryTheirNumbers() {
            // Twenty minutes: ten at 250 W, threshold itself, five at 280 W, five paused with power recorded. Target
            // 200 W.
            IntToDoubleFunction watts = second -> second < 600 ? 250 : second < 900 ? 280 : second < 1200 ? 400 : 150;
            Ride ride = ride(2 * HOUR + 300, watts, second -> second < 600 ? 150 : 160)
                    .state(new Interval(900, 1200), SecondState.PAUSED)
                    .build();
            Found start = found(new OverHardStart(), race(ride, spending()));
            // Twenty moving minutes end at 1,500 s: 600 s x 50 W + 300 s x 80 W - 300 s x 50 W.
            assertThat(start.when()).isEqualTo(new Interval(0, 1500));
            assertThat(evidence(start, "openingSeconds")).isEqualTo(1500);
            assertThat(evidence(start, "excessWorkKJ")).isCloseTo(39, within(1e-9));
            assertThat(evidence(start, "minutesAboveThreshold")).isCloseTo(5, within(1e-9));
            assertThat(evidence(start, "targetW")).isEqualTo(TARGET_W);
            assertThat(evidence(start, "openingHeartRateBpm")).isCloseTo(155, within(1e-9));
            assertThat(evidence(start, "thresholdHeartRateFraction")).isCloseTo(155 / 165.0, within(1e-12));
            // Critical power 260 W: 300 s x 20 J of 20 kJ are spent.
            assertThat(evidence(start, "lowestWPrimeShare")).isCloseTo(0.7, within(1e-9));
            Found without = found(
                    new OverHardStart(),
                    new Race(
                            ride,
                            0,
                            new Thresholds(THRESHOLD_W, false, null),
                            ability(TARGET_W),
                            JudgementLimits.USUAL,
                            null));
            assertThat(without.evidence().get("thresholdHeartRateFraction")).isEmpty();
            assertThat(without.evidence().get("lowestWPrimeShare")).isEmpty();
        }
    }

    @Nested
    class Ends {
        /** Two hours; the last sixth, twenty minutes, at a multiple of the 200 W before. */
        private Race ending(double overRest) {
            double[] watts = steady(2 * HOUR, 200);
            Arrays.fill(watts, 6000, 7200, overRest * 200);
            return race(watts);
        }

        @ParameterizedTest
        @CsvSource({"1.081, MINOR", "1.149, MINOR", "1.151, MODERATE"})
        void areGradedByTheGain(double overRest, Severity severity) {
            Found reserve = found(new LateReserve(), ending(overRest));
            assertThat(reserve.severity()).isEqualTo(severity);
            assertThat(evidence(reserve, "lastSixthNormalizedPowerW")).isCloseTo(overRest * 200, within(1e-9));
            assertThat(evidence(reserve, "restNormalizedPowerW")).isCloseTo(200, within(1e-9));
        }

        @Test
        void areNotToldUnderEightPercent() {
            assertThat(new LateReserve().detect(ending(1.079))).isEmpty();
        }

        @ParameterizedTest
        @CsvSource({"0.919, MINOR", "0.871, MINOR", "0.869, MODERATE"})
        void underPacingIsGradedByTheTarget(double ofTarget, Severity severity) {
            Found under = found(new UnderPaced(), race(steady(2 * HOUR, ofTarget * TARGET_W)));
            assertThat(under.severity()).isEqualTo(severity);
            assertThat(evidence(under, "normalizedPowerW")).isCloseTo(ofTarget * TARGET_W, within(1e-9));
        }

        @Test
        void underPacingIsNotToldFromNinetyTwoPercentOn() {
            assertThat(new UnderPaced().detect(race(steady(2 * HOUR, 0.921 * TARGET_W))))
                    .isEmpty();
        }
    }

    @Nested
    class Stops {
        private static final int SECONDS = 10_000;

        private Race stopping(Interval stop) {
            return race(ride(SECONDS, second -> 200, second -> 140)
                    .state(stop, SecondState.STOPPED)
                    .build());
        }

        /** Shares of 10,000 s. */
        @ParameterizedTest
        @CsvSource({"61, MINOR", "299, MINOR", "300, MODERATE", "799, MODERATE", "800, MAJOR"})
        void areGradedByTheirShareOfElapsedTime(int seconds, Severity severity) {
            assertThat(found(new StoppedTime(), stopping(new Interval(4000, 4000 + seconds)))
                            .severity())
                    .isEqualTo(severity);
        }

        @Test
        void nameTheLimitInForce() {
            JudgementLimits limits = JudgementLimits.USUAL.with(JudgementLimit.STOP_SECONDS, 200);
            Ride ride = ride(SECONDS, second -> 200, second -> 140)
                    .state(new Interval(1000, 1150), SecondState.STOPPED)
                    .state(new Interval(4000, 4300), SecondState.STOPPED)
                    .build();
            Found stops = found(new StoppedTime(), new Race(ride, 0, THRESHOLDS, ability(TARGET_W), limits, null));
            assertThat(evidence(stops, "longerThanSeconds")).isEqualTo(200);
            assertThat(evidence(stops, "stopCount")).isEqualTo(1);
            assertThat(evidence(found(new StoppedTime(), race(ride)), "longerThanSeconds"))
                    .isEqualTo(60);
        }

        @Test
        void lieBetweenMovingSeconds() {
            assertThat(found(new StoppedTime(), stopping(new Interval(1, 100))).when())
                    .isEqualTo(new Interval(1, 100));
            assertThat(new StoppedTime().detect(stopping(new Interval(0, 100)))).isEmpty();
            assertThat(new StoppedTime().detect(stopping(new Interval(9000, SECONDS))))
                    .isEmpty();
        }
    }

    @Nested
    class SetApart {
        private RacedPart part(int easySeconds, double easyW) {
            return RacedPart.find(
                    Ride.ofWatts(Series.generate(HOUR, second -> second < easySeconds ? easyW : 200)
                            .toArray()),
                    THRESHOLD_W);
        }

        @Test
        void fiveMinutesAreJustEnough() {
            assertThat(part(300, 0).interval()).isEqualTo(new Interval(300, HOUR));
            assertThat(part(299, 0).interval()).isEqualTo(new Interval(0, HOUR));
        }

        /** 0.4 x threshold is 100 W: what reaches it is not easy. */
        @Test
        void aLeadInNeverReachesTheLevel() {
            assertThat(part(600, 99.9).leadInSeconds()).isEqualTo(600);
            assertThat(part(600, 100).leadInSeconds()).isZero();
        }
    }

    @Nested
    class Verdicts {
        private Verdict verdict(double firstW, double secondW, Finding... findings) {
            double[] watts = steady(2 * HOUR, firstW);
            Arrays.fill(watts, HOUR, 2 * HOUR, secondW);
            return io.github.wattledger.pacing.Verdicts.of(race(watts), List.of(findings));
        }

        private Finding finding(FindingKind kind, Severity severity) {
            return new Finding(
                    kind,
                    severity,
                    new Interval(0, 60),
                    null,
                    null,
                    Evidence.none(),
                    new Cost.NotPriced("not asked"),
                    new Advice("none", null, null),
                    null);
        }

        @Test
        void compareTheHalves() {
            assertThat(verdict(200, 212)).isEqualTo(Verdict.NEGATIVE_SPLIT);
            assertThat(verdict(200, 208)).isEqualTo(Verdict.EVEN);
            assertThat(verdict(200, 192)).isEqualTo(Verdict.EVEN);
            assertThat(verdict(200, 188)).isEqualTo(Verdict.UNEVEN);
        }

        @Test
        void areUnevenByMajorSurgesOnly() {
            assertThat(verdict(200, 200, finding(FindingKind.SURGES, Severity.MAJOR)))
                    .isEqualTo(Verdict.UNEVEN);
            assertThat(verdict(200, 200, finding(FindingKind.SURGES, Severity.MODERATE)))
                    .isEqualTo(Verdict.EVEN);
        }

        /** In the order of the definition: each before the next. */
        @Test
        void areTheFirstThatApplies() {
            List<FindingKind> order = List.of(
                    FindingKind.OVER_HARD_START,
                    FindingKind.FADE,
                    FindingKind.UNDER_PACED,
                    FindingKind.THRESHOLD_RIDING_EARLY,
                    FindingKind.LATE_RESERVE);
            List<Verdict> verdicts = List.of(
                    Verdict.OVER_HARD_START,
                    Verdict.FADED,
                    Verdict.UNDER_PACED,
                    Verdict.UNEVEN,
                    Verdict.NEGATIVE_SPLIT);
            List<Finding> findings = new ArrayList<>();
            for (int i = order.size() - 1; i >= 0; i--) {
                findings.add(finding(order.get(i), Severity.MINOR));
                assertThat(verdict(200, 200, findings.toArray(Finding[]::new))).isEqualTo(verdicts.get(i));
            }
        }

        @Test
        void haveWordsAsTheMethodsWriteThem() {
            assertThat(Arrays.stream(Verdict.values()).map(Verdict::words))
                    .containsExactlyInAnyOrder(
                            "over-hard start",
                            "faded",
                            "under-paced",
                            "uneven",
                            "negative split",
                            "even",
                            "not judged");
            assertThat(Severity.MODERATE.id()).isEqualTo("moderate");
        }
    }
}
