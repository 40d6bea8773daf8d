package io.github.wattledger.pacing;

import static io.github.wattledger.pacing.RaceByHand.HOUR;
import static io.github.wattledger.pacing.RaceByHand.changes;
import static io.github.wattledger.pacing.RaceByHand.evidence;
import static io.github.wattledger.pacing.RaceByHand.found;
import static io.github.wattledger.pacing.RaceByHand.onRoad;
import static io.github.wattledger.pacing.RaceByHand.race;
import static io.github.wattledger.pacing.RaceByHand.steady;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.pacing.price.StretchChange;
import io.github.wattledger.ride.Interval;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The end was ridden harder than what came before, on both sides of each limit of {@code docs/methods.md}. */
class LateReserveTest {
    /** Two hours; the last sixth, twenty minutes, at a multiple of the 200 W before. */
    private static Race ending(double overBefore) {
        double[] watts = steady(2 * HOUR, 200);
        Arrays.fill(watts, 6000, 7200, overBefore * 200);
        return race(watts);
    }

    /** How strong it was counts where the race could not be ridden again. */
    @ParameterizedTest
    @CsvSource({"1.066, MINOR", "1.149, MINOR", "1.151, MODERATE"})
    void isGradedByTheGain(double overBefore, Severity severity) {
        Found reserve = found(new LateReserve(), ending(overBefore));
        assertThat(reserve.severity()).isEqualTo(severity);
        assertThat(evidence(reserve, "gainPercent")).isCloseTo((overBefore - 1) * 100, within(1e-6));
        assertThat(evidence(reserve, "lastSixthNormalizedPowerW")).isCloseTo(overBefore * 200, within(1e-9));
        assertThat(evidence(reserve, "restNormalizedPowerW")).isCloseTo(200, within(1e-9));
        assertThat(reserve.when()).isEqualTo(new Interval(6000, 7200));
    }

    @Test
    void isNotReportedUnderSixAndAHalfPercent() {
        assertThat(new LateReserve().detect(ending(1.064))).isEmpty();
    }

    /** Ten minutes up 5.5 % at 240 W and ten level at 190 W in turn; the last sixth is all climb. */
    private static Race climbLast(double lastW) {
        return race(onRoad(
                2 * HOUR,
                second -> second >= 6000 ? lastW : isClimb(second) ? 240 : 190,
                second -> second >= 6000 || isClimb(second) ? 0.055 : 0));
    }

    private static boolean isClimb(int second) {
        return second / 600 % 2 == 0;
    }

    /** 240 W are 12 % above the 215 W before, and just what the climbs before had. */
    @Test
    void aClimbAtTheEndIsNone() {
        assertThat(new LateReserve().detect(climbLast(240))).isEmpty();
    }

    /** 264 W up the last climb are a tenth more than up the ones before, and are evened out to them. */
    @Test
    void isBroughtToTheEffortBeforeItOnLikeGround() {
        Found reserve = found(new LateReserve(), climbLast(264));
        assertThat(evidence(reserve, "gainPercent")).isCloseTo(10, within(0.5));
        assertThat(changes(reserve)).singleElement().satisfies(change -> {
            assertThat(change.change()).isEqualTo(StretchChange.TO_POWER_BEFORE);
            assertThat(change.when()).isEqualTo(new Interval(6000, 7200));
            assertThat(change.toW() / change.fromW()).isCloseTo(1 / 1.1, within(0.005));
        });
    }
}
