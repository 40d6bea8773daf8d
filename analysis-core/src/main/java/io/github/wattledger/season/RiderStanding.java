package io.github.wattledger.season;

import io.github.wattledger.pacing.Verdict;
import java.io.Serializable;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Where a rider stands on a day: what a coach of several riders looks at first. Warnings describe load, never health.
 *
 * @param name what the rider is called
 * @param asOf the day
 * @param load42Days load of 42 days, or null without rides
 * @param load7Days load of 7 days, or null without rides
 * @param loadDifference load of 42 days less load of 7 days of the day before, or null without rides
 * @param loadRatio load of 7 days over load of 42 days, or null
 * @param loadChange what the load of 42 days gained in seven days, or null
 * @param weekStress training stress of the last seven days, or null without rides
 * @param daysSinceRide days since the last ride, or null without one
 * @param daysSinceLongRide days since the last ride of {@link PacingTrend#LONG_RIDE_SECONDS}, or null without one
 * @param lastVerdict pacing of the last race, or null without one
 * @param races how the last races were paced, in time order, at most {@link #RACES}
 * @param warnings what to look at, with reasons
 */
public record RiderStanding(
        String name,
        @Nullable LocalDate asOf,
        @Nullable Double load42Days,
        @Nullable Double load7Days,
        @Nullable Double loadDifference,
        @Nullable Double loadRatio,
        @Nullable Double loadChange,
        @Nullable Double weekStress,
        @Nullable Integer daysSinceRide,
        @Nullable Integer daysSinceLongRide,
        @Nullable Verdict lastVerdict,
        List<RacePacing> races,
        List<Warning> warnings)
        implements Serializable {
    /** How many of the last races are shown. Own choice. */
    public static final int RACES = 3;

    /** A load of 42 days that grows faster than this a week is worth a look; common practice, no source. */
    static final double STEEP_CHANGE = 7;
    /**
     * A ratio above this is worth a look: the bound most often quoted (a consensus of 2016 on load in sport); letters in
     * the same journal dispute that it foretells injury.
     */
    static final double HIGH_RATIO = 1.5;
    /** Days without any ride that are worth a look; our own choice. */
    static final int IDLE_DAYS = 14;
    /** Days without a long ride that are worth a look in a rider of long races; our own choice. */
    static final int DAYS_WITHOUT_LONG_RIDE = 21;
    /** A ratio says nothing while the load of 42 days is hardly above 0. */
    private static final double LEAST_LOAD_FOR_RATIO = 10;

    /**
     * Something to look at.
     *
     * @param code a fixed word for programs, lower case with hyphens
     * @param reason the numbers behind it, one clause
     */
    public record Warning(String code, String reason) implements Serializable {}

    /** Copies the lists. */
    public RiderStanding {
        races = List.copyOf(races);
        warnings = List.copyOf(warnings);
    }

    /** The standing of the rider of a season on its last day. */
    public static RiderStanding of(String name, SeasonReview season) {
        LocalDate asOf = season.asOf();
        LoadHistory.Day today = season.load().last();
        if (asOf == null || today == null) {
            return new RiderStanding(
                    name,
                    asOf,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    List.of(),
                    List.of(new Warning("no-rides", "no ride up to this day")));
        }
        Integer sinceLong = null;
        Verdict lastVerdict = null;
        LocalDate lastRide = null;
        for (SeasonRide ride : season.calendarRides()) {
            lastRide = lastRide == null || ride.day().isAfter(lastRide) ? ride.day() : lastRide;
            if (PacingTrend.isLong(ride)) {
                sinceLong = daysBetween(ride.day(), asOf);
            }
            if (ride.isRace()) {
                lastVerdict = ride.judgement().verdict();
            }
        }
        double weekStress = 0;
        List<LoadHistory.Day> days = season.load().days();
        for (LoadHistory.Day day : days.subList(Math.max(0, days.size() - 7), days.size())) {
            weekStress += day.trainingStress();
        }
        Integer sinceRide = lastRide == null ? null : (Integer) daysBetween(lastRide, asOf);
        return new RiderStanding(
                name,
                asOf,
                today.load42Days(),
                today.load7Days(),
                today.loadDifference(),
                today.loadRatio(),
                today.loadChange(),
                weekStress,
                sinceRide,
                sinceLong,
                lastVerdict,
                RacePacing.last(season.pacing().races(), RACES),
                warnings(season, today, sinceRide, sinceLong));
    }

    private static int daysBetween(LocalDate from, LocalDate to) {
        return Math.toIntExact(ChronoUnit.DAYS.between(from, to));
    }

    private static List<Warning> warnings(
            SeasonReview season, LoadHistory.Day today, @Nullable Integer sinceRide, @Nullable Integer sinceLong) {
        List<Warning> warnings = new ArrayList<>();
        Double loadChange = today.loadChange();
        if (loadChange != null && loadChange > STEEP_CHANGE) {
            warnings.add(warning(
                    "steep-rise", "load of 42 days grew by %.1f in a week (more than %.0f)", loadChange, STEEP_CHANGE));
        }
        Double ratio = today.loadRatio();
        if (season.load().isLongEnoughForRatio()
                && ratio != null
                && ratio > HIGH_RATIO
                && today.load42Days() >= LEAST_LOAD_FOR_RATIO) {
            warnings.add(warning(
                    "high-ratio",
                    "load of 7 days is %.2f times that of 42 days (more than %.1f; what that means is disputed)",
                    ratio,
                    HIGH_RATIO));
        }
        if (sinceRide != null && sinceRide > IDLE_DAYS) {
            warnings.add(warning("no-ride", "no ride for %d days", sinceRide));
        }
        if (sinceLong == null) {
            warnings.add(warning("no-long-ride", "no ride of 3 h or more at all"));
        } else if (sinceLong > DAYS_WITHOUT_LONG_RIDE) {
            warnings.add(warning("no-long-ride", "no ride of 3 h or more for %d days", sinceLong));
        }
        ThresholdCheck threshold = season.threshold();
        if (threshold != null && threshold.standing() == ThresholdCheck.Standing.LOOKS_LOW) {
            warnings.add(warning(
                    "threshold-low",
                    "the set threshold of %.0f W looks low: a recent effort implies %.0f W",
                    threshold.inForceW(),
                    threshold.impliedW()));
        }
        int without = season.ridesWithoutStress();
        if (without > 0) {
            warnings.add(warning(
                    "rides-without-stress", "%d ride(s) without training stress: load is higher than shown", without));
        }
        return warnings;
    }

    private static Warning warning(String code, String format, @Nullable Object... numbers) {
        return new Warning(code, String.format(Locale.ROOT, format, numbers));
    }
}
