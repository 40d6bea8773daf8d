package io.github.wattledger.load;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.time.Instant;
import java.util.Arrays;
import java.util.Random;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.hipparchus.stat.descriptive.DescriptiveStatistics;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class NormalizedPowerTest {
    /** Expected values: computed from the published definition, apart from this code, to the digits given. */
    @Nested
    class ByDefinition {
        @Test
        void constantPowerIsItsOwnNormalizedPower() {
            assertThat(normalizedPowerW(steps(1, 3600, 200))).isCloseTo(200, within(1e-9));
        }

        @Test
        void oneStepFrom100To300W() {
            assertThat(normalizedPowerW(steps(1, 600, 100, 600, 300))).isCloseTo(252.378, within(0.001));
        }

        @Test
        void thirtySecondsOnThirtySecondsOff() {
            double normalizedPowerW = normalizedPowerW(steps(60, 30, 300, 30, 100));
            assertThat(normalizedPowerW).isCloseTo(221.8509, within(0.001));
            // The mean is a triangle wave between 100 and 300 W, whose fourth-power mean is an integral.
            double triangleWave = Math.pow((Math.pow(300, 5) - Math.pow(100, 5)) / (5 * 200), 0.25);
            assertThat(normalizedPowerW).isCloseTo(triangleWave, within(0.1));
        }

        @Test
        void alternationWithinTheWindowIsSmoothedAway() {
            assertThat(normalizedPowerW(steps(120, 15, 400, 15, 0))).isCloseTo(200, within(0.001));
        }

        @Test
        void oneMinuteInFiveHard() {
            assertThat(normalizedPowerW(steps(12, 60, 400, 240, 100))).isCloseTo(251.0785, within(0.001));
        }

        @Test
        void rampOfMeansWorkedByHand() {
            // 30 s at 0 W, 30 s at 300 W: 31 windows with means 0, 10, ... 300 W. The sum of k^4 for k = 1 to 30 is
            // 30 * 31 * 61 * (3 * 900 + 90 - 1) / 30 = 5,273,999.
            double expected = Math.pow(1e4 * 5_273_999 / 31, 0.25);
            assertThat(normalizedPowerW(steps(1, 30, 0, 30, 300))).isCloseTo(expected, within(1e-9));
        }
    }

    @Nested
    class WhatItNeeds {
        @Test
        void thirtySecondsFillOneWindow() {
            assertThat(normalizedPowerW(steps(1, 15, 0, 15, 300))).isCloseTo(150, within(1e-9));
        }

        @Test
        void underThirtySecondsOfPowerGiveNone() {
            assertThat(NormalizedPower.of(steps(1, 29, 300))).isEmpty();
            assertThat(NormalizedPower.of(steps(1, 29, 300, 100, Double.NaN))).isEmpty();
            assertThat(NormalizedPower.of(new double[0])).isEmpty();
        }

        @Test
        void powerWhileTheTimerStoodIsLeftOut() {
            Ride ride = Ride.builder(Instant.EPOCH, 200)
                    .channel(Channel.POWER, Series.of(steps(1, 100, 200, 100, 900)))
                    .state(new Interval(100, 200), SecondState.PAUSED)
                    .build();
            assertThat(NormalizedPower.of(ride).orElseThrow()).isCloseTo(200, within(1e-9));
        }

        @Test
        void aStretchCountsAsIfTheRideWereNoMoreThanThat() {
            Ride ride = Ride.builder(Instant.EPOCH, 300)
                    .channel(Channel.POWER, Series.of(steps(1, 100, 600, 60, 200, 40, 900, 50, 200, 50, 100)))
                    .state(new Interval(160, 200), SecondState.PAUSED)
                    .build();

            assertThat(NormalizedPower.of(ride, new Interval(100, 250)).orElseThrow())
                    .isCloseTo(200, within(1e-9));
            assertThat(NormalizedPower.of(ride, new Interval(100, 129))).isEmpty();
            assertThatThrownBy(() -> NormalizedPower.of(ride, new Interval(100, 301)))
                    .isInstanceOf(IndexOutOfBoundsException.class);
        }
    }

    /** Laws that follow from the definition, on seeded random rides. */
    @Nested
    class Laws {
        @ParameterizedTest
        @ValueSource(longs = {1, 2, 3, 4, 5})
        void agreesWithAnIndependentMovingMean(long seed) {
            double[] watts = randomWatts(seed, 20_000, 0.02);
            DescriptiveStatistics window = new DescriptiveStatistics(30);
            DescriptiveStatistics fourthPowers = new DescriptiveStatistics();
            for (double power : watts) {
                if (!Double.isNaN(power)) {
                    window.addValue(power);
                    if (window.getN() == 30) {
                        fourthPowers.addValue(Math.pow(window.getMean(), 4));
                    }
                }
            }
            double expected = Math.pow(fourthPowers.getMean(), 0.25);
            assertThat(normalizedPowerW(watts)).isCloseTo(expected, within(1e-9 * expected));
        }

        @ParameterizedTest
        @ValueSource(longs = {11, 12, 13})
        void scalesWithPower(long seed) {
            double[] watts = randomWatts(seed, 5000, 0.02);
            double[] scaled = Arrays.stream(watts).map(power -> 1.37 * power).toArray();
            double expected = 1.37 * normalizedPowerW(watts);
            assertThat(normalizedPowerW(scaled)).isCloseTo(expected, within(1e-9 * expected));
        }

        @ParameterizedTest
        @ValueSource(longs = {21, 22, 23})
        void theWindowRunsOnAcrossSecondsWithoutPower(long seed) {
            double[] watts = randomWatts(seed, 5000, 0.1);
            double[] measured =
                    Arrays.stream(watts).filter(power -> !Double.isNaN(power)).toArray();
            assertThat(NormalizedPower.of(watts)).isEqualTo(NormalizedPower.of(measured));
        }

        @ParameterizedTest
        @ValueSource(longs = {31, 32, 33})
        void isNotBelowTheMeanOfTheMovingMean(long seed) {
            double[] watts = randomWatts(seed, 5000, 0);
            double meanOfMeans = movingMeans(watts).average().orElseThrow();
            assertThat(normalizedPowerW(watts)).isGreaterThanOrEqualTo(meanOfMeans);
        }

        @ParameterizedTest
        @ValueSource(longs = {41, 42, 43})
        void twoEqualHalvesDifferOnlyByTheWindowsAcrossTheJoin(long seed) {
            double[] half = randomWatts(seed, 3000, 0);
            double[] joined = DoubleStream.concat(Arrays.stream(half), Arrays.stream(half))
                    .toArray();
            double[] join = Arrays.copyOfRange(joined, half.length - 29, half.length + 29);
            double acrossJoin = movingMeans(join).map(mean -> Math.pow(mean, 4)).sum();
            double ofHalf = Math.pow(normalizedPowerW(half), 4) * (half.length - 29);
            double expected = Math.pow((2 * ofHalf + acrossJoin) / (joined.length - 29), 0.25);
            assertThat(normalizedPowerW(joined)).isCloseTo(expected, within(1e-9 * expected));
        }

        private DoubleStream movingMeans(double[] watts) {
            return IntStream.rangeClosed(0, watts.length - 30)
                    .mapToDouble(from ->
                            Arrays.stream(watts, from, from + 30).average().orElseThrow());
        }
    }

    private static double normalizedPowerW(double[] watts) {
        return NormalizedPower.of(watts).orElseThrow();
    }

    /** Pairs of seconds and watts, the whole repeated. */
    static double[] steps(int times, double... secondsAndWatts) {
        DoubleStream.Builder watts = DoubleStream.builder();
        for (int time = 0; time < times; time++) {
            for (int pair = 0; pair < secondsAndWatts.length; pair += 2) {
                for (int second = 0; second < secondsAndWatts[pair]; second++) {
                    watts.add(secondsAndWatts[pair + 1]);
                }
            }
        }
        return watts.build().toArray();
    }

    static double[] randomWatts(long seed, int seconds, double missingShare) {
        Random random = new Random(seed);
        double[] watts = new double[seconds];
        for (int second = 0; second < seconds; second++) {
            double power = 200 + 120 * Math.sin(second / 90.0) + 60 * random.nextGaussian();
            watts[second] = random.nextDouble() < missingShare ? Double.NaN : Math.max(0, power);
        }
        return watts;
    }
}
