package io.github.wattledger.replay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.course.Course;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.Rig;
import io.github.wattledger.rig.RigChoice;
import io.github.wattledger.simulation.RoadSimulation;
import io.github.wattledger.simulation.Scenario;
import io.github.wattledger.simulation.Shelter;
import io.github.wattledger.simulation.SimulatedRider;
import io.github.wattledger.simulation.SpeedLimits;
import io.github.wattledger.simulation.Surroundings;
import io.github.wattledger.testing.EqualWork;
import java.time.Instant;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Freewheeled descents with another rig, against the closed form of a body that rolls down a slope. */
class FreewheelingTest {
    private static final double LEVEL_M = 2000;
    private static final double DESCENT_M = 10_000;
    private static final double ALL_M = LEVEL_M + DESCENT_M + LEVEL_M;
    private static final double GRADE = -0.05;
    private static final double ROLLING_RESISTANCE = 0.006;
    private static final double KG = 85;
    private static final double AREA_M2 = 0.36;
    private static final Rig RIG = Rig.of(KG, AREA_M2, ROLLING_RESISTANCE);

    /** The descent once it has run up to its speed, as shares of the whole. */
    private static final Replay.Share DESCENT =
            new Replay.Share((LEVEL_M + 1000) / ALL_M, (LEVEL_M + DESCENT_M) / ALL_M);

    /** Level, down at 5 % without pedalling, level; at sea level in the middle, where the air is the simulator's. */
    private static Ride descent(SpeedLimits limits) {
        io.github.wattledger.simulation.Course course = io.github.wattledger.simulation.Course.builder()
                .startLine(45, 0, 250)
                .stretch(LEVEL_M, 0, ROLLING_RESISTANCE)
                .stretch(DESCENT_M, 100 * GRADE, ROLLING_RESISTANCE)
                .stretch(LEVEL_M, 0, ROLLING_RESISTANCE)
                .build();
        Scenario scenario = Scenario.of(
                        course, SimulatedRider.tireless(), moment -> moment.grade() < GRADE / 2 ? 0 : 200)
                .withSurroundings(new Surroundings(limits, Shelter.NONE));
        return EqualWork.recorded(RoadSimulation.ride(scenario).toRecording());
    }

    private static io.github.wattledger.simulation.Course flat(double lengthM) {
        return io.github.wattledger.simulation.Course.builder()
                .startLine(45, 0, 100)
                .stretch(lengthM, 0, ROLLING_RESISTANCE)
                .build();
    }

    private static Replay replay(Ride ride) {
        return Replay.of(ride, Course.of(ride).orElseThrow(), RIG).orElseThrow(AssertionError::new);
    }

    /**
     * Terminal speed from Newton's law: what pulls is m g (sin a - c cos a) less the bearings of Martin et al. (1998), what
     * holds is half the density times drag area (spokes: 0.0044 m2, the same paper) times the square of speed.
     */
    private static double terminalMps(double kg, double areaM2) {
        double cosine = 1 / Math.sqrt(1 + GRADE * GRADE);
        double pullN = kg * 9.80665 * cosine * (-GRADE - ROLLING_RESISTANCE) - 0.091;
        double holds = 1.225 / 2 * (areaM2 + 0.0044);
        // The bearings' part that rises with speed: holds v^2 + 0.0087 v = pull.
        return (-0.0087 + Math.sqrt(0.0087 * 0.0087 + 4 * holds * pullN)) / (2 * holds);
    }

    @ParameterizedTest
    @CsvSource({"85, 0.288", "85, 0.324", "85, 0.432", "80, 0.36", "90, 0.36", "80, 0.288"})
    void aFreeDescentTakesTheTerminalSpeedOfTheOtherRig(double kg, double areaM2) {
        Replay replay = replay(descent(SpeedLimits.NONE));
        double metres = ALL_M * (DESCENT.to() - DESCENT.from());
        double expected = metres / terminalMps(KG, AREA_M2) - metres / terminalMps(kg, areaM2);

        double saved = replay.withRig(Rig.of(kg, areaM2, ROLLING_RESISTANCE), DESCENT, Freewheeling.LEAST_BRAKES)
                .savedSeconds();

        // The other rig needs some 230 m (mass over density times drag area) to run up to its speed.
        assertThat(saved).isCloseTo(expected, within(0.05 * Math.abs(expected) + 0.5));
    }

