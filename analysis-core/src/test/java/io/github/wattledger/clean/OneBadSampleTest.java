package io.github.wattledger.clean;

import static io.github.wattledger.clean.NotedSeconds.noted;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.clean.Cleaning.Cleaned;
import io.github.wattledger.load.RideLoad;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.DeviceTotals;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Samples;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.ZoneScheme;
import java.util.List;
import java.util.Objects;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** One bad sample never decides: every channel is held to what a bicycle can do, and every repair is noted. */
class OneBadSampleTest {
    private static final long T0 = 1_781_413_200L;
    private static final int SECONDS = 1000;

    private static Cleaned clean(Channel channel, IntToDoubleFunction values) {
        return Cleaning.clean(Recording.of(samples(channel, values)));
    }

    private static Samples samples(Channel channel, IntToDoubleFunction values) {
        Samples.Builder samples = Samples.builder();
        for (int second = 0; second < SECONDS; second++) {
            samples.at(T0 + second)
                    .set(channel, values.applyAsDouble(second))
                    .set(Channel.HEART_RATE, 130 + second % 3);
        }
        return samples.build();
    }

    private static double coveredM(Ride ride) {
        Series distance = ride.series(Channel.DISTANCE);
        return distance.get(ride.seconds() - 1) - distance.get(0);
    }

    /** The ride is 8 m/s throughout, 7,992 m from the first second to the last. */
    @Nested
    class OfDistance {
        /** A bit flipped (168.1 km became 335.8), one row of 1e15, a row of 0, and what stands next to no other. */
        @ParameterizedTest
        @CsvSource({
            "500, 1e15",
            "500, 171772",
            "500, 0",
            "500, -1e9",
            "500, 4100",
            "500, 3900",
            "0, 1e15",
            "0, 50000",
            "999, 1e15",
            "999, 0",
            "1, 1e15",
            "998, 0",
            "500, Infinity"
        })
        void oneSampleChangesNothing(int at, double metres) {
            Cleaned cleaned = clean(Channel.DISTANCE, second -> second == at ? metres : 8.0 * second);
            assertThat(coveredM(cleaned.ride())).isCloseTo(7992, within(20.0));
            assertThat(cleaned.ride().series(Channel.DISTANCE).get(700)).isCloseTo(5600, within(20.0));
        }

        @Test
        void aSpikeIsReplacedByTheValuesAroundItAndNoted() {
            Cleaned cleaned = clean(Channel.DISTANCE, second -> second == 500 ? 171_772 : 8.0 * second);
            assertThat(cleaned.ride().series(Channel.DISTANCE).get(500)).isCloseTo(4000, within(1e-6));
            assertThat(noted(cleaned, "distance-spikes")).isEqualTo(1);
            assertThat(noted(cleaned, "distance-falls")).isZero();
            assertThat(cleaned.quality().repairedSamples()).isEqualTo(1);
        }

        @Test
        void aFewBadSamplesInARowAreReplacedToo() {
            Cleaned cleaned = clean(Channel.DISTANCE, second -> second >= 500 && second < 505 ? 9e6 : 8.0 * second);
            assertThat(coveredM(cleaned.ride())).isCloseTo(7992, within(1e-6));
            assertThat(noted(cleaned, "distance-spikes")).isEqualTo(5);
        }

        /** A counter set back to 0 at 400 s goes on from where it was: 3,192 m before and 4,792 m after. */
        @Test
        void aCounterThatStartsAnewIsCarriedOn() {
            Cleaned cleaned = clean(Channel.DISTANCE, second -> second < 400 ? 8.0 * second : 8.0 * (second - 400));
            assertThat(coveredM(cleaned.ride())).isCloseTo(3192 + 4792, within(1e-6));
            assertThat(noted(cleaned, "distance-falls")).isEqualTo(1);
            assertThat(noted(cleaned, "distance-spikes")).isZero();
        }

        @Test
        void aLeapThatStaysIsNotRidden() {
            Cleaned cleaned = clean(Channel.DISTANCE, second -> 8.0 * second + (second < 400 ? 0 : 1e9));
            assertThat(coveredM(cleaned.ride())).isCloseTo(7984, within(1e-3));
            assertThat(noted(cleaned, "distance-leaps")).isEqualTo(1);
        }

        /** A receiver in a tunnel stands for 20 s and then catches up; the way was ridden. */
        @Test
        void aDistanceThatCatchesUpIsBelieved() {
            Cleaned cleaned = clean(Channel.DISTANCE, second -> second >= 400 && second < 420 ? 3200 : 8.0 * second);
            assertThat(coveredM(cleaned.ride())).isEqualTo(7992);
            assertThat(cleaned.quality().repairedSamples()).isZero();
        }

