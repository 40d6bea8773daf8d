package io.github.wattledger.intake;

import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.history.OwnRides;
import io.github.wattledger.history.RiderHistory;
import io.github.wattledger.power.OwnEndurance;
import io.github.wattledger.power.RideAbility;
import io.github.wattledger.power.ThresholdBasis;
import io.github.wattledger.power.TrialCriticalPower;
import io.github.wattledger.ride.Decimals;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.rider.Bounds;
import io.github.wattledger.rider.LongBest;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rider.ZoneScheme;
import io.github.wattledger.rig.Measure;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.RigChoice;
import java.io.Serializable;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What holds of a rider on the day of a ride. Each number comes from the first of these that knows it: the caller, the
 * rider profile, the rider's own earlier rides, the device, an estimate from the ride itself. A number lies within its
 * {@link Bounds}: a setting of a device that lies outside is ignored, with a note.
 *
 * @param rider the rider as the caller knows him or her on any day
 * @param day the local day on which the ride began
 * @param thresholdPower threshold power, watts, or null while it is not known
 * @param thresholdHeartRate threshold heart rate, beats per minute, or null while it is not known
 * @param mass mass of the rider, kg, or null while it is not known
 * @param notes settings of the device that were ignored, and what speaks against the threshold of the profile
 * @param history what the rider's own earlier rides say, or null where they were not looked at
 */
