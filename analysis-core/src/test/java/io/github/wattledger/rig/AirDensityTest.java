package io.github.wattledger.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AirDensityTest {
    /** The ideal gas law with the constants of Doc 7488: the molar mass of dry air, and the gas constant. */
    private static double standardKgPerM3(double altitudeM) {
        return AirDensity.standardPressurePa(altitudeM)
                * 0.0289644
                / (8.31432 * AirDensity.standardTemperatureK(altitudeM));
    }

    /** Table of the ICAO Standard Atmosphere (Doc 7488) against geopotential height. */
    @ParameterizedTest
    @CsvSource({"0, 1.22500", "1000, 1.11164", "2000, 1.00649", "3000, 0.909122", "4000, 0.819129"})
    void standardAtmosphere(double altitudeM, double density) {
        assertThat(standardKgPerM3(altitudeM)).isCloseTo(density, within(5e-6 * 1.1));
    }

    /** The same model worked out outside this project. */
    @ParameterizedTest
    @CsvSource({"500, 1.16727", "1500, 1.05807", "2500, 0.95686"})
    void standardAtmosphereBetween(double altitudeM, double density) {
        assertThat(standardKgPerM3(altitudeM)).isCloseTo(density, within(1e-5));
    }

    @ParameterizedTest
    @CsvSource({
        "0, 288.15, 101325.0",
        "500, 284.90, 95460.8",
        "1000, 281.65, 89874.6",
        "1500, 278.40, 84556.0",
        "2000, 275.15, 79495.2",
        "3000, 268.65, 70108.5"
    })
    void standardTemperatureAndPressure(double altitudeM, double kelvins, double pascals) {
        assertThat(AirDensity.standardTemperatureK(altitudeM)).isCloseTo(kelvins, within(1e-9));
        assertThat(AirDensity.standardPressurePa(altitudeM)).isCloseTo(pascals, within(0.1));
    }

    /** FAO Irrigation and Drainage Paper 56 (1998), example 3: 1.705 kPa at 15.0 and 3.075 kPa at 24.5 degrees. */
    @ParameterizedTest
    @CsvSource({"15.0, 1705, 0.5", "24.5, 3075, 0.5", "20, 2338.3, 0.1", "25, 3167.8, 0.1", "30, 4243.1, 0.1"})
    void saturationPressure(double celsius, double pascals, double tolerance) {
        assertThat(AirDensity.saturationVapourPressurePa(celsius)).isCloseTo(pascals, within(tolerance));
    }

    /** The two-gas form at 20 degrees, 101,325 Pa and half-saturated air, worked out outside this project. */
    @Test
    void moistAir() {
        assertThat(AirDensity.moistKgPerM3(20, 101_325, 0.5)).isCloseTo(1.19887, within(1e-5));
    }

    /**
     * CIPM-2007 (Picard, Davis, Glaeser and Fujii, Metrologia 45:149, 2008), worked out outside this project: 0.06 %
     * is what the simpler form may differ.
     */
    @ParameterizedTest
    @CsvSource({
        "20, 101325, 0.5, 1.19931",
        "15, 101325, 0, 1.22552",
        "25, 100000, 0.6, 1.16043",
        "10, 95000, 0.8, 1.16478",
        "30, 90000, 0.4, 1.02714",
        "0, 101325, 0, 1.29305"
    })
    void agreesWithTheFullFormula(double celsius, double pascals, double humidity, double density) {
        assertThat(AirDensity.moistKgPerM3(celsius, pascals, humidity)).isCloseTo(density, within(6e-4 * density));
    }

    /** OIML R 111 short form (from memory): 1.19929 kg/m3 at 20 degrees, 101,325 Pa, 50 %. */
    @Test
    void agreesWithTheShortFormOfTheWeighers() {
        double shortForm = (0.34848 * 1013.25 - 0.009 * 50 * Math.exp(0.061 * 20)) / (273.15 + 20);
        assertThat(shortForm).isCloseTo(1.19929, within(1e-5));
        assertThat(AirDensity.moistKgPerM3(20, 101_325, 0.5)).isCloseTo(shortForm, within(6e-4 * shortForm));
    }

    @Test
    void refusesWhatIsNoWeather() {
        assertThatThrownBy(() -> AirDensity.standardPressurePa(Double.NaN))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> AirDensity.moistKgPerM3(20, 1013, 0.5)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> AirDensity.moistKgPerM3(20, 101_325, 50)).isInstanceOf(IllegalArgumentException.class);
    }
}
