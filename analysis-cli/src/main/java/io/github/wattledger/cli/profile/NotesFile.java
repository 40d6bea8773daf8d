package io.github.wattledger.cli.profile;

import io.github.wattledger.ride.Interval;
import io.github.wattledger.rider.Bounds;
import io.github.wattledger.rider.MisplacedNote;
import io.github.wattledger.rider.RideNotes;
import io.github.wattledger.rider.StopNotChosen;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Reads what a rider wrote down about a ride, a TOML file ({@code docs/notes.md}). A note that cannot be taken is left out and
 * reported; the others are taken.
 */
public final class NotesFile {
    private static final String ENDING = ".notes.toml";
    private static final List<String> PACKED = List.of(".gz", ".zip");
    private static final TomlText TEXT = new TomlText("notes", "a file of notes");

    private static final List<String> TOP_KEYS =
            List.of("event", "rider", "feel", "heat", "eaten_g_per_hour", "agreed", "stops", "bunch");
    private static final List<String> STOP_KEYS = List.of("what", "at", "from", "to");
    private static final List<String> BUNCH_KEYS = List.of("from", "to");

    private NotesFile() {}

    /**
     * What a file of notes gives.
     *
     * @param notes the notes that could be taken
     * @param problems what could not be taken, a line each that begins with the file
     * @param file what the file is called in messages
     * @param stopLines in which line of the file each stop of the notes begins
     * @param bunchLines in which line of the file each bunch of the notes begins
     */
    public record Taken(
            RideNotes notes, List<String> problems, String file, List<Integer> stopLines, List<Integer> bunchLines) {
        /** No file of notes. */
        public static final Taken NONE = nothing("", List.of());

        /** Copies the lists. */
        public Taken {
            problems = List.copyOf(problems);
            stopLines = List.copyOf(stopLines);
            bunchLines = List.copyOf(bunchLines);
        }

        static Taken nothing(String file, List<String> problems) {
            return new Taken(RideNotes.NONE, problems, file, List.of(), List.of());
        }

        /**
         * Which notes do not fit the recording, a line each that begins with the file and the line in it.
         *
         * @param misplaced those notes
         * @param recordedSeconds how long the recording is
         */
        public List<String> misplaced(List<MisplacedNote> misplaced, int recordedSeconds) {
            Problems lines = new Problems(file);
            for (MisplacedNote each : misplaced) {
                switch (each.subject()) {
                    case STOP -> {
                        StopNotChosen stop = notes.stopsNotChosen().get(each.position());
                        String when = stop.toSecond() == null
                                ? "at " + Interval.clock(stop.fromSecond())
                                : new Interval(stop.fromSecond(), stop.toSecond()).toString();
                        lines.add(
                                stopLines.get(each.position()),
                                "stops: " + stop.what() + ", " + when + ", " + fault(each.fault(), recordedSeconds));
                    }
                    case BUNCH ->
                        lines.add(
                                bunchLines.get(each.position()),
                                "bunch: " + notes.inBunch().get(each.position()) + " "
                                        + fault(each.fault(), recordedSeconds));
                }
            }
            return lines.lines();
        }

        private static String fault(MisplacedNote.Fault fault, int recordedSeconds) {
            String end = Interval.clock(recordedSeconds);
            return switch (fault) {
                case AFTER_THE_END -> "lies after the end of the recording at " + end + "; left out of the notes";
                case ENDS_AFTER_THE_END -> "ends after the recording, which ends at " + end + "; cut to its end";
                case NO_STOP_THERE -> "lies where the ride did not stop; the note explains nothing";
            };
        }
    }

    /** Where the notes of a ride are looked for: {@code race.notes.toml} beside {@code race.fit} or {@code race.fit.gz}. */
    public static Path beside(Path ride) {
        String name = String.valueOf(ride.getFileName());
        for (String packed : PACKED) {
            if (name.toLowerCase(Locale.ROOT).endsWith(packed)) {
                name = name.substring(0, name.length() - packed.length());
            }
        }
        int dot = name.lastIndexOf('.');
        return ride.resolveSibling((dot > 0 ? name.substring(0, dot) : name) + ENDING);
    }

