package io.github.wattledger.replay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.course.Course;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rig.Air;
import io.github.wattledger.rig.Rig;
import io.github.wattledger.rig.RoadLoad;
import io.github.wattledger.simulation.PacingPlan;
import io.github.wattledger.simulation.RidingStyle;
import io.github.wattledger.simulation.RoadSimulation;
import io.github.wattledger.simulation.Scenario;
import io.github.wattledger.simulation.SensorNoise;
import io.github.wattledger.simulation.SimulatedRider;
import io.github.wattledger.simulation.Weather;
import io.github.wattledger.testing.EqualWork;
import java.time.Instant;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** The replay against full forward simulations, which share no code with it. */
class ReplayTest {
    private static final double LENGTH_M = 100_000;
    private static final double ROLLING_RESISTANCE = 0.006;
    private static final double EVEN_W = 180;
    private static final int OPENING_SECONDS = 3600;

    /** The simulator's rider: 74 kg with a bicycle of 11 kg, drag area 0.36 m2. */
    private static final Rig TRUE_RIG = Rig.of(85, 0.36, ROLLING_RESISTANCE);

    private enum Road {
        FLAT(0, 1, 0),
        ROLLING(20, 2000, 0),
        /** Waves of 114 m over 4 km: grades to 9 %. */
        HILLY(114, 4000, 0),
        WINDY(0, 1, 3),
        WINDY_HILLS(60, 4000, 3);

        private final double heightM;
        private final double wavelengthM;
        private final double windMps;

        Road(double heightM, double wavelengthM, double windMps) {
            this.heightM = heightM;
            this.wavelengthM = wavelengthM;
            this.windMps = windMps;
        }

        /** Twice round a loop, so that the wind comes from all sides. */
        Scenario scenario() {
            io.github.wattledger.simulation.Course course = io.github.wattledger.simulation.Course.builder()
                    .startLine(45, 0, 100)
                    .stretch(LENGTH_M, 0, ROLLING_RESISTANCE)
                    .rollers(heightM, wavelengthM)
                    .heading(metres -> 360 * metres / (LENGTH_M / 2))
                    .build();
            return Scenario.of(course, SimulatedRider.tireless(), PacingPlan.steady(EVEN_W))
                    .withWeather(Weather.CALM.withWind(windMps, 0));
        }
    }

    @Nested
    class EqualWorkPrice {
        /** What a trembling barometer leaves open, as a share of the time: two seconds in an hour. */
        private static final double RESOLUTION = 2 / 3600.0;

        @ParameterizedTest
        @CsvSource({
            "FLAT, 1.1", "FLAT, 1.2", "FLAT, 1.3",
            "ROLLING, 1.1", "ROLLING, 1.2", "ROLLING, 1.3",
            "HILLY, 1.1", "HILLY, 1.2", "HILLY, 1.3",
            "WINDY, 1.1", "WINDY, 1.2", "WINDY, 1.3",
            "WINDY_HILLS, 1.1", "WINDY_HILLS, 1.2", "WINDY_HILLS, 1.3"
        })
        void ofAHardStartAgreesWithTheForwardSimulation(Road road, double hardness) {
            EqualWork.Truth truth = hardStart(road, hardness);
            double level = truth.evenW() / (EVEN_W * hardness);
            Ride exact = EqualWork.recorded(truth.hard().toRecording());

            double saved = EqualWork.savedByReplay(exact, TRUE_RIG, OPENING_SECONDS, level);
            assertThat(saved).isCloseTo(truth.savedSeconds(), within(Math.max(5, 0.05 * truth.savedSeconds())));

            for (double factor : new double[] {0.82, 1.18}) {
                Rig wrong = Rig.of(85, 0.36 * factor, ROLLING_RESISTANCE);
                assertThat(EqualWork.savedByReplay(exact, wrong, OPENING_SECONDS, level))
                        .as("drag area times %s", factor)
                        .isCloseTo(saved, within(Math.max(1, 0.05 * saved)));
            }

            Ride noisy = withMeterNoise(EqualWork.recorded(
                    SensorNoise.ordinary(17).record(truth.hard()).toRecording()));
            assertThat(EqualWork.savedByReplay(noisy, TRUE_RIG, OPENING_SECONDS, level))
                    .as("with sensor noise")
                    .isCloseTo(
                            truth.savedSeconds(),
                            within(Math.max(RESOLUTION * noisy.seconds(), 0.15 * truth.savedSeconds())));
        }

