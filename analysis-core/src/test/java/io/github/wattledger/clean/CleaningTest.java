package io.github.wattledger.clean;

import static io.github.wattledger.clean.NotedSeconds.noted;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.clean.Cleaning.Cleaned;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Lap;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Samples;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.TimerEvent;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Each expectation is one sentence of the methods page on getting from samples to seconds. */
class CleaningTest {
    private static final long T0 = 1_781_413_200L;
    private static final double NAN = Double.NaN;

    private final Samples.Builder samples = Samples.builder();

    private CleaningTest sample(int second, double watts) {
        samples.at(T0 + second).set(Channel.POWER, watts);
        return this;
    }

    private CleaningTest samples(int from, int to, double watts) {
        for (int second = from; second < to; second++) {
            sample(second, watts);
        }
        return this;
    }

    private Cleaned clean(TimerEvent... events) {
        return Cleaning.clean(new Recording(
                samples.build(), List.of(events), List.of(), null, RecordingDevice.UNKNOWN, null, 0, null));
    }

    private static TimerEvent start(int second) {
        return new TimerEvent(T0 + second, TimerEvent.Kind.START);
    }

    private static TimerEvent stop(int second) {
        return new TimerEvent(T0 + second, TimerEvent.Kind.STOP);
    }

    private static double watts(Cleaned cleaned, int second) {
        return cleaned.ride().series(Channel.POWER).get(second);
    }

    @Nested
    class Axis {
        @Test
        void nothingGivesARideOfNoSeconds() {
            assertThat(clean().ride().seconds()).isZero();
        }

        @Test
        void oneSampleGivesOneSecond() {
            assertThat(sample(0, 200).clean().ride().seconds()).isEqualTo(1);
        }

        @Test
        void recordsOfOneSecondAreMergedFieldByField() {
            samples.at(T0).set(Channel.POWER, 200).set(Channel.DISTANCE, 5);
            samples.at(T0).set(Channel.HEART_RATE, 140).set(Channel.DISTANCE, 6);
            samples.at(T0).set(Channel.POWER, 220);
            sample(1, 100);
            Ride ride = clean().ride();
            assertThat(ride.seconds()).isEqualTo(2);
            assertThat(ride.series(Channel.POWER).get(0)).isEqualTo(210); // the mean of rates
            assertThat(ride.series(Channel.DISTANCE).get(0)).isEqualTo(6); // the last of states
            assertThat(ride.series(Channel.HEART_RATE).get(0)).isEqualTo(140);
        }

        @Test
        void aDoubledSecondNextToAMissingOneIsJitter() {
            samples(0, 3, 100).sample(2, 150).samples(4, 6, 200);
            Cleaned cleaned = clean();
            assertThat(watts(cleaned, 2)).isEqualTo(100);
            assertThat(watts(cleaned, 3)).isEqualTo(150);
            assertThat(noted(cleaned, "clock-jitter")).isEqualTo(1);
            assertThat(cleaned.ride().countSeconds(SecondState.MISSING)).isZero();
        }

        @Test
        void aSampleWhoseTimeRunsBackwardsIsDropped() {
            samples(0, 10, 100).sample(4, 999).samples(10, 20, 100);
            Cleaned cleaned = clean();
            assertThat(cleaned.ride().seconds()).isEqualTo(20);
            assertThat(watts(cleaned, 4)).isEqualTo(100);
            assertThat(noted(cleaned, "time-backwards")).isEqualTo(1);
        }

        @Test
        void oneWildTimestampCostsItselfAndNotTheRest() {
            samples(0, 10, 100).sample(50_000, 100).samples(10, 20, 100);
            assertThat(clean().ride().seconds()).isEqualTo(20);
        }

        @Test
        void aClockThatIsSetDuringTheRideKeepsTheLongerSide() {
            samples(-700_000, -699_990, 100).samples(0, 20, 150);
            Cleaned cleaned = clean();
            assertThat(cleaned.ride().seconds()).isEqualTo(20);
            assertThat(noted(cleaned, "time-leap")).isEqualTo(10);
        }
    }

