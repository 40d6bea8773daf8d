package io.github.wattledger.rider;

import java.io.Serializable;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A best effort of a rider: the highest mean power over some time in some ride.
 *
 * @param seconds its duration, within {@link Bounds#LONG_BEST_SECONDS}
 * @param watts its mean power, watts, within {@link Bounds#THRESHOLD_POWER_W}
 * @param day the day of that ride on the rider's own calendar, or null when it is not known
 */
public record LongBest(int seconds, double watts, @Nullable LocalDate day) implements Serializable {

    /** @throws IllegalArgumentException when a number lies outside its range */
    public LongBest {
        Bounds.LONG_BEST_SECONDS.require("seconds", (double) seconds);
        Bounds.THRESHOLD_POWER_W.require("watts", watts);
    }

    /**
     * Whether a ride of some day may be judged by it: a ride measured by its own bests has always met its target, and one
     * of an earlier day was ridden by somebody who had not shown this yet.
     */
    public boolean isBefore(LocalDate rideDay) {
        return day == null || day.isBefore(rideDay);
    }
}
