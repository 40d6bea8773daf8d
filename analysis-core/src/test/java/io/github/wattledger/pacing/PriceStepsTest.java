package io.github.wattledger.pacing;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.load.NormalizedPower;
import io.github.wattledger.load.Work;
import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.pacing.price.PriceSteps;
import io.github.wattledger.pacing.price.StretchChange;
import io.github.wattledger.replay.Replay;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rig.Measure;
import io.github.wattledger.simulation.Course;
import io.github.wattledger.simulation.PacingPlan;
import io.github.wattledger.simulation.RoadSimulation;
import io.github.wattledger.simulation.SampleRides;
import io.github.wattledger.simulation.Scenario;
import io.github.wattledger.simulation.SimulatedRider;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The steps lead from the seconds of the ride to the minutes of the report, and nothing else is needed. */
class PriceStepsTest {
    private static final Rider RIDER = Rider.UNKNOWN.withThresholdPowerW(250).withMassKg(74);

    private static RideReview ridden(PacingPlan plan) {
        Course course = Course.builder()
                .startLine(45, 0, 100)
                .stretch(100_000, 0, 0.006)
                .rollers(20, 3000)
                .build();
        Scenario race = Scenario.of(course, SimulatedRider.tireless(), plan);
        return Reviewer.review(RoadSimulation.ride(race).toRecording(), RIDER, ReviewOptions.WHOLE_RIDE);
    }

    private static RideReview overHard() {
        return Reviewer.review(SampleRides.overHardStart().toRecording(), Rider.UNKNOWN, ReviewOptions.WHOLE_RIDE);
    }

    private static RideReview lateReserve() {
        return ridden(moment -> moment.distanceM() < 83_000 ? 190 : 240);
    }

    private static RideReview thresholdEarly() {
        return ridden(moment -> moment.distanceM() > 20_000 && moment.distanceM() < 30_000 ? 245 : 195);
    }

    private static RideReview surging() {
        return ridden(PacingPlan.steady(195).withSurges(600, 9000, 120, 20, 420));
    }

    /** Rides that are reviewed within a test, so that a change of the code shows in it. */
    enum Raced {
        OVER_HARD,
        LATE_RESERVE,
        THRESHOLD_EARLY,
        SURGING;

        RideReview review() {
            return switch (this) {
                case OVER_HARD -> overHard();
                case LATE_RESERVE -> lateReserve();
                case THRESHOLD_EARLY -> thresholdEarly();
                case SURGING -> surging();
            };
        }
    }

    private static Finding finding(RideReview review, FindingKind kind) {
        return review.pacing().finding(kind).orElseThrow();
    }

    /** The power of the race as the steps say that it was repaired, and by the share of an end. */
    private static Series repaired(Ride raced, int offset, Replay replay, PriceSteps.Replayed steps, double share) {
        Series watts = raced.series(Channel.POWER);
        double[] repaired = watts.toArray();
        boolean[] untouched = new boolean[repaired.length];
        for (PriceSteps.Stretch stretch : steps.stretches()) {
            Interval when = stretch.when().shifted(-offset);
            boolean shares = stretch.change() == StretchChange.TO_EARLIER_POWER
                    || stretch.change() == StretchChange.TO_POWER_BEFORE;
            for (int second = when.fromSecond(); second < when.toSecond(); second++) {
                if (replay.isPedalled(second)) {
                    Double factor = stretch.factor();
                    repaired[second] =
                            factor == null ? Math.min(repaired[second], stretch.toW()) : repaired[second] * factor;
                }
                untouched[second] |= !shares;
            }
        }
        for (int second = steps.makingUp().firstSecond() - offset; second < repaired.length; second++) {
            if (replay.isPedalled(second) && watts.get(second) > 0 && !untouched[second]) {
                repaired[second] *= share;
            }
        }
        return Series.of(repaired);
    }

