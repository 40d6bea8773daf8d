package io.github.wattledger.pacing;

import static io.github.wattledger.pacing.JudgementLimit.*;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.entry;

import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.course.Course;
import io.github.wattledger.power.Ability;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rider.RideNotes;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.RigChoice;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class JudgementLimitsTest {
    /** The limits of the judgement as the methods of this project state them. */
    @Test
    void theUsualValuesAreThoseOfTheMethods() {
        Map<JudgementLimit, Double> usual = new LinkedHashMap<>();
        for (JudgementLimit limit : JudgementLimit.values()) {
            usual.put(limit, JudgementLimits.USUAL.get(limit));
        }
        assertThat(usual)
                .containsExactly(
                        entry(RACE_EFFORT_FRACTION, 0.85),
                        entry(OVER_HARD_START_OVER_TARGET, 1.10),
                        entry(OVER_HARD_START_OVER_REST, 1.06),
                        entry(NEAR_THRESHOLD_FRACTION, 0.95),
                        entry(NEAR_THRESHOLD_SECONDS, 480.0),
                        entry(SURGE_FRACTION, 1.2),
                        entry(SURGE_SECONDS, 8.0),
                        entry(FADE_PERCENT, 10.0),
                        entry(DRIFT_PERCENT, 2.5),
                        entry(UNDER_PACED_FRACTION, 0.92),
                        entry(LATE_RESERVE_OVER_REST, 1.065),
                        entry(STOP_SECONDS, 60.0));
    }

    @ParameterizedTest
    @EnumSource
    void everyUsualValueLiesWithinItsBounds(JudgementLimit limit) {
        assertThat(JudgementLimits.USUAL.with(limit, limit.usual())).isEqualTo(JudgementLimits.USUAL);
        assertThatThrownBy(() -> JudgementLimits.USUAL.with(limit, Double.NaN))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith(limit.key());
    }

    @Test
    void areEqualWhenEachValueIs() {
        JudgementLimits changed = JudgementLimits.USUAL.with(FADE_PERCENT, 12);
        assertThat(changed)
                .isEqualTo(JudgementLimits.USUAL.with(FADE_PERCENT, 12))
                .hasSameHashCodeAs(JudgementLimits.USUAL.with(FADE_PERCENT, 12))
                .isNotEqualTo(JudgementLimits.USUAL)
                .isNotEqualTo(JudgementLimits.USUAL.with(FADE_PERCENT, 13))
                .isNotEqualTo("limits");
        assertThat(JudgementLimits.USUAL).hasToString("the usual limits");
        assertThat(changed).hasToString("the usual limits but {FADE_PERCENT=12.0}");
    }

    @Test
    void secondsAreWhole() {
        assertThatThrownBy(() -> JudgementLimits.USUAL.with(SURGE_SECONDS, 8.5))
                .hasMessage("surge_seconds 8.5, expected a whole number");
    }

    /**
     * Two hours at 250 W after a first 20 min at 290 W, against a target of 250 W: the opening stands at about 1.16 of
     * the target and of the middle, by the definition of the finding.
     */
    @Test
    void aDetectorListensToItsLimit() {
        double[] watts = new double[7200];
        Arrays.fill(watts, 250);
        Arrays.fill(watts, 0, 1200, 290);
        assertThat(kinds(watts, JudgementLimits.USUAL)).contains(FindingKind.OVER_HARD_START);
        assertThat(kinds(watts, JudgementLimits.USUAL.with(OVER_HARD_START_OVER_TARGET, 1.2)))
                .doesNotContain(FindingKind.OVER_HARD_START);
        assertThat(kinds(watts, JudgementLimits.USUAL.with(OVER_HARD_START_OVER_REST, 1.2)))
                .doesNotContain(FindingKind.OVER_HARD_START);
    }

    /** Six surges of 20 s an hour at 500 W over a threshold of 250 W spend 30 kJ an hour. */
    @Test
    void surgesListenToTheirs() {
        double[] watts = new double[7200];
        Arrays.fill(watts, 200);
        for (int second = 300; second < watts.length; second += 600) {
            Arrays.fill(watts, second, second + 20, 500);
        }
        assertThat(kinds(watts, JudgementLimits.USUAL)).contains(FindingKind.SURGES);
        assertThat(kinds(watts, JudgementLimits.USUAL.with(SURGE_SECONDS, 21))).doesNotContain(FindingKind.SURGES);
        assertThat(kinds(watts, JudgementLimits.USUAL.with(SURGE_FRACTION, 2.1)))
                .doesNotContain(FindingKind.SURGES);
    }

    private static Iterable<FindingKind> kinds(double[] watts, JudgementLimits limits) {
        Ride ride = Ride.ofWatts(watts);
        Ability ability = new Ability(null, null, Ability.Source.GUIDE, null, 250.0, ride.seconds(), null);
        return PacingReview.of(
                        ride,
                        null,
                        RacedPart.whole(ride),
                        0,
                        new Thresholds(RaceByHand.known(250), null, null),
                        ability,
                        RaceLength.of(ride, RacedPart.whole(ride)).opening(),
                        decide(new Circumstances(
                                ride,
                                new Interval(0, ride.seconds()),
                                false,
                                false,
                                1,
                                true,
                                250.0,
                                Effort.RACE,
                                false)),
                        limits,
                        RigChoice.ofNoRide(null, null, null, null, Position.HOODS)
                                .estimatedFrom(ride, Course.of(ride).orElse(null)),
                        RigChoice.ofNoRide(null, null, null, null, Position.HOODS),
                        RideNotes.NONE,
                        Company.NOT_SAID,
                        List.of(),
                        Cancellation.NEVER)
                .findings()
                .stream()
                .map(Finding::kind)
                .toList();
    }

    private static Occasion decide(Circumstances circumstances) {
        return OccasionRules.decide(circumstances, JudgementLimits.USUAL);
    }
}
