package io.github.wattledger.season;

import io.github.wattledger.ride.Recording;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Why the date of a ride cannot be believed. Such a ride stays in the list of rides; it is left out of everything that
 * goes by the calendar: loads, weeks, months, best efforts and trends.
 */
public enum DateDoubt {
    /** The recording has no date, only seconds since its start. */
    NO_DATE,
    /** The date lies before power meters recorded rides. A clock that was never set shows such a date. */
    BEFORE_POWER_METERS,
    /** The date is still to come. */
    AFTER_TODAY;

    /**
     * The first day that is believed. The first power meters on bicycles were sold about 1989 (common knowledge of the
     * trade, no source). The clock of a FIT file counts from 31 December 1989 (FIT protocol), so that a device whose clock
     * was never set dates its rides into the weeks after that day; hence a year more.
     */
    static final LocalDate FIRST_BELIEVED = LocalDate.of(1991, 1, 1);

    /**
     * Gives the doubt about the date of a ride, or null where the date can be believed.
     *
     * @param start the first second of the ride
     * @param day the day of the ride on the rider's own calendar
     * @param today the day of the review, or null where it is not known: no date is then too late
     */
    static @Nullable DateDoubt of(Instant start, LocalDate day, @Nullable LocalDate today) {
        if (!Recording.isDated(start.getEpochSecond())) {
            return NO_DATE;
        }
        if (day.isBefore(FIRST_BELIEVED)) {
            return BEFORE_POWER_METERS;
        }
        return today != null && day.isAfter(today) ? AFTER_TODAY : null;
    }

    /** The word in reports for programs: the constant in lower case with hyphens. */
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