    /** Nothing in the ride shows that the rider would go faster than the fastest that was ridden. */
    @Test
    void noFreewheeledBinBeatsTheFastestOfTheRide() {
        Replay replay = replay(descent(SpeedLimits.NONE));
        double saved =
                replay.withRig(Rig.of(KG, 0.288, ROLLING_RESISTANCE), DESCENT).savedSeconds();
        assertThat(saved).isBetween(-0.1, 3.0);
    }

    @Test
    void aSlowerRigIsSlowerWhateverTheBrakes() {
        Replay replay = replay(descent(SpeedLimits.NONE));
        Rig lighter = Rig.of(75, AREA_M2, ROLLING_RESISTANCE);
        double metres = ALL_M * (DESCENT.to() - DESCENT.from());
        double expected = metres / terminalMps(KG, AREA_M2) - metres / terminalMps(75, AREA_M2);
        assertThat(expected).isNegative();
        for (Freewheeling each : Freewheeling.values()) {
            assertThat(replay.withRig(lighter, DESCENT, each).savedSeconds())
                    .as(each.name())
                    .isCloseTo(expected, within(0.05 * -expected + 0.5));
        }
    }

    /** Down at 9 m/s, where the slope would give 13: the brakes are pulled again and again. */
    @Test
    void aDescentWithTheBrakesPulledKeepsItsTime() {
        double[] mps = new double[(int) (ALL_M / io.github.wattledger.simulation.Course.CELL_M) + 1];
        Arrays.fill(mps, 9);
        Replay replay = replay(descent(SpeedLimits.of(mps)));
        double free = DESCENT_M / terminalMps(KG, AREA_M2) - DESCENT_M / terminalMps(KG, 0.288);
        assertThat(free).isGreaterThan(60);
        assertThat(replay.withRig(Rig.of(KG, 0.288, ROLLING_RESISTANCE), DESCENT)
                        .savedSeconds())
                .isCloseTo(0, within(0.1 * free));
    }

    /** Brakes that hold 9 m/s all the way show in no single second; 19 N of the slope's pull are left over. */
    @Test
    void aDescentHeldByTheBrakesKeepsItsTime() {
        Ride held = atSpeedsOf(8, 9);
        Replay replay = replay(held);
        Rig aero = Rig.of(KG, 0.288, ROLLING_RESISTANCE);
        // The bin across the foot of the descent is pedalled in part, and wins a little.
        assertThat(replay.withRig(aero, DESCENT).savedSeconds()).isBetween(0.0, 1.0);
        // A head wind would look the same; that is the other end of the range.
        assertThat(replay.withRig(aero, DESCENT, Freewheeling.LEAST_BRAKES).savedSeconds())
                .isGreaterThan(30);
    }

    @Test
    void anotherPowerLeavesAFreewheeledDescentAlone() {
        Ride ride = descent(SpeedLimits.NONE);
        Replay replay = replay(ride);
        Series watts = ride.series(Channel.POWER);
        Replay.Result more = replay.withPower(Series.generate(watts.size(), s -> 1.1 * watts.get(s)));
        int middle = (int) (ride.seconds() * 0.5);
        assertThat(replay.isPedalled(middle)).isFalse();
        assertThat(more.secondsFor(middle)).isEqualTo(1);
    }

    @Test
    void theRangeReachesFromNoGainDownhillToAllOfIt() {
        Ride ride = descent(SpeedLimits.NONE);
        RigChoice rig = RigChoice.ofNoRide(74.0, 11.0, AREA_M2, ROLLING_RESISTANCE, Position.HOODS);
        WhatIf.Answer answer = WhatIf.replayed(
                        ride,
                        Course.of(ride).orElseThrow(),
                        rig,
                        WhatIf.Change.NOTHING.withDragAreaM2(Adjustment.times(0.8)))
                .orElseThrow(AssertionError::new);
        Influence brakes = answer.influences().stream()
                .filter(each -> each.input() == Influence.Input.BRAKES)
                .findFirst()
                .orElseThrow();
        double free = (DESCENT_M / terminalMps(KG, AREA_M2) - DESCENT_M / terminalMps(KG, 0.288)) / 60;
        assertThat(brakes.savedAtHighMinutes() - brakes.savedAtLowMinutes()).isCloseTo(free, within(0.15 * free));
        assertThat(answer.lowMinutes()).isLessThanOrEqualTo(brakes.savedAtLowMinutes());
        assertThat(answer.highMinutes()).isGreaterThanOrEqualTo(brakes.savedAtHighMinutes());
    }

