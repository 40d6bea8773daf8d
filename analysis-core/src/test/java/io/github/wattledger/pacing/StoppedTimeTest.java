package io.github.wattledger.pacing;

import static io.github.wattledger.pacing.RaceByHand.TARGET_W;
import static io.github.wattledger.pacing.RaceByHand.THRESHOLDS;
import static io.github.wattledger.pacing.RaceByHand.ability;
import static io.github.wattledger.pacing.RaceByHand.evidence;
import static io.github.wattledger.pacing.RaceByHand.found;
import static io.github.wattledger.pacing.RaceByHand.race;
import static io.github.wattledger.pacing.RaceByHand.ride;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.pacing.price.PricePlan;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Stops that took longer than a minute. */
class StoppedTimeTest {
    private static final int SECONDS = 10_000;

    private Race stopping(Interval stop) {
        return race(ride(SECONDS, second -> 200, second -> 140)
                .state(stop, SecondState.STOPPED)
                .build());
    }

    /** Shares of 10,000 s, how strong it was. */
    @ParameterizedTest
    @CsvSource({"61, MINOR", "299, MINOR", "300, MODERATE", "799, MODERATE", "800, MAJOR"})
    void areGradedByTheirShareOfElapsedTime(int seconds, Severity severity) {
        assertThat(found(new StoppedTime(), stopping(new Interval(4000, 4000 + seconds)))
                        .severity())
                .isEqualTo(severity);
    }

    @Test
    void nameTheLimitInForce() {
        JudgementLimits limits = JudgementLimits.USUAL.with(JudgementLimit.STOP_SECONDS, 200);
        Ride ride = ride(SECONDS, second -> 200, second -> 140)
                .state(new Interval(1000, 1150), SecondState.STOPPED)
                .state(new Interval(4000, 4300), SecondState.STOPPED)
                .build();
        Found stops = found(new StoppedTime(), race(ride, THRESHOLDS, ability(TARGET_W), limits));
        assertThat(evidence(stops, "longerThanSeconds")).isEqualTo(200);
        assertThat(evidence(stops, "stopCount")).isEqualTo(1);
        assertThat(evidence(found(new StoppedTime(), race(ride)), "longerThanSeconds"))
                .isEqualTo(60);
    }

    @Test
    void lieBetweenMovingSeconds() {
        assertThat(found(new StoppedTime(), stopping(new Interval(1, 100))).when())
                .isEqualTo(new Interval(1, 100));
        assertThat(new StoppedTime().detect(stopping(new Interval(0, 100)))).isEmpty();
        assertThat(new StoppedTime().detect(stopping(new Interval(9000, SECONDS))))
                .isEmpty();
    }

    /** A stop costs what it takes, and about 12 s more for slowing down and getting going again. */
    @Test
    void costARange() {
        Ride ride = ride(SECONDS, second -> 200, second -> 140)
                .state(new Interval(1000, 1150), SecondState.STOPPED)
                .state(new Interval(4000, 4300), SecondState.PAUSED)
                .state(new Interval(6000, 6060), SecondState.STOPPED) // a minute and no more: not reported
                .build();
        PricePlan.Known plan =
                (PricePlan.Known) found(new StoppedTime(), race(ride)).price();
        Cost.Priced cost = (Cost.Priced) plan.price().cost();
        assertThat(cost.lowMinutes()).isCloseTo(450 / 60.0, within(1e-9));
        assertThat(cost.highMinutes()).isCloseTo((450 + 2 * 12) / 60.0, within(1e-9));
    }
}
