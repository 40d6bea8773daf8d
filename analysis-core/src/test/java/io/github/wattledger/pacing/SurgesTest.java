package io.github.wattledger.pacing;

import static io.github.wattledger.pacing.RaceByHand.HOUR;
import static io.github.wattledger.pacing.RaceByHand.THRESHOLD_W;
import static io.github.wattledger.pacing.RaceByHand.estimated;
import static io.github.wattledger.pacing.RaceByHand.evidence;
import static io.github.wattledger.pacing.RaceByHand.found;
import static io.github.wattledger.pacing.RaceByHand.race;
import static io.github.wattledger.pacing.RaceByHand.repaired;
import static io.github.wattledger.pacing.RaceByHand.spending;
import static io.github.wattledger.pacing.RaceByHand.steady;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Repeated short efforts far above threshold, on both sides of each limit of {@code docs/methods.md}. */
class SurgesTest {
    /** At 200 W, with seconds at 420 W: 170 J of each lie above threshold. */
    private Race surging(int seconds) {
        double[] watts = steady(HOUR, 200);
        Arrays.fill(watts, 1000, 1000 + seconds, 420);
        return race(watts);
    }

    /** Where the race cannot be ridden again. The usual W' is 17 kJ: 10 s are a tenth of it, 25 s a quarter, 50 s a half, in an hour. */
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
        // The heart follows too late to hold an effort of seconds by.
        assertThat(surges.advice().capBpm()).isNull();
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

    /** Half as much again as the calmer seconds of the minute around it, on both sides of the limit. */
    @ParameterizedTest
    @CsvSource({"219.9, true", "220.1, false"})
    void areJumps(double aroundW, boolean isSurge) {
        double[] watts = steady(HOUR, aroundW);
        Arrays.fill(watts, 1000, 1030, 330);
        assertThat(new Surges().detect(race(watts)).isPresent()).isEqualTo(isSurge);
        assertThat(race(watts).surges()).hasSize(isSurge ? 1 : 0);
    }

    /** Only the minute before and the minute after count, and of them only what is not above 1.2 x threshold. */
    @Test
    void areHeldAgainstTheMinuteAroundThem() {
        double[] watts = steady(HOUR, 150);
        Arrays.fill(watts, 940, 1090, 230);
        Arrays.fill(watts, 1000, 1030, 330);
        assertThat(race(watts).surges()).isEmpty();
        Arrays.fill(watts, 1030, 1090, 205); // the calmer seconds are now at 217.5 W on average, 330 W is 1.52 of it
        assertThat(race(watts).surges()).containsExactly(new Interval(1000, 1030));
    }

    /**
     * A steep climb at 300 W for twenty minutes, with a meter that scatters by 6 % in spells of ten seconds: 318 W and 282
     * W are 1.13 apart.
     */
    @Test
    void areNoneWhereAMeterTremblesOnAHardClimb() {
        double[] watts = steady(HOUR, 200);
        for (int second = 1000; second < 2200; second++) {
            watts[second] = second / 10 % 2 == 0 ? 318 : 282;
        }
        assertThat(race(watts).surges()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void areNoneWhereAMeterScattersOnAHardClimb(long seed) {
        Random random = new Random(seed);
        double[] watts = steady(HOUR, 200);
        double meter = 0;
        for (int second = 1000; second < 2800; second++) {
            // Scatter of 6 % that lasts some ten seconds.
            meter = 0.9 * meter + Math.sqrt(1 - 0.9 * 0.9) * random.nextGaussian();
            watts[second] = 290 * (1 + 0.06 * meter);
        }
        assertThat(race(watts).surges()).isEmpty();
    }

    /** The opening of two hours is 20 minutes; at 230 W with a surge in it, against 190 W, it is over-hard. */
    @Test
    void ofAnOverHardStartAreAPartOfIt() {
        double[] watts = steady(2 * HOUR, 180);
        Arrays.fill(watts, 0, 1200, 230);
        Arrays.fill(watts, 600, 640, 450);
        Arrays.fill(watts, 3000, 3040, 450);
        assertThat(OverHardStart.isIn(race(watts))).isTrue();
        Found later = found(new Surges(), race(watts));
        assertThat(evidence(later, "count")).isEqualTo(1);
        assertThat(later.when()).isEqualTo(new Interval(3000, 3040));
        // An opening like the rest is none, and its surge counts.
        Arrays.fill(watts, 0, 600, 180);
        Arrays.fill(watts, 640, 1200, 180);
        assertThat(evidence(found(new Surges(), race(watts)), "count")).isEqualTo(2);
    }

    @Test
    void areNotLookedForByAnEstimatedThreshold() {
        Race race = surging(60);
        assertThat(new Surges().detect(race(race.ride(), new Thresholds(estimated(THRESHOLD_W), null, null))))
                .isEmpty();
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
}