    /** Whoever has the ride and the steps can ride the race again and gets the same minutes. */
    @ParameterizedTest
    @EnumSource
    void areEnoughToArriveAtThePrice(Raced race) {
        RideReview review = race.review();
        Interval judged = review.pacing().judged();
        Ride raced = review.ride().part(judged);
        int priced = 0;
        for (Finding finding : review.pacing().findings()) {
            if (!(finding.priceSteps() instanceof PriceSteps.Replayed steps)
                    || !(finding.cost() instanceof Cost.Priced cost)) {
                continue;
            }
            priced++;
            Replay replay = Replay.of(
                            raced,
                            io.github.wattledger.course.Course.of(raced).orElse(null),
                            steps.rig().rig())
                    .orElseThrow(AssertionError::new);
            PriceSteps.End work = requireNonNull(steps.equalWork());
            PriceSteps.End normalized = requireNonNull(steps.equalNormalizedPower());
            for (PriceSteps.End end : List.of(work, normalized)) {
                Series watts = repaired(raced, judged.fromSecond(), replay, steps, end.share());
                Replay.Result result = replay.withPower(watts);
                assertThat(result.savedSeconds()).isCloseTo(end.savedSeconds(), within(0.01));
                assertThat(end.movingSeconds())
                        .isCloseTo(steps.recordedMovingSeconds() - end.savedSeconds(), within(1e-6));
                double joules = 0;
                for (int second = 0; second < raced.seconds(); second++) {
                    boolean counts = watts.isMeasured(second) && raced.state(second) != SecondState.PAUSED;
                    boolean rides = raced.state(second) == SecondState.RIDING;
                    joules += counts ? watts.get(second) * (rides ? result.secondsFor(second) : 1) : 0;
                }
                assertThat(joules / 1000).isCloseTo(end.workKJ(), within(1e-3 * end.workKJ()));
            }
            // The two ends are what they are called.
            assertThat(work.workKJ()).isCloseTo(steps.recordedWorkKJ(), within(2e-6 * steps.recordedWorkKJ()));
            assertThat(normalized.normalizedPowerW())
                    .isCloseTo(steps.recordedNormalizedPowerW(), within(2e-6 * steps.recordedNormalizedPowerW()));
            double low = Math.min(work.savedSeconds(), normalized.savedSeconds()) / 60;
            double high = Math.max(work.savedSeconds(), normalized.savedSeconds()) / 60;
            boolean isNothing = high < 1 / 60.0;
            assertThat(cost.lowMinutes()).isCloseTo(isNothing ? 0 : Math.max(0, low), within(1e-9));
            assertThat(cost.highMinutes()).isCloseTo(isNothing ? 0 : high, within(1e-9));
            assertThat(cost.how()).isEqualTo(isNothing ? "it would not have been faster" : "ridden again without it");
        }
        assertThat(priced).isPositive();
    }

    /** What the race was before is what the metrics say of it. */
    @Test
    void beginWithTheRideItself() {
        RideReview overHard = overHard();
        Interval judged = overHard.pacing().judged();
        Ride raced = overHard.ride().part(judged);
        PriceSteps.Replayed steps = (PriceSteps.Replayed)
                requireNonNull(finding(overHard, FindingKind.OVER_HARD_START).priceSteps());
        assertThat(steps.recordedMovingSeconds()).isEqualTo(raced.countSeconds(SecondState.RIDING));
        assertThat(steps.recordedWorkKJ())
                .isCloseTo(Work.kilojoules(raced.series(Channel.POWER)).orElseThrow(), within(1e-6));
        assertThat(steps.recordedNormalizedPowerW())
                .isCloseTo(NormalizedPower.of(raced).orElseThrow(), within(1e-6));
        assertThat(steps.targetW()).isEqualTo(overHard.pacing().targetW());
        assertThat(steps.rig().riderKg().origin()).isEqualTo(Measure.Origin.DEVICE);
    }

    /** Brought to the effort of the middle of the race on like ground, which the evidence names. */
    @Test
    void ofAHardStartScaleTheOpeningToTheMiddleOfTheRace() {
        RideReview overHard = overHard();
        Finding start = finding(overHard, FindingKind.OVER_HARD_START);
        PriceSteps.Replayed steps = (PriceSteps.Replayed) requireNonNull(start.priceSteps());
        assertThat(steps.stretches()).hasSize(1);
        PriceSteps.Stretch stretch = steps.stretches().get(0);
        double overMiddle = 1 + start.evidence().get("overMiddlePercent").orElseThrow() / 100;
        assertThat(stretch.when()).isEqualTo(start.when());
        assertThat(stretch.change()).isEqualTo(StretchChange.TO_MIDDLE_POWER);
        assertThat(requireNonNull(stretch.factor())).isCloseTo(1 / overMiddle, within(1e-12));
        assertThat(stretch.toW()).isCloseTo(requireNonNull(stretch.fromW()) / overMiddle, within(1e-9));
        // The same share of every pedalled second is taken out.
        double pedalledKJ = stretch.takenOutKJ() / (1 - requireNonNull(stretch.factor()));
        double allKJ = Work.kilojoules(overHard.ride().part(start.when()).series(Channel.POWER))
                .orElseThrow();
        assertThat(pedalledKJ).isCloseTo(allKJ, within(0.01 * allKJ));
        assertThat(steps.makingUp().firstSecond())
                .isGreaterThanOrEqualTo(start.when().toSecond());
    }

