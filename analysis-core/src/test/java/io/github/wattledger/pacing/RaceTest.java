package io.github.wattledger.pacing;

import static io.github.wattledger.pacing.RaceByHand.CP_W;
import static io.github.wattledger.pacing.RaceByHand.HOUR;
import static io.github.wattledger.pacing.RaceByHand.race;
import static io.github.wattledger.pacing.RaceByHand.ride;
import static io.github.wattledger.pacing.RaceByHand.spending;
import static io.github.wattledger.pacing.RaceByHand.steady;
import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.power.WPrimeBalance;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import java.time.Instant;
import java.util.Arrays;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The race as the detectors see it. */
class RaceTest {
    @Test
    void fortyMinutesOfMovingTimeAreEnough() {
        assertThat(race(steady(2400, 200)).isLongEnough()).isTrue();
        assertThat(race(steady(2399, 200)).isLongEnough()).isFalse();
    }

    @Test
    void meansAreOverMeasuredMovingSeconds() {
        Ride ride = ride(10, second -> 200, second -> second == 2 ? Double.NaN : 100 + second)
                .state(new Interval(4, 8), SecondState.STOPPED)
                .build();
        // Seconds 0, 1, 3, 8 and 9: 100, 101, 103, 108 and 109 bpm.
        assertThat(race(ride).mean(Channel.HEART_RATE, new Interval(0, 10))).isCloseTo(104.2, within(1e-9));
        assertThat(race(ride).mean(Channel.HEART_RATE, new Interval(4, 8))).isNaN();
        assertThat(race(ride).mean(Channel.TEMPERATURE, new Interval(0, 10))).isNaN();
    }

    /** Twenty minutes are the opening of two hours, an hour that of six, and 90 minutes that of a day. */
    @ParameterizedTest
    @CsvSource({"2400, 1200", "7200, 1200", "21600, 3600", "32400, 5400", "86400, 5400"})
    void theOpeningIsASixthBetween20And90Minutes(int movingSeconds, int openingSeconds) {
        assertThat(Opening.secondsOf(movingSeconds)).isEqualTo(openingSeconds);
    }

    @Test
    void theMiddleReachesFromTheOpeningToTwoThirds() {
        assertThat(race(steady(6 * HOUR, 200)).middle()).isEqualTo(new Interval(HOUR, 4 * HOUR));
    }

    @Nested
    class WPrimeOfARace {
        private Race above(int seconds) {
            double[] watts = steady(HOUR, 100);
            Arrays.fill(watts, 600, 600 + seconds, CP_W + 200);
            return race(Ride.ofWatts(watts), spending());
        }

        /** 110 s spend 22 kJ: a tenth of W' below empty. */
        @Test
        void isUsedDownToATenthBelowEmpty() {
            WPrimeBalance balance = requireNonNull(above(110).wPrimeBalance());
            assertThat(balance.minimumJ()).isCloseTo(-2000, within(1e-6));
            assertThat(balance.wPrimeJ()).isEqualTo(20_000);
            assertThat(balance.criticalPowerW()).isEqualTo(CP_W);
            assertThat(above(110).wPrimeIsRefuted()).isFalse();
            assertThat(above(111).wPrimeBalance()).isNull();
            assertThat(above(111).wPrimeIsRefuted()).isTrue();
        }

        @Test
        void isNotRefutedWhereItIsNotKnownOrThereIsNoPower() {
            Race unknown = race(steady(HOUR, 400));
            assertThat(unknown.wPrimeBalance()).isNull();
            assertThat(unknown.wPrimeIsRefuted()).isFalse();
            Ride powerless = Ride.builder(Instant.EPOCH, HOUR).build();
            assertThat(race(powerless, spending()).wPrimeBalance()).isNull();
            assertThat(race(powerless, spending()).wPrimeIsRefuted()).isFalse();
        }
    }
}
