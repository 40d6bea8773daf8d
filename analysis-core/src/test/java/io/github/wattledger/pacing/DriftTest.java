package io.github.wattledger.pacing;

import static io.github.wattledger.pacing.HeartByHand.alternating;
import static io.github.wattledger.pacing.HeartByHand.bpm;
import static io.github.wattledger.pacing.HeartByHand.felt;
import static io.github.wattledger.pacing.HeartByHand.following;
import static io.github.wattledger.pacing.RaceByHand.evidence;
import static io.github.wattledger.pacing.RaceByHand.found;
import static io.github.wattledger.pacing.RaceByHand.race;
import static io.github.wattledger.pacing.RaceByHand.ride;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Interval;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Heart rate that rose at equal power, on both sides of each limit of {@code docs/methods.md}. */
class DriftTest {
    /** The last third of two hours begins at 4,800 s. How strong it was decides the order of what cost nothing. */
    @ParameterizedTest
    @CsvSource({"1.026, MINOR", "1.049, MINOR", "1.051, MODERATE", "1.079, MODERATE", "1.081, MAJOR"})
    void isGradedByItsRise(double factor, Severity severity) {
        Found drift = found(
                new Drift(), race(following(alternating(7200), 4800, factor).build()));
        assertThat(drift.severity()).isEqualTo(severity);
        assertThat(drift.when()).isEqualTo(new Interval(4800, 7200));
        assertThat(evidence(drift, "heartRateOverPredictedPercent")).isCloseTo((factor - 1) * 100, within(1e-6));
        assertThat(evidence(drift, "actualHeartRateBpm"))
                .isCloseTo(factor * evidence(drift, "predictedHeartRateBpm"), within(1e-6));
        assertThat(evidence(drift, "bpmPer100W")).isCloseTo(30, within(1e-6));
    }

    @Test
    void isNotReportedUnderTwoAndAHalfPercent() {
        assertThat(new Drift()
                        .detect(race(following(alternating(7200), 4800, 1.024).build())))
                .isEmpty();
    }

    /** The line was fitted on 170 to 230 W; the last third is ridden at 140 W, where it says nothing. */
    @Test
    void isLookedForOnlyWhereTheLineWasFitted() {
        double[] watts = alternating(7200);
        Arrays.fill(watts, 4800, 7200, 140);
        assertThat(new Drift().detect(race(following(watts, 4800, 1.1).build())))
                .isEmpty();
    }

    /** Of the last third twenty minutes lie within the range and are 6 % high; 20 minutes at 140 W have no say. */
    @Test
    void isMeasuredOnThePowersThatTheLineKnows() {
        double[] watts = alternating(7200);
        Arrays.fill(watts, 6000, 7200, 140);
        double[] felt = felt(watts);
        Race race = race(ride(
                        7200,
                        second -> watts[second],
                        second -> bpm(felt[second]) * (second < 4800 ? 1 : second < 6000 ? 1.06 : 1.3))
                .build());
        // A minute or so of the way down to 140 W is still within the range.
        assertThat(evidence(found(new Drift(), race), "heartRateOverPredictedPercent"))
                .isBetween(6.0, 8.0);
    }
}