public record RiderOnDay(
        Rider rider,
        LocalDate day,
        @Nullable Known thresholdPower,
        @Nullable Known thresholdHeartRate,
        @Nullable Known mass,
        List<QualityNote> notes,
        @Nullable RiderHistory history)
        implements Serializable {
    /** Code of the note on a mass that the device holds and that no rider can have. */
    public static final String DEVICE_MASS_IGNORED = SourcePrecedence.DEVICE_MASS_IGNORED;

    private static final double JOULES_PER_KILOJOULE = 1000;
    private static final int YEARS_OF_A_MINOR = 18;

    /** Copies the list. */
    public RiderOnDay {
        notes = List.copyOf(notes);
    }

    /**
     * Settles what holds on a day, without regard to other rides.
     *
     * @param rider what the caller knows about the rider
     * @param device the device that recorded the ride, with its settings
     * @param day the local day on which the ride began
     */
    public static RiderOnDay of(Rider rider, RecordingDevice device, LocalDate day) {
        return of(rider, device, day, null);
    }

    /**
     * Settles what holds on a day.
     *
     * @param rider what the caller knows about the rider
     * @param device the device that recorded the ride, with its settings
     * @param day the local day on which the ride began
     * @param ownRides the rider's own rides, or null where they are not to be looked at; of them only those of earlier days
     *     count
     */
    public static RiderOnDay of(Rider rider, RecordingDevice device, LocalDate day, @Nullable OwnRides ownRides) {
        RiderHistory history = ownRides == null ? null : ownRides.on(day);
        List<QualityNote> notes = new ArrayList<>();
        Known thresholdPower = SourcePrecedence.first(
                rider.thresholdPowerW(),
                rider.thresholds().powerW(day),
                history == null ? null : believed(history.thresholdPowerW()),
                device.thresholdPowerW(),
                SourcePrecedence.Setting.THRESHOLD_POWER,
                notes);
        Known thresholdHeartRate = SourcePrecedence.first(
                rider.thresholdHeartRateBpm(),
                rider.thresholds().heartRateBpm(day),
                null,
                device.thresholdHeartRateBpm(),
                SourcePrecedence.Setting.THRESHOLD_HEART_RATE,
                notes);
        Known mass = SourcePrecedence.first(
                rider.massKg(), null, null, device.riderMassKg(), SourcePrecedence.Setting.MASS, notes);
        if (thresholdPower != null && thresholdPower.origin() == Origin.PROFILE) {
            notes.addAll(ProfileNotes.of(rider.thresholds(), thresholdPower.value(), day, history));
        }
        return new RiderOnDay(rider, day, thresholdPower, thresholdHeartRate, mass, notes, history);
    }

    private static @Nullable Double believed(@Nullable Double watts) {
        return watts != null && Bounds.THRESHOLD_POWER_W.contains(watts) ? watts : null;
    }

    /**
     * The local day on which a ride began: by the clock of the recording where it knows the local time, otherwise by the
     * clock of a time zone.
     *
     * @param start the first second of the ride
     * @param utcOffsetSeconds local time minus UTC as the recording knows it, seconds; null or beyond 18 hours (the range
     *     of {@link ZoneOffset}) where it does not know it
     * @param zone the time zone of rides that do not know their local time
     */
    public static LocalDate localDay(Instant start, @Nullable Integer utcOffsetSeconds, ZoneId zone) {
        boolean isKnown =
                utcOffsetSeconds != null && Math.abs((long) utcOffsetSeconds) <= ZoneOffset.MAX.getTotalSeconds();
        ZoneId clock = utcOffsetSeconds == null || !isKnown ? zone : ZoneOffset.ofTotalSeconds(utcOffsetSeconds);
        return LocalDate.ofInstant(start, clock);
    }

    /**
     * This rider with an estimate of the threshold power where none is known; otherwise this rider unchanged.
     *
     * @param watts the estimate, watts, or null when there is none
     */
    public RiderOnDay withEstimatedThresholdPowerW(@Nullable Double watts) {
        return thresholdPower != null || watts == null
                ? this
                : new RiderOnDay(
                        rider, day, new Known(watts, Origin.ESTIMATED), thresholdHeartRate, mass, notes, history);
    }

    /**
     * This rider as if own rides had not been looked at, with a note that says why: the ride refutes what they show.
     *
     * @param device the device that recorded the ride, with its settings
     */
    public RiderOnDay withoutOwnRides(RecordingDevice device) {
        RiderOnDay without = of(rider, device, day, null);
        List<QualityNote> all = new ArrayList<>(without.notes);
        all.add(new QualityNote(
                "own-rides-refuted",
                null,
                "Your own rides of the last 90 days show a threshold power of "
                        + (thresholdPower == null ? "-" : Decimals.of(thresholdPower.value(), 0))
                        + " W, which this ride refutes: none of them was hard enough, and they were not used."));
        return new RiderOnDay(rider, day, without.thresholdPower, without.thresholdHeartRate, without.mass, all, null);
    }

    /**
     * Whether the rider is, or may be, under 18 on the day: the year of birth does not say on which day of a year the rider
     * comes of age, so the whole year counts. False where the year of birth is not known.
     */
    public boolean mayBeUnder18() {
        Integer birthYear = rider.birthYear();
        return birthYear != null && day.getYear() - birthYear <= YEARS_OF_A_MINOR;
    }

    /** Threshold power, watts, or null while it is not known. */
    public @Nullable Double thresholdPowerW() {
        return thresholdPower == null ? null : thresholdPower.value();
    }

    /** Where the threshold power comes from, or null while it is not known. */
    public @Nullable Origin thresholdPowerOrigin() {
        return thresholdPower == null ? null : thresholdPower.origin();
    }

    /** Threshold heart rate, beats per minute, or null while it is not known. */
    public @Nullable Double thresholdHeartRateBpm() {
        return thresholdHeartRate == null ? null : thresholdHeartRate.value();
    }

    /** Mass of the rider, kg, or null while it is not known. */
    public @Nullable Double massKg() {
        return mass == null ? null : mass.value();
    }

    /** Whether the rider says that the ride of this day was a race. */
    public boolean isRaceDay() {
        return rider.raceDays().contains(day);
    }

    /**
     * What is known of the rider's power from elsewhere than the ride: threshold, critical power, earlier long bests, and
     * endurance by own rides.
     */
    public RideAbility.Elsewhere power() {
        TrialCriticalPower trials = history == null || rider.criticalPowerW() != null
                ? null
                : history.criticalPower().found().orElse(null);
        return new RideAbility.Elsewhere(
                thresholdPowerW(),
                trials == null ? rider.criticalPowerW() : (Double) trials.criticalPowerW(),
                trials == null ? rider.wPrimeKJ() : (Double) (trials.wPrimeJ() / JOULES_PER_KILOJOULE),
                earlierLongBests(),
                thresholdBasis(),
                endurance());
    }

    /** Endurance by own rides; null where the threshold power is not the one that they were held against. */
    private @Nullable OwnEndurance endurance() {
        Origin origin = thresholdPowerOrigin();
        boolean isHeldAgainst = origin == Origin.GIVEN || origin == Origin.PROFILE || origin == Origin.OWN_RIDES;
        return history == null || !isHeldAgainst
                ? null
                : history.endurance().found().orElse(null);
    }

    /** How well the threshold power is known, which decides how wide the range about what rests on it is. */
    public ThresholdBasis thresholdBasis() {
        Origin origin = thresholdPowerOrigin();
        if (origin == Origin.GIVEN || origin == Origin.PROFILE) {
            ThresholdBasis basis = OwnRides.basisOnDay(rider, day);
            return basis == null ? ThresholdBasis.OLD : basis;
        }
        return origin == Origin.OWN_RIDES ? ThresholdBasis.OWN_EFFORTS : ThresholdBasis.OLD;
    }

    /** How power is divided into zones. */
    public ZoneScheme powerZones() {
        return rider.powerZones();
    }

    /** How heart rate is divided into zones. */
    public ZoneScheme heartRateZones() {
        return rider.heartRateZones();
    }

    /** The long bests of earlier days: a best of the ride itself would set it a target that it always meets. */
    public List<LongBest> earlierLongBests() {
        return rider.longBests().stream().filter(best -> best.isBefore(day)).toList();
    }

    /**
     * The rig of the rider before a ride adds to what is known: what is not known is typical.
     *
     * @param position how the rider sits
     */
    public RigChoice rig(Position position) {
        RigChoice choice = RigChoice.ofNoRide(
                        massKg(), rider.bikeMassKg(), rider.dragAreaM2(), rider.rollingResistance(), position)
                .withGears(rider.gears());
        boolean isFromDevice = mass != null && mass.origin() == Origin.DEVICE;
        return isFromDevice ? choice.withRiderFrom(Measure.Origin.DEVICE) : choice;
    }
}
