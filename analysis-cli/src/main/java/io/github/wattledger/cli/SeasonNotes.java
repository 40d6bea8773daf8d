package io.github.wattledger.cli;

import io.github.wattledger.cli.profile.NotesFile;
import io.github.wattledger.rider.RideNotes;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** What riders wrote down, beside the recordings of a season. What cannot be taken is kept until it can be said. */
final class SeasonNotes {
    private final Set<String> problems = new LinkedHashSet<>();
    private int said;

    /** The notes beside a recording. */
    RideNotes of(Path recording) {
        NotesFile.Taken taken = NotesFile.readBeside(recording);
        problems.addAll(taken.problems());
        return taken.notes();
    }

    /** What could not be taken since this was asked last, a line each. */
    List<String> newProblems() {
        List<String> lines = new ArrayList<>(problems).subList(said, problems.size());
        said = problems.size();
        return lines;
    }
}
