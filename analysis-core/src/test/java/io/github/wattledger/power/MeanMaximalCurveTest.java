package io.github.wattledger.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class MeanMaximalCurveTest {
    /** Worked by hand from the definition: the highest mean over so many consecutive seconds. */
    @Nested
    class ByHand {
        @Test
        void everyDurationOfAShortRide() {
            MeanMaximalCurve curve = MeanMaximalCurve.of(new double[] {100, 300, 200, 0, 400});
            assertThat(curve.longestSeconds()).isEqualTo(5);
            assertThat(wattsOf(curve)).containsExactly(400, 250, 200, 225, 200);
            assertThat(startsOf(curve)).containsExactly(4, 1, 0, 1, 0);
        }

        @Test
        void theEarliestOfEqualWindowsIsNamed() {
            MeanMaximalCurve curve = MeanMaximalCurve.of(new double[] {50, 200, 200, 0, 200, 200});
            assertThat(startOf(curve, 1)).isEqualTo(1);
            assertThat(startOf(curve, 2)).isEqualTo(1);
            assertThat(startOf(curve, 5)).isEqualTo(1);
        }

        @Test
        void pausedAndMissingSecondsCountAsNothing() {
            Ride ride = Ride.builder(Instant.EPOCH, 6)
                    .channel(Channel.POWER, Series.of(300, 900, Double.NaN, 300, 300, 0))
                    .state(1, SecondState.PAUSED)
                    .build();
            assertThat(wattsOf(MeanMaximalCurve.of(ride))).containsExactly(300, 300, 200, 150, 180, 150);
        }

        @Test
        void aRideWithoutPowerHasAnEmptyCurve() {
            Ride ride = Ride.builder(Instant.EPOCH, 100)
                    .channel(Channel.HEART_RATE, Series.generate(100, second -> 120))
                    .build();
            MeanMaximalCurve curve = MeanMaximalCurve.of(ride);
            assertThat(curve.longestSeconds()).isZero();
            assertThat(curve.logSpacedSeconds()).isEmpty();
            assertThat(curve).isEqualTo(MeanMaximalCurve.of(new double[0]));
            assertThat(MeanMaximalCurve.of(new double[] {Double.NaN}).longestSeconds())
                    .isZero();
        }

        @Test
        void durationsOutsideTheRideAreRefused() {
            MeanMaximalCurve curve = MeanMaximalCurve.of(new double[] {100, 300});
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> curve.bestWatts(0))
                    .withMessage("seconds 0, expected 1 to 2");
            assertThatIllegalArgumentException().isThrownBy(() -> curve.bestWatts(3));
            assertThatIllegalArgumentException().isThrownBy(() -> curve.bestWindow(3));
        }
    }

    @Nested
    class AgainstThePlainDoubleLoop {
        static Stream<Arguments> wholeWatts() {
            return Arrays.stream(Texture.values())
                    .flatMap(texture -> Stream.of(1, 2, 15, 16, 17, 255, 256, 257, 1500, 3001)
                            .flatMap(seconds ->
                                    Stream.of(1L, 2L, 3L).map(seed -> Arguments.of(texture, seconds, seed))));
        }

        @ParameterizedTest
        @MethodSource("wholeWatts")
        void wholeWattsAgreeExactly(Texture texture, int seconds, long seed) {
            double[] watts = texture.watts(seconds, new Random(seed));
            // Not from the array, which would be refused where readings lie below 0: the search has to stand them.
            Ride ride = Ride.builder(Instant.EPOCH, watts.length)
                    .channel(Channel.POWER, Series.of(watts))
                    .build();
            MeanMaximalCurve curve = MeanMaximalCurve.of(ride);
            if (curve.longestSeconds() == 0) {
                assertThat(watts).containsOnly(Double.NaN);
                return;
            }
            double[] expectedWatts = new double[seconds];
            int[] expectedStarts = new int[seconds];
            plainLoop(watts, expectedWatts, expectedStarts);
            assertThat(wattsOf(curve)).containsExactly(expectedWatts);
            assertThat(startsOf(curve)).containsExactly(expectedStarts);
        }

        @ParameterizedTest
        @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
        void fractionalWattsAgreeUpToRounding(long seed) {
            Random random = new Random(seed);
            double[] watts = Arrays.stream(Texture.NOISE.watts(2500, random))
                    .map(power -> power + random.nextDouble())
                    .toArray();
            double[] expectedWatts = new double[watts.length];
            plainLoop(watts, expectedWatts, new int[watts.length]);
            MeanMaximalCurve curve = MeanMaximalCurve.of(watts);
            for (int seconds = 1; seconds <= watts.length; seconds++) {
                double expected = expectedWatts[seconds - 1];
                assertThat(curve.bestWatts(seconds)).as("%d s", seconds).isCloseTo(expected, within(1e-9 * expected));
            }
        }

        @ParameterizedTest
        @ValueSource(ints = {1, 5, 60, 190, 1200, 3600, 21_600, 43_199, 43_200})
        void aRideOfTwelveHoursAgreesExactly(int seconds) {
            double[] watts = Texture.GAPS.watts(43_200, new Random(12));
            double[] work = new double[watts.length + 1];
            for (int second = 0; second < watts.length; second++) {
                work[second + 1] = work[second] + (Double.isNaN(watts[second]) ? 0 : watts[second]);
            }
            double most = 0;
            for (int start = 0; start + seconds <= watts.length; start++) {
                most = Math.max(most, work[start + seconds] - work[start]);
            }
            assertThat(MeanMaximalCurve.of(watts).bestWatts(seconds)).isEqualTo(most / seconds);
        }

        @Test
        void anHourLongRideAgreesExactlyInEverySeed() {
            for (long seed = 100; seed < 104; seed++) {
                double[] watts = Texture.COASTING.watts(3600, new Random(seed));
                double[] expectedWatts = new double[watts.length];
                plainLoop(watts, expectedWatts, new int[watts.length]);
                assertThat(wattsOf(MeanMaximalCurve.of(watts)))
                        .as("seed %d", seed)
                        .containsExactly(expectedWatts);
            }
        }
    }

    /** Rides with pauses and missing stretches of all lengths, side by side as well, held against every window. */
    @Nested
    class RidesWithStretchesWithoutPower {
        @ParameterizedTest
        @MethodSource("io.github.wattledger.power.MeanMaximalCurveTest#patchyRides")
        void bestsAgreeExactlyWithThePlainDoubleLoop(Ride ride) {
            MeanMaximalCurve curve = MeanMaximalCurve.of(ride);
            double[] expectedWatts = new double[ride.seconds()];
            int[] expectedStarts = new int[ride.seconds()];
            plainLoop(ride.timerSeries(Channel.POWER).toArray(), expectedWatts, expectedStarts);
            assertThat(wattsOf(curve)).containsExactly(expectedWatts);
            assertThat(startsOf(curve)).containsExactly(expectedStarts);
        }

        @ParameterizedTest
        @MethodSource("io.github.wattledger.power.MeanMaximalCurveTest#patchyRides")
        void fractionalWattsAgreeUpToRounding(Ride whole) {
            double[] fractional = Arrays.stream(whole.timerSeries(Channel.POWER).toArray())
                    .map(watts -> watts * 1.1)
                    .toArray();
            double[] expectedWatts = new double[fractional.length];
            plainLoop(fractional, expectedWatts, new int[fractional.length]);
            double[] watts = wattsOf(MeanMaximalCurve.of(fractional));
            for (int i = 0; i < watts.length; i++) {
                assertThat(watts[i]).as("%d s", i + 1).isCloseTo(expectedWatts[i], within(1e-9 * expectedWatts[i]));
            }
        }

        @ParameterizedTest
        @MethodSource("io.github.wattledger.power.MeanMaximalCurveTest#patchyRides")
        void mayBeLowAgreesWithLookingAtEveryFilledWindow(Ride ride) {
            double[] watts = ride.timerSeries(Channel.POWER).toArray();
            double[] best = new double[watts.length];
            plainLoop(watts, best, new int[watts.length]);
            double[] filledBest = new double[watts.length];
            plainLoop(filled(ride, best), filledBest, new int[watts.length]);
            MeanMaximalCurve curve = MeanMaximalCurve.of(ride);
            for (int seconds = 1; seconds <= watts.length; seconds++) {
                boolean gains = (filledBest[seconds - 1] - best[seconds - 1]) * seconds > 1e-6;
                assertThat(mayBeLow(curve, seconds)).as("%d s", seconds).isEqualTo(gains);
            }
        }

        /** Every missing stretch at the best power of its length; pauses as they are. */
        private static double[] filled(Ride ride, double[] best) {
            double[] filled = ride.timerSeries(Channel.POWER).toArray();
            int to = 0;
            for (int from = 0; from < filled.length; from = Math.max(to, from + 1)) {
                to = from;
                while (to < filled.length && isMissing(ride, to)) {
                    to++;
                }
                if (to > from) {
                    Arrays.fill(filled, from, to, best[to - from - 1]);
                }
            }
            return filled;
        }

        private static boolean isMissing(Ride ride, int second) {
            return ride.state(second) != SecondState.PAUSED
                    && !ride.series(Channel.POWER).isMeasured(second);
        }

        @Test
        void aReadingEachThreeMinutesOverElevenDays() {
            // 300 W in one second of each 190, by the definition: 300 W over 1 to 190 s holds one reading, 191 s two.
            double[] watts = new double[11 * 86_400];
            Arrays.fill(watts, Double.NaN);
            for (int second = 0; second < watts.length; second += 190) {
                watts[second] = 300;
            }
            MeanMaximalCurve curve = MeanMaximalCurve.of(watts);
            assertThat(curve.bestWindow(1)).isEqualTo(new MeanMaximalCurve.Window(1, 300, 0, false));
            assertThat(curve.bestWindow(190)).isEqualTo(new MeanMaximalCurve.Window(190, 300.0 / 190, 0, true));
            assertThat(curve.bestWindow(191)).isEqualTo(new MeanMaximalCurve.Window(191, 600.0 / 191, 0, true));
            assertThat(curve.bestWatts(watts.length)).isEqualTo(300.0 * 5003 / watts.length);
        }
    }

    /** Stretches of 1 to 200 s: noise, steady power, zeros, missing, paused, paused with readings. */
    static Stream<Ride> patchyRides() {
        return Stream.iterate(1L, seed -> seed + 1).limit(60).map(seed -> patchyRide(new Random(seed)));
    }

    private static Ride patchyRide(Random random) {
        double[] watts = new double[1 + random.nextInt(1500)];
        Ride.Builder ride = Ride.builder(Instant.EPOCH, watts.length);
        int longest = 1 + random.nextInt(200);
        int to = 0;
        for (int from = 0; from < watts.length; from = to) {
            to = Math.min(watts.length, from + 1 + random.nextInt(longest));
            int kind = random.nextInt(6);
            double steady = 50.0 * random.nextInt(9);
            for (int second = from; second < to; second++) {
                boolean isPaused = kind >= 4;
                if (isPaused) {
                    ride.state(second, SecondState.PAUSED);
                }
                watts[second] = switch (kind) {
                    case 0 -> random.nextInt(500);
                    case 1 -> steady;
                    case 2 -> 0;
                    case 5 -> 999;
                    default -> Double.NaN;
                };
            }
        }
        // One recorded second at least: a ride without power has no curve.
        int recorded = random.nextInt(watts.length);
        watts[recorded] = 150;
        return ride.state(recorded, SecondState.RIDING)
                .channel(Channel.POWER, Series.of(watts))
                .build();
    }

    @Nested
    class Laws {
        @ParameterizedTest
        @ValueSource(longs = {1, 2, 3, 4})
        void workOfABestNeverFallsWithDuration(long seed) {
            MeanMaximalCurve curve = MeanMaximalCurve.of(Texture.COASTING.watts(2000, new Random(seed)));
            for (int seconds = 2; seconds <= curve.longestSeconds(); seconds++) {
                assertThat(curve.bestWatts(seconds) * seconds)
                        .isGreaterThanOrEqualTo(curve.bestWatts(seconds - 1) * (seconds - 1) - 1e-6);
            }
        }

        @ParameterizedTest
        @ValueSource(longs = {1, 2, 3, 4})
        void theNamedWindowHoldsTheBest(long seed) {
            double[] watts = Texture.STEPS.watts(1200, new Random(seed));
            MeanMaximalCurve curve = MeanMaximalCurve.of(watts);
            for (int seconds = 1; seconds <= watts.length; seconds++) {
                int start = startOf(curve, seconds);
                double mean = Arrays.stream(watts, start, start + seconds).sum() / seconds;
                assertThat(curve.bestWatts(seconds)).isEqualTo(mean);
            }
        }

        @Test
        void theWholeRideIsItsOwnMean() {
            double[] watts = Texture.NOISE.watts(5000, new Random(9));
            double mean = Arrays.stream(watts).sum() / watts.length;
            assertThat(MeanMaximalCurve.of(watts).bestWatts(5000)).isEqualTo(mean);
        }
    }

    @Nested
    class MayBeLow {
        @Test
        void neverWithoutMissingSeconds() {
            Ride ride = Ride.builder(Instant.EPOCH, 4)
                    .channel(Channel.POWER, Series.of(200, Double.NaN, 200, 200))
                    .state(1, SecondState.PAUSED)
                    .build();
            MeanMaximalCurve curve = MeanMaximalCurve.of(ride);
            assertThat(IntStream.rangeClosed(1, 4).anyMatch(seconds -> mayBeLow(curve, seconds)))
                    .isFalse();
        }

        @Test
        void whereTheWholeRideHoldsAMissingSecond() {
            // At most 200 W were seen for a second: 600 J in 3 s, as measured; but 800 J in 4 s where 600 J were seen.
            MeanMaximalCurve curve = MeanMaximalCurve.of(new double[] {200, 200, 200, Double.NaN, 100});
            assertThat(mayBeLow(curve, 1)).isFalse();
            assertThat(mayBeLow(curve, 3)).isFalse();
            assertThat(mayBeLow(curve, 4)).isTrue();
            assertThat(mayBeLow(curve, 5)).isTrue();
        }

        @Test
        void notWhereNoWindowWithAMissingSecondComesNear() {
            // 20 s at 300 W, then 100 W around a dropout of 2 s. Filled at 300 W, a window of 10 s there holds 1,400 J.
            double[] watts = new double[60];
            Arrays.fill(watts, 0, 20, 300);
            Arrays.fill(watts, 20, 60, 100);
            Arrays.fill(watts, 50, 52, Double.NaN);
            MeanMaximalCurve curve = MeanMaximalCurve.of(watts);
            assertThat(mayBeLow(curve, 10)).isFalse();
            assertThat(mayBeLow(curve, 20)).isFalse();
            // 0 to 50 s holds 9,000 J, 2 to 52 s filled 300 * 18 + 100 * 30 + 600 = 9,000 J: no gain.
            assertThat(mayBeLow(curve, 50)).isFalse();
            // 0 to 51 s holds 9,000 J as recorded and 9,300 J filled.
            assertThat(mayBeLow(curve, 51)).isTrue();
            assertThat(mayBeLow(curve, 60)).isTrue();
        }

        @ParameterizedTest
        @ValueSource(longs = {1, 2, 3, 4, 5})
        void agreesWithLookingAtEveryFilledWindow(long seed) {
            double[] watts = Texture.GAPS.watts(900, new Random(seed));
            MeanMaximalCurve curve = MeanMaximalCurve.of(watts);
            double[] filled = watts.clone();
            for (int from = 0; from < filled.length; from++) {
                int to = from;
                while (to < filled.length && Double.isNaN(watts[to])) {
                    to++;
                }
                if (to > from) {
                    Arrays.fill(filled, from, to, curve.bestWatts(to - from));
                    from = to;
                }
            }
            double[] filledBest = new double[filled.length];
            plainLoop(filled, filledBest, new int[filled.length]);
            for (int seconds = 1; seconds <= filled.length; seconds++) {
                boolean gains = (filledBest[seconds - 1] - curve.bestWatts(seconds)) * seconds > 1e-3;
                assertThat(mayBeLow(curve, seconds)).as("%d s", seconds).isEqualTo(gains);
            }
        }
    }

    @Nested
    class LogSpaced {
        @ParameterizedTest
        @ValueSource(ints = {1, 2, 3, 10, 60, 3600, 43_200, 54_000})
        void bothEndsAscendingNoneTwice(int longest) {
            List<Integer> seconds = MeanMaximalCurve.of(new double[longest]).logSpacedSeconds();
            assertThat(seconds.get(0)).isEqualTo(1);
            assertThat(seconds.get(seconds.size() - 1)).isEqualTo(longest);
            assertThat(seconds).isSorted().doesNotHaveDuplicates().hasSizeLessThanOrEqualTo(40);
        }

        @ParameterizedTest
        @ValueSource(ints = {1, 2, 3, 40, 41, 600, 3_599, 25_320, 54_000, 2_000_000})
        void riseFromOneSecondToTheLongest(int longest) {
            List<Integer> seconds = MeanMaximalCurve.logSpaced(longest);
            assertThat(seconds.get(0)).isEqualTo(1);
            assertThat(seconds.get(seconds.size() - 1)).isEqualTo(longest);
            for (int i = 1; i < seconds.size(); i++) {
                assertThat(seconds.get(i)).isGreaterThan(seconds.get(i - 1));
            }
        }

        @ParameterizedTest
        @ValueSource(ints = {25_320, 54_000})
        void areAboutFortyEvenlySpreadForALongRide(int longest) {
            List<Integer> seconds = MeanMaximalCurve.logSpaced(longest);
            assertThat(seconds).hasSizeBetween(30, 40);
            // 40 points have 39 steps; from 60 s on, rounding to a second moves a ratio by less than 2 percent.
            double step = Math.pow(longest, 1.0 / 39);
            for (int i = 1; i < seconds.size(); i++) {
                if (seconds.get(i - 1) >= 60) {
                    assertThat((double) seconds.get(i) / seconds.get(i - 1)).isCloseTo(step, within(0.02 * step));
                }
            }
        }

        @Test
        void withoutPowerThereIsNone() {
            assertThat(MeanMaximalCurve.logSpaced(0)).isEmpty();
        }

        @Test
        void evenOnALogarithmicAxisForALongRide() {
            List<Integer> seconds = MeanMaximalCurve.of(new double[43_200]).logSpacedSeconds();
            assertThat(seconds).hasSizeBetween(34, 40);
            // 39 equal steps from 1 s to 43,200 s are a factor of 43,200^(1/39) each; a whole second is a small share
            // of anything above a minute.
            double step = Math.pow(43_200, 1 / 39.0);
            for (int i = 1; i < seconds.size(); i++) {
                if (seconds.get(i - 1) >= 60) {
                    assertThat((double) seconds.get(i) / seconds.get(i - 1)).isCloseTo(step, within(0.025));
                }
            }
        }
    }

    @Test
    void theSumOfFractionalWattsIsCompensated() {
        // docs/methods.md, numerics. Adding 200.1 W 4,000 times without it is off by 1.4e-11 W.
        double[] watts = new double[4000];
        Arrays.fill(watts, 200.1);
        assertThat(MeanMaximalCurve.of(watts).bestWatts(4000)).isCloseTo(200.1, within(1e-12));
    }

    @Test
    void aCurveThatWasSerializedGivesTheSameAnswers() throws IOException, ClassNotFoundException {
        MeanMaximalCurve curve = MeanMaximalCurve.of(Texture.GAPS.watts(500, new Random(4)));
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(curve);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            MeanMaximalCurve read = (MeanMaximalCurve) in.readObject();
            assertThat(read).isEqualTo(curve);
            assertThat(IntStream.rangeClosed(1, 500).mapToObj(read::bestWindow).toList())
                    .isEqualTo(IntStream.rangeClosed(1, 500)
                            .mapToObj(curve::bestWindow)
                            .toList());
        }
    }

    @Test
    void equalRidesHaveEqualCurves() {
        double[] watts = Texture.GAPS.watts(500, new Random(3));
        assertThat(MeanMaximalCurve.of(watts))
                .isEqualTo(MeanMaximalCurve.of(watts.clone()))
                .hasSameHashCodeAs(MeanMaximalCurve.of(watts.clone()))
                .isNotEqualTo(MeanMaximalCurve.of(new double[500]));
    }

    /** Kinds of power that try the search in different ways, in whole watts. */
    enum Texture {
        NOISE {
            @Override
            double powerW(int second, double previousW, Random random) {
                return Math.max(0, Math.rint(200 + 90 * random.nextGaussian()));
            }
        },
        STEPS {
            @Override
            double powerW(int second, double previousW, Random random) {
                return second == 0 || random.nextInt(60) == 0 ? 50.0 * random.nextInt(9) : previousW;
            }
        },
        COASTING {
            @Override
            double powerW(int second, double previousW, Random random) {
                boolean coasting = random.nextInt(20) == 0 || (previousW == 0 && random.nextInt(12) != 0);
                return coasting
                        ? 0
                        : Math.max(0, Math.rint(190 + 70 * Math.sin(second / 200.0) + 40 * random.nextGaussian()));
            }
        },
        CONSTANT {
            @Override
            double powerW(int second, double previousW, Random random) {
                return 200;
            }
        },
        CONSTANT_WITH_STOPS {
            @Override
            double powerW(int second, double previousW, Random random) {
                return second % 400 < 300 ? 200 : 0;
            }
        },
        NOTHING {
            @Override
            double powerW(int second, double previousW, Random random) {
                return 0;
            }
        },
        ONE_SPIKE {
            @Override
            double powerW(int second, double previousW, Random random) {
                return second == 12 ? 1500 : 100;
            }
        },
        GAPS {
            @Override
            double powerW(int second, double previousW, Random random) {
                boolean missing = random.nextInt(30) == 0 || (Double.isNaN(previousW) && random.nextInt(4) != 0);
                return missing ? Double.NaN : Math.max(0, Math.rint(180 + 80 * random.nextGaussian()));
            }
        },
        RISING {
            @Override
            double powerW(int second, double previousW, Random random) {
                return 100 + second / 10;
            }
        },
        BELOW_ZERO {
            @Override
            double powerW(int second, double previousW, Random random) {
                return Math.rint(100 * random.nextGaussian());
            }
        };

        /** Power of a second; {@code previousW} is that of the second before, 100 W at the start. */
        abstract double powerW(int second, double previousW, Random random);

        double[] watts(int seconds, Random random) {
            double[] watts = new double[seconds];
            double previousW = 100;
            for (int second = 0; second < seconds; second++) {
                watts[second] = powerW(second, previousW, random);
                previousW = watts[second];
            }
            return watts;
        }
    }

    /** The definition, window by window. */
    private static void plainLoop(double[] watts, double[] bestWatts, int[] starts) {
        double[] work = new double[watts.length + 1];
        for (int second = 0; second < watts.length; second++) {
            work[second + 1] = work[second] + (Double.isNaN(watts[second]) ? 0 : watts[second]);
        }
        for (int seconds = 1; seconds <= watts.length; seconds++) {
            double best = Double.NEGATIVE_INFINITY;
            for (int start = 0; start + seconds <= watts.length; start++) {
                double joules = work[start + seconds] - work[start];
                if (joules > best) {
                    best = joules;
                    starts[seconds - 1] = start;
                }
            }
            bestWatts[seconds - 1] = best / seconds;
        }
    }

    private static double[] wattsOf(MeanMaximalCurve curve) {
        return curve.everyBestWatts().toArray();
    }

    private static int[] startsOf(MeanMaximalCurve curve) {
        return IntStream.rangeClosed(1, curve.longestSeconds())
                .map(seconds -> startOf(curve, seconds))
                .toArray();
    }

    private static int startOf(MeanMaximalCurve curve, int seconds) {
        return curve.bestWindow(seconds).startSecond();
    }

    private static boolean mayBeLow(MeanMaximalCurve curve, int seconds) {
        return curve.bestWindow(seconds).mayBeLow();
    }
}
