package io.github.wattledger.pacing;

import static io.github.wattledger.pacing.RaceByHand.HOUR;
import static io.github.wattledger.pacing.RaceByHand.THRESHOLD_W;
import static io.github.wattledger.pacing.RaceByHand.ability;
import static io.github.wattledger.pacing.RaceByHand.changes;
import static io.github.wattledger.pacing.RaceByHand.estimated;
import static io.github.wattledger.pacing.RaceByHand.evidence;
import static io.github.wattledger.pacing.RaceByHand.found;
import static io.github.wattledger.pacing.RaceByHand.race;
import static io.github.wattledger.pacing.RaceByHand.repaired;
import static io.github.wattledger.pacing.RaceByHand.steady;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.pacing.price.StretchChange;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A long stretch near threshold early in a long event, on both sides of each limit. */
class ThresholdRidingEarlyTest {
    private final ThresholdRidingEarly detector = new ThresholdRidingEarly();

    /** Six hours at 0 W but for stretches at 237.5 W, 0.95 x threshold: a window that leaves them lies below. */
    private Race riding(Interval... stretches) {
        double[] watts = new double[6 * HOUR];
        for (Interval stretch : stretches) {
            Arrays.fill(watts, stretch.fromSecond(), stretch.toSecond(), 237.5);
        }
        return race(watts);
    }

    @ParameterizedTest
    @CsvSource({"480, MINOR", "899, MINOR", "900, MODERATE", "1799, MODERATE", "1800, MAJOR"})
    void isGradedByItsLength(int seconds, Severity severity) {
        Found early = found(detector, riding(new Interval(2000, 2000 + seconds)));
        assertThat(early.severity()).isEqualTo(severity);
        assertThat(early.when()).isEqualTo(new Interval(2000, 2000 + seconds));
    }

    @Test
    void isNotToldUnderEightMinutes() {
        assertThat(detector.detect(riding(new Interval(2000, 2479)))).isEmpty();
    }

    @Test
    void addsUpItsStretches() {
        Interval first = new Interval(0, 960);
        Interval second = new Interval(3000, 3500);
        Found early = found(detector, riding(first, second));
        assertThat(early.when()).isEqualTo(new Interval(0, 3500));
        assertThat(evidence(early, "stretchCount")).isEqualTo(2);
        assertThat(evidence(early, "totalSeconds")).isEqualTo(1460);
        assertThat(evidence(early, "longestSeconds")).isEqualTo(960);
        assertThat(evidence(early, "meanPowerW")).isCloseTo(237.5, within(1e-9));
        assertThat(evidence(early, "thresholdFraction")).isCloseTo(0.95, within(1e-12));
        // 0.9 x threshold, a ceiling that leaves the target reachable.
        assertThat(early.advice().capW()).isEqualTo(225.0);
        assertThat(repaired(early)).containsExactly(first, second);
        Found later = found(detector, riding(new Interval(100, 600), new Interval(3000, 3960)));
        assertThat(evidence(later, "longestSeconds")).isEqualTo(960);
    }

    /** The first third of six hours ends at 7,200 s. */
    @Test
    void mustLieInTheFirstThird() {
        assertThat(detector.detect(riding(new Interval(6720, 7200)))).isPresent();
        assertThat(detector.detect(riding(new Interval(6721, 7300)))).isEmpty();
        assertThat(detector.detect(riding(new Interval(0, 480)))).isPresent();
    }

    @Test
    void belongsToAnEventWhoseTargetIsNotBelowEightyFivePercent() {
        Ride ride = riding(new Interval(2000, 3000)).ride();
        assertThat(detector.detect(race(ride, ability(212.4)))).isPresent();
        assertThat(detector.detect(race(ride, ability(212.5)))).isEmpty();
        assertThat(detector.detect(race(ride, ability(null)))).isEmpty();
    }

    /** The middle at 190 W, the stretch at 245 W: it is brought to the effort of the middle on like ground. */
    @Test
    void isBroughtToTheMiddleOfTheRace() {
        double[] watts = steady(6 * HOUR, 190);
        Arrays.fill(watts, 5000, 6000, 245);
        Found early = found(detector, race(watts));
        assertThat(changes(early)).singleElement().satisfies(change -> {
            assertThat(change.change()).isEqualTo(StretchChange.TO_MIDDLE_POWER);
            // Windows that touch the stretch widen it, so its mean lies a little below 245 W.
            assertThat(change.fromW()).isBetween(230.0, 245.0);
            assertThat(change.toW()).isCloseTo(190, within(1.0));
        });
    }

    @Test
    void isNotLookedForByAnEstimatedThreshold() {
        Ride ride = riding(new Interval(2000, 3000)).ride();
        assertThat(detector.detect(race(ride, new Thresholds(estimated(THRESHOLD_W), null, null))))
                .isEmpty();
    }
}