        private EqualWork.Truth hardStart(Road road, double hardness) {
            return EqualWork.simulate(
                    road.scenario(),
                    PacingPlan::steady,
                    PacingPlan.startThenRest(EVEN_W * hardness, OPENING_SECONDS, EVEN_W),
                    EVEN_W);
        }

        /** 2 % of a power meter's reading, second by second. */
        private static Ride withMeterNoise(Ride ride) {
            Random chance = new Random(5);
            Series watts = ride.series(Channel.POWER);
            Series noisy = Series.generate(watts.size(), s -> watts.get(s) * (1 + 0.02 * chance.nextGaussian()));
            return withChannel(ride, Channel.POWER, noisy);
        }
    }

    @Nested
    class OtherRig {
        /** The same power with less drag, forward simulated and replayed. */
        @ParameterizedTest
        @EnumSource(Road.class)
        void dragAgreesWithTheForwardSimulation(Road road) {
            Scenario upright = road.scenario();
            Scenario aero = Scenario.of(
                            upright.course(), upright.rider().withBody(74, 11, 0.30), PacingPlan.steady(EVEN_W))
                    .withWeather(upright.weather());
            double truth = EqualWork.finishSeconds(RoadSimulation.ride(upright))
                    - EqualWork.finishSeconds(RoadSimulation.ride(aero));

            double saved = replay(ride(upright))
                    .withRig(Rig.of(85, 0.30, ROLLING_RESISTANCE), Replay.Share.WHOLE)
                    .savedSeconds();

            assertThat(saved).isCloseTo(truth, within(0.05 * truth));
        }

        /** 3 kg less and better tyres. */
        @ParameterizedTest
        @EnumSource(Road.class)
        void massAndRollingAgreeWithTheForwardSimulation(Road road) {
            Scenario before = road.scenario();
            io.github.wattledger.simulation.Course smoother = io.github.wattledger.simulation.Course.builder()
                    .startLine(45, 0, 100)
                    .stretch(LENGTH_M, 0, 0.005)
                    .rollers(road.heightM, road.wavelengthM)
                    .heading(metres -> 360 * metres / (LENGTH_M / 2))
                    .build();
            Scenario after = Scenario.of(smoother, before.rider().withBody(74, 8, 0.36), PacingPlan.steady(EVEN_W))
                    .withWeather(before.weather());
            double truth = EqualWork.finishSeconds(RoadSimulation.ride(before))
                    - EqualWork.finishSeconds(RoadSimulation.ride(after));

            double saved = replay(ride(before))
                    .withRig(Rig.of(82, 0.36, 0.005), Replay.Share.WHOLE)
                    .savedSeconds();

            assertThat(saved).isCloseTo(truth, within(0.05 * truth));
        }

        @Test
        void sharesOfTheDistanceAddUp() {
            Replay replay = replay(ride(Road.WINDY_HILLS.scenario()));
            Rig aero = Rig.of(85, 0.29, ROLLING_RESISTANCE);

            double whole = replay.withRig(aero, Replay.Share.WHOLE).savedSeconds();
            double first = replay.withRig(aero, new Replay.Share(0, 0.37)).savedSeconds();
            double second = replay.withRig(aero, new Replay.Share(0.37, 1)).savedSeconds();

            assertThat(first).isPositive();
            assertThat(first + second).isCloseTo(whole, within(1.0));
        }
    }

    @Nested
    class Laws {
        @ParameterizedTest
        @EnumSource(Road.class)
        void samePowerIsExactlyTheRecordedTime(Road road) {
            Ride ride = ride(roughly(road));
            Replay replay = replay(ride);

            Replay.Result same = replay.withPower(ride.series(Channel.POWER));

            assertThat(same.movingSeconds()).isEqualTo(ride.countSeconds(SecondState.RIDING));
            assertThat(same.savedSeconds()).isZero();
            assertThat(replay.withRig(TRUE_RIG, Replay.Share.WHOLE).savedSeconds())
                    .isZero();
        }

