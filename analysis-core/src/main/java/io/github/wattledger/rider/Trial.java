package io.github.wattledger.rider;

import java.io.Serializable;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * An effort over a set time that the rider names as maximal, for critical power.
 *
 * @param day the day of the ride on the rider's own calendar
 * @param seconds its duration, within {@link Bounds#TRIAL_SECONDS}
 * @param watts its mean power, watts, within {@link Bounds#TRIAL_POWER_W}, or null where the rides of that day say it
 */
public record Trial(LocalDate day, int seconds, @Nullable Double watts) implements Serializable {
    /** @throws IllegalArgumentException when a number lies outside its range */
    public Trial {
        Bounds.TRIAL_SECONDS.require("seconds", (double) seconds);
        Bounds.TRIAL_POWER_W.require("watts", watts);
    }
}
