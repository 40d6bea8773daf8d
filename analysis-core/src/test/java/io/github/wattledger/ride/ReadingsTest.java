package io.github.wattledger.ride;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import io.github.wattledger.load.Decoupling;
import io.github.wattledger.load.Efficiency;
import io.github.wattledger.load.NormalizedPower;
import io.github.wattledger.load.TimeInZones;
import io.github.wattledger.load.TrainingStress;
import io.github.wattledger.load.Work;
import io.github.wattledger.power.Durability;
import io.github.wattledger.power.MeanMaximalCurve;
import io.github.wattledger.power.RideCriticalPower;
import io.github.wattledger.power.ThresholdEstimate;
import io.github.wattledger.power.ThresholdHeartRate;
import io.github.wattledger.power.WPrimeBalance;
import io.github.wattledger.rider.ZoneScheme;
import java.util.Arrays;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Arrays from other programs: power below 0 or infinite is the caller's mistake, and is named with its place. */
class ReadingsTest {
    static Stream<Named<Consumer<double[]>>> functionsOfPower() {
        double[] beats = new double[100];
        Arrays.fill(beats, 140);
        return Stream.of(
                Named.of("normalized power", NormalizedPower::of),
                Named.of("work", Work::kilojoules),
                Named.of("average power", Work::averagePowerW),
                Named.of("training stress", watts -> TrainingStress.of(watts, 250)),
                Named.of("zones", watts -> TimeInZones.of(watts, 250, ZoneScheme.POWER_SEVEN_LEVELS)),
                Named.of("efficiency", watts -> Efficiency.of(watts, beats)),
                Named.of("decoupling", watts -> Decoupling.of(watts, beats)),
                Named.of("curve", MeanMaximalCurve::of),
                Named.of("critical power", watts -> RideCriticalPower.ofRide(watts, null)),
                Named.of("threshold", ThresholdEstimate::of),
                Named.of("threshold heart rate", watts -> ThresholdHeartRate.of(watts, beats, 250)),
                Named.of("durability", watts -> Durability.of(watts, new int[] {300}, new double[] {1000})),
                Named.of("balance", watts -> WPrimeBalance.of(watts, 250, 20_000, WPrimeBalance.Model.DIFFERENTIAL)));
    }

    @ParameterizedTest
    @MethodSource("functionsOfPower")
    void belowZeroOrInfiniteAreRefused(Consumer<double[]> function) {
        for (double wrong : new double[] {-50, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY}) {
            double[] watts = new double[100];
            Arrays.fill(watts, 200);
            watts[12] = wrong;
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> function.accept(watts))
                    .withMessageEndingWith("[12] " + wrong + ", expected 0 or more, or NaN for a missing one");
        }
    }

    @Test
    void zeroAndMissingAreReadings() {
        double[] watts = new double[100];
        watts[12] = Double.NaN;
        assertThat(Series.ofReadings("watts", watts)).isEqualTo(Series.of(watts));
    }
}
