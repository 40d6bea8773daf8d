package io.github.wattledger.cli;

import io.github.wattledger.cli.profile.NotesFile;
import io.github.wattledger.ride.Ride;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;

/** What the rider wrote down about a ride, as an option. A note that cannot be taken stops no review. */
final class NotesOption {
    @Option(
            names = "--notes",
            paramLabel = "FILE",
            description = "What the rider wrote down: event, rider, food, punctures and more, a TOML file. Without it:"
                    + " RIDE.notes.toml beside the ride (race.notes.toml for race.fit), where there is one.")
    private @Nullable String file;

    /** Whether it was given. */
    boolean isGiven() {
        return file != null;
    }

    /** The notes of a ride. What cannot be taken is a line on standard error. */
    NotesFile.Taken notes(@Nullable CommandSpec spec, NamedRide ride, Failures failures) {
        NotesFile.Taken taken = NotesFile.Taken.NONE;
        if (file != null) {
            taken = NotesFile.read(Usage.path(spec, "--notes", file));
        } else if (ride.file() != null) {
            taken = NotesFile.readBeside(ride.file());
        }
        taken.problems().forEach(line -> failures.line(Usage.name(spec), line));
        return taken;
    }

    /** Says which of the notes do not fit the recording, a line each on standard error. */
    static void sayMisplaced(@Nullable CommandSpec spec, NotesFile.Taken taken, Ride ride, Failures failures) {
        taken.misplaced(taken.notes().misplacedIn(ride), ride.seconds())
                .forEach(line -> failures.line(Usage.name(spec), line));
    }
}
