package io.github.wattledger.season;

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
 * @param efforts by rising duration; durations that no ride reaches are not there
 */
public record BestEfforts(LocalDate from, LocalDate to, List<Effort> efforts) implements Serializable {
    /** The durations that are kept of each ride, seconds, rising. */
    public static final List<Integer> DURATIONS = List.of(
            1, 5, 10, 15, 30, 60, 120, 180, 300, 480, 600, 720, 900, 1200, 1800, 2700, 3600, 5400, 7200, 10_800, 14_400,
            18_000, 21_600, 28_800, 36_000, 43_200, 54_000);

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

    /** Copies the list. */
    public BestEfforts {
        efforts = List.copyOf(efforts);
    }

    /** The bests of the rides within the days; of equal efforts the earliest. Rides must be in time order. */
    static BestEfforts of(List<SeasonRide> rides, LocalDate from, LocalDate to) {
        TreeMap<Integer, Effort> bests = new TreeMap<>();
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
        }
        return new BestEfforts(from, to, new ArrayList<>(bests.values()));
    }

    /** The effort over a duration, or null when no ride reaches it. */
    public @Nullable Effort over(int seconds) {
        return efforts.stream()
                .filter(effort -> effort.seconds() == seconds)
                .findFirst()
                .orElse(null);
    }

    /**
     * The effort that implies the highest threshold: the best 20 minutes, of which 95 percent count, or the best hour;
     * null without 20 minutes.
     */
    @Nullable Effort thresholdEffort() {
        Effort twenty = over(ThresholdEstimate.TWENTY_MINUTES);
        Effort hour = over(HOUR);
        if (twenty == null) {
            return null;
        }
        return hour != null && hour.watts() > ThresholdEstimate.SHARE_OF_TWENTY_MINUTES * twenty.watts()
                ? hour
                : twenty;
    }

    /** The threshold that an effort over 20 minutes or an hour implies, watts. */
    static double implied(Effort effort) {
        return effort.seconds() == ThresholdEstimate.TWENTY_MINUTES
                ? ThresholdEstimate.SHARE_OF_TWENTY_MINUTES * effort.watts()
                : effort.watts();
    }

    /** The threshold that one ride implies, watts; 0 when it has no effort of 20 minutes or an hour. */
    static double implied(SeasonRide ride) {
        double implied = 0;
        for (Best best : ride.bests()) {
            if (best.seconds() == ThresholdEstimate.TWENTY_MINUTES) {
                implied = Math.max(implied, ThresholdEstimate.SHARE_OF_TWENTY_MINUTES * best.watts());
            } else if (best.seconds() == HOUR) {
                implied = Math.max(implied, best.watts());
            }
        }
        return implied;
    }
}
