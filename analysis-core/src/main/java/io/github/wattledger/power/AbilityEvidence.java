package io.github.wattledger.power;

import io.github.wattledger.ride.Outcome;
import io.github.wattledger.ride.Ride;
import java.io.Serializable;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What an {@link Ability} rests on, and what else the ride shows of it.
 *
 * @param sustainable sustainable power with its range, or null
 * @param criticalPower the fit to this ride's curve, or why there is none
 * @param spending how W′ was used, or null where W′ is not known
 * @param durability best efforts before and after a level of work, possibly none
 * @param thresholdEstimate threshold power as estimated from this ride, or null when one was known
 * @param thresholdHeartRate heart rate in a steady effort near threshold, or null when the ride holds none
 */
public record AbilityEvidence(
        @Nullable SustainablePower sustainable,
        Outcome<CriticalPowerFit> criticalPower,
        @Nullable Spending spending,
        List<Durability> durability,
        @Nullable ThresholdEstimate thresholdEstimate,
        @Nullable ThresholdHeartRate thresholdHeartRate)
        implements Serializable {
    /** Share of W′ below which a rider cannot answer a hard move. Own choice. */
    public static final double LOW_SHARE = 0.25;

    /** Copies the list. */
    public AbilityEvidence {
        durability = List.copyOf(durability);
    }

    /**
     * How W′ was used in a ride, by the differential model.
     *
     * @param lowestKJ lowest W′ balance, kilojoules; below 0 when critical power or W′ is set too low
     * @param lowestSecond the second at whose end it was lowest
     * @param secondsBelowQuarter seconds with less than a quarter of W′ left
     * @param warning one sentence when the balance fell below 0, else null
     */
    public record Spending(
            double lowestKJ,
            int lowestSecond,
            int secondsBelowQuarter,
            @Nullable String warning) implements Serializable {
        /**
         * How a ride spent its rider's W′; null for a ride without a second.
         *
         * @throws IllegalArgumentException when critical power (watts) or W′ (joules) is not above 0
         */
        public static @Nullable Spending of(Ride ride, double criticalPowerW, double wPrimeJ) {
            WPrimeBalance balance = WPrimeBalance.of(ride, criticalPowerW, wPrimeJ, WPrimeBalance.Model.DIFFERENTIAL);
            if (balance.minimumSecond().isEmpty()) {
                return null;
            }
            return new Spending(
                    balance.minimumJ() / 1000,
                    balance.minimumSecond().getAsInt(),
                    balance.secondsBelow(LOW_SHARE),
                    balance.warning().orElse(null));
        }
    }
}
