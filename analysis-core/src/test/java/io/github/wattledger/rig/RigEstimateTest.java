package io.github.wattledger.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.course.Course;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.simulation.PacingPlan;
import io.github.wattledger.simulation.RidingStyle;
import io.github.wattledger.simulation.RoadSimulation;
import io.github.wattledger.simulation.Scenario;
import io.github.wattledger.simulation.SensorNoise;
import io.github.wattledger.simulation.SimulatedRider;
import io.github.wattledger.simulation.Weather;
import io.github.wattledger.testing.EqualWork;
import java.time.Instant;
import java.util.Locale;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RigEstimateTest {
    private static Ride ride(
            double lengthM, double heightM, double windMps, double area, double rolling, PacingPlan plan, long seed) {
        io.github.wattledger.simulation.Course course = io.github.wattledger.simulation.Course.builder()
                .startLine(45, 0, 100)
                .stretch(lengthM, 0, rolling)
                .rollers(heightM, 3700)
                .heading(metres -> 360 * metres / 40_000)
                .build();
        Scenario scenario = Scenario.of(course, SimulatedRider.tireless().withBody(74, 11, area), plan)
                .withWeather(Weather.CALM.withWind(windMps, 60))
                .withStyle(RidingStyle.FOREST_ROAD, seed);
        return EqualWork.recorded(
                SensorNoise.ordinary(seed).record(RoadSimulation.ride(scenario)).toRecording());
    }

    /** What the simulator was given, found again from what its sensors wrote: within 5 %. */
    @ParameterizedTest
    @CsvSource({
        "40, 0, 0.36, 0.006, 1",
        "40, 0, 0.28, 0.005, 2",
        "60, 0, 0.36, 0.010, 3",
        "80, 0, 0.32, 0.008, 4",
        "60, 2, 0.36, 0.006, 5",
        "60, 3, 0.30, 0.007, 6"
    })
    void findsWhatTheSimulatorWasGiven(double heightM, double windMps, double area, double rolling, long seed) {
        RigEstimate estimate = estimate(
                        ride(
                                100_000,
                                heightM,
                                windMps,
                                area,
                                rolling,
                                PacingPlan.steady(190).onTerrain(2),
                                seed),
                        85)
                .orElseThrow(AssertionError::new);

        assertThat(estimate.dragAreaM2()).isCloseTo(area, within(0.05 * area));
        assertThat(estimate.rollingResistance()).isCloseTo(rolling, within(0.05 * rolling));
        // Two standard errors and the model's own simplifications.
        assertThat(Math.abs(estimate.dragAreaM2() - area)).isLessThan(3 * estimate.dragAreaErrorM2() + 0.01);
    }

    @Test
    void refusesASteadyRideOnTheFlat() {
        Outcome<RigEstimate> estimate = estimate(ride(60_000, 0, 0, 0.36, 0.006, PacingPlan.steady(200), 7), 85);
        assertThat(estimate.found()).isEmpty();
        assertThat(estimate.refusal().orElseThrow()).contains("does not tell drag from rolling");
    }

    /** A meter that shows half of what was given makes an implausible rider. */
    @Test
    void refusesWhatIsNotPlausible() {
        Ride ride = ride(100_000, 60, 0, 0.30, 0.006, PacingPlan.steady(190), 8);
        Series watts = ride.series(Channel.POWER);
        Ride.Builder half = Ride.builder(ride.start(), ride.seconds());
        ride.channels().forEach(each -> half.channel(each, ride.series(each)));
        half.channel(Channel.POWER, Series.generate(watts.size(), s -> watts.get(s) / 2));

        assertThat(estimate(half.build(), 85).refusal().orElseThrow()).contains("not plausible");
    }

    /**
     * Pairs that no rider has, each number possible alone. The first two came from real rides that do not tell drag from
     * rolling resistance: a time trial position on soft ground, bolt upright on better than race tyres on a taxiway (0.0032
     * in Martin et al. 1998). The third rides 44 km/h on the flat at 200 W, the fourth 19: by hand from the balance
     * 195 W = v (m g c + 0.0087 v + 0.091 + 1.225 / 2 A v^2) with 86 kg.
     */
    @ParameterizedTest
    @CsvSource({"0.20, 0.0178", "0.62, 0.0021", "0.151, 0.0021", "0.65, 0.0300"})
    void refusesAPairThatNoRiderHas(double area, double rolling) {
        String reason = judged(area, rolling).refusal().orElseThrow();
        assertThat(reason)
                .isEqualTo(String.format(
                        Locale.ROOT,
                        "it comes out at a drag area of %.2f m2 with a rolling resistance of %.4f, which is not"
                                + " plausible",
                        area,
                        rolling));
    }

    /** Time trial, hoods, an upright city rider, a mountain bike on soft ground, drops on a farm track. */
    @ParameterizedTest
    @CsvSource({"0.21, 0.0030", "0.358, 0.0060", "0.60, 0.0060", "0.48, 0.0220", "0.307, 0.0150"})
    void takesAPairThatRidersHave(double area, double rolling) {
        assertThat(judged(area, rolling).found()).isPresent();
    }

    private static Outcome<RigEstimate> judged(double area, double rolling) {
        return RigEstimate.judged(new RigEstimate(area, 0.01 * area, rolling, 0.0002, 50, OffTogether.NOTHING));
    }

    /** What a wrong mass does to the pair: height and motion count with it. Found by estimating with the other mass. */
    @Test
    void saysWhatAnotherMassWouldGive() {
        Ride ride = ride(100_000, 60, 0, 0.36, 0.006, PacingPlan.steady(190).onTerrain(2), 1);
        RigEstimate at85 = estimate(ride, 85).orElseThrow(AssertionError::new);
        RigEstimate at88 = estimate(ride, 88).orElseThrow(AssertionError::new);
        OffTogether together = at85.together();
        assertThat(at85.dragAreaM2() + 3 * together.dragAreaM2PerKg())
                .isCloseTo(at88.dragAreaM2(), within(0.1 * Math.abs(at88.dragAreaM2() - at85.dragAreaM2()) + 0.001));
        assertThat(at85.rollingResistance() + 3 * together.rollingResistancePerKg())
                .isCloseTo(
                        at88.rollingResistance(),
                        within(0.1 * Math.abs(at88.rollingResistance() - at85.rollingResistance()) + 0.0001));
    }

    /**
     * Flat road whose surface changes every kilometre or so: soft stretches are ridden slower, which reads as too little
     * drag and too much rolling resistance. The truth lies within two standard errors of both, on 9 of 10 rides, and the
     * errors are those of a pair whose sum is known.
     */
    @Test
    void theErrorsHoldWhatAPatchySurfaceDoes() {
        int held = 0;
        for (int seed = 1; seed <= 10; seed++) {
            Random chance = new Random(seed);
            io.github.wattledger.simulation.Course.Builder road =
                    io.github.wattledger.simulation.Course.builder().startLine(45, 0, 100);
            double metres = 0;
            double rolled = 0;
            while (metres < 80_000) {
                double stretch = 10 * Math.round(50 + 150 * chance.nextDouble());
                double rolling = 0.006 * (0.85 + 0.3 * chance.nextDouble());
                road.stretch(stretch, 0, rolling);
                metres += stretch;
                rolled += stretch * rolling;
            }
            double[] pace = chance.doubles(100, 150, 230).toArray();
            Scenario scenario = Scenario.of(
                    road.heading(m -> m / 200).build(),
                    SimulatedRider.tireless().withBody(74, 11, 0.34),
                    moment -> pace[(int) Math.min(99, Math.max(0, moment.distanceM() / 1100))]);
            Ride ride = EqualWork.recorded(SensorNoise.ordinary(seed)
                    .record(RoadSimulation.ride(scenario))
                    .toRecording());
            Course course = Course.of(ride).orElseThrow();
            Rig start = Rig.of(85, 0.358, 0.006);
            double density = Air.of(ride).density().value();
            PairFit fit = Objects.requireNonNull(
                    PairFit.of(EnergyPiece.of(ride, course, start, density, 500), start, density));
            assertThat(fit.correlation()).isLessThan(-0.9);
            boolean areaHeld = Math.abs(fit.areaM2() - 0.0044 - 0.34) < 2 * fit.areaErrorM2();
            boolean rollingHeld = Math.abs(fit.rollingN() - rolled / metres * 85 * 9.80665) < 2 * fit.rollingErrorN();
            held += areaHeld && rollingHeld ? 1 : 0;
        }
        assertThat(held).isGreaterThanOrEqualTo(9);
    }

    @Test
    void refusesWithoutTheChannels() {
        assertThat(estimate(Ride.ofWatts(new double[5000]), 85).refusal().orElseThrow())
                .contains("no distance");
        Ride indoor = Ride.builder(Instant.EPOCH, 4000)
                .channel(Channel.POWER, Series.generate(4000, s -> 200))
                .channel(Channel.SPEED, Series.generate(4000, s -> 8))
                .channel(Channel.DISTANCE, Series.generate(4000, s -> 8.0 * s))
                .build();
        assertThat(estimate(indoor, 85).refusal().orElseThrow()).contains("no altitude");
    }

    private static Outcome<RigEstimate> estimate(Ride ride, double totalMassKg) {
        return RigEstimate.of(ride, Course.of(ride).orElse(null), totalMassKg);
    }
}