    /** 5,000 samples 80,000 s apart span 12 years: an axis of seconds for them would not fit into memory. */
    @Test
    void aTimeThatCreepsOnForYearsIsCutToAMonth() {
        for (int i = 0; i < 5000; i++) {
            sample(i * 80_000, 200);
        }
        assertThat(clean().ride().seconds()).isBetween(1, 31 * 86_400);
    }

    @Nested
    class Pause {
        /** A recorder that stamps each second at its end writes a record at the stop and an empty one at the start. */
        @Test
        void liesBetweenStopAndStart() {
            samples(0, 101, 200).sample(160, NAN).samples(161, 201, 200);
            Ride ride = clean(start(0), stop(100), start(160), stop(200)).ride();
            assertThat(ride.state(100)).isEqualTo(SecondState.RIDING);
            assertThat(ride.state(101)).isEqualTo(SecondState.PAUSED);
            assertThat(ride.state(160)).isEqualTo(SecondState.PAUSED);
            assertThat(ride.state(161)).isEqualTo(SecondState.RIDING);
            assertThat(ride.seconds() - ride.countSeconds(SecondState.PAUSED))
                    .as("the timer ran for 100 and 40 s")
                    .isEqualTo(140);
        }

        /** A recorder that stamps each second at its beginning writes none at the stop and a full one at the start. */
        @Test
        void liesBetweenStopAndStartOfTheOtherKindOfRecorder() {
            samples(0, 100, 200).samples(160, 200, 200);
            Ride ride = clean(start(0), stop(100), start(160), stop(200)).ride();
            assertThat(ride.state(99)).isEqualTo(SecondState.RIDING);
            assertThat(ride.state(100)).isEqualTo(SecondState.PAUSED);
            assertThat(ride.state(159)).isEqualTo(SecondState.PAUSED);
            assertThat(ride.state(160)).isEqualTo(SecondState.RIDING);
            assertThat(ride.seconds() - ride.countSeconds(SecondState.PAUSED)).isEqualTo(140);
        }

        @Test
        void withoutEventsIsALongGapWithoutGround() {
            samples.at(T0).set(Channel.DISTANCE, 0).set(Channel.POWER, 200);
            samples.at(T0 + 1).set(Channel.DISTANCE, 8).set(Channel.POWER, 200);
            samples.at(T0 + 61).set(Channel.DISTANCE, 20).set(Channel.POWER, 200); // 0.2 m/s: stood
            samples.at(T0 + 62).set(Channel.DISTANCE, 28).set(Channel.POWER, 200);
            samples.at(T0 + 122).set(Channel.DISTANCE, 500).set(Channel.POWER, 200); // 7.9 m/s: rode
            Ride ride = clean().ride();
            assertThat(ride.state(30)).isEqualTo(SecondState.PAUSED);
            assertThat(ride.state(90)).isEqualTo(SecondState.MISSING);
        }

        @Test
        void aMissingStartEventDoesNotSwallowTheRest() {
            for (int second = 0; second < 600; second++) {
                if (second < 100 || second >= 200) {
                    samples.at(T0 + second).set(Channel.POWER, 200).set(Channel.DISTANCE, 8.0 * second);
                }
            }
            Cleaned cleaned = clean(start(0), stop(100));
            assertThat(cleaned.ride().state(400)).isEqualTo(SecondState.RIDING);
            assertThat(noted(cleaned, "timer-start-missing")).isEqualTo(1);
        }
    }

