package io.github.wattledger.history;

import io.github.wattledger.power.BestEffort;
import io.github.wattledger.power.HeartLine;
import io.github.wattledger.power.LongRide;
import io.github.wattledger.power.OwnEndurance;
import io.github.wattledger.power.ThresholdBasis;
import io.github.wattledger.power.TrialCriticalPower;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rider.ThresholdHistory;
import io.github.wattledger.rider.Trial;
import java.io.Serial;
import java.io.Serializable;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * A rider's own rides in the order of their days, to be asked what they say on any day. The order in which they are given
 * does not matter. Immutable, and safe for many threads.
 */
public final class OwnRides implements Serializable {
    @Serial
    private static final long serialVersionUID = 1L;

    /** Long rides of so many days before a day speak for its endurance. */
    public static final int ENDURANCE_DAYS = 365;

    /** Named trials of so many days before a day speak for its critical power. Own choice. */
    public static final int TRIAL_DAYS = 365;

    /** Habits are those of so many last races: riders learn. Own choice. */
    public static final int LAST_RACES = 5;

    private static final int DAYS_OF_DIFFERENT_TRIALS = 3;

    private final DatedRides rides;
    private final Rider rider;
    private final NamedDays named;

    /** Whether the rider names a threshold power, which then holds for the rides of every day. */
    private final boolean namesThreshold;

    /** For each long ride what it says once all days are past whose efforts count for its threshold; null for the others. */
    @SuppressWarnings("serial") // an ArrayList
    private final List<@Nullable LongRide> longRides;

    /** What was agreed after any of the rides, in the order of their days. */
    @SuppressWarnings("serial") // what List.copyOf gives is serializable
    private final List<Agreement> agreements;

    private OwnRides(DatedRides rides, Rider rider) {
        this.rides = rides;
        this.rider = rider;
        this.named = NamedDays.of(rider);
        this.namesThreshold = rider.thresholdPowerW() != null
                || rider.thresholds().entries().stream().anyMatch(entry -> entry.powerW() != null);
        this.agreements = agreements(rides.all());
        this.longRides = new ArrayList<>();
        for (PastRide ride : rides.all()) {
            longRides.add(isLong(ride) ? longRide(ride, ride.day().plusDays(OwnThreshold.DAYS_AFTER + 1L)) : null);
        }
    }

    /**
     * The rides of a rider.
     *
     * @param rides the rides, in any order
     * @param rider what the rider says: thresholds, all-out days, trials
     */
    public static OwnRides of(List<PastRide> rides, Rider rider) {
        return new OwnRides(DatedRides.of(rides), rider);
    }

    /** What the rides before a day say on that day about what the rider can do. */
    public RiderHistory on(LocalDate day) {
        OwnThreshold own = rides.highest(day.minusDays(OwnThreshold.DAYS_BEFORE), day);
        int rideCount = rides.firstOn(day) - rides.firstOn(day.minusDays(ENDURANCE_DAYS));
        return new RiderHistory(day, rideCount, own, endurance(day, own), criticalPower(day), agreedBefore(day));
    }

    /** What the rides before a day tell beside that. */
    public RiderTraits traitsOn(LocalDate day) {
        List<PastRide> year = rides.between(day.minusDays(ENDURANCE_DAYS), day);
        return new RiderTraits(
                day,
                criticalPowerAtLeastW(day),
                heartLines(day),
                spread(year, ride -> ride.traits().dragAreaM2()),
                spread(year, ride -> ride.traits().rollingResistance()),
                spread(year, ride -> isLong(ride) ? (Double) ride.stoppedShare() : null),
                spread(year, ride -> ride.traits().openingOverTarget()),
                spread(year, ride -> ride.traits().fadePercent()),
                spread(year, ride -> ride.traits().descentSpeedMps()));
    }

    /** The last {@value #LAST_RACES} rides of the year before a day that were judged as races, the latest first. */
    public List<PastRide> racesBefore(LocalDate day) {
        List<PastRide> year = new ArrayList<>(rides.between(day.minusDays(ENDURANCE_DAYS), day));
        Collections.reverse(year);
        return year.stream()
                .filter(ride -> ride.traits().openingOverTarget() != null)
                .limit(LAST_RACES)
                .toList();
    }

    /** What was agreed last in the year before a day, or null where nothing was. */
    public @Nullable Agreement agreedBefore(LocalDate day) {
        for (int i = agreements.size() - 1; i >= 0; i--) {
            Agreement each = agreements.get(i);
            if (each.day().isBefore(day)) {
                return each.day().isBefore(day.minusDays(ENDURANCE_DAYS)) ? null : each;
            }
        }
        return null;
    }

    private static List<Agreement> agreements(List<PastRide> rides) {
        List<Agreement> agreements = new ArrayList<>();
        for (PastRide ride : rides) {
            if (ride.agreed() != null) {
                agreements.add(new Agreement(ride.day(), ride.agreed()));
            }
        }
        return List.copyOf(agreements);
    }

    /** How threshold power moved by all these rides. */
    public ThresholdProposal proposedThresholds() {
        return ThresholdProposal.of(rides.all(), rider, named);
    }

    /**
     * How well the threshold power is known by which a ride of a day is judged.
     *
     * @param rider what the rider says
     * @return null when the rider names none
     */
    public static @Nullable ThresholdBasis basisOnDay(Rider rider, LocalDate day) {
        if (rider.thresholdPowerW() != null) {
            return ThresholdBasis.RECENT;
        }
        ThresholdHistory thresholds = rider.thresholds();
        if (thresholds.powerW(day) == null) {
            return null;
        }
        LocalDate since = thresholds.powerSince(day);
        boolean isRecent = since != null && !since.isBefore(day.minusDays(ThresholdBasis.RECENT_DAYS));
        return isRecent ? ThresholdBasis.RECENT : ThresholdBasis.OLD;
    }

