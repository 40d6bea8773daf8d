package io.github.wattledger.rider;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * What is known about a rider and the bicycle; null where it is not known. A threshold that is given here beats the
 * history, which is looked up for the day of a ride.
 *
 * @param massKg the rider's mass, within {@link Bounds#RIDER_MASS_KG}
 * @param bikeMassKg the mass of the bicycle with all that is on it, within {@link Bounds#BIKE_MASS_KG}
 * @param thresholdPowerW the power the rider can hold for about an hour, within {@link Bounds#THRESHOLD_POWER_W}
 * @param thresholdHeartRateBpm the heart rate that goes with it, within {@link Bounds#THRESHOLD_HEART_RATE_BPM}
 * @param maximumHeartRateBpm the highest heart rate the rider reaches, within {@link Bounds#MAXIMUM_HEART_RATE_BPM}
 * @param thresholds the thresholds of other days
 * @param powerZones how power is divided into zones
 * @param heartRateZones how heart rate is divided into zones
 * @param gears the gears
 * @param dragAreaM2 drag coefficient times frontal area, square metres, within {@link Bounds#DRAG_AREA_M2}
 * @param rollingResistance coefficient of rolling resistance, within {@link Bounds#ROLLING_RESISTANCE}
 * @param criticalPowerW critical power as measured elsewhere, within {@link Bounds#CRITICAL_POWER_W}; given with W′ or not at all
 * @param wPrimeKJ W′, the work that can be done above critical power, within {@link Bounds#W_PRIME_KJ}
 * @param longBests best efforts of rides, from which sustainable power for a long one is taken
 * @param raceDays days of which the rider says that the ride was a race
 * @param allOutDays days on which the rider gave all in a long ride
 * @param trials efforts that the rider names as maximal, for critical power
 * @param birthYear year of birth, within {@link Bounds#BIRTH_YEAR}; it decides only whether what is published for adults is shown
 */
public record Rider(
        @Nullable Double massKg,
        @Nullable Double bikeMassKg,
        @Nullable Double thresholdPowerW,
        @Nullable Double thresholdHeartRateBpm,
        @Nullable Double maximumHeartRateBpm,
        ThresholdHistory thresholds,
        ZoneScheme powerZones,
        ZoneScheme heartRateZones,
        @Nullable Gears gears,
        @Nullable Double dragAreaM2,
        @Nullable Double rollingResistance,
        @Nullable Double criticalPowerW,
        @Nullable Double wPrimeKJ,
        List<LongBest> longBests,
        Set<LocalDate> raceDays,
        Set<LocalDate> allOutDays,
        List<Trial> trials,
        @Nullable Integer birthYear)
        implements Serializable {
    /** A rider of whom nothing is known, with the usual zones. */
    public static final Rider UNKNOWN = new Rider(
            null,
            null,
            null,
            null,
            null,
            ThresholdHistory.NONE,
            ZoneScheme.POWER_SEVEN_LEVELS,
            ZoneScheme.HEART_RATE_FIVE_LEVELS,
            null,
            null,
            null,
            null,
            null,
            List.of(),
            Set.of(),
            Set.of(),
            List.of(),
            null);

    /** @throws IllegalArgumentException when a number lies outside its range, or one of critical power and W′ is missing */
    public Rider {
        Bounds.RIDER_MASS_KG.require("massKg", massKg);
        Bounds.BIKE_MASS_KG.require("bikeMassKg", bikeMassKg);
        Bounds.THRESHOLD_POWER_W.require("thresholdPowerW", thresholdPowerW);
        Bounds.THRESHOLD_HEART_RATE_BPM.require("thresholdHeartRateBpm", thresholdHeartRateBpm);
        Bounds.MAXIMUM_HEART_RATE_BPM.require("maximumHeartRateBpm", maximumHeartRateBpm);
        Bounds.DRAG_AREA_M2.require("dragAreaM2", dragAreaM2);
        Bounds.ROLLING_RESISTANCE.require("rollingResistance", rollingResistance);
        Bounds.CRITICAL_POWER_W.require("criticalPowerW", criticalPowerW);
        Bounds.W_PRIME_KJ.require("wPrimeKJ", wPrimeKJ);
        Bounds.BIRTH_YEAR.require("birthYear", birthYear == null ? null : Double.valueOf(birthYear));
        if ((criticalPowerW == null) != (wPrimeKJ == null)) {
            throw new IllegalArgumentException("critical power and W' belong together; only one of them is given");
        }
        longBests = List.copyOf(longBests);
        raceDays = Set.copyOf(raceDays);
        allOutDays = Set.copyOf(allOutDays);
        trials = List.copyOf(trials);
    }

    /** The same rider with another mass, kg, or null where it is not known. */
    public Rider withMassKg(@Nullable Number newMassKg) {
        return changed(copy -> copy.massKg = orNull(newMassKg));
    }

    /** The same rider with another mass of the bicycle, kg, or null where it is not known. */
    public Rider withBikeMassKg(@Nullable Number newBikeMassKg) {
        return changed(copy -> copy.bikeMassKg = orNull(newBikeMassKg));
    }

    /** The same rider with another threshold power, watts, or null where it is not known. */
    public Rider withThresholdPowerW(@Nullable Number newThresholdPowerW) {
        return changed(copy -> copy.thresholdPowerW = orNull(newThresholdPowerW));
    }

    /** The same rider with another threshold heart rate, beats per minute, or null where it is not known. */
    public Rider withThresholdHeartRateBpm(@Nullable Number newThresholdHeartRateBpm) {
        return changed(copy -> copy.thresholdHeartRateBpm = orNull(newThresholdHeartRateBpm));
    }

    /** The same rider with another maximum heart rate, beats per minute, or null where it is not known. */
    public Rider withMaximumHeartRateBpm(@Nullable Number newMaximumHeartRateBpm) {
        return changed(copy -> copy.maximumHeartRateBpm = orNull(newMaximumHeartRateBpm));
    }

    /** The same rider with another history of thresholds. */
    public Rider withThresholds(ThresholdHistory newThresholds) {
        return changed(copy -> copy.thresholds = newThresholds);
    }

    /** The same rider with other power zones. */
    public Rider withPowerZones(ZoneScheme newPowerZones) {
        return changed(copy -> copy.powerZones = newPowerZones);
    }

    /** The same rider with other heart-rate zones. */
    public Rider withHeartRateZones(ZoneScheme newHeartRateZones) {
        return changed(copy -> copy.heartRateZones = newHeartRateZones);
    }

    /** The same rider with other gears, or null where they are not known. */
    public Rider withGears(@Nullable Gears newGears) {
        return changed(copy -> copy.gears = newGears);
    }

    /** The same rider with another drag area, square metres, or null where it is not known. */
    public Rider withDragAreaM2(@Nullable Number newDragAreaM2) {
        return changed(copy -> copy.dragAreaM2 = orNull(newDragAreaM2));
    }

    /** The same rider with another rolling resistance, a plain coefficient, or null where it is not known. */
    public Rider withRollingResistance(@Nullable Number newRollingResistance) {
        return changed(copy -> copy.rollingResistance = orNull(newRollingResistance));
    }

    /** The same rider with another critical power, watts, and W′, kilojoules; both or neither of them null. */
    public Rider withCriticalPower(@Nullable Number newCriticalPowerW, @Nullable Number newWPrimeKJ) {
        return changed(copy -> {
            copy.criticalPowerW = orNull(newCriticalPowerW);
            copy.wPrimeKJ = orNull(newWPrimeKJ);
        });
    }

    /** The same rider with other long bests. */
    public Rider withLongBests(List<LongBest> newLongBests) {
        return changed(copy -> copy.longBests = newLongBests);
    }

    /** The same rider with other days of races. */
    public Rider withRaceDays(Set<LocalDate> newRaceDays) {
        return changed(copy -> copy.raceDays = newRaceDays);
    }

    /** The same rider with other days on which he or she gave all. */
    public Rider withAllOutDays(Set<LocalDate> newAllOutDays) {
        return changed(copy -> copy.allOutDays = newAllOutDays);
    }

    /** The same rider with other trials. */
    public Rider withTrials(List<Trial> newTrials) {
        return changed(copy -> copy.trials = newTrials);
    }

    /** The same rider with another year of birth, or null where it is not known. */
    public Rider withBirthYear(@Nullable Integer newBirthYear) {
        return changed(copy -> copy.birthYear = newBirthYear);
    }

    private static @Nullable Double orNull(@Nullable Number value) {
        return value == null ? null : Double.valueOf(value.doubleValue());
    }

    private Rider changed(Consumer<Copy> change) {
        Copy copy = new Copy(this);
        change.accept(copy);
        return copy.rider();
    }

    private static final class Copy {
        @Nullable Double massKg;

        @Nullable Double bikeMassKg;

        @Nullable Double thresholdPowerW;

        @Nullable Double thresholdHeartRateBpm;

        @Nullable Double maximumHeartRateBpm;

        ThresholdHistory thresholds;
        ZoneScheme powerZones;
        ZoneScheme heartRateZones;

        @Nullable Gears gears;

        @Nullable Double dragAreaM2;

        @Nullable Double rollingResistance;

        @Nullable Double criticalPowerW;

        @Nullable Double wPrimeKJ;

        List<LongBest> longBests;
        Set<LocalDate> raceDays;
        Set<LocalDate> allOutDays;
        List<Trial> trials;

        @Nullable Integer birthYear;

        Copy(Rider of) {
            massKg = of.massKg;
            bikeMassKg = of.bikeMassKg;
            thresholdPowerW = of.thresholdPowerW;
            thresholdHeartRateBpm = of.thresholdHeartRateBpm;
            maximumHeartRateBpm = of.maximumHeartRateBpm;
            thresholds = of.thresholds;
            powerZones = of.powerZones;
            heartRateZones = of.heartRateZones;
            gears = of.gears;
            dragAreaM2 = of.dragAreaM2;
            rollingResistance = of.rollingResistance;
            criticalPowerW = of.criticalPowerW;
            wPrimeKJ = of.wPrimeKJ;
            longBests = of.longBests;
            raceDays = of.raceDays;
            allOutDays = of.allOutDays;
            trials = of.trials;
            birthYear = of.birthYear;
        }

        Rider rider() {
            return new Rider(
                    massKg,
                    bikeMassKg,
                    thresholdPowerW,
                    thresholdHeartRateBpm,
                    maximumHeartRateBpm,
                    thresholds,
                    powerZones,
                    heartRateZones,
                    gears,
                    dragAreaM2,
                    rollingResistance,
                    criticalPowerW,
                    wPrimeKJ,
                    longBests,
                    raceDays,
                    allOutDays,
                    trials,
                    birthYear);
        }
    }
}
