package io.github.wattledger.ride;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;

import io.github.wattledger.load.Ascent;
import io.github.wattledger.load.Decoupling;
import io.github.wattledger.load.NormalizedPower;
import io.github.wattledger.load.RollingMean;
import io.github.wattledger.load.TimeInZones;
import io.github.wattledger.load.TrainingStress;
import io.github.wattledger.load.WattsPerBeat;
import io.github.wattledger.load.Work;
import io.github.wattledger.power.CriticalPower;
import io.github.wattledger.power.CriticalPowerFit;
import io.github.wattledger.power.Durability;
import io.github.wattledger.power.MeanMaximalCurve;
import io.github.wattledger.power.RideCriticalPower;
import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.power.ThresholdEstimate;
import io.github.wattledger.power.ThresholdHeartRate;
import io.github.wattledger.power.WPrimeBalance;
import io.github.wattledger.power.WPrimeBalance.Model;
import io.github.wattledger.rider.ZoneScheme;
import java.util.Arrays;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The rules of numbers that hold for every function in the table of docs/embedding.md, for an array and for a series alike:
 * a reading below 0 or infinite is the caller's mistake and is named with its place, {@code NaN} is a missing reading, null
 * is refused, and a number that must be above 0 is finite.
 */
class ReadingsTest {
    private static final int SECONDS = 100;

    /** A function under test, on an array and on a series. */
    private record Both(Consumer<double[]> ofArray, Consumer<Series> ofSeries) {}

    private static Named<Both> both(String name, Consumer<double[]> ofArray, Consumer<Series> ofSeries) {
        return Named.of(name, new Both(ofArray, ofSeries));
    }

    private static double[] constant(double value) {
        double[] values = new double[SECONDS];
        Arrays.fill(values, value);
        return values;
    }

    /** Readings of power or heart rate: 0 or more. */
    static Stream<Named<Both>> functionsOfReadings() {
        double[] beats = constant(140);
        double[] watts = constant(200);
        int[] seconds = {300};
        double[] levels = {1000};
        return Stream.of(
                both("normalized power", NormalizedPower::of, NormalizedPower::of),
                both("work", Work::kilojoules, Work::kilojoules),
                both("average power", Work::averagePowerW, Work::averagePowerW),
                both("training stress", x -> TrainingStress.of(x, 250), x -> TrainingStress.of(x, 250)),
                both(
                        "zones",
                        x -> TimeInZones.of(x, 250, ZoneScheme.POWER_SEVEN_LEVELS),
                        x -> TimeInZones.of(x, 250, ZoneScheme.POWER_SEVEN_LEVELS)),
                both(
                        "watts per beat, power",
                        x -> WattsPerBeat.of(x, beats),
                        x -> WattsPerBeat.of(x, Series.of(beats))),
                both(
                        "watts per beat, beats",
                        x -> WattsPerBeat.of(watts, x),
                        x -> WattsPerBeat.of(Series.of(watts), x)),
                both("decoupling, power", x -> Decoupling.of(x, beats), x -> Decoupling.of(x, Series.of(beats))),
                both("decoupling, beats", x -> Decoupling.of(watts, x), x -> Decoupling.of(Series.of(watts), x)),
                both("curve", MeanMaximalCurve::of, MeanMaximalCurve::of),
                both("critical power", x -> RideCriticalPower.ofRide(x, null), x -> RideCriticalPower.ofRide(x, null)),
                both("threshold", ThresholdEstimate::of, ThresholdEstimate::of),
                both(
                        "threshold heart rate, power",
                        x -> ThresholdHeartRate.of(x, beats, 250),
                        x -> ThresholdHeartRate.of(x, Series.of(beats), 250)),
                both(
                        "threshold heart rate, beats",
                        x -> ThresholdHeartRate.of(watts, x, 250),
                        x -> ThresholdHeartRate.of(Series.of(watts), x, 250)),
                both("durability", x -> Durability.of(x, seconds, levels), x -> Durability.of(x, seconds, levels)),
                both(
                        "balance",
                        x -> WPrimeBalance.of(x, 250, 20_000, Model.DIFFERENTIAL),
                        x -> WPrimeBalance.of(x, 250, 20_000, Model.DIFFERENTIAL)));
    }

    /** Numbers that may lie below 0, such as altitude. */
    static Stream<Named<Both>> functionsOfAnyNumber() {
        return Stream.of(
                both("ascent", Ascent::metres, Ascent::metres),
                both("rolling mean", x -> RollingMean.trailing(x, 30), x -> RollingMean.trailing(x, 30)));
    }

