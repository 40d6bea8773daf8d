package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** {@code wattledger -}: a ride that comes through a pipe. */
class StandardInputTest {
    private static final Path RIDE = Path.of("../sample-rides/over-hard-start.fit");

    private static Outcome run(InputStream in, String... words) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = Main.run(
                words,
                in,
                new PrintStream(out, false, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
        return new Outcome(status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    private static Outcome piped(String... words) throws IOException {
        return run(new ByteArrayInputStream(Files.readAllBytes(RIDE)), words);
    }

    @Test
    void theReviewIsThatOfTheFileButForItsName() throws IOException {
        String file = Outcome.of("review", RIDE.toString()).out();
        assertThat(piped("-").out()).isEqualTo(file.replace("over-hard-start.fit", "standard input"));
        assertThat(piped("review", "-", "--format", "csv").out())
                .isEqualTo(
                        Outcome.of("review", RIDE.toString(), "--format", "csv").out());
    }

    /** The distance is looked up on the ride before it is reviewed, and a pipe comes only once. */
    @Test
    void aPartByDistanceCanBeAskedFor() throws IOException {
        Outcome outcome = piped("-", "--from", "40km", "--to", "80km");
        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.out())
                .isEqualTo(Outcome.of("review", RIDE.toString(), "--from", "40km", "--to", "80km")
                        .out()
                        .replace("over-hard-start.fit", "standard input"));
    }

    @Test
    void whatNeverEndsIsRefused() {
        InputStream endless = new InputStream() {
            @Override
            public int read() {
                return 'x';
            }

            @Override
            public int read(byte[] bytes, int from, int length) {
                return length;
            }
        };
        Outcome outcome = run(endless, "-");
        assertThat(outcome.status()).isEqualTo(3);
        assertThat(outcome.out()).isEmpty();
        assertThat(outcome.err())
                .startsWith("wattledger review: standard input: has more than the ")
                .endsWith(" that are read; is it a ride?" + System.lineSeparator());
    }

    @Test
    void whatIsNoRideIsOneLine() {
        Outcome outcome = run(new ByteArrayInputStream("Dear coach".getBytes(StandardCharsets.UTF_8)), "-");
        assertThat(outcome.status()).isEqualTo(3);
        assertThat(outcome.err().lines()).hasSize(1);
        assertThat(outcome.err()).startsWith("wattledger review: standard input: is not a recording");
    }

    /** Whatever takes a ride or a course takes it from a pipe, and says the same as of the file but for its name. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "inspect RIDE",
                "what-if RIDE --with-power +5% --from 10km --to 2h",
                "compare RIDE ../sample-rides/even-paced.fit --from 0:30 --to 150km",
                "compare ../sample-rides/even-paced.fit RIDE",
                "plan RIDE --threshold-power 250 --mass 74 --format json",
            })
    void everyCommandOfARideReadsIt(String words) throws IOException {
        Outcome outcome = piped(words.replace("RIDE", "-").split(" ", -1));
        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.status()).isZero();
        assertThat(outcome.out()
                        .replace("standard input", "over-hard-start.fit")
                        .replaceAll("\\s+", " "))
                .isEqualTo(Outcome.of(words.replace("RIDE", RIDE.toString()).split(" ", -1))
                        .out()
                        .replaceAll("\\s+", " "));
    }

    @Test
    void itComesOnlyOnceAndIsNoSeason() throws IOException {
        Outcome twice = piped("compare", "-", "-");
        assertThat(twice.status()).isEqualTo(2);
        assertThat(twice.err().lines().findFirst())
                .hasValue("wattledger compare: standard input can be read only once");
        Outcome season = piped("season", "-");
        assertThat(season.status()).isEqualTo(3);
        assertThat(season.err().lines())
                .containsExactly(
                        "wattledger season: -: a season is a folder, not standard input; name the folder of the"
                                + " rides");
    }
}
