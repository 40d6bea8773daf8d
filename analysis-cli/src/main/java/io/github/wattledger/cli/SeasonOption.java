package io.github.wattledger.cli;

import io.github.wattledger.history.OwnRides;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.season.SeasonStoreException;
import io.github.wattledger.season.StoredSeason;
import java.time.LocalDate;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;

/** The rider's own earlier rides as an option. */
final class SeasonOption {
    @Option(
            names = "--season",
            paramLabel = "FOLDER",
            description = "Go by your own rides, too: the folder of which 'wattledger season' keeps your rides, or its"
                    + " store. Only rides of days before this one count.")
    private @Nullable String folder;

    boolean isGiven() {
        return folder != null;
    }

    /**
     * What the rides before a day say; null where no season is named.
     *
     * @throws SeasonStoreException when there is no store, or it cannot be used
     */
    @Nullable OwnRides ridesBefore(@Nullable CommandSpec spec, Rider known, ZoneId zone, LocalDate day)
            throws SeasonStoreException {
        return folder == null
                ? null
                : StoredSeason.ridesBefore(SeasonStoreFile.in(Usage.path(spec, "--season", folder)), known, zone, day);
    }
}
