package io.github.wattledger.rig;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rider.Bounds;
import java.io.Serializable;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * What is known of the air; null where it is not. What is not known is that of the standard atmosphere, half saturated.
 *
 * @param temperatureC temperature, -40 to 60 degrees Celsius
 * @param altitudeM height above sea level, -500 to 9,000 m
 * @param pressurePa pressure where the rider is, not reduced to sea level, 20,000 to 110,000 Pa; where it is known, the
 *     altitude is not used
 * @param densityKgPerM3 density, 0.3 to 1.6 kg/m3; where it is known, the other numbers are not used
 */
public record Air(
        @Nullable Double temperatureC,
        @Nullable Double altitudeM,
        @Nullable Double pressurePa,
        @Nullable Double densityKgPerM3)
        implements Serializable {
    /** Air of which nothing is known. */
    public static final Air UNKNOWN = new Air(null, null, null, null);

    private static final double USUAL_HUMIDITY_FRACTION = 0.5;

    // How far the density can be off for 15 degrees, for 500 m, and for the pressure of the weather. Own choice.
    private static final double TEMPERATURE_FRACTION = 0.05;
    private static final double ALTITUDE_FRACTION = 0.05;
    private static final double WEATHER_FRACTION = 0.02;

    /** @throws IllegalArgumentException when a number lies outside its range */
    public Air {
        Bounds.TEMPERATURE_C.require("temperatureC", temperatureC);
        Bounds.ALTITUDE_M.require("altitudeM", altitudeM);
        Bounds.PRESSURE_PA.require("pressurePa", pressurePa);
        Bounds.AIR_DENSITY_KG_PER_M3.require("airDensityKgPerM3", densityKgPerM3);
    }

    /** The air of a ride: its mean altitude and temperature under way, as far as they were recorded. */
    public static Air of(Ride ride) {
        Double temperature = mean(ride, Channel.TEMPERATURE);
        Double altitude = mean(ride, Channel.ALTITUDE);
        return new Air(
                temperature == null ? null : Double.valueOf(Math.min(55, Bounds.TEMPERATURE_C.nearest(temperature))),
                altitude == null ? null : Double.valueOf(Bounds.ALTITUDE_M.nearest(altitude)),
                null,
                null);
    }

    private static @Nullable Double mean(Ride ride, Channel channel) {
        OptionalDouble mean = ride.meanWhileRiding(channel, new Interval(0, ride.seconds()));
        return mean.isPresent() ? mean.getAsDouble() : null;
    }

    /**
     * This air with what is known of another air put in its place. Another altitude replaces the pressure; another density
     * replaces everything.
     *
     * @throws IllegalArgumentException when this air is known by its density alone and the other has no density
     */
    public Air with(Air other) {
        if (other.equals(UNKNOWN)) {
            return this;
        }
        if (other.densityKgPerM3 != null) {
            return other;
        }
        if (densityKgPerM3 != null) {
            throw new IllegalArgumentException("the air is given by its density: change it by its density, too");
        }
        return new Air(
                other.temperatureC == null ? temperatureC : other.temperatureC,
                other.altitudeM == null ? altitudeM : other.altitudeM,
                other.altitudeM == null && other.pressurePa == null ? pressurePa : other.pressurePa,
                null);
    }

    /**
     * The density, kg/m3, with its range: 5 % for an unknown temperature, 5 % where neither altitude nor pressure is known,
     * 2 % for the weather where the pressure is not known. A density that was given has no range.
     */
    public Measure density() {
        if (densityKgPerM3 != null) {
            return Measure.exactly(densityKgPerM3, Measure.Origin.GIVEN);
        }
        double altitude = altitudeM == null ? 0 : altitudeM;
        double pressure = pressurePa == null ? AirDensity.standardPressurePa(altitude) : pressurePa;
        // The standard atmosphere is colder than the formulas reach above 8,460 m; the range of the density covers
        // that.
        double temperature = temperatureC == null
                ? Math.max(
                        Bounds.TEMPERATURE_C.low(),
                        AirDensity.standardTemperatureK(altitude) - AirDensity.ZERO_CELSIUS_K)
                : temperatureC;
        double offTemperature = temperatureC == null ? TEMPERATURE_FRACTION : 0;
        double offAltitude = altitudeM == null && pressurePa == null ? ALTITUDE_FRACTION : 0;
        double offWeather = pressurePa == null ? WEATHER_FRACTION : 0;
        boolean isGiven = offTemperature + offAltitude == 0;
        return Measure.within(
                AirDensity.moistKgPerM3(temperature, pressure, USUAL_HUMIDITY_FRACTION),
                Math.sqrt(offTemperature * offTemperature + offAltitude * offAltitude + offWeather * offWeather),
                isGiven ? Measure.Origin.GIVEN : Measure.Origin.TYPICAL);
    }
}