    @Test
    void ofSurgesNameEachOfThem() {
        RideReview review = surging();
        Finding surges = finding(review, FindingKind.SURGES);
        PriceSteps.Replayed steps = (PriceSteps.Replayed) requireNonNull(surges.priceSteps());
        assertThat(steps.stretches())
                .hasSize((int) surges.evidence().get("count").orElseThrow());
        assertThat(steps.stretches()).allSatisfy(stretch -> {
            assertThat(stretch.change()).isEqualTo(StretchChange.CAPPED_AT_TARGET);
            assertThat(stretch.factor()).isNull();
            assertThat(stretch.changedSeconds()).isPositive();
            assertThat(stretch.takenOutKJ()).isPositive();
            assertThat(stretch.toW()).isEqualTo(steps.targetW());
        });
        // The work above the target of the seconds that lie above it.
        Series watts = review.ride().series(Channel.POWER);
        PriceSteps.Stretch first = steps.stretches().get(0);
        double aboveJ = 0;
        for (int second = first.when().fromSecond(); second < first.when().toSecond(); second++) {
            aboveJ += Math.max(0, watts.get(second) - steps.targetW());
        }
        assertThat(first.takenOutKJ()).isCloseTo(aboveJ / 1000, within(1e-9));
        // What was ridden before the first surge cannot be ridden again.
        assertThat(steps.makingUp().firstSecond())
                .isGreaterThanOrEqualTo(surges.when().fromSecond());
    }

    @Test
    void ofALateReserveEvenItOutAndShareTheRest() {
        RideReview review = lateReserve();
        Finding reserve = finding(review, FindingKind.LATE_RESERVE);
        PriceSteps.Replayed steps = (PriceSteps.Replayed) requireNonNull(reserve.priceSteps());
        assertThat(steps.stretches()).singleElement().satisfies(stretch -> {
            double overBefore = 1 + reserve.evidence().get("gainPercent").orElseThrow() / 100;
            assertThat(stretch.change()).isEqualTo(StretchChange.TO_POWER_BEFORE);
            assertThat(stretch.when()).isEqualTo(reserve.when());
            assertThat(requireNonNull(stretch.factor())).isCloseTo(1 / overBefore, within(1e-12));
            assertThat(stretch.toW()).isCloseTo(requireNonNull(stretch.fromW()) / overBefore, within(1e-9));
            double allKJ = Work.kilojoules(review.ride().part(reserve.when()).series(Channel.POWER))
                    .orElseThrow();
            assertThat(stretch.takenOutKJ()).isCloseTo((1 - 1 / overBefore) * allKJ, within(0.01 * allKJ));
        });
        // All of the race takes part: what was left in the end could have been spent from the start.
        assertThat(steps.makingUp().firstSecond())
                .isLessThan(review.pacing().judged().fromSecond() + 60);
    }

    @Test
    void ofThresholdRidingBringEachStretchToTheMiddleOfTheRace() {
        RideReview review = thresholdEarly();
        Finding early = finding(review, FindingKind.THRESHOLD_RIDING_EARLY);
        PriceSteps.Replayed steps = (PriceSteps.Replayed) requireNonNull(early.priceSteps());
        assertThat(steps.stretches())
                .hasSize((int) early.evidence().get("stretchCount").orElseThrow())
                .allSatisfy(stretch -> {
                    assertThat(stretch.change()).isEqualTo(StretchChange.TO_MIDDLE_POWER);
                    // Threshold riding lies far above the middle, and is never raised.
                    assertThat(stretch.toW()).isLessThan(requireNonNull(stretch.fromW()));
                    assertThat(requireNonNull(stretch.factor()))
                            .isCloseTo(stretch.toW() / requireNonNull(stretch.fromW()), within(1e-12));
                    double allKJ = Work.kilojoules(
                                    review.ride().part(stretch.when()).series(Channel.POWER))
                            .orElseThrow();
                    assertThat(stretch.takenOutKJ())
                            .isCloseTo((1 - requireNonNull(stretch.factor())) * allKJ, within(0.01 * allKJ));
                });
        assertThat(early.cost()).isInstanceOf(Cost.Priced.class);
        // The stretches themselves make up for nothing, and nothing before them can.
        assertThat(steps.makingUp().firstSecond())
                .isGreaterThanOrEqualTo(steps.stretches().get(0).when().toSecond());
    }

    @Test
    void ofStopsAreTheStops() {
        RideReview overHard = overHard();
        Finding stopped = finding(overHard, FindingKind.STOPPED_TIME);
        PriceSteps.Stops steps = (PriceSteps.Stops) requireNonNull(stopped.priceSteps());
        int seconds = steps.stops().stream().mapToInt(Interval::seconds).sum();
        assertThat(seconds / 60.0)
                .isCloseTo(stopped.evidence().get("totalMinutes").orElseThrow(), within(1e-9));
        assertThat(steps.stops().get(0).fromSecond()).isEqualTo(stopped.when().fromSecond());
    }

    @Test
    void areLeftOutWhereNothingIsReckoned() {
        RideReview overHard = overHard();
        Optional<Finding> drift = overHard.pacing().finding(FindingKind.DRIFT);
        assertThat(drift.orElseThrow().priceSteps()).isNull();
    }
}