    @Nested
    class Gap {
        @Test
        void inAOneSecondFileIsMissingAndOnlySlowChannelsAreInterpolated() {
            for (int second = 0; second < 100; second++) {
                if (second < 50 || second >= 55) {
                    samples.at(T0 + second).set(Channel.POWER, 200).set(Channel.ALTITUDE, second);
                }
            }
            Cleaned cleaned = clean();
            assertThat(cleaned.ride().state(52)).isEqualTo(SecondState.MISSING);
            assertThat(watts(cleaned, 52)).isNaN();
            assertThat(cleaned.ride().series(Channel.ALTITUDE).get(52)).isCloseTo(52, within(1e-9));
            assertThat(noted(cleaned, "missing-seconds")).isEqualTo(5);
            assertThat(cleaned.quality().missingPowerSeconds()).isEqualTo(5);
        }

        @Test
        void overTenSecondsStaysMissingInEveryChannel() {
            for (int second = 0; second < 100; second++) {
                if (second < 50 || second >= 61) {
                    samples.at(T0 + second)
                            .set(Channel.POWER, 200)
                            .set(Channel.HEART_RATE, 140)
                            .set(Channel.DISTANCE, 8.0 * second);
                }
            }
            assertThat(clean().ride().series(Channel.HEART_RATE).get(55)).isNaN();
        }

        @Test
        void ofAVariableIntervalFileIsFilled() {
            for (int second = 0; second < 400; second += 4) {
                samples.at(T0 + second).set(Channel.POWER, second).set(Channel.HEART_RATE, second / 4.0 + 50);
            }
            Cleaned cleaned = clean();
            assertThat(watts(cleaned, 6)).isEqualTo(4); // held
            assertThat(cleaned.ride().series(Channel.HEART_RATE).get(6)).isEqualTo(51.5); // linear
            assertThat(cleaned.ride().countSeconds(SecondState.RIDING)).isEqualTo(397);
            assertThat(noted(cleaned, "variable-interval")).isEqualTo(297);
        }
    }

    @Nested
    class Stop {
        @Test
        void isStandingForThreeSecondsWithoutPower() {
            for (int second = 0; second < 60; second++) {
                boolean stands = (second >= 20 && second < 23) || (second >= 40 && second < 42);
                samples.at(T0 + second).set(Channel.SPEED, stands ? 0.5 : 8).set(Channel.POWER, stands ? 0 : 200);
            }
            Ride ride = clean().ride();
            assertThat(ride.countSeconds(SecondState.STOPPED)).isEqualTo(3);
            assertThat(ride.state(20)).isEqualTo(SecondState.STOPPED);
            assertThat(ride.state(40)).isEqualTo(SecondState.RIDING);
        }

        @Test
        void isNotPushingThePedalsAtAStandstill() {
            for (int second = 0; second < 60; second++) {
                samples.at(T0 + second)
                        .set(Channel.SPEED, second < 30 ? 8 : 0.1)
                        .set(Channel.POWER, 200);
            }
            assertThat(clean().ride().countSeconds(SecondState.STOPPED)).isZero();
        }
    }

    @Nested
    class AbsentSensor {
        @Test
        void zeroWattsThroughoutIsNoMeter() {
            Cleaned cleaned = samples(0, 100, 0).clean();
            assertThat(cleaned.ride().has(Channel.POWER)).isFalse();
            assertThat(cleaned.quality().powerSource()).isEqualTo(PowerSource.NONE);
            assertThat(noted(cleaned, "no-power-meter")).isEqualTo(1);
        }

        @Test
        void zeroWattsNowAndThenIsCoasting() {
            Cleaned cleaned = samples(0, 100, 0).samples(100, 200, 300).clean();
            assertThat(watts(cleaned, 50)).isZero();
        }

        @Test
        void aHeartRateOfZeroIsMissing() {
            samples.at(T0).set(Channel.HEART_RATE, 120);
            samples.at(T0 + 1).set(Channel.HEART_RATE, 0);
            samples.at(T0 + 30).set(Channel.HEART_RATE, 125);
            assertThat(clean().ride().series(Channel.HEART_RATE).get(1)).isNaN();
        }
    }