    private Outcome<OwnEndurance> endurance(LocalDate day, @Nullable OwnThreshold own) {
        ThresholdBasis ofRider = basisOnDay(rider, day);
        if (ofRider == null && own == null) {
            return Outcome.refused(
                    "no threshold power is known, and no ride of the last 90 days has 20 minutes of riding");
        }
        ThresholdBasis basis = ofRider == null ? ThresholdBasis.OWN_EFFORTS : ofRider;
        List<LongRide> all = new ArrayList<>();
        List<LongRide> allOut = new ArrayList<>();
        boolean hasWitness = false;
        LocalDate lastSettled = day.minusDays(OwnThreshold.DAYS_AFTER + 1L);
        int to = rides.firstOn(day);
        for (int i = rides.firstOn(day.minusDays(ENDURANCE_DAYS)); i < to; i++) {
            LongRide each = longRides.get(i);
            if (each != null && !namesThreshold && each.day().isAfter(lastSettled)) {
                each = longRide(rides.all().get(i), day);
            }
            if (each == null) {
                continue;
            }
            all.add(each);
            hasWitness |= rides.all().get(i).showsLimit();
            if (named.isAllOut(each.day())) {
                allOut.add(each);
            }
        }
        return allOut.isEmpty() ? OwnEndurance.ofFound(all, basis, hasWitness) : OwnEndurance.ofNamed(allOut, basis);
    }

    private static boolean isLong(PastRide ride) {
        return ride.ridingHours() >= OwnEndurance.SHORTEST_HOURS;
    }

    /** What a ride says about endurance on a later day; null where it says nothing. */
    private @Nullable LongRide longRide(PastRide ride, LocalDate seenFrom) {
        Double watts = ride.normalizedPowerW();
        Double thresholdW = thresholdW(ride.day(), seenFrom);
        return watts == null || !(watts > 0) || thresholdW == null
                ? null
                : new LongRide(ride.day(), ride.ridingHours(), watts, thresholdW);
    }

    /** The threshold power of the day of an earlier ride, as it looks on a later day; null where none is known. */
    private @Nullable Double thresholdW(LocalDate day, LocalDate seenFrom) {
        Double interpolated = rider.thresholds().interpolatedPowerW(day);
        if (interpolated != null) {
            return interpolated;
        }
        if (rider.thresholdPowerW() != null) {
            return rider.thresholdPowerW();
        }
        LocalDate end = day.plusDays(OwnThreshold.DAYS_AFTER + 1L);
        OwnThreshold own =
                rides.highest(day.minusDays(OwnThreshold.DAYS_BEFORE), end.isAfter(seenFrom) ? seenFrom : end);
        return own == null ? null : (Double) own.watts();
    }

    private Outcome<TrialCriticalPower> criticalPower(LocalDate day) {
        List<BestEffort> efforts = new ArrayList<>();
        Set<LocalDate> days = new HashSet<>();
        for (Trial trial : rider.trials()) {
            if (!trial.day().isBefore(day) || trial.day().isBefore(day.minusDays(TRIAL_DAYS))) {
                continue;
            }
            OptionalDouble watts = trial.watts() != null ? OptionalDouble.of(trial.watts()) : ridden(trial);
            if (watts.isPresent()) {
                efforts.add(new BestEffort(trial.seconds(), watts.getAsDouble()));
                days.add(trial.day());
            }
        }
        return efforts.size() >= TrialCriticalPower.FEWEST && days.size() < DAYS_OF_DIFFERENT_TRIALS
                ? Outcome.refused("the named trials lie on fewer than three days")
                : TrialCriticalPower.of(efforts);
    }

    /** The best mean power of a trial's day over its duration, watts. */
    private OptionalDouble ridden(Trial trial) {
        return rides.between(trial.day(), trial.day().plusDays(1)).stream()
                .flatMap(ride -> ride.bests().stream())
                .filter(best -> best.seconds() == trial.seconds())
                .mapToDouble(BestEffort::watts)
                .max();
    }

    private @Nullable Double criticalPowerAtLeastW(LocalDate day) {
        OptionalDouble atLeast =
                TrialCriticalPower.atLeastW(rides.between(day.minusDays(OwnThreshold.DAYS_BEFORE), day).stream()
                        .flatMap(ride -> ride.bests().stream())
                        .toList());
        return atLeast.isPresent() ? (Double) atLeast.getAsDouble() : null;
    }

    private List<HeartLine> heartLines(LocalDate day) {
        List<PastRide> recent = new ArrayList<>(rides.between(day.minusDays(HeartRateOnPower.DAYS), day));
        Collections.reverse(recent);
        return recent.stream()
                .filter(ride -> ride.ridingHours() >= HeartRateOnPower.SHORTEST_HOURS)
                .map(ride -> ride.traits().heartLine())
                .filter(Objects::nonNull)
                .limit(HeartRateOnPower.MOST)
                .toList();
    }

    private static Outcome<Spread> spread(List<PastRide> rides, Function<PastRide, @Nullable Double> number) {
        return Spread.of(rides.stream()
                .map(number)
                .filter(Objects::nonNull)
                .mapToDouble(Double::doubleValue)
                .toArray());
    }
}
