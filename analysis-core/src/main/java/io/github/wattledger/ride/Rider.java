package io.github.wattledger.ride;

import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * What is known about the rider on the day of a ride; null where it is not known.
 *
 * @param massKg the rider's mass, 25 to 250 kg
 * @param thresholdPowerW the power the rider can hold for about an hour, 30 to 700 W
 * @param thresholdHeartRateBpm the heart rate that goes with it, 60 to 230 beats per minute
 * @param powerZones how power is divided into zones
 * @param heartRateZones how heart rate is divided into zones
 */
public record Rider(
        @Nullable Double massKg,
        @Nullable Double thresholdPowerW,
        @Nullable Double thresholdHeartRateBpm,
        ZoneScheme powerZones,
        ZoneScheme heartRateZones)
        implements Serializable {
    /** A rider of whom nothing is known, with the usual zones. */
    public static final Rider UNKNOWN =
            new Rider(null, null, null, ZoneScheme.POWER_SEVEN_LEVELS, ZoneScheme.HEART_RATE_FIVE_LEVELS);

    /** @throws IllegalArgumentException when a number lies outside its range */
    public Rider {
        requireWithin("massKg", massKg, 25, 250);
        requireWithin("thresholdPowerW", thresholdPowerW, 30, 700);
        requireWithin("thresholdHeartRateBpm", thresholdHeartRateBpm, 60, 230);
    }

    /** The same rider with another mass, kg. */
    public Rider withMassKg(double newMassKg) {
        return new Rider(newMassKg, thresholdPowerW, thresholdHeartRateBpm, powerZones, heartRateZones);
    }

    /** The same rider with another threshold power, watts. */
    public Rider withThresholdPowerW(double newThresholdPowerW) {
        return new Rider(massKg, newThresholdPowerW, thresholdHeartRateBpm, powerZones, heartRateZones);
    }

    /** The same rider with another threshold heart rate, beats per minute. */
    public Rider withThresholdHeartRateBpm(double newThresholdHeartRateBpm) {
        return new Rider(massKg, thresholdPowerW, newThresholdHeartRateBpm, powerZones, heartRateZones);
    }

    private static void requireWithin(String name, @Nullable Double value, double low, double high) {
        if (value != null && !(value >= low && value <= high)) {
            throw new IllegalArgumentException(name + " " + value + ", expected " + low + " to " + high);
        }
    }
}
