package io.github.wattledger.history;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

class HeartRateOnPowerTest {
    @Test
    void theSpreadOfAFewRidesIsDrawnTowardsTheUsualOne() {
        // RH-40
        HeartRateOnPower rate = HeartRateOnPower.of(200, new double[] {148, 151, 146, 155, 149, 150, 152, 147})
                .found()
                .orElseThrow();
        assertThat(rate.medianBpm()).isCloseTo(149.5, within(1e-9));
        assertThat(rate.spreadBpm()).isCloseTo(2.965, within(5e-4));
        assertThat(rate.halfWidthBpm()).isCloseTo(5.04, within(0.005));
        assertThat(rate.isFromFew()).isFalse();
    }

    @Test
    void twoRidesSayNothingAndFourWithReservation() {
        assertThat(HeartRateOnPower.of(200, new double[] {150, 151}).refusal()).isPresent();
        assertThat(HeartRateOnPower.of(200, new double[] {150, 151, 152, 149})
                        .found()
                        .orElseThrow()
                        .isFromFew())
                .isTrue();
    }

    @Test
    void theCapNeverPassesWhatWasSeenNorThreshold() {
        HeartRateOnPower rate =
                HeartRateOnPower.of(200, new double[] {150, 150, 150}).found().orElseThrow();
        double upper = rate.medianBpm() + rate.halfWidthBpm();
        assertThat(rate.capBpm(OptionalDouble.empty(), OptionalDouble.empty())).isEqualTo(upper);
        assertThat(rate.capBpm(OptionalDouble.of(152), OptionalDouble.empty())).isEqualTo(152);
        assertThat(rate.capBpm(OptionalDouble.of(190), OptionalDouble.of(151))).isEqualTo(151);
    }

    @Test
    void theRangeHoldsTheNextRideInAboutEightOfTen() {
        // The definition of the range, on riders who differ by 4.6 beats from day to day (Lamberts et al. 2004: 5 +-
        // 2).
        Random random = new Random(40);
        int held = 0;
        int riders = 2000;
        for (int rider = 0; rider < riders; rider++) {
            int n = 3 + random.nextInt(6);
            double[] bpm = random.doubles(n)
                    .map(each -> 150 + 4.6 * random.nextGaussian())
                    .toArray();
            HeartRateOnPower rate = HeartRateOnPower.of(200, bpm).found().orElseThrow();
            double next = 150 + 4.6 * random.nextGaussian();
            held += Math.abs(next - rate.medianBpm()) <= rate.halfWidthBpm() ? 1 : 0;
        }
        assertThat(held / (double) riders).isBetween(0.75, 0.85);
    }
}
