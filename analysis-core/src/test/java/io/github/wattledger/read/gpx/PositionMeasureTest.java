package io.github.wattledger.read.gpx;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PositionMeasureTest {
    /**
     * Flinders Peak to Buninyong is Geoscience Australia's test line (on GRS80, from which WGS-84 differs here by less
     * than 0.0001 mm); the last two are cases of C. F. F. Karney's published test set for geodesics.
     */
    @ParameterizedTest
    @CsvSource({
        "-37.951033416667, 144.424867888889, -37.652821138889, 143.926495527778, 54972.271",
        "50.06632, -5.71475, 58.64402, -3.07009, 969954.166",
        "35.60777, -139.44815, -11.17491, -69.95921, 8935244.5604818",
        "-41.22777, 122.32875, -7.57291, 130.37946, 3812686.035"
    })
    void agreesWithPublishedLines(
            double latitude1, double longitude1, double latitude2, double longitude2, double metres) {
        assertThat(PositionMeasure.metres(latitude1, longitude1, latitude2, longitude2))
                .isCloseTo(metres, within(0.001));
    }

    @Test
    void isZeroFromAPlaceToItself() {
        assertThat(PositionMeasure.metres(55.5, 9.5, 55.5, 9.5)).isZero();
    }
}