    @Nested
    class Spike {
        @Test
        void over2500WattsIsReplaced() {
            Cleaned cleaned =
                    samples(0, 10, 200).sample(10, 3351).samples(11, 20, 220).clean();
            assertThat(watts(cleaned, 10)).isEqualTo(210);
            assertThat(noted(cleaned, "power-spikes")).isEqualTo(1);
            assertThat(cleaned.quality().repairedSamples()).isEqualTo(1);
        }

        @Test
        void overAThousandAndFourTimesItsNeighboursIsReplaced() {
            Cleaned cleaned =
                    samples(0, 10, 200).sample(10, 1100).samples(11, 20, 200).clean();
            assertThat(watts(cleaned, 10)).isEqualTo(200);
        }

        @Test
        void aSprintIsLeftAlone() {
            Cleaned cleaned = samples(0, 10, 200)
                    .sample(10, 700)
                    .sample(11, 1100)
                    .sample(12, 1200)
                    .samples(13, 20, 200)
                    .clean();
            assertThat(watts(cleaned, 12)).isEqualTo(1200);
            assertThat(cleaned.quality().repairedSamples()).isZero();
        }

        @ParameterizedTest
        @ValueSource(ints = {10, 24, 241, 255})
        void aHeartRateOutsideLifeIsMissing(int bpm) {
            for (int second = 0; second < 20; second++) {
                samples.at(T0 + second).set(Channel.HEART_RATE, second == 19 ? bpm : 130);
            }
            assertThat(clean().ride().series(Channel.HEART_RATE).get(19)).isNaN();
        }

        @Test
        void aHeartRateThatLeapsUpAndBackLosesTheLeapAlone() {
            for (int second = 0; second < 20; second++) {
                samples.at(T0 + second).set(Channel.HEART_RATE, second == 10 ? 190 : 130);
            }
            Cleaned cleaned = clean();
            assertThat(noted(cleaned, "heart-rate-spikes")).isEqualTo(1);
            // A gap of a second in a slow channel is interpolated.
            assertThat(cleaned.ride().series(Channel.HEART_RATE).get(10)).isEqualTo(130);
            assertThat(cleaned.ride().series(Channel.HEART_RATE).get(11)).isEqualTo(130);
        }
    }

    @Nested
    class StuckSensor {
        @Test
        void isReportedAndLeftAsItIs() {
            Cleaned cleaned = samples(0, 120, 200).sample(120, 210).clean();
            assertThat(noted(cleaned, "power-stuck")).isEqualTo(120);
            assertThat(watts(cleaned, 60)).isEqualTo(200);
        }

        @Test
        void coastingForLongIsNoFault() {
            Cleaned cleaned = samples(0, 200, 0).samples(200, 260, 200).clean();
            assertThat(noted(cleaned, "power-stuck")).isZero();
        }
    }

    @Nested
    class WorkCounter {
        private void counted(int second, double watts, double joules) {
            samples.at(T0 + second).set(Channel.POWER, watts).set(Channel.ACCUMULATED_WORK, joules);
        }

        /** The head unit repeats 392 W while the counter stands, then the counter makes it good. */
        @Test
        void aStandstillIsMadeGoodByTheNextIncrease() {
            counted(0, 281, 281);
            counted(1, 392, 281);
            counted(2, 392, 1065);
            counted(3, 362, 1427);
            Cleaned cleaned = clean();
            assertThat(watts(cleaned, 1)).isEqualTo(392);
            assertThat(watts(cleaned, 2)).isEqualTo(392);
            assertThat(watts(cleaned, 3)).isEqualTo(362);
            assertThat(cleaned.quality().powerSource()).isEqualTo(PowerSource.WORK_COUNTER);
        }

        @Test
        void coastingStaysCoasting() {
            counted(0, 200, 200);
            counted(1, 0, 200);
            counted(2, 0, 200);
            counted(3, 150, 350);
            assertThat(watts(clean(), 2)).isZero();
        }