        @ParameterizedTest
        @EnumSource(Road.class)
        void morePowerIsNeverSlower(Road road) {
            Ride ride = ride(roughly(road));
            Replay replay = replay(ride);
            Random chance = new Random(11);
            Series watts = ride.series(Channel.POWER);
            for (int round = 0; round < 20; round++) {
                int from = chance.nextInt(ride.seconds());
                int to = from + chance.nextInt(ride.seconds() - from);
                double factor = 1 + chance.nextDouble();
                Series more =
                        Series.generate(watts.size(), s -> s >= from && s < to ? watts.get(s) * factor : watts.get(s));
                Replay.Result result = replay.withPower(more);
                for (int second = 0; second < ride.seconds(); second++) {
                    assertThat(result.secondsFor(second)).isLessThanOrEqualTo(1 + 1e-9);
                }
                assertThat(result.savedSeconds()).isGreaterThanOrEqualTo(-1e-6);
            }
        }

        @Test
        void aCoastedBinKeepsItsSpeed() {
            // Down at 5 % without pedalling: no mean power of a bin reaches 30 W after the first.
            Ride ride = ride(Scenario.of(
                    io.github.wattledger.simulation.Course.builder()
                            .startLine(45, 0, 600)
                            .stretch(5000, -5, ROLLING_RESISTANCE)
                            .build(),
                    SimulatedRider.tireless(),
                    moment -> moment.distanceM() < 100 ? 100 : 0));
            Replay replay = replay(ride);
            Series doubled = Series.generate(
                    ride.seconds(), s -> ride.series(Channel.DISTANCE).get(s) < 300 ? 100 : 200);

            assertThat(replay.withPower(doubled).secondsFor(ride.seconds() - 2)).isEqualTo(1);
            assertThat(replay.isPedalled(ride.seconds() - 2)).isFalse();
        }

        @Test
        void standingTimeIsNeitherSavedNorLost() {
            Scenario halting = Road.ROLLING
                    .scenario()
                    .withHalts(
                            Scenario.LeadIn.NONE,
                            new Scenario.Stop(30_000, 300, true),
                            new Scenario.Stop(60_000, 200, false));
            Ride ride = ride(halting);

            Replay.Result same = replay(ride).withPower(ride.series(Channel.POWER));

            assertThat(same.movingSeconds()).isEqualTo(ride.countSeconds(SecondState.RIDING));
            assertThat(ride.countSeconds(SecondState.RIDING)).isLessThan(ride.seconds() - 490);
        }

        private static Scenario roughly(Road road) {
            return road.scenario().withStyle(RidingStyle.FOREST_ROAD, 3);
        }
    }

    @Nested
    class AtASteadySpeed {
        private static final int SECONDS = 1500;

        /** A road of one grade at one speed, with the power that the road load asks for. */
        private Ride ride(double speedMps, double grade, double windMps) {
            Ride powerless = steady(speedMps, grade, 100);
            double density = Air.of(powerless).density().value();
            return steady(speedMps, grade, RoadLoad.of(TRUE_RIG, density).powerW(speedMps, grade, windMps));
        }

        private Ride steady(double speedMps, double grade, double watts) {
            return Ride.builder(Instant.EPOCH, SECONDS)
                    .channel(Channel.POWER, Series.generate(SECONDS, s -> watts))
                    .channel(Channel.SPEED, Series.generate(SECONDS, s -> speedMps))
                    .channel(Channel.DISTANCE, Series.generate(SECONDS, s -> speedMps * (s + 1)))
                    .channel(Channel.ALTITUDE, Series.generate(SECONDS, s -> 300 + grade * speedMps * (s + 1)))
                    .build();
        }

        /** Another power ends at the speed of the road load, which is checked against published values of its own. */
        @ParameterizedTest
        @CsvSource({
            "8, 0, 0, 1.2",
            "8, 0, 0, 0.8",
            "4, 0.05, 0, 1.2",
            "3, 0.09, 0, 0.8",
            "8, 0, 3, 1.2",
            "11, 0, -4, 0.8",
            "12, -0.02, 0, 1.2",
            "5, 0.03, 3, 1.3"
        })
        void anotherPowerSettlesAtItsOwn(double speedMps, double grade, double windMps, double factor) {
            Ride ride = ride(speedMps, grade, windMps);
            double watts = ride.series(Channel.POWER).get(0);
            double truth =
                    RoadLoad.of(TRUE_RIG, Air.of(ride).density().value()).speedMps(factor * watts, grade, windMps);

            Replay.Result result = replay(ride).withPower(Series.generate(SECONDS, s -> factor * watts));

            assertThat(speedMps / result.secondsFor(SECONDS - 100)).isCloseTo(truth, within(1e-3 * truth));
        }

