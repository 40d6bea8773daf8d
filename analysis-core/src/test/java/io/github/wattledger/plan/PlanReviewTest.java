package io.github.wattledger.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.RigChoice;
import io.github.wattledger.simulation.Course;
import io.github.wattledger.simulation.PacingPlan;
import io.github.wattledger.simulation.RoadSimulation;
import io.github.wattledger.simulation.Scenario;
import io.github.wattledger.simulation.SimulatedRider;
import io.github.wattledger.simulation.Weather;
import io.github.wattledger.testing.EqualWork;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Rides of the simulator, which shares no physics with the library, held against plans. */
class PlanReviewTest {
    private static final double LENGTH_M = 40_000;
    private static final RigChoice RIG = RigChoice.ofNoRide(74.0, 11.0, 0.36, 0.006, Position.HOODS);

    private static Ride ridden(double watts, double windMps, double lengthM) {
        Course course = Course.builder()
                .startLine(45, 0, 100)
                .stretch(lengthM, 0, 0.006)
                .rollers(60, 4000)
                .heading(metres -> 360 * metres / LENGTH_M)
                .build();
        Scenario scenario = Scenario.of(course, SimulatedRider.tireless(), PacingPlan.steady(watts))
                .withWeather(Weather.CALM.withWind(windMps, 0));
        return EqualWork.recorded(RoadSimulation.ride(scenario).toRecording());
    }

    private static PlanReview review(KeptPlan plan, Ride ride) {
        return PlanReview.of(plan, ride, RIG).orElseThrow(AssertionError::new);
    }

    /** The ride with 200 s of standing and 100 missing seconds in it, or without its power. */
    private static Ride copy(Ride ride, boolean isTorn) {
        Ride.Builder builder = Ride.builder(ride.start(), ride.seconds());
        for (Channel each : ride.channels()) {
            if (isTorn || each != Channel.POWER) {
                builder.channel(each, ride.series(each));
            }
        }
        for (int second = 0; second < ride.seconds(); second++) {
            builder.state(second, ride.state(second));
        }
        if (isTorn) {
            builder.state(new Interval(1000, 1200), SecondState.STOPPED);
            builder.state(new Interval(2000, 2100), SecondState.MISSING);
        }
        return builder.build();
    }

    private static void assertSplitsWhole(KeptPlan plan, Ride ride, double plannedMovingSeconds) {
        PlanReview review = review(plan, ride);
        double planned = plannedMovingSeconds + plan.stoppedSeconds() * plannedMovingSeconds / plan.movingSeconds();
        assertThat(review.differenceSeconds()).isCloseTo(ride.seconds() - planned, within(1e-6));
        int moving = 0;
        for (SectionReview each : review.sections()) {
            moving += each.riddenSeconds();
            assertThat(each.powerSeconds() + each.daySeconds())
                    .isCloseTo(each.riddenSeconds() - each.plannedSeconds(), within(1e-6));
        }
        assertThat(moving).isEqualTo(ride.countSeconds(SecondState.RIDING, new Interval(0, ride.seconds())));
    }

    /** The definition: ridden less planned is what power did, what the day did and stops, without a rest. */
    @Test
    void theSplitIsExactForAnyPlan() {
        Ride ride = ridden(200, 3, LENGTH_M);
        Random random = new Random(20260502);
        for (int i = 0; i < 20; i++) {
            KeptPlan plan = plan(120 + random.nextInt(150), random.nextInt(1200), 800 + random.nextInt(800));
            assertSplitsWhole(plan, ride, plan.movingSeconds());
        }
    }

    @Test
    void theSplitIsExactWithStopsAndMissingSeconds() {
        Ride ride = ridden(200, 0, LENGTH_M);
        Ride torn = copy(ride, true);
        assertSplitsWhole(plan(200, 120, 1200), torn, 4800);
        PlanReview review = review(plan(200, 0, 1200), torn);
        assertThat(review.sections().stream()
                        .mapToDouble(SectionReview::stopSeconds)
                        .sum())
                .isGreaterThanOrEqualTo(300);
    }

    /** Of 40 km planned 25 are ridden: two sections whole, half of the third, none of the last. */
    @Test
    void aRideCutShortIsHeldAgainstWhatItRode() {
        Ride ride = ridden(200, 0, 25_000);
        PlanReview review = review(plan(200, 0, 1200), ride);
        assertThat(review.isCutShort()).isTrue();
        assertThat(review.sections()).hasSize(3);
        assertThat(review.sections().get(2).plannedSeconds()).isCloseTo(600, within(15.0));
        assertThat(review.differenceSeconds())
                .isCloseTo(
                        ride.seconds()
                                - review.sections().stream()
                                        .mapToDouble(SectionReview::plannedSeconds)
                                        .sum(),
                        within(1e-6));
    }

    /** A detour of 10 km: the lengths do not fit, and the whole is still split. */
    @Test
    void aCourseThatWasLeftIsSplitWhole() {
        assertSplitsWhole(plan(200, 0, 1200), ridden(200, 0, 50_000), 4800);
    }

    /** The ride had the planned power throughout, so that power can have done nothing. */
    @Test
    void thePlannedPowerDoesNothing() {
        PlanReview review = review(plan(200, 0, 1200), ridden(200, 0, LENGTH_M));
        double power = review.sections().stream()
                .mapToDouble(SectionReview::powerSeconds)
                .sum();
        assertThat(power).isCloseTo(0, within(0.01 * 4800));
        assertThat(review.isOpeningAboveCap()).isFalse();
        assertThat(review.caps()).allSatisfy(cap -> assertThat(cap.outcome()).isEqualTo(CapReview.Outcome.KEPT));
    }

    /** The truth: the simulator rides the same road in the same wind with the planned power. */
    @Test
    void whatPowerDidIsWhatTheSimulatorSays() {
        Ride hard = ridden(220, 3, LENGTH_M);
        Ride planned = ridden(190, 3, LENGTH_M);
        PlanReview review = review(plan(190, 0, 1200), hard);
        double power = review.sections().stream()
                .mapToDouble(SectionReview::powerSeconds)
                .sum();
        double truth = hard.seconds() - planned.seconds();
        assertThat(truth).isNegative();
        assertThat(power).isCloseTo(truth, within(0.15 * Math.abs(truth)));
        assertThat(review.isOpeningAboveCap()).isTrue();
        assertThat(review.caps()).anySatisfy(cap -> assertThat(cap.outcome()).isEqualTo(CapReview.Outcome.ABOVE));
    }

    @Test
    void aRideWithoutPowerIsRefused() {
        Ride ride = copy(ridden(200, 0, LENGTH_M), false);
        assertThat(PlanReview.of(plan(200, 0, 1200), ride, RIG).refusal()).contains("no power in this file");
    }

    private static KeptPlan plan(double capW, double stoppedSeconds, double secondsPerSection) {
        Map<Ground, Double> caps = new EnumMap<>(Ground.class);
        for (Ground ground : Ground.values()) {
            caps.put(ground, capW);
        }
        List<KeptPlan.Part> parts = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            parts.add(new KeptPlan.Part("km " + 10 * (i + 1), 10_000 * i, 10_000 * (i + 1), secondsPerSection));
        }
        return new KeptPlan("Test", LENGTH_M, stoppedSeconds, 1200, capW, caps, parts);
    }
}