        /** Over ten minutes of pause nearly any distance could have been covered; what follows says otherwise. */
        @ParameterizedTest
        @ValueSource(doubles = {15_000, 1e12})
        void theFirstSampleAfterAPauseIsNoExceptionToTheRule(double bad) {
            Samples.Builder samples = Samples.builder();
            for (int second = 0; second < 1600; second++) {
                if (second < 500 || second >= 1100) {
                    double metres = second < 500 ? 8.0 * second : 8.0 * (second - 600);
                    samples.at(T0 + second).set(Channel.DISTANCE, second == 1100 ? bad : metres);
                }
            }
            Ride ride = Cleaning.clean(Recording.of(samples.build())).ride();
            assertThat(coveredM(ride)).isCloseTo(7992, within(1.0));
        }

        /** Beside 1e308 a metre is nothing: what is added to it is lost. */
        @ParameterizedTest
        @CsvSource({"0, 400", "300, 700", "600, 1000"})
        void aLastingAbsurdValueIsNoDistance(int from, int to) {
            Cleaned cleaned = clean(Channel.DISTANCE, second -> second >= from && second < to ? -1e308 : 8.0 * second);
            Series distance = cleaned.ride().series(Channel.DISTANCE);
            for (int second = 1; second < SECONDS; second++) {
                assertThat(distance.get(second)).isBetween(distance.get(second - 1), 7992.0);
            }
            assertThat(noted(cleaned, "distance-spikes")).isEqualTo(to - from);
            assertThat(clean(Channel.DISTANCE, second -> -1e308).ride().has(Channel.DISTANCE))
                    .isFalse();
        }

        /** Steps of a second may each have taken nearly two, but not one after the other. */
        @ParameterizedTest
        @ValueSource(doubles = {37, 50, 70, 72})
        void aWholeRideIsNoFasterThanTheLimit(double metresPerSecond) {
            Cleaned cleaned = clean(Channel.DISTANCE, second -> metresPerSecond * second);
            assertThat(coveredM(cleaned.ride())).isLessThanOrEqualTo(130 / 3.6 * SECONDS);
        }

        @Test
        void isCheckedAgainstTheDevice() {
            DeviceTotals says = new DeviceTotals(
                    null, null, null, 9000.0, null, null, null, null, null, null, null, null, null, null);
            Samples samples = samples(Channel.DISTANCE, second -> 8.0 * second);
            Cleaned cleaned = Cleaning.clean(
                    new Recording(samples, List.of(), List.of(), says, RecordingDevice.UNKNOWN, null, 0, null));
            assertThat(noted(cleaned, "distance-differs-from-device")).isEqualTo(1);
            assertThat(coveredM(cleaned.ride())).isEqualTo(7992);
        }
    }

    /** A sine of 50 m over 500 s: two climbs of 100 m. */
    @Nested
    class OfAltitude {
        private double ascentM(Cleaned cleaned) {
            return Objects.requireNonNull(RideLoad.of(
                            cleaned.ride(),
                            null,
                            null,
                            ZoneScheme.POWER_SEVEN_LEVELS,
                            ZoneScheme.HEART_RATE_FIVE_LEVELS)
                    .ascentM());
        }

        private double hills(int second) {
            return 300 - 50 * Math.cos(2 * Math.PI * second / 500);
        }

        @ParameterizedTest
        @CsvSource({
            "300, -99999",
            "300, 1e308",
            "300, 65000",
            "300, 4000",
            "300, -430",
            "0, 8000",
            "999, 8000",
            "300, NaN"
        })
        void oneSampleClimbsNothing(int at, double metres) {
            double clean = ascentM(clean(Channel.ALTITUDE, this::hills));
            Cleaned cleaned = clean(Channel.ALTITUDE, second -> second == at ? metres : hills(second));
            assertThat(ascentM(cleaned)).isCloseTo(clean, within(0.01 * clean));
            assertThat(noted(cleaned, "altitude-spikes")).isEqualTo(Double.isNaN(metres) ? 0 : 1);
        }

        @Test
        void aLeapThatStaysIsASettingAndNoClimb() {
            double clean = ascentM(clean(Channel.ALTITUDE, this::hills));
            Cleaned cleaned = clean(Channel.ALTITUDE, second -> hills(second) - (second < 400 ? 150 : 0));
            assertThat(ascentM(cleaned)).isCloseTo(clean, within(0.01 * clean));
            assertThat(cleaned.ride().series(Channel.ALTITUDE).get(900)).isCloseTo(hills(900), within(1e-9));
            assertThat(noted(cleaned, "altitude-steps")).isEqualTo(1);
        }

