package io.github.wattledger.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.course.Route;
import io.github.wattledger.plan.PlanOptions;
import io.github.wattledger.plan.PlanRider;
import io.github.wattledger.plan.RacePlan;
import io.github.wattledger.plan.Section;
import io.github.wattledger.read.RouteFiles;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.RouteLine;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.RigChoice;
import io.github.wattledger.testing.EqualWork;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The course of the sample race, and a plan for it against the simulator's own rides of it. */
class SampleCourseTest {
    private static final Path FILE = Path.of("..", "docs", "examples", "ebbwood-165.gpx");

    @Test
    void theFileIsTheOneThatIsWritten() throws IOException {
        assertThat(Files.readAllBytes(FILE)).isEqualTo(CourseFileWriter.ebbwood());
    }

    /** Length and ascent of the road that the simulator rides. */
    @Test
    void theFileHoldsTheRoad() throws UnreadableRideException {
        RouteLine line = RouteFiles.read(FILE).line(null);
        Course road = EbbwoodCourse.race();
        assertThat(line.name()).isEqualTo("Ebbwood 165");
        assertThat(line.lengthM()).isCloseTo(road.lengthM(), within(0.01 * road.lengthM()));
        assertThat(line.namedPoints()).hasSize(2);
        double ascentM = 0;
        for (double at = 0; at + 10 < road.lengthM(); at += 10) {
            ascentM += Math.max(0, road.altitudeAt(at + 10) - road.altitudeAt(at));
        }
        assertThat(Route.of(line).ascentM()).isCloseTo(ascentM, within(0.15 * ascentM));
    }

    /**
     * The simulator rides the course at the target on its own surfaces in a breeze: the range of a plan that knows neither
     * holds the ridden time.
     */
    @Test
    void theRangeHoldsTheRiddenTime() throws UnreadableRideException {
        PlanRider rider = PlanRider.of(RigChoice.ofNoRide(74.0, 11.0, null, null, Position.HOODS), 250);
        RacePlan plan = RacePlan.of(Route.of(RouteFiles.read(FILE).line(null)), rider, PlanOptions.DEFAULT);
        Scenario race = Scenario.of(
                        EbbwoodCourse.race(),
                        SimulatedRider.tireless(),
                        PacingPlan.steady(plan.target().watts()))
                .withWeather(Weather.CALM.withWind(2, 260));
        double ridden = EqualWork.finishSeconds(RoadSimulation.ride(race));
        assertThat(plan.sections()).extracting(Section::name).containsExactly("First feed", "Second feed", "finish");
        assertThat(plan.climbs()).hasSizeBetween(6, 12);
        assertThat(ridden).isBetween(plan.moving().lowSeconds(), plan.moving().highSeconds());
    }
}