    static Stream<Named<Both>> functions() {
        return Stream.concat(functionsOfReadings(), functionsOfAnyNumber());
    }

    @ParameterizedTest
    @MethodSource("functionsOfReadings")
    void belowZeroIsRefused(Both function) {
        assertRefused(function, -50, "[12] -50.0, expected 0 or more, or NaN for a missing one");
    }

    @ParameterizedTest
    @MethodSource("functionsOfAnyNumber")
    void belowZeroIsANumber(Both function) {
        assertThatCode(() -> function.ofArray.accept(with(-50))).doesNotThrowAnyException();
        assertThatCode(() -> function.ofSeries.accept(Series.of(with(-50)))).doesNotThrowAnyException();
    }

    @ParameterizedTest
    @MethodSource("functions")
    void infiniteIsRefused(Both function) {
        assertRefused(function, Double.POSITIVE_INFINITY, "or NaN for a missing one");
        assertRefused(function, Double.NEGATIVE_INFINITY, "or NaN for a missing one");
    }

    @ParameterizedTest
    @MethodSource("functions")
    void missingIsAReading(Both function) {
        assertThatCode(() -> function.ofArray.accept(with(Double.NaN))).doesNotThrowAnyException();
        assertThatCode(() -> function.ofSeries.accept(Series.of(with(Double.NaN))))
                .doesNotThrowAnyException();
    }

    @ParameterizedTest
    @MethodSource("functions")
    @SuppressWarnings("NullAway") // what a caller without a null checker can do
    void nullIsRefused(Both function) {
        assertThatNullPointerException().isThrownBy(() -> function.ofArray.accept(null));
        assertThatNullPointerException().isThrownBy(() -> function.ofSeries.accept(null));
    }

    private static void assertRefused(Both function, double wrong, String end) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> function.ofArray.accept(with(wrong)))
                .withMessageContaining("[12] " + wrong)
                .withMessageEndingWith(end);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> function.ofSeries.accept(Series.of(with(wrong))))
                .withMessageContaining("[12] " + wrong)
                .withMessageEndingWith(end);
    }

    private static double[] with(double value) {
        double[] values = constant(140);
        values[12] = value;
        return values;
    }

    /** Single numbers that must be above 0. */
    static Stream<Named<DoubleConsumer>> numbersAboveZero() {
        double[] watts = constant(200);
        double[] beats = constant(140);
        return Stream.of(
                Named.of("threshold of training stress", x -> TrainingStress.of(watts, x)),
                Named.of("threshold of intensity", x -> TrainingStress.intensityFactor(200, x)),
                Named.of("threshold of zones", x -> TimeInZones.of(watts, x, ZoneScheme.POWER_SEVEN_LEVELS)),
                Named.of("threshold of threshold heart rate", x -> ThresholdHeartRate.of(watts, beats, x)),
                Named.of("threshold of critical power", x -> RideCriticalPower.ofRide(watts, x)),
                Named.of("level of durability", x -> Durability.of(watts, new int[] {300}, new double[] {x})),
                Named.of("critical power", x -> WPrimeBalance.of(watts, x, 20_000, Model.DIFFERENTIAL)),
                Named.of("W'", x -> WPrimeBalance.of(watts, 250, x, Model.DIFFERENTIAL)),
                Named.of(
                        "seconds of a best",
                        x -> CriticalPowerFit.of(
                                new double[] {180, 400, x},
                                new double[] {350, 320, 300},
                                CriticalPower.Form.WORK_TIME)),
                Named.of(
                        "watts of a best",
                        x -> SustainablePower.fromBests(
                                new double[] {1200, 3600, 9000}, new double[] {280, 260, x}, 7200)),
                Named.of(
                        "seconds of a power for hours",
                        x -> SustainablePower.fromBests(
                                new double[] {1200, 3600, 9000}, new double[] {280, 260, 240}, x)));
    }

    @ParameterizedTest
    @MethodSource("numbersAboveZero")
    void anythingElseIsRefused(DoubleConsumer function) {
        for (double wrong : new double[] {0, -1, Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY}) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> function.accept(wrong))
                    .withMessageEndingWith(" " + wrong + ", expected above 0");
        }
    }

    @Test
    void zeroIsAReading() {
        assertThat(Work.kilojoules(new double[] {0, Double.NaN})).hasValue(0);
    }
}
