package io.github.wattledger.ride;

import java.io.Serializable;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A best effort of a rider: the highest mean power over some time in some ride.
 *
 * @param seconds its duration, within {@link #SECONDS}
 * @param watts its mean power, watts, within {@link Rider#THRESHOLD_POWER_W}
 * @param day the day of that ride on the rider's own calendar, or null when it is not known
 */
public record LongBest(int seconds, double watts, @Nullable LocalDate day) implements Serializable {
    /** Seconds that such an effort can last: from twenty minutes, below which it tells little of endurance, to two days. */
    public static final Bounds SECONDS = new Bounds(1200, 172_800);

    /** @throws IllegalArgumentException when a number lies outside its range */
    public LongBest {
        SECONDS.require("seconds", (double) seconds);
        Rider.THRESHOLD_POWER_W.require("watts", watts);
    }

    /**
     * Whether a ride of some day may be judged by it: a ride measured by its own bests has always met its target, and one
     * of an earlier day was ridden by somebody who had not shown this yet.
     */
    public boolean isBefore(LocalDate rideDay) {
        return day == null || day.isBefore(rideDay);
    }
}
