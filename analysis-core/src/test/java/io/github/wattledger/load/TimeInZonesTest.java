package io.github.wattledger.load;

import static io.github.wattledger.load.NormalizedPowerTest.randomWatts;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import io.github.wattledger.rider.ZoneScheme;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TimeInZonesTest {
    @Test
    void sevenPowerLevelsAt250W() {
        // Edges by arithmetic from the published percentages (A. Coggan 2001): 55, 75, 90, 105, 120, 150 percent.
        List<ZoneTime> zones = TimeInZones.of(new double[] {100}, 250, ZoneScheme.POWER_SEVEN_LEVELS);
        assertThat(zones).extracting(ZoneTime::from).containsExactly(0.0, 137.5, 187.5, 225.0, 262.5, 300.0, 375.0);
        assertThat(zones).extracting(ZoneTime::to).containsExactly(137.5, 187.5, 225.0, 262.5, 300.0, 375.0, null);
        assertThat(zones).extracting(ZoneTime::seconds).containsExactly(1, 0, 0, 0, 0, 0, 0);
    }

    @Test
    void fiveHeartRateLevelsAt160() {
        // 68, 83, 94 and 105 percent of 160 (heart-rate column of the same source).
        List<ZoneTime> zones = TimeInZones.of(new double[] {150.4}, 160, ZoneScheme.HEART_RATE_FIVE_LEVELS);
        assertThat(zones).extracting(ZoneTime::from).containsExactly(0.0, 108.8, 132.8, 150.4, 168.0);
        assertThat(zones).extracting(ZoneTime::seconds).containsExactly(0, 0, 0, 1, 0);
    }

    @Test
    void lowerBoundIsIncludedAndUpperExcluded() {
        double[] readings = {137, 137.5, 187.4, 187.5, 374.9, 375, 2000, 0};
        assertThat(TimeInZones.of(readings, 250, ZoneScheme.POWER_SEVEN_LEVELS))
                .extracting(ZoneTime::seconds)
                .containsExactly(2, 2, 1, 0, 0, 1, 2);
    }

    @Test
    void boundsThatBinaryArithmeticMissesAreIncludedToo() {
        // 55 percent of 200 W is 110 W, though 0.55 * 200 > 110 in binary.
        assertThat(TimeInZones.of(new double[] {110}, 200, ZoneScheme.POWER_SEVEN_LEVELS))
                .extracting(ZoneTime::seconds)
                .containsExactly(0, 1, 0, 0, 0, 0, 0);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void addUpToTheSecondsWithAReading(long seed) {
        double[] watts = randomWatts(seed, 10_000, 0.1);
        long measured =
                Arrays.stream(watts).filter(power -> !Double.isNaN(power)).count();
        int sum = TimeInZones.of(watts, 230, ZoneScheme.POWER_SEVEN_LEVELS).stream()
                .mapToInt(ZoneTime::seconds)
                .sum();
        assertThat((long) sum).isEqualTo(measured);
    }

    @Test
    void refusesAThresholdThatIsNone() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> TimeInZones.of(new double[] {1}, 0, ZoneScheme.POWER_SEVEN_LEVELS));
    }
}
