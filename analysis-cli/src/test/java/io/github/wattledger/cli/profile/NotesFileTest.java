package io.github.wattledger.cli.profile;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.ride.Interval;
import io.github.wattledger.rider.RideNotes;
import io.github.wattledger.rider.StopNotChosen;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class NotesFileTest {
    private static NotesFile.Taken taken(String... lines) {
        return NotesFile.parse(String.join("\n", lines), "race.notes.toml");
    }

    @Test
    void everythingIsTaken() {
        NotesFile.Taken taken = taken(
                "event = \"Ebbwood 165\"",
                "rider = \"Runa\"",
                "feel = \"empty late\"",
                "heat = \"hot from noon on\"",
                "eaten_g_per_hour = [70, 62.5]",
                "agreed = \"open at 190 W\"",
                "[[stops]]",
                "what = \"puncture\"",
                "from = \"2:10:00\"",
                "to = \"2:17\"",
                "[[stops]]",
                "what = \"level crossing\"",
                "at = 04:31:00",
                "[[bunch]]",
                "from = \"0:00\"",
                "to = \"0:48:30\"");
        assertThat(taken.problems()).isEmpty();
        assertThat(taken.notes())
                .isEqualTo(new RideNotes(
                        "Ebbwood 165",
                        "Runa",
                        "empty late",
                        "hot from noon on",
                        List.of(70.0, 62.5),
                        List.of(
                                new StopNotChosen("puncture", 2 * 3600 + 600, 2 * 3600 + 17 * 60),
                                new StopNotChosen("level crossing", 4 * 3600 + 31 * 60, null)),
                        List.of(new Interval(0, 48 * 60 + 30)),
                        "open at 190 W"));
    }

    @Test
    void oneNumberHoldsForTheWholeRide() {
        assertThat(taken("eaten_g_per_hour = 60").notes().eatenGPerHour()).containsExactly(60.0);
        assertThat(taken("").notes()).isEqualTo(RideNotes.NONE);
    }

    /** What cannot be taken is named word for word; the others are taken. */
    @Test
    void aBadNoteIsLeftOutAlone() {
        NotesFile.Taken taken = taken(
                "event = \"Ebbwood 165\"",
                "feeel = \"good\"",
                "eaten_g_per_hour = [60, 600]",
                "[[stops]]",
                "what = \"puncture\"",
                "at = \"soon\"",
                "[[stops]]",
                "what = \"crossing\"",
                "at = \"1:00\"",
                "to = \"1:05\"",
                "[[bunch]]",
                "from = \"1:00\"",
                "to = \"0:30\"");
        assertThat(taken.problems())
                .containsExactly(
                        "race.notes.toml:2: feeel: unknown key; did you mean feel?; left out of the notes",
                        "race.notes.toml:3: eaten_g_per_hour: expected numbers from 0 to 180, found 600; left out of the"
                                + " notes",
                        "race.notes.toml:6: stops.at: expected a time from the start in quotes, such as \"2:10:00\" or"
                                + " \"2:10\" (hours and minutes), found \"soon\"; left out of the notes",
                        "race.notes.toml:9: stops.at: give either at, or from and to; left out of the notes",
                        "race.notes.toml:13: bunch.to: expected a later time than from; left out of the notes");
        assertThat(taken.notes())
                .isEqualTo(new RideNotes("Ebbwood 165", null, null, null, List.of(), List.of(), List.of(), null));
    }

    @Test
    void whatIsNoTomlGivesNoNotes() {
        NotesFile.Taken taken = taken("event = \"Ebbwood 165\"", "feel = good");
        assertThat(taken.notes()).isEqualTo(RideNotes.NONE);
        assertThat(taken.problems())
                .isNotEmpty()
                .allSatisfy(line -> assertThat(line)
                        .startsWith("race.notes.toml:2: not TOML: ")
                        .endsWith("; the ride is reviewed without notes"));
    }

    @Test
    void aFileThatIsNotThereIsOneLine(@TempDir Path folder) {
        Path file = folder.resolve("none.toml");
        assertThat(NotesFile.read(file))
                .isEqualTo(NotesFile.Taken.nothing(
                        file.toString(),
                        List.of(file + ": there is no such file; check the path; the ride is reviewed without notes")));
        assertThat(NotesFile.readBeside(folder.resolve("race.fit"))).isEqualTo(NotesFile.Taken.NONE);
    }

    @Test
    void notesStandBesideTheRide() {
        assertThat(NotesFile.beside(Path.of("rides", "race.fit"))).isEqualTo(Path.of("rides", "race.notes.toml"));
        assertThat(NotesFile.beside(Path.of("2026-05-02.loop.FIT.GZ")))
                .isEqualTo(Path.of("2026-05-02.loop.notes.toml"));
        assertThat(NotesFile.beside(Path.of("race"))).isEqualTo(Path.of("race.notes.toml"));
    }
}
