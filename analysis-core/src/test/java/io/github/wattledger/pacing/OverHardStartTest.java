package io.github.wattledger.pacing;

import static io.github.wattledger.pacing.RaceByHand.HOUR;
import static io.github.wattledger.pacing.RaceByHand.TARGET_W;
import static io.github.wattledger.pacing.RaceByHand.THRESHOLD_W;
import static io.github.wattledger.pacing.RaceByHand.changes;
import static io.github.wattledger.pacing.RaceByHand.evidence;
import static io.github.wattledger.pacing.RaceByHand.found;
import static io.github.wattledger.pacing.RaceByHand.known;
import static io.github.wattledger.pacing.RaceByHand.onRoad;
import static io.github.wattledger.pacing.RaceByHand.race;
import static io.github.wattledger.pacing.RaceByHand.ride;
import static io.github.wattledger.pacing.RaceByHand.spending;
import static io.github.wattledger.pacing.RaceByHand.steady;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.pacing.price.StretchChange;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import java.util.Arrays;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The opening of a race, on both sides of each limit of {@code docs/methods.md}. */
class OverHardStartTest {
    /** Two hours; the opening, twenty minutes, at a multiple of the target, the rest at nine tenths of it. */
    private Race opening(double ofTarget) {
        double[] watts = steady(2 * HOUR, 0.9 * TARGET_W);
        Arrays.fill(watts, 0, 1200, ofTarget * TARGET_W);
        return race(watts);
    }

    /** How strong it was counts where the race could not be ridden again. */
    @ParameterizedTest
    @CsvSource({"1.11, MINOR", "1.14, MINOR", "1.16, MODERATE", "1.24, MODERATE", "1.26, MAJOR"})
    void areGradedByTheTarget(double ofTarget, Severity severity) {
        assertThat(found(new OverHardStart(), opening(ofTarget)).severity()).isEqualTo(severity);
    }

    @Test
    void areNotToldUpToATenthAbove() {
        assertThat(new OverHardStart().detect(opening(1.09))).isEmpty();
    }

    @Test
    void carryTheirNumbers() {
        // Twenty minutes: ten at 250 W, threshold itself, five at 280 W, five paused with power recorded. Target
        // 200 W.
        IntToDoubleFunction watts = second -> second < 600 ? 250 : second < 900 ? 280 : second < 1200 ? 400 : 150;
        Ride ride = ride(2 * HOUR + 300, watts, second -> second < 600 ? 150 : 160)
                .state(new Interval(900, 1200), SecondState.PAUSED)
                .build();
        Found start = found(new OverHardStart(), race(ride, spending()));
        // Twenty moving minutes end at 1,500 s: 600 s x 50 W + 300 s x 80 W - 300 s x 50 W.
        assertThat(start.when()).isEqualTo(new Interval(0, 1500));
        assertThat(evidence(start, "openingSeconds")).isEqualTo(1500);
        assertThat(evidence(start, "excessWorkKJ")).isCloseTo(39, within(1e-9));
        assertThat(evidence(start, "minutesAboveThreshold")).isCloseTo(5, within(1e-9));
        assertThat(evidence(start, "targetW")).isEqualTo(TARGET_W);
        assertThat(evidence(start, "openingHeartRateBpm")).isCloseTo(155, within(1e-9));
        assertThat(evidence(start, "thresholdHeartRateFraction")).isCloseTo(155 / 165.0, within(1e-12));
        // Critical power 260 W: 300 s x 20 J of 20 kJ are spent.
        assertThat(evidence(start, "lowestWPrimeShare")).isCloseTo(0.7, within(1e-9));
        Found without = found(new OverHardStart(), race(ride, new Thresholds(known(THRESHOLD_W), null, null)));
        assertThat(without.evidence().get("thresholdHeartRateFraction")).isEmpty();
        assertThat(without.evidence().get("lowestWPrimeShare")).isEmpty();
    }

    /** 222 W are 1.11 of the target. The middle is what follows up to two thirds: 222 / 1.06 = 209.4 W. */
    @ParameterizedTest
    @CsvSource({"209, true", "210, false"})
    void areHeldAgainstTheMiddleOfTheRace(double middleW, boolean isOverHard) {
        double[] watts = steady(2 * HOUR, middleW);
        Arrays.fill(watts, 0, 1200, 222);
        assertThat(new OverHardStart().detect(race(watts)).isPresent()).isEqualTo(isOverHard);
    }

