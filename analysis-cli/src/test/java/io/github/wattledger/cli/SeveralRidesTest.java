package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.testing.SampleReviews;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code wattledger RIDE RIDE...}: a brief of each, and nothing that was done is lost for one that fails. */
class SeveralRidesTest {
    private static final String HARD = "../sample-rides/over-hard-start.fit";
    private static final String EVEN = "../sample-rides/even-paced.fit";

    @TempDir
    Path folder = Path.of("");

    @Test
    void eachHasItsBrief() {
        Outcome both = Outcome.of(HARD, EVEN, "--threshold-power", "250W");
        assertThat(both.err()).isEmpty();
        assertThat(both.status()).isZero();
        assertThat(both.out())
                .isEqualTo(Outcome.of("review", HARD, "--brief", "--threshold-power", "250")
                                .out() + "\n"
                        + Outcome.of("review", EVEN, "--brief", "--threshold-power", "250")
                                .out());
    }

    @Test
    void oneThatCannotBeReadIsALineAndTheOthersAreReviewed() {
        String missing = folder.resolve("missing.fit").toString();
        Outcome outcome = Outcome.of(HARD, missing, EVEN);
        assertThat(outcome.status()).isEqualTo(4);
        assertThat(outcome.err().lines())
                .containsExactly("wattledger review: " + missing + ": there is no such file; check the path");
        assertThat(outcome.out())
                .isEqualTo(Outcome.of(HARD, "--brief").out() + "\n"
                        + Outcome.of(EVEN, "--brief").out());
    }

    /** A fault of this program in one ride takes nothing from the others, and is told by the status. */
    @Test
    void aFailureWithinIsALineToo() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = Main.run(
                new String[] {"a.fit", "b.fit", "c.fit"},
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8),
                (ride, rider, options) -> {
                    if (ride.toString().equals("b.fit")) {
                        throw new IllegalStateException("seven");
                    }
                    return SampleReviews.race();
                });
        assertThat(status).isEqualTo(1);
        assertThat(err.toString(StandardCharsets.UTF_8))
                .startsWith("wattledger review: b.fit: internal failure: java.lang.IllegalStateException: seven at ")
                .hasLineCount(1);
        String first = out.toString(StandardCharsets.UTF_8).lines().findFirst().orElseThrow();
        assertThat(out.toString(StandardCharsets.UTF_8)).startsWith(first).containsSubsequence("\n\n" + first);
    }

    @Test
    void noneThatCanBeReadIsStatusThree() {
        Outcome outcome = Outcome.of(
                folder.resolve("one.fit").toString(), folder.resolve("two.fit").toString());
        assertThat(outcome.status()).isEqualTo(3);
        assertThat(outcome.out()).isEmpty();
        assertThat(outcome.err().lines()).hasSize(2);
    }

    @Test
    void columnsAreForTablesAlone() {
        Outcome outcome = Outcome.of(HARD, EVEN, "--column", "power=Pwr");
        assertThat(outcome.status()).isEqualTo(2);
        assertThat(outcome.err().lines())
                .containsExactly(
                        "wattledger review: " + HARD + ": --column is for CSV files, but this is FIT",
                        "wattledger review: " + EVEN + ": --column is for CSV files, but this is FIT");
    }

    @Test
    void allGoIntoOneFile() throws IOException {
        Path target = folder.resolve("both.txt");
        assertThat(Outcome.of(HARD, EVEN, "--output", target.toString())).isEqualTo(new Outcome(0, "", ""));
        assertThat(Files.readString(target)).isEqualTo(Outcome.of(HARD, EVEN).out());
    }

    @Test
    void aFolderPointsToTheSeason() {
        Outcome outcome = Outcome.of(folder.toString());
        assertThat(outcome.status()).isEqualTo(3);
        assertThat(outcome.err().lines())
                .containsExactly(
                        "wattledger review: " + folder + ": is a folder; name one file in it; 'wattledger season "
                                + folder + "' reviews all rides in it");
    }
}
