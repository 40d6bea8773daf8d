package io.github.wattledger.plan;

import io.github.wattledger.energy.EnergyUse;
import io.github.wattledger.energy.Estimate;
import io.github.wattledger.energy.IntakeGuide;
import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * The carbohydrate that a plan will use, and what the literature says of intake in rides of its length. It is a range from
 * studies of trained adults and no plan for eating.
 *
 * @param carbohydrateGPerHour carbohydrate used, grams an hour under way
 * @param guide the published range of intake, grams an hour, or null where the ride needs none
 */
public record PlanFuel(
        Estimate carbohydrateGPerHour, @Nullable IntakeGuide guide) implements Serializable {
    private static final double SECONDS_PER_HOUR = 3600;

    /** The fuel of a plan; null for a rider who may be under 18. */
    static @Nullable PlanFuel of(PlanRider rider, double meanPowerW, double movingSeconds) {
        if (rider.mayBeUnder18()) {
            return null;
        }
        Estimate used = EnergyUse.carbohydrateGPerHour(meanPowerW, rider.thresholdPowerW());
        return new PlanFuel(
                used, IntakeGuide.of(movingSeconds / SECONDS_PER_HOUR, used).orElse(null));
    }
}