    /** The notes beside a ride; none where there is no such file. */
    public static Taken readBeside(Path ride) {
        Path file = beside(ride);
        return Files.isRegularFile(file) ? read(file) : Taken.NONE;
    }

    /** Reads notes; none where the file cannot be read. */
    public static Taken read(Path file) {
        try {
            return parse(TEXT.read(file), file.toString());
        } catch (UnreadableProfileException e) {
            return none(file.toString(), e);
        }
    }

    /**
     * Reads the text of notes.
     *
     * @param file what to call it in messages
     */
    static Taken parse(String text, String file) {
        Problems problems = new Problems(file);
        try {
            ProfileTable top = new ProfileTable(TEXT.parse(text, problems), "", 1, problems, TOP_KEYS);
            List<Integer> stopLines = new ArrayList<>();
            List<Integer> bunchLines = new ArrayList<>();
            RideNotes notes = notes(top, stopLines, bunchLines);
            return new Taken(
                    notes,
                    problems.lines().stream()
                            .map(line -> line + "; left out of the notes")
                            .toList(),
                    file,
                    stopLines,
                    bunchLines);
        } catch (UnreadableProfileException e) {
            return none(file, e);
        }
    }

    private static Taken none(String file, UnreadableProfileException e) {
        return Taken.nothing(
                file,
                e.lines().stream()
                        .map(line -> line + "; the ride is reviewed without notes")
                        .toList());
    }

    private static RideNotes notes(ProfileTable top, List<Integer> stopLines, List<Integer> bunchLines) {
        return new RideNotes(
                top.words("event"),
                top.words("rider"),
                top.words("feel"),
                top.words("heat"),
                top.numbers("eaten_g_per_hour", Bounds.EATEN_G_PER_HOUR),
                stops(top, stopLines),
                bunch(top, bunchLines),
                top.words("agreed"));
    }

    private static List<StopNotChosen> stops(ProfileTable top, List<Integer> lines) {
        List<ProfileTable> tables = top.tables("stops", STOP_KEYS);
        List<StopNotChosen> stops = new ArrayList<>();
        for (ProfileTable table : tables == null ? List.<ProfileTable>of() : tables) {
            table.require("what", "words in quotes, such as \"puncture\"");
            String what = table.words("what");
            if (table.has("at")) {
                Integer at = table.second("at");
                if (table.has("from") || table.has("to")) {
                    table.problem("at", "give either at, or from and to");
                } else if (what != null && at != null) {
                    stops.add(new StopNotChosen(what, at, null));
                    lines.add(table.line());
                }
            } else {
                Interval when = stretch(table);
                if (what != null && when != null) {
                    stops.add(new StopNotChosen(what, when.fromSecond(), when.toSecond()));
                    lines.add(table.line());
                }
            }
        }
        return stops;
    }

    private static List<Interval> bunch(ProfileTable top, List<Integer> lines) {
        List<ProfileTable> tables = top.tables("bunch", BUNCH_KEYS);
        List<Interval> inBunch = new ArrayList<>();
        for (ProfileTable table : tables == null ? List.<ProfileTable>of() : tables) {
            Interval when = stretch(table);
            if (when != null) {
                inBunch.add(when);
                lines.add(table.line());
            }
        }
        return inBunch;
    }

    private static @Nullable Interval stretch(ProfileTable table) {
        table.require("from", "an elapsed time such as \"2:10:00\"");
        table.require("to", "an elapsed time such as \"2:17:00\"");
        Integer from = table.second("from");
        Integer to = table.second("to");
        if (from == null || to == null) {
            return null;
        }
        if (to <= from) {
            table.problem("to", "expected a later time than from");
            return null;
        }
        return new Interval(from, to);
    }
}
