package io.github.wattledger.rig;

import io.github.wattledger.rider.Bounds;

/** Density of the air a rider moves through, kg/m3. */
final class AirDensity {
    /** Density of the standard atmosphere at sea level, kg/m3 (ICAO Doc 7488). */
    static final double SEA_LEVEL_KG_PER_M3 = 1.225;

    // Constants of the ICAO Standard Atmosphere (Doc 7488), its lowest layer.
    private static final double SEA_LEVEL_K = 288.15;
    private static final double SEA_LEVEL_PA = 101_325;
    private static final double LAPSE_K_PER_M = 0.0065;
    private static final double MOLAR_MASS_KG_PER_MOL = 0.0289644;
    private static final double GAS_CONSTANT_J_PER_MOL_K = 8.31432;
    private static final double PRESSURE_EXPONENT =
            RoadLoad.GRAVITY_MPS2 * MOLAR_MASS_KG_PER_MOL / (GAS_CONSTANT_J_PER_MOL_K * LAPSE_K_PER_M);

    /** Specific gas constants, J/(kg K). */
    private static final double DRY_AIR_J_PER_KG_K = 287.05;

    private static final double VAPOUR_J_PER_KG_K = 461.495;

    static final double ZERO_CELSIUS_K = 273.15;
    private static final Bounds ALTITUDE_M = new Bounds(-500, 11_000);
    private static final Bounds TEMPERATURE_C = new Bounds(-40, 60);
    private static final Bounds PRESSURE_PA = new Bounds(20_000, 110_000);
    private static final Bounds HUMIDITY_FRACTION = new Bounds(0, 1);

    private AirDensity() {}

    /**
     * Pressure of the standard atmosphere, pascals.
     *
     * @throws IllegalArgumentException when the altitude is not -500 to 11,000 m
     */
    static double standardPressurePa(double altitudeM) {
        return SEA_LEVEL_PA * Math.pow(standardTemperatureK(altitudeM) / SEA_LEVEL_K, PRESSURE_EXPONENT);
    }

    /**
     * Temperature of the standard atmosphere, kelvins.
     *
     * @throws IllegalArgumentException when the altitude is not -500 to 11,000 m
     */
    static double standardTemperatureK(double altitudeM) {
        ALTITUDE_M.require("altitudeM", altitudeM);
        return SEA_LEVEL_K - LAPSE_K_PER_M * altitudeM;
    }

    /**
     * Saturation pressure of water vapour (Tetens 1930, as in Allen et al., FAO Irrigation and Drainage Paper 56, 1998,
     * equation 11).
     *
     * @param temperatureC air temperature, -40 to 60 degrees Celsius
     * @return pascals
     * @throws IllegalArgumentException when the temperature is out of range or {@code NaN}
     */
    static double saturationVapourPressurePa(double temperatureC) {
        TEMPERATURE_C.require("temperatureC", temperatureC);
        return 610.8 * Math.exp(17.27 * temperatureC / (temperatureC + 237.3));
    }

    /**
     * Density of moist air: dry air and vapour as two ideal gases. Within 0.06 % of the full CIPM-2007 formula (Picard,
     * Davis, Glaeser and Fujii 2008) in any weather that one rides in.
     *
     * @param temperatureC air temperature, -40 to 60 degrees Celsius
     * @param pressurePa pressure where the rider is (not reduced to sea level), 20,000 to 110,000 Pa
     * @param humidityFraction relative humidity, 0 to 1
     * @return kg/m3
     * @throws IllegalArgumentException when a number is out of range or {@code NaN}
     */
    static double moistKgPerM3(double temperatureC, double pressurePa, double humidityFraction) {
        PRESSURE_PA.require("pressurePa", pressurePa);
        HUMIDITY_FRACTION.require("humidityFraction", humidityFraction);
        double vapourPa = humidityFraction * saturationVapourPressurePa(temperatureC);
        double kelvins = temperatureC + ZERO_CELSIUS_K;
        return (pressurePa - vapourPa) / (DRY_AIR_J_PER_KG_K * kelvins) + vapourPa / (VAPOUR_J_PER_KG_K * kelvins);
    }
}
