package io.github.wattledger.power;

import java.io.Serializable;
import java.time.LocalDate;

/**
 * A long ride of a rider, as far as it says something about endurance.
 *
 * @param day the day of the ride on the rider's own calendar
 * @param hours riding time, hours, above 0
 * @param watts normalized power of the riding time, watts, above 0
 * @param thresholdOfDayW the rider's threshold power on the day of this ride, watts, above 0
 */
public record LongRide(LocalDate day, double hours, double watts, double thresholdOfDayW) implements Serializable {
    /** @throws IllegalArgumentException when a number is not finite and above 0 */
    public LongRide {
        requirePositive("hours", hours);
        requirePositive("watts", watts);
        requirePositive("thresholdOfDayW", thresholdOfDayW);
    }

    private static void requirePositive(String name, double value) {
        if (!(value > 0 && Double.isFinite(value))) {
            throw new IllegalArgumentException(name + " " + value + ", expected above 0");
        }
    }

    /** The logarithm of its riding time in hours. */
    double logHours() {
        return Math.log(hours);
    }

    /** How far the ride lay over the general guide for its length, in natural logarithms: 0.02 is about 2 % over it. */
    double logOverGuide() {
        return Math.log(watts / thresholdOfDayW) + SustainablePower.DECLINE_BEYOND_HOUR * logHours();
    }
}
