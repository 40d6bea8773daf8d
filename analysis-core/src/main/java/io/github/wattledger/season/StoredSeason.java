package io.github.wattledger.season;

import io.github.wattledger.history.OwnRides;
import io.github.wattledger.intake.RiderOnDay;
import io.github.wattledger.rider.MisplacedNote;
import io.github.wattledger.rider.RideNotes;
import io.github.wattledger.rider.Rider;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What a season's store says of its rider, without reading a file or judging a ride anew. The store must have been brought up
 * to date by a {@link SeasonRun}; rides since then are not in it.
 */
public final class StoredSeason {
    /** Enough for an exponent from a year, and the thresholds of the days of its rides. */
    private static final int DAYS_BEFORE = OwnRides.ENDURANCE_DAYS + 91;

    /** No local day differs from that of UTC by more. */
    private static final int DAYS_OF_CLOCKS = 2;

    private StoredSeason() {}

    /**
     * The rider's own rides that count for a day.
     *
     * @param store the store's file
     * @param rider what the rider says
     * @param zone the time zone of rides that do not know their local time
     * @param day the day; the history of another day must be asked for anew
     * @throws SeasonStoreException when there is no store, or it cannot be used, with one line for people
     */
    public static OwnRides ridesBefore(Path store, Rider rider, ZoneId zone, LocalDate day)
            throws SeasonStoreException {
        List<SeasonRide> rides = rides(
                store,
                zone,
                day.minusDays(DAYS_BEFORE).atStartOfDay(ZoneOffset.UTC).toInstant(),
                day.plusDays(DAYS_OF_CLOCKS).atStartOfDay(ZoneOffset.UTC).toInstant());
        return PastRides.of(rides, rider);
    }

    /**
     * What all rides of a store say of their rider on the day after the last one.
     *
     * @param store the store's file
     * @param rider what the rider says
     * @param zone the time zone of rides that do not know their local time
     * @throws SeasonStoreException when there is no store, it cannot be used, or it has no ride with a date that can be
     *     believed, with one line for people
     */
    public static RiderFromRides rider(Path store, Rider rider, ZoneId zone) throws SeasonStoreException {
        List<SeasonRide> rides = rides(store, zone, Instant.EPOCH, Instant.ofEpochSecond(Integer.MAX_VALUE));
        LocalDate last = rides.stream()
                .map(SeasonRide::day)
                .max(Comparator.naturalOrder())
                .orElseThrow(() -> new SeasonStoreException(
                        store
                                + ": holds no ride with a date that can be believed; run 'wattledger season' on the folder"
                                + " of your rides",
                        null));
        return RiderFromRides.of(PastRides.of(rides, rider), rider, last);
    }

    /**
     * The notes of rides that do not fit their recordings. A ride whose notes all fit is not in it, and neither is one that the
     * store no longer has.
     *
     * @param store the store's file
     * @param notes what was written down about rides of the store, whole
     * @throws SeasonStoreException when there is no store, or it cannot be used, with one line for people
     */
    public static Map<SeasonRide, List<MisplacedNote>> misplacedNotes(Path store, Map<SeasonRide, RideNotes> notes)
            throws SeasonStoreException {
        Map<SeasonRide, List<MisplacedNote>> misplaced = new LinkedHashMap<>();
        try (RideStore open = RideStore.openWritten(store)) {
            for (Map.Entry<SeasonRide, RideNotes> noted : notes.entrySet()) {
                StoredRide ride = stored(open, noted.getKey().source());
                List<MisplacedNote> found =
                        ride == null ? List.of() : noted.getValue().misplacedIn(ride.unpack());
                if (!found.isEmpty()) {
                    misplaced.put(noted.getKey(), found);
                }
            }
        }
        return misplaced;
    }

    private static @Nullable StoredRide stored(RideStore open, SeasonRide.Source source) throws SeasonStoreException {
        StoredRide.Key key = new StoredRide.Key(source.sha256(), source.sessionIndex());
        for (RideRow row : open.ridesForHistory(source.start(), source.start().plusSeconds(1))) {
            if (row.key().equals(key)) {
                return open.stored(row).orElse(null);
            }
        }
        return null;
    }

    private static List<SeasonRide> rides(Path store, ZoneId zone, Instant from, Instant to)
            throws SeasonStoreException {
        try (RideStore open = RideStore.openWritten(store)) {
            List<SeasonRide> rides = open.ridesForHistory(from, to).stream()
                    .map(row -> row.seasonRide(
                            row.start().toString(),
                            RiderOnDay.localDay(row.start(), row.utcOffsetSeconds(), zone),
                            null))
                    .toList();
            return Duplicates.remove(rides).kept().stream()
                    .filter(ride -> ride.dateDoubt() == null)
                    .toList();
        }
    }
}
