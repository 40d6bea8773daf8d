package io.github.wattledger.pacing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.clean.Cleaning;
import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.pacing.price.LostTime;
import io.github.wattledger.pacing.price.Pricing;
import io.github.wattledger.pacing.price.Repair;
import io.github.wattledger.pacing.price.StretchChange;
import io.github.wattledger.replay.Replay;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.RigChoice;
import io.github.wattledger.simulation.Course;
import io.github.wattledger.simulation.PacingPlan;
import io.github.wattledger.simulation.RoadSimulation;
import io.github.wattledger.simulation.Scenario;
import io.github.wattledger.simulation.SimulatedRider;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The law: repairing all mistakes saves no less than repairing one of them, whatever they are and however they overlap. */
class AllAtOnceTest {
    private static final Ride RIDE = Cleaning.clean(RoadSimulation.ride(Scenario.of(
                            Course.builder()
                                    .startLine(45, 0, 100)
                                    .stretch(30_000, 0, 0.006)
                                    .rollers(60, 3000)
                                    .build(),
                            SimulatedRider.tireless(),
                            PacingPlan.startThenRest(240, 1200, 190)))
                    .toRecording())
            .ride();
    private static final RigChoice RIG = RigChoice.ofNoRide(null, null, null, null, Position.HOODS);
    private static final double TARGET_W = 200;

    private static io.github.wattledger.course.Course course() {
        return io.github.wattledger.course.Course.of(RIDE).orElseThrow();
    }

    private static Repair repair(Random random) {
        int from = random.nextInt(RIDE.seconds() - 700);
        Interval when = new Interval(from, Math.min(RIDE.seconds(), from + 60 + random.nextInt(1500)));
        return switch (random.nextInt(3)) {
            case 0 ->
                new Repair(
                        Repair.Turn.FACTORS,
                        List.of(new Repair.Stretch(
                                when, StretchChange.TO_MIDDLE_POWER, 200, 200 * (0.75 + 0.25 * random.nextDouble()))),
                        random.nextBoolean() ? 0 : from);
            case 1 ->
                new Repair(
                        Repair.Turn.FACTORS,
                        List.of(new Repair.Stretch(
                                when, StretchChange.TO_EARLIER_POWER, 200, 200 * (1 + 0.25 * random.nextDouble()))),
                        0);
            default ->
                new Repair(
                        Repair.Turn.CAPS,
                        List.of(new Repair.Stretch(
                                when, StretchChange.CAPPED_AT_TARGET, Double.NaN, 180 + 60 * random.nextDouble())),
                        from);
        };
    }

    private static double highMinutes(Cost cost) {
        return cost instanceof Cost.Priced priced ? priced.highMinutes() : 0;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void savesNoLessThanAnyOfThem(long seed) {
        Random random = new Random(seed);
        Replay replay = Replay.of(RIDE, course(), RIG.rig()).orElseThrow(AssertionError::new);
        Pricing pricing = new Pricing(RIDE, 0, TARGET_W, replay, RIG, Cancellation.NEVER);
        List<Repair> repairs = new ArrayList<>();
        for (int i = 0; i < 2 + random.nextInt(3); i++) {
            repairs.add(repair(random));
        }
        repairs.sort(Comparator.comparingDouble(
                (Repair each) -> -highMinutes(pricing.price(each).cost())));
        List<Detection> detections = repairs.stream()
                .map(each -> new Detection(
                        FindingKind.FADE,
                        new Found(
                                Severity.MINOR,
                                each.stretches().get(0).when(),
                                Evidence.none(),
                                new Advice("none", null, null),
                                each)))
                .toList();
        double most = highMinutes(pricing.price(repairs.get(0)).cost());

        List<Cost> alone =
                repairs.stream().map(each -> pricing.price(each).cost()).toList();
        Pricing.Together together = pricing.priceOfAll(repairs, alone);
        assertThat(highMinutes(together.cost())).isGreaterThanOrEqualTo(most);
        if (together.cost() instanceof Cost.Priced priced) {
            // The definition of a split: what was lost in all places is what was lost.
            Interval whole = new Interval(0, RIDE.seconds());
            LostTime lost = Objects.requireNonNull(together.lost());
            assertThat(lost.lowMinutes(whole)).isCloseTo(priced.lowMinutes(), within(1e-6));
            assertThat(lost.highMinutes(whole)).isCloseTo(priced.highMinutes(), within(1e-6));
        }
        List<TimeLedger.Entry> entries = PricedFindings.of(
                        RaceByHand.race(RIDE),
                        course(),
                        detections,
                        RIG,
                        RaceByHand.ability(TARGET_W),
                        Company.NOT_SAID,
                        null,
                        Cancellation.NEVER)
                .entries();
        List<TimeLedger.Entry> parts = entries.stream()
                .filter(entry -> entry.label().equals(FindingKind.FADE.id()))
                .toList();
        if (parts.size() < 2) {
            // What cannot be priced is no part, and one part needs no line for all.
            assertThat(entries).extracting(TimeLedger.Entry::label).doesNotContain(TimeLedger.ALL_AT_ONCE);
            return;
        }
        TimeLedger.Entry all = entries.get(parts.size());
        assertThat(all.label()).isEqualTo(TimeLedger.ALL_AT_ONCE);
        for (TimeLedger.Entry entry : parts) {
            assertThat(all.minutesLow()).isGreaterThanOrEqualTo(entry.minutesLow());
            assertThat(all.minutesHigh()).isGreaterThanOrEqualTo(entry.minutesHigh());
        }
    }
}