        /** Another rig on the same power as well: lighter, slipperier, with better tyres. */
        @ParameterizedTest
        @CsvSource({"8, 0, 0", "4, 0.05, 0", "8, 0, 3", "11, 0, -4", "12, -0.02, 0"})
        void anotherRigSettlesAtItsOwn(double speedMps, double grade, double windMps) {
            Ride ride = ride(speedMps, grade, windMps);
            Rig other = Rig.of(78, 0.31, 0.004);
            double truth = RoadLoad.of(other, Air.of(ride).density().value())
                    .speedMps(ride.series(Channel.POWER).get(0), grade, windMps);

            Replay.Result result = replay(ride).withRig(other, Replay.Share.WHOLE);

            assertThat(speedMps / result.secondsFor(SECONDS - 100)).isCloseTo(truth, within(1e-3 * truth));
        }

        /** The speed is won over the distance that momentum takes, never faster and never beyond. */
        @Test
        void theWayThereIsGradual() {
            Ride ride = ride(8, 0, 0);
            double watts = ride.series(Channel.POWER).get(0);
            Replay.Result result = replay(ride).withPower(Series.generate(SECONDS, s -> 1.2 * watts));
            double settled = result.secondsFor(SECONDS - 100);
            double before = 1;
            for (int second = 30; second < SECONDS - 100; second++) {
                assertThat(result.secondsFor(second)).isBetween(settled - 1e-9, before + 1e-9);
                before = result.secondsFor(second);
            }
            assertThat(result.secondsFor(30)).isGreaterThan(settled + 0.001);
        }

        /**
         * What is missing of the energy of motion shrinks to 1/e over the distance that momentum takes: m v over how fast
         * the surplus force falls with speed, rho A |v + w| + 0.0087 + P / v^2 (the derivative of Martin et al. 1998).
         */
        @ParameterizedTest
        @CsvSource({"8, 0, 0, 1.2", "8, 0, 3, 0.8", "11, -0.02, 0, 1.2"})
        void theWayThereIsThatOfMomentum(double speedMps, double grade, double windMps, double factor) {
            Ride ride = ride(speedMps, grade, windMps);
            double watts = factor * ride.series(Channel.POWER).get(0);
            double density = Air.of(ride).density().value();
            double settledMps = RoadLoad.of(TRUE_RIG, density).speedMps(watts, grade, windMps);
            double fallN =
                    density * (TRUE_RIG.dragAreaM2() + TRUE_RIG.spokeDragAreaM2()) * Math.abs(settledMps + windMps)
                            + 0.0087
                            + TRUE_RIG.driveEfficiency() * watts / (settledMps * settledMps);
            double settlingM = TRUE_RIG.inertKg() * settledMps / fallN;
            Replay replay = replay(ride);
            Replay.Result result = replay.withPower(Series.generate(SECONDS, s -> watts));

            // From the second whole bin to the third, as long as their seconds are many.
            double second = settledMps * settledMps - square(speedMps / result.secondsForSecondOf(1));
            double third = settledMps * settledMps - square(speedMps / result.secondsForSecondOf(2));
            int seconds = 0;
            for (int s = 0; s < SECONDS; s++) {
                seconds += replay.binOf(s) == 2 ? 1 : 0;
            }
            assertThat(Math.log(second / third)).isCloseTo(seconds * speedMps / settlingM, within(0.02));
        }

        private double square(double value) {
            return value * value;
        }

        @Test
        void binsAreTwoHundredMetresOfSecondsUnderWay() {
            Ride ride = withChannel(ride(8, 0, 0), Channel.SPEED, Series.generate(SECONDS, s -> 8));
            Replay replay = replay(ride);
            // 1,500 s at 8 m/s are 60 bins of 25 s; the first second has no place it came from.
            assertThat(replay.movingSeconds()).isEqualTo(SECONDS);
            assertThat(replay.bins()).isBetween(60, 61);
            assertThat(replay.binOf(0)).isZero();
            assertThat(replay.binOf(SECONDS - 1)).isEqualTo(replay.bins() - 1);
            double watts = ride.series(Channel.POWER).get(0);
            double[] joules = new double[replay.bins()];
            for (int second = 0; second < SECONDS; second++) {
                joules[replay.binOf(second)] += 1.1 * watts;
            }
            Replay.Result byWork = replay.withWork(joules);
            Replay.Result byPower = replay.withPower(Series.generate(SECONDS, s -> 1.1 * watts));
            assertThat(byWork.savedSeconds())
                    .isCloseTo(byPower.savedSeconds(), within(1e-9))
                    .isPositive();
            assertThat(byWork.secondsForSecondOf(replay.binOf(700))).isEqualTo(byWork.secondsFor(700));
            assertThatThrownBy(() -> replay.withWork(new double[3])).hasMessageContaining("work of 3 bins");
        }

