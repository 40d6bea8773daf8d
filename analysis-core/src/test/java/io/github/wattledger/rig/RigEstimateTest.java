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