        /** The limit is 8 m in a second, and a second more for the whole ride. */
        @ParameterizedTest
        @ValueSource(doubles = {9, 12, 15.9})
        void aWholeRideClimbsNoFasterThanTheLimit(double metresPerSecond) {
            Cleaned up = clean(Channel.ALTITUDE, second -> Math.min(9000, -400 + metresPerSecond * second));
            assertThat(ascentM(up)).isLessThanOrEqualTo(8.0 * SECONDS);
            Cleaned upAndDown = clean(
                    Channel.ALTITUDE,
                    second -> 4000 + 7 * metresPerSecond * (second % 20 < 10 ? second % 10 : 10 - second % 10));
            assertThat(ascentM(upAndDown)).isLessThanOrEqualTo(8.0 * SECONDS);
        }

        @Test
        void nothingButImpossibleValuesIsNoAltitude() {
            assertThat(clean(Channel.ALTITUDE, second -> -99_999).ride().has(Channel.ALTITUDE))
                    .isFalse();
        }

        /** A descent at 20 m/s on a slope of 25 percent falls 5 m in a second. */
        @Test
        void theSteepestDescentIsLeftAlone() {
            Cleaned cleaned = clean(Channel.ALTITUDE, second -> 5500 - 5.0 * second);
            assertThat(cleaned.quality().repairedSamples()).isZero();
        }
    }

    @ParameterizedTest
    @CsvSource({
        "SPEED, 500, 70, speed-spikes",
        "SPEED, 500, -3, speed-spikes",
        "SPEED, 500, 32, speed-spikes",
        "TEMPERATURE, 500, -255, temperature-spikes",
        "TEMPERATURE, 500, 127, temperature-spikes",
        "TEMPERATURE, 500, 60, temperature-spikes",
        "CADENCE, 500, 254, cadence-spikes",
        "CADENCE, 500, -1, cadence-spikes",
    })
    void whatAChannelCannotGiveIsRepaired(Channel channel, int at, double bad, String code) {
        Cleaned cleaned = clean(channel, second -> second == at ? bad : 9 + second % 2);
        Series series = cleaned.ride().series(channel);
        assertThat(noted(cleaned, code)).isEqualTo(1);
        assertThat(cleaned.quality().repairedSamples()).isEqualTo(1);
        assertThat(channel == Channel.CADENCE ? 9 : series.get(at)).isBetween(9.0, 10.0);
        assertThat(series.get(at + 1)).isEqualTo(9 + (at + 1) % 2);
    }

    @Test
    void aPositionThatNobodyReachesIsMissing() {
        Samples.Builder samples = Samples.builder();
        for (int second = 0; second < 100; second++) {
            boolean noFix = second == 20;
            boolean wild = second == 60;
            samples.at(T0 + second)
                    .set(Channel.LATITUDE, noFix ? 0 : wild ? -44 : 55.5 + second * 1e-4)
                    .set(Channel.LONGITUDE, noFix ? 0 : 9.5);
        }
        Cleaned cleaned = Cleaning.clean(Recording.of(samples.build()));
        assertThat(noted(cleaned, "position-spikes")).isEqualTo(2);
        // A gap of a second in a slow channel is interpolated.
        assertThat(cleaned.ride().series(Channel.LATITUDE).get(60)).isCloseTo(55.506, within(1e-9));
        assertThat(cleaned.ride().series(Channel.LONGITUDE).get(20)).isEqualTo(9.5);
    }

    @ParameterizedTest
    @CsvSource({"POWER, no-power-meter", "DISTANCE, no-distance", "ALTITUDE, no-altimeter", "SPEED, no-speed"})
    void oneBadSampleAmongZerosIsNoSensor(Channel channel, String code) {
        Cleaned cleaned = clean(channel, second -> second == 500 ? 1e9 : 0);
        assertThat(cleaned.ride().has(channel)).isFalse();
        assertThat(noted(cleaned, code)).isEqualTo(1);
    }

    /** A car at 96 km/h, and 3,386 m of climbing an hour: said, and left as they are. */
    @Test
    void whatNoBicycleHasDoneIsNotedAndLeftAsItIs() {
        Cleaned car = clean(Channel.DISTANCE, second -> second * 96 / 3.6);
        assertThat(noted(car, "faster-than-cycling")).isEqualTo(1);
        assertThat(coveredM(car.ride())).isCloseTo(999 * 96 / 3.6, within(1e-6));

        Samples.Builder lift = Samples.builder();
        Samples.Builder climb = Samples.builder();
        for (int second = 0; second < 3600; second++) {
            lift.at(T0 + second).set(Channel.ALTITUDE, 500 + second * 3386 / 3600.0);
            climb.at(T0 + second).set(Channel.ALTITUDE, 500 + second * 1700 / 3600.0);
        }
        Cleaned lifted = Cleaning.clean(Recording.of(lift.build()));
        assertThat(noted(lifted, "climbs-faster-than-cycling")).isEqualTo(1);
        assertThat(lifted.quality().repairedSamples()).isZero();
        assertThat(noted(Cleaning.clean(Recording.of(climb.build())), "climbs-faster-than-cycling"))
                .isZero();
    }
}