        @Test
        void sharesHaveBounds() {
            assertThat(new Replay.Share(0.5, 0.5).to()).isEqualTo(0.5);
            assertThatThrownBy(() -> new Replay.Share(0.6, 0.5)).hasMessageContaining("0.6 to 0.5");
            assertThatThrownBy(() -> new Replay.Share(-0.1, 0.5)).hasMessageContaining("expected 0 <= from");
            assertThatThrownBy(() -> new Replay.Share(0, 1.1)).hasMessageContaining("to <= 1");
        }
    }

    @Nested
    class Refusals {
        @Test
        void nameTheMissingChannel() {
            Ride ride = ride(Road.FLAT.scenario());
            Series nothing = Series.missing(ride.seconds());

            assertThat(attempt(withChannel(ride, Channel.POWER, nothing))
                            .refusal()
                            .orElseThrow())
                    .contains("no power");
            assertThat(attempt(withChannel(ride, Channel.DISTANCE, nothing))
                            .refusal()
                            .orElseThrow())
                    .contains("no distance");
            assertThat(attempt(withChannel(ride, Channel.ALTITUDE, nothing))
                            .refusal()
                            .orElseThrow())
                    .contains("no altitude");
        }

        @Test
        void aRideThatLeadsNowhere() {
            Ride indoor = Ride.builder(Instant.EPOCH, 3600)
                    .channel(Channel.POWER, Series.generate(3600, s -> 200))
                    .channel(Channel.DISTANCE, Series.generate(3600, s -> 0))
                    .channel(Channel.ALTITUDE, Series.generate(3600, s -> 20))
                    .build();

            assertThat(attempt(indoor).found()).isEmpty();
            assertThat(attempt(indoor).refusal().orElseThrow()).contains("nowhere");
        }

        @Test
        void altitudeMissingForTooLong() {
            Ride ride = ride(Road.ROLLING.scenario());
            Series altitude = ride.series(Channel.ALTITUDE);
            Series half = Series.generate(ride.seconds(), s -> s < ride.seconds() / 2 ? altitude.get(s) : Double.NaN);

            assertThat(attempt(withChannel(ride, Channel.ALTITUDE, half))
                            .refusal()
                            .orElseThrow())
                    .contains("more than a fifth");
        }

        @Test
        void noCourseLeadsNowhere() {
            assertThat(Replay.of(ride(Road.HILLY.scenario()), null, TRUE_RIG)
                            .refusal()
                            .orElseThrow())
                    .contains("nowhere");
        }

        @Test
        void aSeriesOfAnotherLengthIsAMistakeOfTheCaller() {
            Replay replay = replay(ride(Road.FLAT.scenario()));
            assertThatThrownBy(() -> replay.withPower(Series.of(1, 2, 3))).isInstanceOf(IllegalArgumentException.class);
        }
    }

    private static Ride ride(Scenario scenario) {
        return EqualWork.recorded(RoadSimulation.ride(scenario).toRecording());
    }

    private static Replay replay(Ride ride) {
        return attempt(ride).orElseThrow(AssertionError::new);
    }

    private static Outcome<Replay> attempt(Ride ride) {
        return Replay.of(ride, Course.of(ride).orElse(null), TRUE_RIG);
    }

    private static Ride withChannel(Ride ride, Channel channel, Series series) {
        Ride.Builder builder = Ride.builder(ride.start(), ride.seconds()).laps(ride.laps());
        for (Channel each : ride.channels()) {
            builder.channel(each, each == channel ? series : ride.series(each));
        }
        for (int second = 0; second < ride.seconds(); second++) {
            builder.state(new Interval(second, second + 1), ride.state(second));
        }
        return builder.build();
    }
}
