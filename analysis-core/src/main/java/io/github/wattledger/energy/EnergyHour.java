package io.github.wattledger.energy;

import io.github.wattledger.ride.Interval;
import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * What one hour of the clock asked for. The last hour of a ride is as long as what is left of it.
 *
 * @param stretch the hour, seconds of the ride
 * @param ridingSeconds the seconds of it that were ridden
 * @param meanPowerW mean power over the ridden seconds, watts; null where power was measured in fewer than nine in ten of
 *     them, or none were ridden
 * @param carbohydrateG carbohydrate used in these ridden seconds, grams; null where {@code meanPowerW} is
 */
public record EnergyHour(
        Interval stretch,
        int ridingSeconds,
        @Nullable Double meanPowerW,
        @Nullable Estimate carbohydrateG) implements Serializable {
    private static final double SECONDS_PER_HOUR = 3600;

    /** Carbohydrate used, grams an hour of riding; null where it is not known. */
    public @Nullable Estimate carbohydrateGPerHour() {
        return carbohydrateG == null ? null : carbohydrateG.times(SECONDS_PER_HOUR / ridingSeconds);
    }
}
