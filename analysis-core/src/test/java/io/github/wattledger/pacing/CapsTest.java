package io.github.wattledger.pacing;

import static io.github.wattledger.pacing.HeartByHand.alternating;
import static io.github.wattledger.pacing.HeartByHand.following;
import static io.github.wattledger.pacing.RaceByHand.THRESHOLD_W;
import static io.github.wattledger.pacing.RaceByHand.known;
import static io.github.wattledger.pacing.RaceByHand.race;
import static io.github.wattledger.pacing.RaceByHand.steady;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Ride;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Powers not to exceed, with the heart rate that goes with them. */
class CapsTest {
    /** 80 + 0.3 x 210 W = 143 beats. */
    private static Ride ride() {
        return following(alternating(7200), 7200, 1).build();
    }

    private static @Nullable Double capBpm(double capW, @Nullable Double thresholdBpm) {
        return Caps.advise(race(ride(), new Thresholds(known(THRESHOLD_W), thresholdBpm, null)), "%s", capW)
                .capBpm();
    }

    @Test
    void carryTheHeartRateThatGoesWithThem() {
        Advice advice = Caps.advise(race(ride()), "Up to %s.", 210.4);
        assertThat(advice.text()).isEqualTo("Up to 210 W or 143 bpm, whichever comes first.");
        assertThat(advice.capW()).isEqualTo(210.0);
        assertThat(advice.capBpm()).isEqualTo(143.0);
    }

    @Test
    void areNeverAboveThresholdHeartRate() {
        assertThat(capBpm(210, 140.0)).isEqualTo(140.0);
        assertThat(capBpm(210, null)).isEqualTo(143.0);
    }

    /** The alternating ride never lets the heart feel more than 230 W: 149 beats. The line would say 170 at 300 W. */
    @Test
    void areNeverAboveTheHighestHeartRateOfTheRace() {
        assertThat(capBpm(300, null)).isCloseTo(149.0, within(0.5));
        assertThat(capBpm(300, 165.0)).isCloseTo(149.0, within(0.5));
    }

    @Test
    void areInWattsAloneWithoutALine() {
        Advice without = Caps.advise(race(steady(7200, 200)), "Up to %s.", 210.4);
        assertThat(without.text()).isEqualTo("Up to 210 W.");
        assertThat(without.capBpm()).isNull();
    }

    /** The heart follows power with a lag of about a minute. */
    @Test
    void ofEffortsOfSecondsAreInWattsAlone() {
        Advice advice = Caps.adviseWatts("Below %s.", 300.2);
        assertThat(advice).isEqualTo(new Advice("Below 300 W.", 300.0, null));
    }
}
