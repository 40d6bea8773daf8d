package io.github.wattledger.cli.report.text;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.intake.FileInspection;
import io.github.wattledger.intake.Inspector;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.testing.SampleInspections;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TextInspectionTest {
    private static String text(FileInspection inspection) throws IOException {
        StringBuilder out = new StringBuilder();
        new TextInspection().write(inspection, out);
        return out.toString();
    }

    private static String golden() throws IOException {
        try (InputStream in =
                Objects.requireNonNull(TextInspectionTest.class.getResourceAsStream("/golden/inspection.txt"))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    /** The page was set by hand from the numbers of the sample. */
    @Test
    void aFileOfTwoSessions() throws IOException {
        assertThat(text(SampleInspections.race())).isEqualTo(golden());
    }

    @ParameterizedTest
    @ValueSource(strings = {"de-DE", "ar-EG", "hi-IN-u-nu-deva"})
    void theLocaleOfTheMachineChangesNothing(String tag) throws IOException {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag(tag));
            assertThat(text(SampleInspections.race())).isEqualTo(golden());
        } finally {
            Locale.setDefault(before);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"even-paced.fit", "over-hard-start.fit", "damaged.fit"})
    void theSampleRidesAreNarrowAndAscii(String name) throws IOException, UnreadableRideException {
        String text = text(Inspector.inspect(Path.of("..", "sample-rides", name)));
        assertThat(text.lines()).allMatch(line -> line.length() <= 80).noneMatch(line -> line.endsWith(" "));
        assertThat(text.chars()).allMatch(c -> c == '\n' || (c >= ' ' && c <= '~'));
        assertThat(text).doesNotContain("NaN", "null");
    }

    /** What the README beside the sample rides says of this one: a stop with the timer paused for 4 min. */
    @Test
    void theSampleRaceHoldsWhatItsDescriptionSays() throws IOException, UnreadableRideException {
        String text = text(Inspector.inspect(Path.of("..", "sample-rides", "over-hard-start.fit")));
        assertThat(text).contains("FIT, ", "1 session\n", "cycling", "Read without damage.");
        assertThat(text).containsPattern("pauses, timer stopped +1 of 4 min at ");
        assertThat(text).containsPattern("usual interval +1 s\n");
    }

    /** It breaks off within a message, and has no lap and no session. */
    @Test
    void theDamageOfTheDamagedOneIsTold() throws IOException, UnreadableRideException {
        String text = text(Inspector.inspect(Path.of("..", "sample-rides", "damaged.fit")));
        assertThat(text).doesNotContain("Read without damage.").containsPattern("laps +none\n");
    }
}
