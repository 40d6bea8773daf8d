package io.github.wattledger.load;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Expected values are the heights of the profiles drawn here. */
class AscentTest {
    @Test
    void climbsAreCountedFromFootToTop() {
        double[] altitude = {100, 105, 112, 120, 118, 110, 101, 107, 131};
        assertThat(Ascent.metres(altitude).orElseThrow()).isCloseTo(20 + 30, within(1e-9));
    }

    @Test
    void risesUnderThreeMetresAreNotTold() {
        assertThat(Ascent.metres(new double[] {100, 102.9, 100, 102.9, 100}).orElseThrow())
                .isZero();
        assertThat(Ascent.metres(new double[] {100, 103, 100, 103, 100}).orElseThrow())
                .isCloseTo(6, within(1e-9));
    }

    @Test
    void aSmallDipDoesNotBreakAClimb() {
        assertThat(Ascent.metres(new double[] {100, 150, 148, 200}).orElseThrow())
                .isCloseTo(100, within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void aFlatRoadUnderANoisyBarometerStaysFlat(long seed) {
        Random random = new Random(seed);
        double[] altitude = random.doubles(20_000, 249, 251).toArray();
        assertThat(Ascent.metres(altitude).orElseThrow()).isZero();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void noiseAddsNoMoreThanItsSpanToEachClimb(long seed) {
        // Ten climbs of 100 m; noise within 1 m either way can raise each top and lower each foot by 1 m.
        Random random = new Random(seed);
        double[] altitude = IntStream.range(0, 20_000)
                .mapToDouble(second -> 50 - 50 * Math.cos(second * 2 * Math.PI / 2000) + random.nextDouble(-1, 1))
                .toArray();
        assertThat(Ascent.metres(altitude).orElseThrow()).isBetween(1000 - 20.0, 1000 + 20.0);
    }

    @Test
    void missingAltitudeIsBridged() {
        assertThat(Ascent.metres(new double[] {Double.NaN, 100, Double.NaN, 150, Double.NaN})
                        .orElseThrow())
                .isCloseTo(50, within(1e-9));
        assertThat(Ascent.metres(new double[] {Double.NaN, Double.NaN})).isEmpty();
    }
}
