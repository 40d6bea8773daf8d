package io.github.wattledger.season;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.pacing.JudgementLimits;
import io.github.wattledger.rider.RideNotes;
import io.github.wattledger.rider.Rider;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * What season to look at.
 *
 * @param folders folders whose rides belong to it, with all folders below them; at least one
 * @param store the file in which results are kept; created when it is not there
 * @param rider who rode; thresholds are looked up for the day of each ride
 * @param limits the limits from which a finding about the pacing of a ride is reported
 * @param zone the rider's time zone, for recordings that do not know their local time
 * @param asOf the last day of the season, or null for the day of the last ride; later rides are left out
 * @param today the day of the review, or null where it is not known; a ride with a later date is left out of the calendar,
 *     since its date cannot be true. The library has no clock of its own
 * @param notes gives what the rider wrote down about the recording at a path, {@link RideNotes#NONE} where nothing; or null
 *     to judge each ride by the notes that the store has. Called on the calling thread, once a run for each file
 * @param forgetGone whether rides whose files are gone are dropped from the store; otherwise they stay in the season
 */
public record SeasonRequest(
        List<Path> folders,
        Path store,
        Rider rider,
        JudgementLimits limits,
        ZoneId zone,
        @Nullable LocalDate asOf,
        @Nullable LocalDate today,
        @Nullable Function<Path, RideNotes> notes,
        boolean forgetGone) {
    /** @throws IllegalArgumentException when there is no folder */
    public SeasonRequest {
        folders = List.copyOf(folders);
        if (folders.isEmpty()) {
            throw new IllegalArgumentException("no folder, expected at least one");
        }
    }

    /**
     * How each ride of the season is reviewed. A review of one ride with these options, its notes ({@link SeasonRide#notes()})
     * and {@link SeasonReview#ownRides} agrees with its row.
     */
    public ReviewOptions reviewOptions() {
        return ReviewOptions.WHOLE_RIDE.withLimits(limits).withZone(zone);
    }

    /**
     * A season of which only the folders and the store are given: the rider is not known, the time zone is UTC, the
     * limits are the usual ones, the season ends with its last ride, and no date is too
     * late to be true.
     */
    public static SeasonRequest of(List<Path> folders, Path store) {
        return new SeasonRequest(
                folders, store, Rider.UNKNOWN, JudgementLimits.USUAL, ZoneOffset.UTC, null, null, null, false);
    }

    /** This request for another rider. */
    public SeasonRequest withRider(Rider other) {
        return new SeasonRequest(folders, store, other, limits, zone, asOf, today, notes, forgetGone);
    }

    /** This request with other limits. */
    public SeasonRequest withLimits(JudgementLimits other) {
        return new SeasonRequest(folders, store, rider, other, zone, asOf, today, notes, forgetGone);
    }

    /** This request with another time zone. */
    public SeasonRequest withZone(ZoneId other) {
        return new SeasonRequest(folders, store, rider, limits, other, asOf, today, notes, forgetGone);
    }

    /** This request with another last day, or null for the day of the last ride. */
    public SeasonRequest withAsOf(@Nullable LocalDate other) {
        return new SeasonRequest(folders, store, rider, limits, zone, other, today, notes, forgetGone);
    }

    /** This request on another day of review, or null where that is not known. */
    public SeasonRequest withToday(@Nullable LocalDate other) {
        return new SeasonRequest(folders, store, rider, limits, zone, asOf, other, notes, forgetGone);
    }

    /** This request with what the rider wrote down about each recording, or null for what the store has. */
    public SeasonRequest withNotes(@Nullable Function<Path, RideNotes> other) {
        return new SeasonRequest(folders, store, rider, limits, zone, asOf, today, other, forgetGone);
    }

    /** This request without the rides whose files are gone. */
    public SeasonRequest forgettingGone() {
        return new SeasonRequest(folders, store, rider, limits, zone, asOf, today, notes, true);
    }
}
