package io.github.wattledger.pacing;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.clean.Cleaning;
import io.github.wattledger.intake.Selection;
import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.pacing.price.Pricing;
import io.github.wattledger.pacing.price.Repair;
import io.github.wattledger.pacing.price.StretchChange;
import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.replay.Replay;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.LongBest;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.RigChoice;
import io.github.wattledger.simulation.Course;
import io.github.wattledger.simulation.PacingPlan;
import io.github.wattledger.simulation.RoadSimulation;
import io.github.wattledger.simulation.SampleRides;
import io.github.wattledger.simulation.Scenario;
import io.github.wattledger.simulation.SimulatedRide;
import io.github.wattledger.simulation.SimulatedRider;
import java.time.Instant;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Prices against full forward simulations of the repaired race, which share no code with the replay. */
class PricingTest {
    private static final double THRESHOLD_W = 250;

    /** Mass as simulated (bicycle 11 kg is the typical one); drag and rolling are left to the review to find out. */
    private static final Rider RIDER =
            Rider.UNKNOWN.withThresholdPowerW(THRESHOLD_W).withMassKg(74);

    /** Prices are in minutes and judged to 5 s or 5 %. */
    private static double tolerance(double minutes) {
        return Math.max(5 / 60.0, 0.05 * Math.abs(minutes));
    }

    private static Scenario road(double rollerHeightM, PacingPlan plan) {
        Course course = Course.builder()
                .startLine(45, 0, 100)
                .stretch(100_000, 0, 0.006)
                .rollers(rollerHeightM, 3000)
                .build();
        return Scenario.of(course, SimulatedRider.tireless(), plan);
    }

    private static RideReview review(SimulatedRide ride) {
        return Reviewer.review(ride.toRecording(), RIDER, ReviewOptions.WHOLE_RIDE);
    }

    private static Finding finding(RideReview review, FindingKind kind) {
        return review.pacing()
                .finding(kind)
                .orElseThrow(() -> new AssertionError(
                        kind + " not among " + review.pacing().findings()));
    }

    private static Cost.Priced price(RideReview review, FindingKind kind) {
        return (Cost.Priced) finding(review, kind).cost();
    }

    private static TimeLedger.Entry entry(RideReview review, String labelStart) {
        return review.pacing().ledger().entries().stream()
                .filter(each -> each.label().startsWith(labelStart))
                .findFirst()
                .orElseThrow(() -> new AssertionError(
                        labelStart + " not among " + review.pacing().ledger().entries()));
    }