        @Test
        void aMissedSecondIsFilledFromTheCounter() {
            counted(0, 200, 200);
            counted(2, 200, 600);
            assertThat(watts(clean(), 1)).isEqualTo(200);
        }

        @Test
        void aResetOrALeapFallsBackToTheSample() {
            counted(0, 200, 50_000);
            counted(1, 210, 50_210);
            counted(2, 220, 10); // reset
            counted(3, 230, 900_000); // leap
            counted(4, 240, 900_240);
            Cleaned cleaned = clean();
            assertThat(watts(cleaned, 2)).isEqualTo(220);
            assertThat(watts(cleaned, 3)).isEqualTo(230);
            assertThat(watts(cleaned, 4)).isEqualTo(240);
            assertThat(noted(cleaned, "work-counter-not-believed")).isEqualTo(2);
        }

        /** Whatever the repeats, the watts add up to what the counter counted. */
        @ParameterizedTest
        @ValueSource(longs = {1, 2, 3, 4, 5})
        void theSumIsTheCountersIncrease(long seed) {
            Random random = new Random(seed);
            double total = 0;
            double shown = 100;
            double owed = 0;
            for (int second = 0; second < 5000; second++) {
                double watts = 50 + random.nextInt(400);
                boolean missed = second > 0 && second < 4999 && random.nextInt(10) == 0;
                owed += missed ? shown : watts;
                if (!missed) {
                    shown = watts;
                    // The counter shows what was owed for the repeated seconds as the new message's value.
                    total += owed;
                    owed = 0;
                }
                counted(second, shown, total);
            }
            Cleaned cleaned = clean();
            double sum = 0;
            for (int second = 1; second < 5000; second++) {
                sum += watts(cleaned, second);
            }
            double first = samples.build().get(Channel.ACCUMULATED_WORK, 0);
            assertThat(sum).isCloseTo(total - first, within(0.002 * total));
        }
    }

    @Test
    void lapsBecomeStretchesOfTheAxis() {
        samples(0, 100, 200);
        Recording recording = new Recording(
                samples.build(),
                List.of(),
                List.of(new Lap(T0 - 90, T0 - 30, null), new Lap(T0, T0 + 60, null), new Lap(T0 + 60, T0 + 500, null)),
                null,
                RecordingDevice.UNKNOWN,
                null,
                0,
                null);
        assertThat(Cleaning.clean(recording).ride().laps())
                .as("one before the first sample keeps its number")
                .containsExactly(new Interval(0, 0), new Interval(0, 60), new Interval(60, 100));
    }

    @Test
    void aRotatingSetOfFaultsNeverFails() {
        for (int seed = 0; seed < 300; seed++) {
            Random random = new Random(seed);
            Samples.Builder wild = Samples.builder();
            long time = T0;
            for (int i = 0; i < random.nextInt(400); i++) {
                time += random.nextInt(5) == 0 ? random.nextInt(200) - 40 : 1;
                wild.at(time);
                for (Channel channel : Channel.values()) {
                    if (random.nextInt(3) > 0) {
                        wild.set(channel, random.nextInt(4) == 0 ? 0 : random.nextDouble() * 3000 - 100);
                    }
                }
            }
            List<TimerEvent> events = random.nextBoolean()
                    ? List.of()
                    : List.of(
                            start(0), stop(random.nextInt(300)), start(random.nextInt(300)), stop(random.nextInt(900)));
            Cleaned cleaned = Cleaning.clean(
                    new Recording(wild.build(), events, List.of(), null, RecordingDevice.UNKNOWN, null, 0, null));
            int states = 0;
            for (SecondState state : SecondState.values()) {
                states += cleaned.ride().countSeconds(state);
            }
            assertThat(states).as("seed " + seed).isEqualTo(cleaned.ride().seconds());
        }
    }
}