    @Test
    void aRideThatWasPedalledThroughoutHasNoQuestionOfBrakes() {
        Ride ride = EqualWork.recorded(
                RoadSimulation.ride(Scenario.of(flat(20_000), SimulatedRider.tireless(), moment -> 200))
                        .toRecording());
        WhatIf.Answer answer = WhatIf.replayed(
                        ride,
                        Course.of(ride).orElseThrow(),
                        RigChoice.ofNoRide(74.0, 11.0, AREA_M2, ROLLING_RESISTANCE, Position.HOODS),
                        WhatIf.Change.NOTHING.withPosition(Position.DROPS))
                .orElseThrow(AssertionError::new);
        assertThat(answer.influences()).extracting(Influence::input).doesNotContain(Influence.Input.BRAKES);
    }

    /**
     * A lighter rig gets back to speed sooner after each bend: the work of braking from 9 to 3 m/s falls with the mass. Two
     * forward simulations, which share no code with the replay.
     */
    @Test
    void aLighterRigGainsAfterEveryBend() {
        double[] mps = new double[3001];
        Arrays.fill(mps, Double.POSITIVE_INFINITY);
        for (int cell = 100; cell < mps.length; cell += 100) {
            mps[cell] = 3;
        }
        Scenario before = Scenario.of(flat(30_000), SimulatedRider.tireless(), moment -> 200)
                .withSurroundings(new Surroundings(SpeedLimits.of(mps), Shelter.NONE));
        Scenario after = Scenario.of(
                        before.course(), SimulatedRider.tireless().withBody(64, 11, AREA_M2), moment -> 200)
                .withSurroundings(before.surroundings());
        double truth = EqualWork.finishSeconds(RoadSimulation.ride(before))
                - EqualWork.finishSeconds(RoadSimulation.ride(after));

        Ride ride = EqualWork.recorded(RoadSimulation.ride(before).toRecording());
        double saved = replay(ride)
                .withRig(Rig.of(75, AREA_M2, ROLLING_RESISTANCE), Replay.Share.WHOLE)
                .savedSeconds();

        assertThat(saved).isCloseTo(truth, within(0.2 * truth));
    }

    /** Level and descent at steady speeds; the power of the level is that of the published model in calm air. */
    private static Ride atSpeedsOf(double levelMps, double descentMps) {
        double levelW = ((1.225 / 2 * (AREA_M2 + 0.0044) * levelMps * levelMps
                                + KG * 9.80665 * ROLLING_RESISTANCE
                                + 0.091
                                + 0.0087 * levelMps)
                        * levelMps)
                / 0.976;
        int levelSeconds = (int) (LEVEL_M / levelMps);
        int descentSeconds = (int) (DESCENT_M / descentMps);
        int seconds = levelSeconds + descentSeconds + levelSeconds;
        double[] metres = new double[seconds];
        double[] altitude = new double[seconds];
        altitude[0] = 250;
        for (int s = 1; s < seconds; s++) {
            boolean down = s >= levelSeconds && s < levelSeconds + descentSeconds;
            double step = down ? descentMps : levelMps;
            metres[s] = metres[s - 1] + step;
            altitude[s] = altitude[s - 1] + (down ? GRADE * step : 0);
        }
        return Ride.builder(Instant.EPOCH, seconds)
                .channel(Channel.DISTANCE, Series.generate(seconds, s -> metres[s]))
                .channel(Channel.ALTITUDE, Series.generate(seconds, s -> altitude[s]))
                .channel(
                        Channel.SPEED,
                        Series.generate(
                                seconds,
                                s -> s >= levelSeconds && s < levelSeconds + descentSeconds ? descentMps : levelMps))
                .channel(
                        Channel.POWER,
                        Series.generate(
                                seconds, s -> s >= levelSeconds && s < levelSeconds + descentSeconds ? 0 : levelW))
                .build();
    }
}
