package io.github.wattledger.plan;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.course.Route;
import io.github.wattledger.ride.RouteLine;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.RigChoice;
import io.github.wattledger.simulation.Course;
import io.github.wattledger.simulation.PacingPlan;
import io.github.wattledger.simulation.RoadSimulation;
import io.github.wattledger.simulation.Scenario;
import io.github.wattledger.simulation.SimulatedRider;
import io.github.wattledger.simulation.Weather;
import io.github.wattledger.testing.EqualWork;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Races of the simulator, which has its own physics and momentum, on surfaces and in winds that the plan does not know, with a
 * course file whose altitude is noisy.
 */
class PlanRangeTest {
    private static final int RACES = 10;
    private static final double LENGTH_M = 60_000;
    private static final double SPACING_M = 30;

    /** Only the masses are known: drag area and rolling resistance are those of anybody. */
    private static final PlanRider RIDER =
            PlanRider.of(RigChoice.ofNoRide(74.0, 11.0, null, null, Position.HOODS), 250);

    @Test
    void theRangeHoldsTheRiddenTimeInEightOfTenRaces() {
        int held = 0;
        for (int seed = 0; seed < RACES; seed++) {
            Random random = new Random(seed);
            Course road = Course.builder()
                    .startLine(45, 0, 200)
                    .stretch(LENGTH_M, 0, 0.0045 + 0.005 * random.nextDouble())
                    .rollers(20 + 60 * random.nextDouble(), 4000)
                    .heading(metres -> 360 * metres / LENGTH_M)
                    .build();
            RacePlan plan = RacePlan.of(Route.of(file(road, random)), RIDER, PlanOptions.DEFAULT);
            double watts = plan.target().watts() * (0.92 + 0.11 * random.nextDouble());
            Weather weather = Weather.CALM.withWind(3 * random.nextDouble(), 360 * random.nextDouble());
            double ridden = EqualWork.finishSeconds(
                    RoadSimulation.ride(Scenario.of(road, SimulatedRider.tireless(), PacingPlan.steady(watts))
                            .withWeather(weather)));
            boolean isHeld = ridden >= plan.moving().lowSeconds()
                    && ridden <= plan.moving().highSeconds();
            held += isHeld ? 1 : 0;
            assertThat(plan.moving().highSeconds() / plan.moving().lowSeconds()).isLessThan(1.35);
        }
        assertThat(held).isGreaterThanOrEqualTo(8);
    }

    /** The road as a file: altitude with noise of 3 m that is correlated over 90 m, as of a terrain model. */
    private static RouteLine file(Course road, Random random) {
        int points = (int) (LENGTH_M / SPACING_M);
        double[] altitude = new double[points];
        double keep = Math.exp(-SPACING_M / 90);
        double noise = 3 * random.nextGaussian();
        for (int i = 0; i < points; i++) {
            altitude[i] = road.altitudeAt(i * SPACING_M) + noise;
            noise = keep * noise + Math.sqrt(1 - keep * keep) * 3 * random.nextGaussian();
        }
        return new RouteLine(
                null,
                Series.generate(points, i -> road.latitudeAt(i * SPACING_M)),
                Series.generate(points, i -> road.longitudeAt(i * SPACING_M)),
                Series.of(altitude),
                Series.generate(points, i -> i * SPACING_M),
                List.of(),
                false);
    }
}