    /** Two thirds of two hours at 222 W, then 150 W: the end collapsed, the start was like the middle. */
    @Test
    void areNotBlamedForAnEndThatCollapsed() {
        double[] watts = steady(2 * HOUR, 222);
        Arrays.fill(watts, 4800, 7200, 150);
        assertThat(new OverHardStart().detect(race(watts))).isEmpty();
    }

    /** Two hours; the opening, twenty minutes, at one power, the rest at another, with a plan for the opening. */
    private static Race planned(double openingW, double restW, double capW) {
        double[] watts = steady(2 * HOUR, restW);
        Arrays.fill(watts, 0, 1200, openingW);
        return RaceByHand.planned(watts, capW, RaceByHand.THRESHOLDS, TARGET_W);
    }

    /** More than 5 % above what the plan allows; the target of 200 W, of which 1.10 is the limit, has no say. */
    @ParameterizedTest
    @CsvSource({"202, 180, 193, false", "204, 180, 193, true", "240, 180, 230, false", "204, 204, 193, false"})
    void areHeldAgainstThePlan(double openingW, double restW, double capW, boolean isOverHard) {
        assertThat(new OverHardStart().detect(planned(openingW, restW, capW)).isPresent())
                .isEqualTo(isOverHard);
    }

    /** A cap of 210 W is 1.05 of 200 W: the grades are those of a target of 200 W. */
    @ParameterizedTest
    @CsvSource({"222, MINOR", "229, MINOR", "231, MODERATE", "249, MODERATE", "251, MAJOR"})
    void areGradedByThePlan(double openingW, Severity severity) {
        Found start = found(new OverHardStart(), planned(openingW, 180, 210));
        assertThat(start.severity()).isEqualTo(severity);
        assertThat(start.advice().capW()).isEqualTo(210);
        assertThat(evidence(start, "plannedCapW")).isEqualTo(210);
    }

    @Test
    void needNoThresholdWhereThereIsAPlan() {
        double[] watts = steady(2 * HOUR, 180);
        Arrays.fill(watts, 0, 1200, 240);
        Thresholds none =
                new Thresholds(new KnownThreshold(null, KnownThreshold.Doubt.NONE, Evidence.none()), null, null);
        Evidence evidence = found(new OverHardStart(), RaceByHand.planned(watts, 193, none, null))
                .evidence();
        assertThat(evidence.get("targetW")).isEmpty();
        assertThat(evidence.get("minutesAboveThreshold")).isEmpty();
        assertThat(evidence.get("excessWorkKJ")).isEmpty();
        assertThat(evidence.get("overMiddlePercent").orElseThrow()).isCloseTo(100.0 / 3, within(0.5));
    }

    /** The opening is a climb of 5.5 %, and so are ten minutes in the middle; the rest is level at 190 W. */
    private static Race climbFirst(double openingW) {
        return race(onRoad(
                2 * HOUR,
                second -> second < 1200 ? openingW : isClimb(second) ? 250 : 190,
                second -> isClimb(second) ? 0.055 : 0));
    }

    private static boolean isClimb(int second) {
        return second < 1200 || (second >= 3000 && second < 3600);
    }

    /** 250 W up both climbs is 1.25 of the target, and no harder than later. */
    @Test
    void areNoneWhereTheRaceBeginsWithAClimb() {
        assertThat(new OverHardStart().detect(climbFirst(250))).isEmpty();
    }

    /** 275 W are a tenth above the climb in the middle. It is brought to that, never to the 200 W of the target. */
    @Test
    void areBroughtToTheMiddleOnLikeGround() {
        Found start = found(new OverHardStart(), climbFirst(275));
        assertThat(evidence(start, "overMiddlePercent")).isCloseTo(10, within(0.5));
        assertThat(changes(start)).singleElement().satisfies(change -> {
            assertThat(change.change()).isEqualTo(StretchChange.TO_MIDDLE_POWER);
            assertThat(change.when()).isEqualTo(start.when());
            assertThat(change.fromW()).isCloseTo(275, within(1.0));
            assertThat(change.toW()).isCloseTo(250, within(1.5));
        });
    }

    /** A climb at the start with no other like it compares with nothing, and nothing is said. */
    @Test
    void areNoneWhereNoGroundIsShared() {
        Race race = race(onRoad(
                2 * HOUR,
                second -> second < 1200 ? 280 : 190,
                second -> second < 1200 ? 0.055 : second < 1260 ? 0.02 : 0));
        assertThat(new OverHardStart().detect(race)).isEmpty();
    }
}
