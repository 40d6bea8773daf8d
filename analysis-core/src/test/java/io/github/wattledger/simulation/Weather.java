package io.github.wattledger.simulation;

/**
 * The air of a ride.
 *
 * @param airDensityKgPerM3 density of the air
 * @param windMps speed of the wind at the rider's height
 * @param windFromDegrees where the wind comes from, degrees clockwise from north
 * @param startTemperatureC temperature at the start
 * @param peakTemperatureC temperature eight hours later and from then on
 */
public record Weather(
        double airDensityKgPerM3,
        double windMps,
        double windFromDegrees,
        double startTemperatureC,
        double peakTemperatureC) {
    /** No wind, 15 degrees, density of the standard atmosphere at sea level. */
    public static final Weather CALM = new Weather(1.225, 0, 0, 15, 15);

    private static final double HOURS_TO_PEAK = 8;

    /** The same air with another wind. */
    public Weather withWind(double speedMps, double fromDegrees) {
        return new Weather(airDensityKgPerM3, speedMps, fromDegrees, startTemperatureC, peakTemperatureC);
    }

    /** The part of the wind against a rider who heads in a direction, m/s; negative from behind. */
    double headwindMps(double headingDegrees) {
        return windMps == 0 ? 0 : windMps * StrictMath.cos(StrictMath.toRadians(windFromDegrees - headingDegrees));
    }

    /** Temperature some seconds after the start, degrees Celsius: a smooth rise over {@value #HOURS_TO_PEAK} hours. */
    double temperatureC(double elapsedSeconds) {
        double share = StrictMath.min(1, elapsedSeconds / (HOURS_TO_PEAK * 3600));
        return startTemperatureC
                + (peakTemperatureC - startTemperatureC) * (1 - StrictMath.cos(StrictMath.PI * share)) / 2;
    }
}
