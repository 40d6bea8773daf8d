package io.github.wattledger.energy;

import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rider.Bounds;
import java.io.Serializable;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Carbohydrate used up to a moment of a ride, beside what a body stores and what was eaten.
 *
 * <p>It answers with one of three words and the ranges it rests on. It never names a moment at which a store was empty: the
 * same ride empties it after 3.5 hours or after 23, depending on the rider.
 *
 * @param second the moment, seconds of the ride
 * @param usedG carbohydrate used up to it, grams
 * @param eatenG carbohydrate eaten up to it as the rider says, grams; null where the rider does not say
 * @param burnedG how much of that the body can have burned by then, grams; null where the rider does not say
 * @param shortage whether the rider can have been short of carbohydrate
 * @param intakeWouldTell whether the word could be another one if it were known what was eaten
 */
public record CarbohydrateBalance(
        int second,
        Estimate usedG,
        @Nullable Double eatenG,
        @Nullable Double burnedG,
        Shortage shortage,
        boolean intakeWouldTell)
        implements Serializable {
    /**
     * What a body stores, grams: muscle and liver of trained people. Rapoport 2010, PLoS Comput Biol 6:e1000960, gives 289
     * g to 520 g in the legs of a rider of 70 kg; muscle 350 to 700 g and liver 80 to 110 g from memory.
     */
    public static final Estimate STORED_G = new Estimate(300, 450, 600);

    /** Nobody burns more of what is eaten than of a large mixture of sugars. */
    private static final Intake MOST_THAT_CAN_BE_EATEN = Intake.ofGramsPerHour(Bounds.EATEN_G_PER_HOUR.high());

    private static final Intake NOTHING = Intake.ofGramsPerHour(Bounds.EATEN_G_PER_HOUR.low());

    /**
     * The balance at a moment of a ride.
     *
     * @param second the moment, above 0 and within the ride
     * @param thresholdPowerW threshold power, watts, above 0
     * @param intake what the rider says was eaten from the first second of the ride on, or null where nothing is said
     * @return empty where the energy used up to the moment is not known
     * @throws IndexOutOfBoundsException when the moment does not lie within the ride
     * @throws IllegalArgumentException when the threshold is not above 0
     */
    public static Optional<CarbohydrateBalance> at(
            Ride ride, int second, double thresholdPowerW, @Nullable Intake intake) {
        return EnergyUse.of(ride.part(new Interval(0, second)), thresholdPowerW)
                .map(use -> of(second, use.carbohydrateG(), intake));
    }

    static CarbohydrateBalance of(int second, Estimate usedG, @Nullable Intake intake) {
        if (intake != null) {
            return new CarbohydrateBalance(
                    second,
                    usedG,
                    intake.gramsUntil(second),
                    intake.burnedGUntil(second),
                    shortage(second, usedG, intake),
                    false);
        }
        Shortage withNothing = shortage(second, usedG, NOTHING);
        Shortage withMost = shortage(second, usedG, MOST_THAT_CAN_BE_EATEN);
        boolean alike = withNothing == withMost;
        return new CarbohydrateBalance(second, usedG, null, null, alike ? withNothing : Shortage.POSSIBLE, !alike);
    }

    private static Shortage shortage(int second, Estimate usedG, Intake intake) {
        if (usedG.high() - intake.burnedGUntil(second) < STORED_G.low()) {
            return Shortage.UNLIKELY;
        }
        return usedG.low() - intake.burnedGUntil(second) > STORED_G.high() ? Shortage.LIKELY : Shortage.POSSIBLE;
    }
}
