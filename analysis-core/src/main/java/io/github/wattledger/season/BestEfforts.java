package io.github.wattledger.season;

import io.github.wattledger.power.RidingBest;
import io.github.wattledger.power.ThresholdEstimate;
import java.io.Serializable;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * The best efforts of a stretch of days: for each duration the ride that holds the highest mean power.
 *
 * @param from the first day, included
 * @param to the last day, included
 * @param efforts by rising duration, over elapsed time; durations that no ride reaches are not there
 * @param ridingEfforts efforts of 20 to 60 minutes over riding seconds, without windows in which the rider stood for more
 *     than a twentieth; a threshold is read from these, so that stops do not look like weakness
 */
public record BestEfforts(LocalDate from, LocalDate to, List<Effort> efforts, List<RidingEffort> ridingEfforts)
        implements Serializable {
    /** The durations that are kept of each ride, seconds, rising. */
    public static final List<Integer> DURATIONS = List.of(
            1, 5, 10, 15, 30, 60, 120, 180, 300, 480, 600, 720, 900, 1200, 1800, 2700, 3600, 5400, 7200, 10_800, 14_400,
            18_000, 21_600, 28_800, 36_000, 43_200, 54_000);

    /**
     * The durations that are kept over riding seconds too, seconds, rising: those from which a threshold may be read and
     * those between.
     */
    public static final List<Integer> RIDING_DURATIONS = List.of(1200, 1800, 2700, 3600);

    /** How many days of efforts speak for the present form; common practice, no source. */
    public static final int RECENT_DAYS = 90;

    private static final int HOUR = 3600;

    /**
     * The best effort over one duration.
     *
     * @param seconds the duration, seconds
     * @param watts mean power, watts
     * @param mayBeLow whether missing seconds may have lowered it
     * @param day the day of the ride
     * @param file the ride's file
     */
    public record Effort(int seconds, double watts, boolean mayBeLow, LocalDate day, String file)
            implements Serializable {}

    /**
     * The best effort over riding seconds.
     *
     * @param best the effort, with the standing in it and how much too high that may have made it
     * @param day the day of the ride
     * @param file the ride's file
     */
    public record RidingEffort(RidingBest best, LocalDate day, String file) implements Serializable {}

    /** Copies the lists. */
    public BestEfforts {
        efforts = List.copyOf(efforts);
        ridingEfforts = List.copyOf(ridingEfforts);
    }

    /** The bests of the rides within the days; of equal efforts the earliest. Rides must be in time order. */
    static BestEfforts of(List<SeasonRide> rides, LocalDate from, LocalDate to) {
        TreeMap<Integer, Effort> bests = new TreeMap<>();
        TreeMap<Integer, RidingEffort> ridingBests = new TreeMap<>();
        for (SeasonRide ride : rides) {
            if (ride.day().isBefore(from) || ride.day().isAfter(to)) {
                continue;
            }
            for (Best best : ride.bests()) {
                Effort sofar = bests.get(best.seconds());
                if (best.watts() > 0 && (sofar == null || best.watts() > sofar.watts())) {
                    bests.put(
                            best.seconds(),
                            new Effort(
                                    best.seconds(),
                                    best.watts(),
                                    best.mayBeLow(),
                                    ride.day(),
                                    ride.source().file()));
                }
            }
            for (RidingBest best : ride.ridingBests()) {
                RidingEffort sofar = ridingBests.get(best.seconds());
                if (best.watts() > 0
                        && (sofar == null || best.watts() > sofar.best().watts())) {
                    ridingBests.put(
                            best.seconds(),
                            new RidingEffort(best, ride.day(), ride.source().file()));
                }
            }
        }
        return new BestEfforts(from, to, new ArrayList<>(bests.values()), new ArrayList<>(ridingBests.values()));
    }

    /** The effort over a duration, or null when no ride reaches it. */
    public @Nullable Effort over(int seconds) {
        return efforts.stream()
                .filter(effort -> effort.seconds() == seconds)
                .findFirst()
                .orElse(null);
    }

    /**
     * The effort over riding seconds that implies the highest threshold: the best 20 minutes, of which 95 percent count, or
     * the best hour; null without 20 minutes.
     */
    @Nullable RidingEffort thresholdEffort() {
        RidingEffort twenty = riding(ThresholdEstimate.TWENTY_MINUTES);
        RidingEffort hour = riding(HOUR);
        if (twenty == null) {
            return hour;
        }
        return hour != null && implied(hour.best()) > implied(twenty.best()) ? hour : twenty;
    }

    private @Nullable RidingEffort riding(int seconds) {
        return ridingEfforts.stream()
                .filter(effort -> effort.best().seconds() == seconds)
                .findFirst()
                .orElse(null);
    }

    /** The threshold that an effort over 20 minutes or an hour implies, watts; 0 for other durations. */
    static double implied(RidingBest best) {
        return switch (best.seconds()) {
            case ThresholdEstimate.TWENTY_MINUTES -> ThresholdEstimate.SHARE_OF_TWENTY_MINUTES * best.watts();
            case HOUR -> best.watts();
            default -> 0;
        };
    }

    /** The threshold that one ride implies, watts; 0 when it has no effort of 20 minutes or an hour. */
    static double implied(SeasonRide ride) {
        return ride.ridingBests().stream()
                .mapToDouble(BestEfforts::implied)
                .max()
                .orElse(0);
    }
}
