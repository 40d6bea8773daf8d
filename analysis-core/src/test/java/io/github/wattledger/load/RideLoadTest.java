package io.github.wattledger.load;

import static io.github.wattledger.load.NormalizedPowerTest.steps;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.ZoneScheme;
import java.time.Instant;
import java.util.function.IntToDoubleFunction;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Expected values are worked by hand from the definitions. */
class RideLoadTest {
    @Nested
    class AnHourAtThreshold {
        private final RideLoad load = load(Ride.ofWatts(steps(1, 3600, 200)), 200.0, null);

        @Test
        void hasTheLoadThatDefinesTheScale() {
            assertThat(load.normalizedPowerW()).isCloseTo(200, within(1e-9));
            assertThat(load.intensityFactor()).isCloseTo(1, within(1e-9));
            assertThat(load.trainingStress()).isCloseTo(100, within(1e-9));
            assertThat(load.normalizedOverAverage()).isCloseTo(1, within(1e-9));
            assertThat(load.workKJ()).isCloseTo(720, within(1e-9));
            assertThat(load.averagePowerW()).isCloseTo(200, within(1e-9));
        }

        @Test
        void saysNothingOfWhatWasNotMeasured() {
            assertThat(load.distanceM()).isNull();
            assertThat(load.ascentM()).isNull();
            assertThat(load.averageSpeedMps()).isNull();
            assertThat(load.averageHeartRateBpm()).isNull();
            assertThat(load.maximumHeartRateBpm()).isNull();
            assertThat(load.averageCadenceRpm()).isNull();
            assertThat(load.wattsPerBeat()).isNull();
            assertThat(load.decouplingPercent()).isNull();
            assertThat(load.heartRateZones()).isEmpty();
        }
    }

    /** 60 min riding at 180 W, 5 min paused with stray readings, 5 min stopped, 5 min missing, 45 min at 220 W. */
    @Nested
    class ARideWithEveryState {
        private static final int SECONDS = 7200;
        private final Interval paused = new Interval(3600, 3900);
        private final Interval stopped = new Interval(3900, 4200);
        private final Interval missing = new Interval(4200, 4500);
        private final Ride ride = Ride.builder(Instant.EPOCH, SECONDS)
                .state(paused, SecondState.PAUSED)
                .state(stopped, SecondState.STOPPED)
                .state(missing, SecondState.MISSING)
                .channel(Channel.POWER, series(180, 999, 0, 220))
                .channel(Channel.HEART_RATE, series(140, 230, 100, 150))
                .channel(Channel.CADENCE, series(80, 200, 0, 90))
                .channel(Channel.SPEED, series(8, 0, 0, 10))
                .build();
        private final RideLoad load = load(ride, 250.0, 160.0);

        @Test
        void timesAreKeptApart() {
            assertThat(load.elapsedSeconds()).isEqualTo(7200);
            assertThat(load.timerSeconds()).isEqualTo(6900);
            assertThat(load.movingSeconds()).isEqualTo(6300);
            assertThat(load.stoppedSeconds()).isEqualTo(300);
        }

        @Test
        void workLeavesOutThePause() {
            assertThat(load.workKJ()).isCloseTo((3600 * 180 + 2700 * 220) / 1000.0, within(1e-9));
            assertThat(load.averagePowerW()).isCloseTo((3600 * 180 + 2700 * 220) / 6600.0, within(1e-9));
        }

        @Test
        void normalizedPowerAndStressAreOfTheTimerSecondsWithPower() {
            double[] watts = steps(1, 3600, 180, 300, 0, 2700, 220);
            double normalizedPowerW = NormalizedPower.of(watts).orElseThrow();
            assertThat(load.normalizedPowerW()).isCloseTo(normalizedPowerW, within(1e-9));
            assertThat(load.trainingStress())
                    .isCloseTo(6600 / 3600.0 * Math.pow(normalizedPowerW / 250, 2) * 100, within(1e-9));
            assertThat(load.normalizedOverAverage())
                    .isCloseTo(normalizedPowerW * 6600 / (3600 * 180 + 2700 * 220), within(1e-9));
        }

        @Test
        void heartRateIsOfTheTimerSeconds() {
            double mean = (3600 * 140 + 300 * 100 + 2700 * 150) / 6600.0;
            assertThat(load.averageHeartRateBpm()).isCloseTo(mean, within(1e-9));
            assertThat(load.maximumHeartRateBpm()).isEqualTo(150);
        }

        @Test
        void cadenceIsOfTheSecondsPedalled() {
            assertThat(load.averageCadenceRpm()).isCloseTo((3600 * 80 + 2700 * 90) / 6300.0, within(1e-9));
        }

        @Test
        void distanceIsSummedSpeedWhereNoneWasMeasured() {
            assertThat(load.distanceM()).isCloseTo(3600 * 8 + 2700 * 10, within(1e-6));
            assertThat(load.averageSpeedMps()).isCloseTo((3600 * 8 + 2700 * 10) / 6300.0, within(1e-9));
        }

