package io.github.wattledger.pacing;

import static io.github.wattledger.pacing.RaceByHand.HOUR;
import static io.github.wattledger.pacing.RaceByHand.TARGET_W;
import static io.github.wattledger.pacing.RaceByHand.THRESHOLD_W;
import static io.github.wattledger.pacing.RaceByHand.estimated;
import static io.github.wattledger.pacing.RaceByHand.evidence;
import static io.github.wattledger.pacing.RaceByHand.found;
import static io.github.wattledger.pacing.RaceByHand.known;
import static io.github.wattledger.pacing.RaceByHand.race;
import static io.github.wattledger.pacing.RaceByHand.ride;
import static io.github.wattledger.pacing.RaceByHand.steady;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.ride.Ride;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The whole race was easier than the rider can hold, on both sides of each limit of {@code docs/methods.md}. */
class UnderPacedTest {
    private static Race atShare(double share, double hours) {
        return race(steady((int) (hours * HOUR), share * TARGET_W));
    }

    /** How strong it was decides the order of what cost nothing. */
    @ParameterizedTest
    @CsvSource({"0.919, MINOR", "0.871, MINOR", "0.869, MODERATE"})
    void isGradedByTheTarget(double share, Severity severity) {
        Found under = found(new UnderPaced(), atShare(share, 2));
        assertThat(under.severity()).isEqualTo(severity);
        assertThat(evidence(under, "normalizedPowerW")).isCloseTo(share * TARGET_W, within(1e-9));
        assertThat(evidence(under, "shareOfTargetPercent")).isCloseTo(share * 100, within(1e-9));
    }

    /**
     * Coaches ride 0.80 of threshold at 3 h, 0.70 at 6 h and 0.58 at 12 h at the least (common practice, no source), straight
     * lines between. The guide is hours^-0.16 of threshold: 0.751 at 6 h, 0.704 at 9 h, 0.672 at 12 h. Their quotients are
     * 0.932, 0.910 and 0.863, and the limit is never above 0.92.
     */
    @ParameterizedTest
    @CsvSource({
        "2, 0.921, false", "2, 0.919, true",
        "6, 0.921, false", "6, 0.919, true",
        "9, 0.911, false", "9, 0.908, true",
        "12, 0.864, false", "12, 0.862, true",
        "20, 0.864, false", "20, 0.862, true"
    })
    void itsLimitFallsWithTheHours(double hours, double share, boolean isFound) {
        assertThat(new UnderPaced().detect(atShare(share, hours)).isPresent()).isEqualTo(isFound);
    }

    private static boolean isFound(double bpm, @Nullable Double thresholdBpm, @Nullable Double highestBpm) {
        Ride ride = ride(2 * HOUR, second -> 0.8 * TARGET_W, second -> bpm).build();
        return new UnderPaced()
                .detect(race(ride, new Thresholds(known(THRESHOLD_W), thresholdBpm, highestBpm)))
                .isPresent();
    }

    /** 0.92 of 165 beats are 151.8, 0.80 of 190 are 152: a heart that beats so high for so long had no more to give. */
    @Test
    void isNoneWhereTheHeartBeatsAsInARace() {
        assertThat(isFound(151.7, 165.0, null)).isTrue();
        assertThat(isFound(151.9, 165.0, null)).isFalse();
        assertThat(isFound(151.9, null, 190.0)).isTrue();
        assertThat(isFound(152.1, null, 190.0)).isFalse();
        assertThat(isFound(180, null, null)).isTrue();
    }

    @Test
    void isNotLookedForByAnEstimatedThreshold() {
        Ride ride = Ride.ofWatts(steady(2 * HOUR, 150));
        assertThat(new UnderPaced().detect(race(ride, new Thresholds(estimated(THRESHOLD_W), null, null))))
                .isEmpty();
    }

    /** Two hours at 170 W and one at 140 W: under-paced as a whole, because it faded. */
    @Test
    void givesWayToAFade() {
        double[] watts = steady(3 * HOUR, 185);
        Arrays.fill(watts, 2 * HOUR, 3 * HOUR, 140);
        Race race = race(watts);
        assertThat(new UnderPaced().detect(race)).isPresent();
        assertThat(Detection.all(race, each -> true, Cancellation.NEVER))
                .extracting(Detection::kind)
                .contains(FindingKind.FADE)
                .doesNotContain(FindingKind.UNDER_PACED);
    }
}
