package io.github.wattledger.cli;

import io.github.wattledger.history.OwnRides;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.season.SeasonStoreException;
import io.github.wattledger.season.StoredSeason;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Objects;
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
     * @throws UnreadableStoreException when there is no store, or it cannot be used
     */
    @Nullable OwnRides ridesBefore(@Nullable CommandSpec spec, Rider known, ZoneId zone, LocalDate day)
            throws UnreadableStoreException {
        Path named = path(spec);
        if (named == null) {
            return null;
        }
        try {
            return StoredSeason.ridesBefore(SeasonStoreFile.in(named), known, zone, day);
        } catch (SeasonStoreException e) {
            throw new UnreadableStoreException("--season", e);
        }
    }

    /** The folder of the season, where its rider profile may stand; null where no season is named. */
    @Nullable Path profileFolder(@Nullable CommandSpec spec) {
        Path named = path(spec);
        return named == null || Files.isDirectory(named)
                ? named
                : Objects.requireNonNullElse(named.getParent(), Path.of(""));
    }

    private @Nullable Path path(@Nullable CommandSpec spec) {
        return folder == null ? null : Usage.path(spec, "--season", folder);
    }
}
