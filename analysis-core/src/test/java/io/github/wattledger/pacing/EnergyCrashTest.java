package io.github.wattledger.pacing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.simulation.Course;
import io.github.wattledger.simulation.HeartResponse;
import io.github.wattledger.simulation.PacingPlan;
import io.github.wattledger.simulation.RidingStyle;
import io.github.wattledger.simulation.RoadSimulation;
import io.github.wattledger.simulation.Scenario;
import io.github.wattledger.simulation.SensorNoise;
import io.github.wattledger.simulation.SimulatedRider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The simulator knows when its rider crashed, by how much heart rate fell and by how much power. */
class EnergyCrashTest {
    private static final double CRASH_SECOND = 4.2 * 3600;

    private static RideReview review(double heartFallFraction, double powerFallFraction, long seed) {
        HeartResponse heart = SimulatedRider.tireless().heart().withCrash(CRASH_SECOND, heartFallFraction);
        PacingPlan plan = moment -> 195 * (moment.racingSeconds() < CRASH_SECOND ? 1 : 1 - powerFallFraction);
        Course course = Course.builder()
                .startLine(45, 0, 100)
                .stretch(180_000, 0, 0.006)
                .rollers(40, 4000)
                .build();
        Scenario scenario = Scenario.of(course, SimulatedRider.tireless().withHeart(heart), plan.onTerrain(2))
                .withStyle(RidingStyle.FOREST_ROAD, seed);
        return Reviewer.review(
                SensorNoise.ordinary(seed).record(RoadSimulation.ride(scenario)).toRecording(),
                Rider.UNKNOWN.withThresholdPowerW(250).withMassKg(74),
                ReviewOptions.WHOLE_RIDE);
    }

    @ParameterizedTest
    @CsvSource({"0.08, 0.2, 1", "0.10, 0.25, 2", "0.12, 0.3, 3"})
    void isFoundWhereHeartRateAndPowerFall(double heartFall, double powerFall, long seed) {
        RideReview review = review(heartFall, powerFall, seed);

        Finding crash = review.pacing().finding(FindingKind.ENERGY_CRASH).orElseThrow();
        assertThat(crash.evidence().get("lossPercent").orElseThrow()).isCloseTo(powerFall * 100, within(5.0));
        // Ten minutes of falling are in the window too, and it moves in steps.
        assertThat((double) crash.when().fromSecond()).isCloseTo(CRASH_SECOND, within(1500.0));
        assertThat(crash.cost()).isInstanceOf(Cost.Priced.class);
        assertThat(crash.advice().text()).contains("dietitian", "physician", "no recording tells");
        assertThat(review.pacing().finding(FindingKind.FADE)).isEmpty();
        assertThat(review.pacing().verdict()).isEqualTo(Verdict.FADED);
    }

    /** Power falls and the heart follows it as it always did: a fade, no crash. */
    @ParameterizedTest
    @ValueSource(longs = {4, 5, 6})
    void isNotRaisedByPowerAlone(long seed) {
        RideReview review = review(0, 0.2, seed);
        assertThat(review.pacing().finding(FindingKind.ENERGY_CRASH)).isEmpty();
        assertThat(review.pacing().finding(FindingKind.FADE)).isPresent();
    }

    /** The heart beats more slowly while power holds: a strap perhaps, no crash. */
    @Test
    void isNotRaisedByTheHeartAlone() {
        RideReview review = review(0.10, 0, 7);
        assertThat(review.pacing().finding(FindingKind.ENERGY_CRASH)).isEmpty();
    }
}