        @Test
        void zonesAddUpToTheTimerSecondsWithAReading() {
            assertThat(load.powerZones().stream().mapToInt(ZoneTime::seconds).sum())
                    .isEqualTo(6600);
            assertThat(load.heartRateZones().stream()
                            .mapToInt(ZoneTime::seconds)
                            .sum())
                    .isEqualTo(6600);
        }

        private Series series(double first, double whilePaused, double whileStopped, double last) {
            return Series.of(steps(1, 3600, first, 300, whilePaused, 300, whileStopped, 300, Double.NaN, 2700, last));
        }
    }

    @Nested
    class Distance {
        @Test
        void isTheLastReadingLessTheFirst() {
            assertThat(distanceM(Double.NaN, 500, 505, Double.NaN, 520, Double.NaN))
                    .isCloseTo(20, within(1e-9));
        }

        @Test
        void needsTwoReadings() {
            assertThat(distanceM(Double.NaN, 500, Double.NaN)).isNull();
        }

        @Test
        void isNotTakenFromACounterThatRanBackwards() {
            assertThat(distanceM(500, 600, 0, 40)).isNull();
        }

        private @Nullable Double distanceM(double... metres) {
            Ride ride = Ride.builder(Instant.EPOCH, metres.length)
                    .channel(Channel.DISTANCE, Series.of(metres))
                    .build();
            return load(ride, null, null).distanceM();
        }
    }

    @Test
    void aRideOfNothingHasNoNumbers() {
        RideLoad load = load(Ride.ofWatts(), 250.0, 160.0);
        assertThat(load.elapsedSeconds()).isZero();
        assertThat(load.workKJ()).isNull();
        assertThat(load.averagePowerW()).isNull();
        assertThat(load.powerZones()).isEmpty();
    }

    @Test
    void withoutThresholdsOnlyWhatNeedsThemIsLeftOut() {
        RideLoad load = load(Ride.ofWatts(steps(1, 600, 200)), null, null);
        assertThat(load.normalizedPowerW()).isCloseTo(200, within(1e-9));
        assertThat(load.intensityFactor()).isNull();
        assertThat(load.trainingStress()).isNull();
        assertThat(load.powerZones()).isEmpty();
    }

    @Test
    void pausesRemovedOrMarkedGiveTheSameLoad() {
        // A law of the definitions: only elapsed time knows of a pause.
        IntToDoubleFunction watts = second -> Math.rint(200 + 60 * Math.sin(second / 40.0));
        IntToDoubleFunction beats = second -> 140 + second / 600.0;
        int pauseFrom = 1234;
        int pause = 400;
        Ride without = ride(5000, watts, beats).build();
        Ride with = ride(
                        5000 + pause,
                        s -> watts.applyAsDouble(s < pauseFrom ? s : s - pause),
                        s -> beats.applyAsDouble(s < pauseFrom ? s : s - pause))
                .state(new Interval(pauseFrom, pauseFrom + pause), SecondState.PAUSED)
                .build();
        RideLoad expected = load(without, 250.0, 160.0);
        RideLoad load = load(with, 250.0, 160.0);
        assertThat(load)
                .usingRecursiveComparison()
                .ignoringFields("elapsedSeconds")
                .isEqualTo(expected);
        assertThat(load.elapsedSeconds()).isEqualTo(5400);
    }

    @Test
    void refusesThresholdsThatAreNone() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> load(Ride.ofWatts(200), 0.0, null))
                .withMessageContaining("thresholdPowerW");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> load(Ride.ofWatts(200), null, Double.NaN))
                .withMessageContaining("thresholdHeartRateBpm");
    }

    private static Ride.Builder ride(int seconds, IntToDoubleFunction watts, IntToDoubleFunction beats) {
        return Ride.builder(Instant.EPOCH, seconds)
                .channel(Channel.POWER, Series.generate(seconds, watts))
                .channel(Channel.HEART_RATE, Series.generate(seconds, beats));
    }

    /** 3,406 s at 150 W and 151 W in turn: 512,603 J, a mean of exactly 150.5 W, not a little less by way of kilojoules. */
    @Test
    void sumsOfWholeWattsAreExact() {
        double[] watts = new double[3406];
        for (int second = 0; second < watts.length; second++) {
            watts[second] = 150 + second % 2;
        }
        RideLoad load = load(Ride.ofWatts(watts), null, null);
        assertThat(load.averagePowerW()).isEqualTo(150.5);
        assertThat(load.workKJ()).isEqualTo(512.603);
    }

    private static RideLoad load(Ride ride, @Nullable Double thresholdPowerW, @Nullable Double thresholdHeartRateBpm) {
        return RideLoad.of(
                ride,
                thresholdPowerW,
                thresholdHeartRateBpm,
                ZoneScheme.POWER_SEVEN_LEVELS,
                ZoneScheme.HEART_RATE_FIVE_LEVELS);
    }
}
