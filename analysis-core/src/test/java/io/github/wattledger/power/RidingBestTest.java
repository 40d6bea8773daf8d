package io.github.wattledger.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.time.Instant;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class RidingBestTest {
    /** Steady riding with stops, each given as its first second and its length. */
    private static Ride ride(int seconds, double watts, int[]... stops) {
        double[] power = new double[seconds];
        Arrays.fill(power, watts);
        Ride.Builder ride = Ride.builder(Instant.EPOCH, seconds);
        for (int[] stop : stops) {
            for (int second = stop[0]; second < stop[0] + stop[1]; second++) {
                power[second] = 0;
                ride.state(second, SecondState.STOPPED);
            }
        }
        return ride.channel(Channel.POWER, Series.of(power)).build();
    }

    @Test
    void aStopBoundsHowMuchTooHighABestCanBe() {
        // RH-30: (60 / t) * sum(1 - exp(-S / 330)); the time constant of W' while standing after Skiba et al. 2015.
        assertThat(RidingBest.stopBoundPercent(1200, 60)).isCloseTo(0.831, within(5e-4));
        assertThat(RidingBest.stopBoundPercent(3600, 120, 120, 120)).isCloseTo(1.524, within(5e-4));
        assertThat(RidingBest.stopBoundPercent(1200, 180)).isCloseTo(2.102, within(5e-4));
        assertThat(RidingBest.stopBoundPercent(1200)).isZero();
    }

    @Test
    void aRedLightIsTakenOut() {
        RidingBest best =
                RidingBest.of(ride(1260, 250, new int[] {600, 60}), 1200).orElseThrow();
        assertThat(best.watts()).isCloseTo(250, within(1e-9));
        assertThat(best.standingSeconds()).isEqualTo(60);
        assertThat(best.tooHighPercent()).isCloseTo(0.831, within(5e-4));
        assertThat(best.startSecond()).isZero();
    }

    @Test
    void moreStandingThanOneTwentiethSetsNothing() {
        assertThat(RidingBest.of(ride(1261, 250, new int[] {600, 61}), 1200)).isEmpty();
    }

    @Test
    void theBestWindowWithLittleStandingIsTaken() {
        double[] power = new double[4000];
        Arrays.fill(power, 0, 1300, 300);
        Arrays.fill(power, 1300, 4000, 220);
        Ride.Builder builder = Ride.builder(Instant.EPOCH, power.length);
        for (int second = 600; second < 700; second++) {
            power[second] = 0;
            builder.state(second, SecondState.STOPPED);
        }
        Ride ride = builder.channel(Channel.POWER, Series.of(power)).build();
        // The 300 W hold 1,200 riding seconds, but with 100 s of standing among them. After the stop 600 s at 300 W and
        // 600 s at 220 W are the best; one riding second before the stop would bring the 100 s in.
        RidingBest best = RidingBest.of(ride, 1200).orElseThrow();
        assertThat(best.startSecond()).isEqualTo(700);
        assertThat(best.watts()).isCloseTo(260, within(1e-9));
        assertThat(best.standingSeconds()).isZero();
    }

    @Test
    void withoutPowerOrTooShortThereIsNone() {
        assertThat(RidingBest.of(Ride.builder(Instant.EPOCH, 5000).build(), 1200))
                .isEmpty();
        assertThat(RidingBest.of(ride(1199, 250), 1200)).isEmpty();
        assertThat(RidingBest.of(new double[1200], 1200)).isPresent();
        assertThatIllegalArgumentException().isThrownBy(() -> RidingBest.of(new double[10], 0));
    }

    @Test
    void aRidingSecondWithoutPowerCountsAsNoPower() {
        double[] power = new double[1200];
        Arrays.fill(power, 250);
        power[7] = Double.NaN;
        Ride ride = Ride.builder(Instant.EPOCH, power.length)
                .channel(Channel.POWER, Series.of(power))
                .build();
        assertThat(ride.countSeconds(SecondState.RIDING)).isEqualTo(1200);
        assertThat(RidingBest.of(ride, 1200).orElseThrow().watts()).isCloseTo(250.0 * 1199 / 1200, within(1e-9));
    }
}
