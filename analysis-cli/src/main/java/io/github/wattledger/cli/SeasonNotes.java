package io.github.wattledger.cli;

import io.github.wattledger.cli.profile.NotesFile;
import io.github.wattledger.rider.MisplacedNote;
import io.github.wattledger.rider.RideNotes;
import io.github.wattledger.season.SeasonRide;
import io.github.wattledger.season.SeasonStoreException;
import io.github.wattledger.season.StoredSeason;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** What riders wrote down, beside the recordings of a season. What cannot be taken is kept until it can be said. */
final class SeasonNotes {
    private final Map<Path, NotesFile.Taken> noted = new LinkedHashMap<>();
    private final Set<String> problems = new LinkedHashSet<>();
    private int said;

    /** The notes beside a recording. */
    RideNotes of(Path recording) {
        NotesFile.Taken taken = NotesFile.readBeside(recording);
        problems.addAll(taken.problems());
        if (!taken.notes().isEmpty()) {
            noted.put(recording, taken);
        }
        return taken.notes();
    }

    /**
     * Finds the notes that do not fit their recordings. Of a file with several sessions those that fit none of them.
     *
     * @param rides the rides of the season
     * @param store where their seconds are
     */
    void holdAgainst(List<SeasonRide> rides, Path store) throws SeasonStoreException {
        Map<SeasonRide, RideNotes> toLookAt = new LinkedHashMap<>();
        Map<SeasonRide, NotesFile.Taken> files = new LinkedHashMap<>();
        for (SeasonRide ride : rides) {
            NotesFile.Taken taken = noted.isEmpty() ? null : taken(ride);
            if (taken != null) {
                files.put(ride, taken);
                if (taken.notes().mayBeMisplacedIn(ride.numbers().elapsedSeconds())) {
                    toLookAt.put(ride, taken.notes());
                }
            }
        }
        if (toLookAt.isEmpty()) {
            return;
        }
        Map<SeasonRide, List<MisplacedNote>> misplaced = StoredSeason.misplacedNotes(store, toLookAt);
        misplaced.forEach((ride, notes) -> {
            NotesFile.Taken taken = files.get(ride);
            List<MisplacedNote> inAll = new ArrayList<>(notes);
            files.forEach((other, same) -> {
                if (same.equals(taken)) {
                    inAll.retainAll(misplaced.getOrDefault(other, List.of()));
                }
            });
            if (taken != null) {
                problems.addAll(taken.misplaced(inAll, ride.numbers().elapsedSeconds()));
            }
        });
    }

    /** The notes of a ride. A season calls a ride by its path below the season's folder. */
    private NotesFile.@Nullable Taken taken(SeasonRide ride) {
        RideNotes within = ride.notes();
        for (Map.Entry<Path, NotesFile.Taken> each : noted.entrySet()) {
            RideNotes whole = each.getValue().notes();
            if (each.getKey().endsWith(ride.source().file())
                    && whole.within(ride.numbers().elapsedSeconds()).equals(within)) {
                return each.getValue();
            }
        }
        return null;
    }

    /** What could not be taken since this was asked last, a line each. */
    List<String> newProblems() {
        List<String> lines = new ArrayList<>(problems).subList(said, problems.size());
        said = problems.size();
        return lines;
    }
}
