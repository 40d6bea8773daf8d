package io.github.wattledger.load;

import static io.github.wattledger.load.NormalizedPowerTest.randomWatts;
import static io.github.wattledger.load.NormalizedPowerTest.steps;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class DecouplingTest {
    @Nested
    class BetweenHalves {
        @Test
        void aPublishedExampleOfTheArithmetic() {
            // A rider's write-up of J. Friel's method: 193 W at 136 bpm, then 195 W at 142 bpm, is 3.23 percent.
            assertThat(Decoupling.percent(193.0 / 136, 195.0 / 142)).isCloseTo(3.23, within(0.005));
        }

        @Test
        void theSameExampleAsARideOfTwoSteadyHours() {
            // In a steady hour average and normalized power are one; the step between the hours lies in neither half.
            double[] watts = steps(1, 3600, 193, 3600, 195);
            double[] beats = steps(1, 3600, 136, 3600, 142);
            assertThat(Decoupling.of(watts, beats).orElseThrow()).isCloseTo(3.23287, within(0.00001));
        }

        @Test
        void equalHalvesAreNotDecoupled() {
            double[] watts = twice(randomWatts(7, 2400, 0.02));
            double[] beats = twice(randomWatts(8, 2400, 0.02));
            assertThat(Decoupling.of(watts, beats).orElseThrow()).isCloseTo(0, within(1e-12));
        }

        @Test
        void heartRateFrom140To147AtEqualPower() {
            // 1 - 140 / 147 = 1 / 21.
            double[] watts = steps(1, 7200, 200);
            double[] beats = steps(1, 3600, 140, 3600, 147);
            assertThat(Decoupling.of(watts, beats).orElseThrow()).isCloseTo(100.0 / 21, within(1e-9));
        }

        @Test
        void theHalvesAreOfTimerTime() {
            // 40 minutes, an hour's pause in the first half, 40 minutes: heart rate changes at the middle of the timer.
            int pauseFrom = 600;
            int pauseTo = pauseFrom + 3600;
            Ride ride = Ride.builder(Instant.EPOCH, 4800 + 3600)
                    .channel(Channel.POWER, Series.of(steps(1, 4800 + 3600, 200)))
                    .channel(Channel.HEART_RATE, Series.of(steps(1, 600, 140, 3600, 80, 1800, 140, 2400, 147)))
                    .state(new Interval(pauseFrom, pauseTo), SecondState.PAUSED)
                    .build();
            assertThat(Decoupling.of(ride).orElseThrow()).isCloseTo(100.0 / 21, within(1e-9));
        }
    }

    @Nested
    class NotComputed {
        @Test
        void underFortyMinutesOfTimerTime() {
            assertThat(Decoupling.of(steps(1, 2399, 200), steps(1, 2399, 140))).isEmpty();
            assertThat(Decoupling.of(steps(1, 2400, 200), steps(1, 2400, 140))).isPresent();
        }

        @Test
        void whereAHalfLacksFourFifthsOfHeartRate() {
            double[] watts = steps(1, 4000, 200);
            assertThat(Decoupling.of(watts, steps(1, 2000, 140, 1600, 140, 400, Double.NaN)))
                    .isPresent();
            assertThat(Decoupling.of(watts, steps(1, 2000, 140, 1599, 140, 401, Double.NaN)))
                    .isEmpty();
            assertThat(Decoupling.of(watts, steps(1, 401, Double.NaN, 1599, 140, 2000, 140)))
                    .isEmpty();
        }

        @Test
        void whereAHalfLacksFourFifthsOfPower() {
            double[] beats = steps(1, 4000, 140);
            assertThat(Decoupling.of(steps(1, 3599, 200, 401, Double.NaN), beats))
                    .isEmpty();
        }

        @Test
        void withoutPowerOrHeartRate() {
            double[] nothing = steps(1, 4000, Double.NaN);
            assertThat(Decoupling.of(steps(1, 4000, 200), nothing)).isEmpty();
            assertThat(Decoupling.of(nothing, steps(1, 4000, 140))).isEmpty();
        }

        @Test
        void fromNoWattsPerBeat() {
            assertThatIllegalArgumentException().isThrownBy(() -> Decoupling.percent(0, 1));
            assertThat(Decoupling.of(steps(1, 2000, 0, 2000, 200), steps(1, 4000, 140)))
                    .isEmpty();
        }
    }

    @Nested
    class ByBlock {
        @Test
        void eachBlockAgainstTheFirstHour() {
            // 200 W throughout; 160 bpm after the first hour costs 1 - 140 / 160 = 12.5 percent.
            Ride ride = ride(steps(1, 6100, 200), steps(1, 3600, 140, 2500, 160));
            List<Decoupling.Block> blocks = Decoupling.byBlock(ride);
            assertThat(blocks)
                    .extracting(Decoupling.Block::stretch)
                    .containsExactly(
                            new Interval(0, 1200),
                            new Interval(1200, 2400),
                            new Interval(2400, 3600),
                            new Interval(3600, 4800),
                            new Interval(4800, 6000));
            assertThat(blocks.get(0).wattsPerBeat()).isCloseTo(200.0 / 140, within(1e-9));
            assertThat(blocks.get(0).decouplingPercent()).isCloseTo(0, within(1e-9));
            assertThat(blocks.get(4).wattsPerBeat()).isCloseTo(1.25, within(1e-9));
            assertThat(blocks.get(4).decouplingPercent()).isCloseTo(12.5, within(1e-9));
        }

        @Test
        void aPauseMakesABlockLongerOnTheAxis() {
            Ride ride = Ride.builder(Instant.EPOCH, 4000)
                    .channel(Channel.POWER, Series.of(steps(1, 4000, 200)))
                    .channel(Channel.HEART_RATE, Series.of(steps(1, 4000, 140)))
                    .state(new Interval(1300, 1600), SecondState.PAUSED)
                    .build();
            assertThat(Decoupling.byBlock(ride))
                    .extracting(Decoupling.Block::stretch)
                    .containsExactly(new Interval(0, 1200), new Interval(1200, 2700), new Interval(2700, 3900));
        }

        @Test
        void aBlockWithoutEnoughHeartRateHasNoNumbers() {
            Ride ride = ride(steps(1, 4800, 200), steps(1, 3600, 140, 300, Double.NaN, 900, 140));
            Decoupling.Block last = Decoupling.byBlock(ride).get(3);
            assertThat(last.wattsPerBeat()).isNull();
            assertThat(last.decouplingPercent()).isNull();
        }

        @Test
        void withoutAFirstHourThereIsNothingToCompareWith() {
            List<Decoupling.Block> blocks = Decoupling.byBlock(ride(steps(1, 3000, 200), steps(1, 3000, 140)));
            assertThat(blocks).hasSize(2).allSatisfy(block -> {
                assertThat(block.wattsPerBeat()).isCloseTo(200.0 / 140, within(1e-9));
                assertThat(block.decouplingPercent()).isNull();
            });
        }

        private Ride ride(double[] watts, double[] beats) {
            return Ride.builder(Instant.EPOCH, watts.length)
                    .channel(Channel.POWER, Series.of(watts))
                    .channel(Channel.HEART_RATE, Series.of(beats))
                    .build();
        }
    }

    @Test
    void wattsPerBeatIsNormalizedPowerOverHeartRate() {
        assertThat(WattsPerBeat.of(steps(1, 600, 210), steps(1, 600, 140)).orElseThrow())
                .isCloseTo(1.5, within(1e-12));
        assertThat(WattsPerBeat.of(steps(1, 600, 210), steps(1, 600, Double.NaN)))
                .isEmpty();
        assertThatIllegalArgumentException().isThrownBy(() -> WattsPerBeat.of(new double[3], new double[4]));
    }

    private static double[] twice(double[] values) {
        return DoubleStream.concat(Arrays.stream(values), Arrays.stream(values)).toArray();
    }
}