    /** Minutes that a family of simulated rides saves once a quantity equals that of the recorded one. */
    private static double truth(
            Scenario recorded, DoubleFunction<PacingPlan> repaired, ToDoubleFunction<SimulatedRide> quantity) {
        SimulatedRide ridden = RoadSimulation.ride(recorded);
        double aim = quantity.applyAsDouble(ridden);
        double low = 0.5;
        double high = 2;
        SimulatedRide other = ridden;
        while (high - low > 1e-5) {
            double middle = (low + high) / 2;
            other = RoadSimulation.ride(recorded.withPlan(repaired.apply(middle)));
            if (quantity.applyAsDouble(other) < aim) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (finishSeconds(ridden) - finishSeconds(other)) / 60;
    }

    private static double finishSeconds(SimulatedRide ride) {
        return ride.seconds() - unusedShare(ride);
    }

    private static double unusedShare(SimulatedRide ride) {
        int last = ride.seconds() - 1;
        return (ride.truth(Channel.DISTANCE).get(last)
                        - ride.scenario().course().lengthM())
                / ride.truth(Channel.SPEED).get(last);
    }

    private static double workJ(SimulatedRide ride) {
        return mean(ride, watts -> watts) * finishSeconds(ride);
    }

    /** Power is steady for long stretches here, so that its 30-second mean is itself. */
    private static double fourthPower(SimulatedRide ride) {
        return mean(ride, watts -> watts * watts * watts * watts);
    }

    private static double mean(SimulatedRide ride, ToDoubleFunction<Double> of) {
        Series watts = ride.truth(Channel.POWER);
        int last = ride.seconds() - 1;
        double sum = 0;
        for (int second = 0; second <= last; second++) {
            double weight = second == last ? 1 - unusedShare(ride) : 1;
            sum += weight * of.applyAsDouble(watts.get(second));
        }
        return sum / finishSeconds(ride);
    }

    @Nested
    class OverHardStartPrice {
        @ParameterizedTest
        @CsvSource({"0, 240", "0, 260", "0, 280", "80, 250", "80, 280"})
        void agreesWithTheForwardSimulation(double rollerHeightM, double openingW) {
            Scenario race = road(rollerHeightM, PacingPlan.startThenRest(openingW, 1800, 190));
            RideReview review = review(RoadSimulation.ride(race));
            Finding start = finding(review, FindingKind.OVER_HARD_START);
            Cost.Priced price = (Cost.Priced) start.cost();
            // Brought to the middle of the race: the opening was so many percent above it.
            double level = 1 / (1 + start.evidence().get("overMiddlePercent").orElseThrow() / 100);
            double levelledM = requireNonNull(start.endM());
            double hardM = RoadSimulation.ride(race).truth(Channel.DISTANCE).get(1800);
            // Power belongs to a place of the road, whenever the repaired race gets there.
            DoubleFunction<PacingPlan> repaired = share -> moment ->
                    (moment.distanceM() < hardM ? openingW : 190) * (moment.distanceM() < levelledM ? level : share);

            double equalWork = truth(race, repaired, PricingTest::workJ);
            double equalNormalized = truth(race, repaired, PricingTest::fourthPower);

            // On grades to 8 % a change by a quarter is computed to 10 s, a second in twenty minutes.
            double least = rollerHeightM > 0 ? 10 / 60.0 : 5 / 60.0;
            assertThat(price.highMinutes())
                    .isCloseTo(equalNormalized, within(Math.max(least, tolerance(equalNormalized))));
            assertThat(price.lowMinutes())
                    .isCloseTo(Math.max(0, equalWork), within(Math.max(least, tolerance(equalWork))));
        }
    }

    @Nested
    class AbilityLine {
        /**
         * The guide holds eight of ten riders of one threshold (trials on simulated seasons, RH-1), and so does the line: at
         * each end against the ride that holds so much for the time it then takes.
         */
        @ParameterizedTest
        @CsvSource({"0, 182", "80, 165", "0, 200"})
        void endsAgreeWithTheForwardSimulation(double rollerHeightM, double watts) {
            Scenario race = road(rollerHeightM, PacingPlan.steady(watts));
            SimulatedRide ridden = RoadSimulation.ride(race);
            double half = halfRange(finishSeconds(ridden) / 3600);
            double low = truth(race, ridden, watts, Math.exp(-half));
            double high = truth(race, ridden, watts, Math.exp(half));

            TimeLedger.Entry line = entry(withoutADevice(ridden), "against your ability (a guide)");

            assertThat(high).isGreaterThan(Math.max(1, low));
            assertThat(line.minutesLow()).isCloseTo(Math.max(0, low), within(tolerance(low)));
            assertThat(line.minutesHigh()).isCloseTo(high, within(tolerance(high)));
        }

        /** Half of the guide's 80 % range by its definition: threshold 3 %, exponent 0.055, bend 0.006. */
        private static double halfRange(double hours) {
            double log = Math.log(hours);
            return 1.2816 * Math.sqrt(0.03 * 0.03 + Math.pow(0.055 * log, 2) + Math.pow(0.006 * log * log, 2));
        }

        /** The device knows the highest heart rate of the rider, by which a ride as easy for the heart as this refutes the threshold. */
        private RideReview withoutADevice(SimulatedRide ridden) {
            Ride ride = Cleaning.clean(ridden.toRecording()).ride();
            return Reviewer.review(ride, RIDER, ReviewOptions.WHOLE_RIDE);
        }

        private double truth(Scenario race, SimulatedRide ridden, double watts, double ofGuide) {
            double low = 0.7 * watts;
            double high = 2 * watts;
            while (high - low > 1e-4) {
                double middle = (low + high) / 2;
                double seconds = finishSeconds(RoadSimulation.ride(race.withPlan(PacingPlan.steady(middle))));
                if (middle < ofGuide * SustainablePower.guideW(THRESHOLD_W, seconds)) {
                    low = middle;
                } else {
                    high = middle;
                }
            }
            return (finishSeconds(ridden) - finishSeconds(RoadSimulation.ride(race.withPlan(PacingPlan.steady(low)))))
                    / 60;
        }

        @Test
        void isZeroForWhoRodeAboveTheGuide() {
            RideReview review = review(RoadSimulation.ride(road(0, PacingPlan.steady(235))));
            assertThat(entry(review, "against your ability").minutesHigh()).isZero();
        }

        @Test
        void saysWhereItsTargetComesFrom() {
            List<LongBest> bests = List.of(
                    new LongBest(1200, 260, null), new LongBest(3600, 240, null), new LongBest(10_800, 220, null));
            RideReview review = Reviewer.review(
                    RoadSimulation.ride(road(0, PacingPlan.steady(200))).toRecording(),
                    RIDER.withLongBests(bests),
                    ReviewOptions.WHOLE_RIDE);
            assertThat(entry(review, "against your ability").label()).isEqualTo("against your ability (own bests)");
        }

        @Test
        void isNotDrawnForATrainingRide() {
            RideReview review = review(RoadSimulation.ride(road(0, PacingPlan.steady(120))));
            assertThat(review.pacing().verdict()).isEqualTo(Verdict.NOT_JUDGED);
            assertThat(review.pacing().ledger().entries()).isEmpty();
            assertThat(review.pacing().ledger().notes()).isEmpty();
        }
    }

    @Nested
    class OtherPrices {
        /** On the flat, power that falls in the middle costs at most what evening it out wins. */
        @Test
        void fadeAgreesWithTheForwardSimulation() {
            Scenario race = road(0, moment -> moment.distanceM() < 60_000 ? 220 : 180);
            RideReview review = review(RoadSimulation.ride(race));
            double truth = truth(race, share -> moment -> 200 * share, PricingTest::workJ);

            Cost.Priced price = price(review, FindingKind.FADE);

            // The onset is found to within a block of ten minutes, so the two levels are not told apart exactly.
            assertThat(price.lowMinutes()).isCloseTo(truth, within(0.3 * truth));
            assertThat(price.highMinutes()).isGreaterThanOrEqualTo(price.lowMinutes());
        }

        @Test
        void lateReserveAgreesWithTheForwardSimulation() {
            Scenario race = road(0, moment -> moment.distanceM() < 83_000 ? 190 : 240);
            RideReview review = review(RoadSimulation.ride(race));
            double truth = truth(race, share -> moment -> 200 * share, PricingTest::workJ);

            assertThat(price(review, FindingKind.LATE_RESERVE).lowMinutes()).isCloseTo(truth, within(0.2 * truth));
        }

        /** On a level road even power is the fastest for its work, and surges cost normalized power dearly. */
        @Test
        void surgesCostMoreForTheSameNormalizedPower() {
            Scenario race = road(0, PacingPlan.steady(185).withSurges(600, 9000, 120, 20, 420));
            Cost.Priced price = price(review(RoadSimulation.ride(race)), FindingKind.SURGES);

            assertThat(price.highMinutes()).isGreaterThan(price.lowMinutes() + 0.5);
            assertThat(price.lowMinutes()).isGreaterThanOrEqualTo(0);
        }

        /** A stop has a price of its own, so with one mistake beside it the line for all is their sum. */
        @Test
        void allAtOnceIsTheOneMistakeAndTheStops() {
            Ride raced = Cleaning.clean(RoadSimulation.ride(road(0, moment -> moment.distanceM() < 83_000 ? 190 : 240))
                            .toRecording())
                    .ride();
            RideReview without = Reviewer.review(raced, RIDER, ReviewOptions.WHOLE_RIDE);
            RideReview stopping = Reviewer.review(stopped(raced, 6000, 300), RIDER, ReviewOptions.WHOLE_RIDE);

            assertThat(without.pacing().ledger().entries())
                    .extracting(TimeLedger.Entry::label)
                    .containsExactly("late-reserve", "against your ability (a guide)");
            TimeLedger.Entry reserve = entry(stopping, "late-reserve");
            TimeLedger.Entry all = entry(stopping, "all of these repaired at once");
            // 12 s for slowing down and getting going again.
            assertThat(entry(stopping, "stopped-time").minutesLow()).isEqualTo(5);
            assertThat(entry(stopping, "stopped-time").minutesHigh()).isCloseTo(5.2, within(1e-9));
            assertThat(reserve.minutesHigh()).isPositive();
            assertThat(all.minutesLow()).isCloseTo(reserve.minutesLow() + 5, within(1e-9));
            assertThat(all.minutesHigh()).isCloseTo(reserve.minutesHigh() + 5.2, within(1e-9));
        }

        private Ride stopped(Ride ride, int at, int seconds) {
            Ride.Builder longer = Ride.builder(ride.start(), ride.seconds() + seconds);
            for (Channel channel : ride.channels()) {
                Series series = ride.series(channel);
                boolean rests = channel == Channel.POWER || channel == Channel.SPEED;
                longer.channel(
                        channel,
                        Series.generate(
                                ride.seconds() + seconds,
                                second -> second < at
                                        ? series.get(second)
                                        : second >= at + seconds
                                                ? series.get(second - seconds)
                                                : rests ? 0 : series.get(at - 1)));
            }
            return longer.state(new Interval(at, at + seconds), SecondState.STOPPED)
                    .build();
        }

        @Test
        void allAtOnceIsNoSumOfItsParts() {
            RideReview review =
                    Reviewer.review(SampleRides.overHardStart().toRecording(), Rider.UNKNOWN, ReviewOptions.WHOLE_RIDE);
            TimeLedger ledger = review.pacing().ledger();
            TimeLedger.Entry all = entry(review, "all of these repaired at once");

            assertThat(ledger.entries().size()).isGreaterThan(3);
            assertThat(all.minutesHigh()).isGreaterThanOrEqualTo(all.minutesLow());
            assertThat(all.minutesLow())
                    .isGreaterThanOrEqualTo(entry(review, "stopped-time").minutesLow());
            assertThat(String.join(" ", ledger.notes()))
                    .contains("need not add up")
                    .contains("The prices rest on");
        }

        @Test
        void everyPriceHasItsEndsInOrderAndNoneBelowZero() {
            for (RideReview review : List.of(
                    Reviewer.review(SampleRides.overHardStart().toRecording(), RIDER, ReviewOptions.WHOLE_RIDE),
                    Reviewer.review(SampleRides.evenPaced().toRecording(), RIDER, ReviewOptions.WHOLE_RIDE))) {
                for (TimeLedger.Entry entry : review.pacing().ledger().entries()) {
                    assertThat(entry.minutesLow()).isGreaterThanOrEqualTo(0);
                    assertThat(entry.minutesHigh()).isGreaterThanOrEqualTo(entry.minutesLow());
                }
            }
        }
    }

    @Nested
    class Refusals {
        @ParameterizedTest
        @CsvSource({"ALTITUDE, no altitude in this file", "DISTANCE, no distance in this file"})
        void nameWhatIsMissing(Channel missing, String reason) {
            Ride ride = Cleaning.clean(RoadSimulation.ride(road(0, PacingPlan.startThenRest(270, 1800, 190)))
                            .toRecording())
                    .ride();
            Ride.Builder without = Ride.builder(ride.start(), ride.seconds());
            for (Channel each : ride.channels()) {
                if (each != missing) {
                    without.channel(each, ride.series(each));
                }
            }
            RideReview review = Reviewer.review(without.build(), RIDER, ReviewOptions.WHOLE_RIDE);

            assertThat(finding(review, FindingKind.OVER_HARD_START).cost()).isEqualTo(new Cost.NotPriced(reason));
            assertThat(review.pacing().ledger().entries()).isEmpty();
        }

        /** An hour at 8 m/s: twenty minutes at 300 W, then coasting but for the given seconds at 200 W, up to minute 40. */
        private Ride startThenCoasting(int pedalledSeconds) {
            int seconds = 3601;
            return Ride.builder(Instant.EPOCH, seconds)
                    .channel(
                            Channel.POWER,
                            Series.generate(
                                    seconds,
                                    second -> second < 1200
                                            ? 300
                                            : second >= 2400 - pedalledSeconds && second < 2400 ? 200 : 0))
                    .channel(Channel.SPEED, Series.generate(seconds, second -> 8))
                    .channel(Channel.DISTANCE, Series.generate(seconds, second -> 8.0 * (second + 1)))
                    .channel(Channel.ALTITUDE, Series.generate(seconds, second -> 40))
                    .build();
        }

        /**
         * 100 W of 1,200 s are 120 kJ, ten times what 60 s at 200 W hold, and nobody rides them eleven times as hard. A part
         * that is asked for keeps its easy end.
         */
        @Test
        void nameWhatCannotBeMadeUpFor() {
            RideReview review = Reviewer.review(
                    startThenCoasting(60),
                    RIDER,
                    ReviewOptions.WHOLE_RIDE
                            .withSelection(Selection.WHOLE_RIDE.withSeconds(0, 3600))
                            .withEffort(Effort.RACE));
            assertThat(finding(review, FindingKind.OVER_HARD_START).cost())
                    .isEqualTo(new Cost.NotPriced("the rest could not make up for it within what a rider can do"));
        }

        @Test
        void nameThatNothingIsLeftToMakeUpForIt() {
            Ride ride = startThenCoasting(0);
            RigChoice rig = RigChoice.ofNoRide(null, null, null, null, Position.HOODS);
            Replay replay = Replay.of(
                            ride, io.github.wattledger.course.Course.of(ride).orElseThrow(), rig.rig())
                    .orElseThrow(AssertionError::new);
            Repair repair = new Repair(
                    Repair.Turn.FACTORS,
                    List.of(new Repair.Stretch(new Interval(0, 1200), StretchChange.TO_MIDDLE_POWER, 300, 200)),
                    0);
            assertThat(new Pricing(ride, 0, 250, replay, rig, Cancellation.NEVER)
                            .price(repair)
                            .cost())
                    .isEqualTo(new Cost.NotPriced("there are no pedalled seconds left that could make up for it"));
        }

        @Test
        void powerAloneIsJudgedWithoutPrices() {
            Ride ride = Ride.builder(Instant.EPOCH, 4 * 3600)
                    .channel(Channel.POWER, Series.generate(4 * 3600, second -> second < 2400 ? 260 : 190))
                    .build();
            RideReview review = Reviewer.review(ride, RIDER, ReviewOptions.WHOLE_RIDE.withEffort(Effort.RACE));
            assertThat(finding(review, FindingKind.OVER_HARD_START).cost()).isInstanceOf(Cost.NotPriced.class);
        }
    }
}
