package io.github.wattledger.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.time.Instant;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class ThresholdHeartRateTest {
    private static final int HOUR = 3600;

    @Test
    void isTheMeanOverTheSteadyTwentyMinutesNearThreshold() {
        double[] watts = filled(HOUR, 180);
        double[] bpm = filled(HOUR, 140);
        Arrays.fill(watts, 1000, 2200, 250);
        Arrays.fill(bpm, 1000, 2200, 171);
        ThresholdHeartRate found = ThresholdHeartRate.of(watts, bpm, 250).orElseThrow();
        assertThat(found.heartRateBpm()).isCloseTo(171, within(1e-9));
        assertThat(found.meanPowerW()).isCloseTo(250, within(1e-9));
        assertThat(found.fromSecond()).isEqualTo(1000);
        assertThat(found.seconds()).isEqualTo(1200);
    }

    @Test
    void refusesAnUnsteadyEffortOfTheSameMean() {
        double[] watts = new double[HOUR];
        // Minutes at 350 W and at 150 W: the mean is threshold, the effort is not.
        Arrays.setAll(watts, second -> second / 60 % 2 == 0 ? 350 : 150);
        assertThat(ThresholdHeartRate.of(watts, filled(HOUR, 165), 250)).isEmpty();
    }

    @Test
    void refusesARideFarFromThreshold() {
        assertThat(ThresholdHeartRate.of(filled(HOUR, 200), filled(HOUR, 150), 250))
                .isEmpty();
        assertThat(ThresholdHeartRate.of(filled(HOUR, 290), filled(HOUR, 180), 250))
                .isEmpty();
    }

    @Test
    void refusesHolesInPowerOrHeartRate() {
        double[] watts = filled(1200, 250);
        watts[600] = Double.NaN;
        assertThat(ThresholdHeartRate.of(watts, filled(1200, 170), 250)).isEmpty();
        double[] bpm = filled(1200, 170);
        Arrays.fill(bpm, 0, 61, Double.NaN);
        assertThat(ThresholdHeartRate.of(filled(1200, 250), bpm, 250)).isEmpty();
        bpm[0] = 170;
        assertThat(ThresholdHeartRate.of(filled(1200, 250), bpm, 250)).isPresent();
    }

    @Test
    void tellsSteadyFromUnsteadyByThirtySecondMeans() {
        // By hand: ten minutes k above 250 W, ten below. Of the 1,171 means of 30 s, 1,142 lie k away from the middle
        // and
        // the 29 between rise evenly and add another 9.3 k squared: standard deviation k root(1151.3 / 1171) = 0.9916
        // k.
        // 15 % of 250 W is 37.5 W, so the limit is k = 37.8 W.
        assertThat(ThresholdHeartRate.of(twoHalves(250 + 37, 250 - 37), filled(1200, 165), 250))
                .isPresent();
        assertThat(ThresholdHeartRate.of(twoHalves(250 + 39, 250 - 39), filled(1200, 165), 250))
                .isEmpty();
        // Single seconds scatter by 40 % about a steady minute: heart rate does not follow those.
        double[] jumping = new double[1200];
        Arrays.setAll(jumping, second -> second % 2 == 0 ? 350 : 150);
        assertThat(ThresholdHeartRate.of(jumping, filled(1200, 165), 250)).isPresent();
    }

    @Test
    void aPauseEndsAnEffortWhateverPowerIsRecordedInIt() {
        Ride.Builder builder = Ride.builder(Instant.EPOCH, 2400)
                .channel(Channel.POWER, Series.generate(2400, second -> 250))
                .channel(Channel.HEART_RATE, Series.generate(2400, second -> second < 1200 ? 170 : 160));
        assertThat(ThresholdHeartRate.of(builder.build(), 250).orElseThrow().fromSecond())
                .isZero();
        // With a pause in second 600 the first effort without one begins at 601: 599 s at 170 bpm, 601 at 160.
        Ride paused = builder.state(new Interval(600, 601), SecondState.PAUSED).build();
        ThresholdHeartRate found = ThresholdHeartRate.of(paused, 250).orElseThrow();
        assertThat(found.fromSecond()).isEqualTo(601);
        assertThat(found.heartRateBpm()).isCloseTo((599 * 170 + 601 * 160) / 1200.0, within(1e-9));
    }

    @Test
    void refusesAShortRideAndAThresholdThatIsNone() {
        assertThat(ThresholdHeartRate.of(filled(1199, 250), filled(1199, 170), 250))
                .isEmpty();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ThresholdHeartRate.of(filled(1200, 250), filled(1200, 170), 0));
    }

    private static double[] twoHalves(double firstW, double secondW) {
        double[] watts = filled(1200, firstW);
        Arrays.fill(watts, 600, 1200, secondW);
        return watts;
    }

    private static double[] filled(int seconds, double value) {
        double[] values = new double[seconds];
        Arrays.fill(values, value);
        return values;
    }
}
