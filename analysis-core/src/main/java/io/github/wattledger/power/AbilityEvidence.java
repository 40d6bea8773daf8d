package io.github.wattledger.power;

import io.github.wattledger.ride.Outcome;
import java.io.Serializable;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What an {@link Ability} rests on, and what else the ride shows of it.
 *
 * @param sustainable sustainable power with its range, or null
 * @param criticalPower the fit to this ride's curve, or why there is none
 * @param balance the balance of W′ over the ride by the differential model, or null where W′ is not known
 * @param durability best efforts before and after a level of work, possibly none
 * @param thresholdEstimate threshold power as estimated from this ride, or null when one was known
 * @param thresholdHeartRate heart rate in a steady effort near threshold, or null when the ride holds none
 */
public record AbilityEvidence(
        @Nullable SustainablePower sustainable,
        Outcome<CriticalPowerFit> criticalPower,
        @Nullable WPrimeBalance balance,
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

    /** How the ride spent its rider's W′; null where W′ is not known, and for a ride without a second. */
    public @Nullable Spending spending() {
        return balance == null ? null : Spending.of(balance);
    }

    /** The same evidence without the balance of W′ second by second. */
    AbilityEvidence withoutBalance() {
        return new AbilityEvidence(sustainable, criticalPower, null, durability, thresholdEstimate, thresholdHeartRate);
    }

    /**
     * How W′ was used in a ride.
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
        /** What a balance says of the use of W′; null for a ride without a second. */
        static @Nullable Spending of(WPrimeBalance balance) {
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
