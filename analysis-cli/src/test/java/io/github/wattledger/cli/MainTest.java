package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.cli.report.SampleReviews;
import io.github.wattledger.pacing.Effort;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Rider;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MainTest {
    private static final ReviewCommand.Core NEVER = (file, rider, options) -> {
        throw new AssertionError("the core was called");
    };
    private static final ReviewCommand.Core RACE = (file, rider, options) -> SampleReviews.race();

    record Outcome(int status, String out, String err) {}

    private static Outcome run(ReviewCommand.Core core, String... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = Main.run(
                args,
                new PrintStream(out, false, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8),
                core);
        return new Outcome(status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    @Nested
    class HelpAndVersion {
        @Test
        void theProgramExplainsItself() {
            Outcome outcome = run(NEVER, "--help");
            assertThat(outcome.status()).isZero();
            assertThat(outcome.err()).isEmpty();
            assertThat(outcome.out()).contains("Usage: wattledger", "review", "--version");
        }

        @Test
        void theCommandNamesEveryOption() {
            Outcome outcome = run(NEVER, "review", "--help");
            assertThat(outcome.status()).isZero();
            assertThat(outcome.err()).isEmpty();
            assertThat(outcome.out())
                    .contains("RIDE", "--threshold-power", "--threshold-heart-rate", "--mass", "--from", "--to")
                    .contains("--laps", "--effort", "--format", "--output", "Exit status", "not medical advice")
                    .contains("1:30 is");
            assertThat(outcome.out().lines()).allMatch(line -> line.length() <= 80);
        }

        @Test
        void outsideTheJarTheVersionIsDevelopment() {
            Outcome outcome = run(NEVER, "--version");
            assertThat(outcome.status()).isZero();
            assertThat(outcome.out()).isEqualTo("wattledger development" + System.lineSeparator());
        }

        @Test
        void shellCompletionIsWritten() {
            Outcome outcome = run(NEVER, "generate-completion");
            assertThat(outcome.status()).isZero();
            assertThat(outcome.out()).startsWith("#!").contains("wattledger", "--threshold-power");
        }

        @Test
        void nothingIsColoured() {
            assertThat(run(NEVER, "review", "--help").out()).doesNotContain("\u001b");
            assertThat(run(RACE, "review", "a.fit").out()).doesNotContain("\u001b");
        }
    }

    @Nested
    class WrongUsage {
        @ParameterizedTest
        @CsvSource(
                delimiter = '|',
                value = {
                    "review | Missing required parameter: 'RIDE'",
                    "review a.fit b.fit | 'b.fit'",
                    "review a.fit --colour | '--colour'",
                    "review a.fit --threshold-power abc | '--threshold-power'",
                    "review a.fit --threshold-power 250W | expected a number",
                    "review a.fit --threshold-power 2e2 | expected a number",
                    "review a.fit --threshold-power NaN | expected a number",
                    "review a.fit --threshold-power . | expected a number",
                    "review a.fit --threshold-power 71,5 | expected a number",
                    "review a.fit --threshold-power 29 | '--threshold-power': thresholdPowerW 29.0, expected 30",
                    "review a.fit --threshold-power 701 | '--threshold-power'",
                    "review a.fit --threshold-power -250 | '--threshold-power'",
                    "review a.fit --threshold-heart-rate 59 | '--threshold-heart-rate'",
                    "review a.fit --mass 24.9 | '--mass'",
                    "review a.fit --mass | '--mass'",
                    "review a.fit --mass 70 --mass 71 | '--mass'",
                    "review a.fit --from 90 | expected H:MM:SS or H:MM",
                    "review a.fit --from 1:60 | expected H:MM:SS or H:MM",
                    "review a.fit --from 1:5 | expected H:MM:SS or H:MM",
                    "review a.fit --from 1:00:60 | expected H:MM:SS or H:MM",
                    "review a.fit --from 1:00:00:00 | expected H:MM:SS or H:MM",
                    "review a.fit --from :30 | expected H:MM:SS or H:MM",
                    "review a.fit --from -1:30 | '--from'",
                    "review a.fit --from 99999999999:00 | expected H:MM:SS or H:MM",
                    "review a.fit --from 2:00 --to 1:00 | --to must be later than --from",
                    "review a.fit --to 0:00 | --to must be later than the start",
                    "review a.fit --laps 0 | expected a lap",
                    "review a.fit --laps 7-3 | expected a lap",
                    "review a.fit --laps 3- | expected a lap",
                    "review a.fit --laps 1-2-3 | expected a lap",
                    "review a.fit --laps 99999999999 | expected a lap",
                    "review a.fit --laps 2 --from 1:00 | --laps cannot be combined",
                    "review a.fit --laps 2 --to 1:00 | --laps cannot be combined",
                    "review a.fit --effort easy | expected auto, race or training",
                    "review a.fit --format pdf | expected text or json",
                })
        void isOneLineAndAHint(String words, String part) {
            Outcome outcome = run(NEVER, words.split(" "));
            assertThat(outcome.status()).isEqualTo(2);
            assertThat(outcome.out()).isEmpty();
            assertThat(outcome.err().lines()).hasSize(2);
            assertThat(outcome.err().lines().findFirst().orElseThrow())
                    .startsWith("wattledger review: ")
                    .contains(part);
            assertThat(outcome.err().lines().skip(1).findFirst().orElseThrow())
                    .isEqualTo("See 'wattledger review --help'.");
        }

        @Test
        void aMissingCommandIsNamed() {
            Outcome outcome = run(NEVER);
            assertThat(outcome.status()).isEqualTo(2);
            assertThat(outcome.out()).isEmpty();
            assertThat(outcome.err().lines())
                    .containsExactly("wattledger: Missing command", "See 'wattledger --help'.");
        }

        @Test
        void aMistypedCommandIsGuessed() {
            Outcome outcome = run(NEVER, "reviw", "a.fit");
            assertThat(outcome.status()).isEqualTo(2);
            assertThat(outcome.err()).contains("did you mean 'review'?");
        }

        @Test
        void optionsThatDoNotFitTheRideAreToo() {
            Outcome outcome = run(
                    (file, rider, options) -> {
                        throw new IllegalArgumentException("laps 3 to 9, the file has 4");
                    },
                    "review",
                    "a.fit",
                    "--laps",
                    "3-9");
            assertThat(outcome.status()).isEqualTo(2);
            assertThat(outcome.out()).isEmpty();
            assertThat(outcome.err().lines())
                    .containsExactly(
                            "wattledger review: laps 3 to 9, the file has 4", "See 'wattledger review --help'.");
        }
    }

    @Nested
    class Arguments {
        private Rider rider = Rider.UNKNOWN;
        private ReviewOptions options = ReviewOptions.WHOLE_RIDE;
        private Path file = Path.of("");

        private void read(String... args) {
            Outcome outcome = run(
                    (newFile, newRider, newOptions) -> {
                        file = newFile;
                        rider = newRider;
                        options = newOptions;
                        return SampleReviews.race();
                    },
                    args);
            assertThat(outcome.err()).isEmpty();
            assertThat(outcome.status()).isZero();
        }

        @Test
        void withoutOptionsNothingIsAssumed() {
            read("review", "a.fit");
            assertThat(file).isEqualTo(Path.of("a.fit"));
            assertThat(rider).isEqualTo(Rider.UNKNOWN);
            assertThat(options).isEqualTo(ReviewOptions.WHOLE_RIDE);
        }

        @Test
        void theRiderIsTakenAsGiven() {
            read("review", "--threshold-power", "250", "--threshold-heart-rate=168.5", "--mass", "71.5", "a.fit");
            assertThat(rider)
                    .isEqualTo(Rider.UNKNOWN
                            .withThresholdPowerW(250)
                            .withThresholdHeartRateBpm(168.5)
                            .withMassKg(71.5));
        }

        @Test
        void timesAreElapsedHoursMinutesAndSeconds() {
            read("review", "a.fit", "--from", "0:05", "--to", "12:34:56", "--effort", "race");
            // 5 min = 300 s; 12 h 34 min 56 s = 43,200 + 2,040 + 56 s
            assertThat(options).isEqualTo(new ReviewOptions(300, 45_296, null, null, Effort.RACE));
        }

        @Test
        void theEndCanStandAlone() {
            read("review", "a.fit", "--to", "0:00:01", "--effort", "training");
            assertThat(options).isEqualTo(new ReviewOptions(null, 1, null, null, Effort.TRAINING));
        }

        @ParameterizedTest
        @CsvSource({"3,3,3", "3-7,3,7", "3-3,3,3"})
        void lapsAreOneOrARange(String words, int first, int last) {
            read("review", "a.fit", "--laps", words);
            assertThat(options).isEqualTo(new ReviewOptions(null, null, first, last, Effort.AUTO));
        }
    }

    @Nested
    class Input {
        @Test
        void aFileThatCannotBeReadIsOneLine() {
            Outcome outcome = run(
                    (file, rider, options) -> {
                        throw new UnreadableRideException(file + ": no such file\nor \u001b[31mfolder");
                    },
                    "review",
                    "nowhere.fit");
            assertThat(outcome.status()).isEqualTo(3);
            assertThat(outcome.out()).isEmpty();
            assertThat(outcome.err().lines())
                    .containsExactly("wattledger review: nowhere.fit: no such file or  [31mfolder");
        }

        @Test
        void aNameThatCannotBeAFileIsToo() {
            Outcome outcome = run(NEVER, "review", "a\0b.fit");
            assertThat(outcome.status()).isEqualTo(3);
            assertThat(outcome.out()).isEmpty();
            assertThat(outcome.err().lines()).hasSize(1);
        }

        /** Through the real core. */
        @Test
        void aMissingFileIsReportedByTheCore(@TempDir Path folder) {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            ByteArrayOutputStream err = new ByteArrayOutputStream();
            int status = Main.run(
                    new String[] {"review", folder.resolve("nowhere.fit").toString()},
                    new PrintStream(out, true, StandardCharsets.UTF_8),
                    new PrintStream(err, true, StandardCharsets.UTF_8));
            assertThat(status).isEqualTo(3);
            assertThat(out.size()).isZero();
            assertThat(err.toString(StandardCharsets.UTF_8).lines())
                    .hasSize(1)
                    .allMatch(l -> l.contains("nowhere.fit"));
        }
    }

    @Nested
    class Failures {
        @Test
        void anInternalFailureIsOneLineWithoutAStackTrace() {
            Outcome outcome = run(
                    (file, rider, options) -> {
                        throw new IllegalStateException("seven\nlines");
                    },
                    "review",
                    "a.fit");
            assertThat(outcome.status()).isEqualTo(1);
            assertThat(outcome.out()).isEmpty();
            assertThat(outcome.err().lines()).hasSize(1);
            assertThat(outcome.err()).contains("internal failure", "IllegalStateException", "seven lines");
        }

        @ParameterizedTest
        @ValueSource(strings = {"memory", "stack", "assertion"})
        void soIsAnErrorOfTheMachine(String which) {
            Outcome outcome = run(
                    (file, rider, options) -> {
                        switch (which) {
                            case "memory" -> throw new OutOfMemoryError("Java heap space");
                            case "stack" -> throw new StackOverflowError();
                            default -> throw new AssertionError("impossible");
                        }
                    },
                    "review",
                    "a.fit");
            assertThat(outcome.status()).isEqualTo(1);
            assertThat(outcome.out()).isEmpty();
            assertThat(outcome.err().lines()).hasSize(1);
        }

        @Test
        void aBrokenStandardOutputIsNotSuccess() {
            ByteArrayOutputStream err = new ByteArrayOutputStream();
            OutputStream full = new OutputStream() {
                @Override
                public void write(int b) throws IOException {
                    throw new IOException("no space left");
                }
            };
            int status = Main.run(
                    new String[] {"review", "a.fit"},
                    new PrintStream(full, false, StandardCharsets.UTF_8),
                    new PrintStream(err, true, StandardCharsets.UTF_8),
                    RACE);
            assertThat(status).isEqualTo(1);
            assertThat(err.toString(StandardCharsets.UTF_8).lines()).hasSize(1);
        }
    }

    @Nested
    class Output {
        @TempDir
        private Path folder = Path.of("");

        @Test
        void textIsTheDefault() {
            Outcome outcome = run(RACE, "review", "a.fit");
            assertThat(outcome.status()).isZero();
            assertThat(outcome.err()).isEmpty();
            assertThat(outcome.out()).startsWith("Review of pinewood-coast-160.fit\n");
            assertThat(run(RACE, "review", "a.fit", "--format", "text").out()).isEqualTo(outcome.out());
        }

        @Test
        void jsonIsUtf8() {
            Outcome outcome = run(
                    (file, rider, options) -> SampleReviews.named(SampleReviews.race(), "K\u00fcste.fit", null),
                    "review",
                    "a.fit",
                    "--format",
                    "json");
            assertThat(outcome.status()).isZero();
            assertThat(outcome.out()).startsWith("{\n").contains("\"file\": \"K\u00fcste.fit\"");
        }

        @Test
        void aFileTakesTheReportInsteadOfStandardOutput() throws IOException {
            Path target = folder.resolve("report.txt");
            Files.writeString(target, "what was there before, and longer than nothing");
            Outcome outcome = run(RACE, "review", "a.fit", "--output", target.toString());
            assertThat(outcome).isEqualTo(new Outcome(0, "", ""));
            assertThat(Files.readString(target))
                    .isEqualTo(run(RACE, "review", "a.fit").out());
            assertThat(names()).containsExactly("report.txt");
        }

        @Test
        void aFailedRunLeavesTheFileAsItWas() throws IOException {
            Path target = folder.resolve("report.txt");
            Files.writeString(target, "before");
            Outcome outcome = run(
                    (file, rider, options) -> {
                        throw new UnreadableRideException("a.fit: damaged");
                    },
                    "review",
                    "a.fit",
                    "--output",
                    target.toString());
            assertThat(outcome.status()).isEqualTo(3);
            assertThat(Files.readString(target)).isEqualTo("before");
            assertThat(names()).containsExactly("report.txt");
        }

        @Test
        void aFolderThatDoesNotExistIsNamed() throws IOException {
            Path target = folder.resolve("no").resolve("report.txt");
            Outcome outcome = run(RACE, "review", "a.fit", "--output", target.toString());
            assertThat(outcome.status()).isEqualTo(1);
            assertThat(outcome.out()).isEmpty();
            assertThat(outcome.err().lines())
                    .containsExactly("wattledger review: cannot write " + target + ": its folder does not exist");
            assertThat(names()).isEmpty();
        }

        @Test
        void aFolderIsNotAFile() throws IOException {
            Outcome outcome = run(RACE, "review", "a.fit", "--output", folder.toString());
            assertThat(outcome.status()).isEqualTo(1);
            assertThat(outcome.err().lines())
                    .containsExactly("wattledger review: cannot write " + folder + ": it is a folder");
            assertThat(names()).isEmpty();
        }

        @Test
        void aLinkIsFollowed() throws IOException {
            Path target = folder.resolve("report.txt");
            Files.writeString(target, "before");
            Path link = Files.createSymbolicLink(folder.resolve("link.txt"), target);
            assertThat(run(RACE, "review", "a.fit", "--output", link.toString()).status())
                    .isZero();
            assertThat(link).isSymbolicLink();
            assertThat(Files.readString(target)).startsWith("Review of");
        }

        @Test
        void theRideItselfIsNeverOverwritten() throws IOException {
            Path ride = folder.resolve("a.fit");
            Files.writeString(ride, "the only copy");
            Outcome outcome = run(
                    NEVER,
                    "review",
                    ride.toString(),
                    "--output",
                    folder.resolve(".").resolve("a.fit").toString());
            assertThat(outcome.status()).isEqualTo(2);
            assertThat(outcome.err()).contains("would overwrite the ride");
            assertThat(Files.readString(ride)).isEqualTo("the only copy");
        }

        private List<String> names() throws IOException {
            try (Stream<Path> files = Files.list(folder)) {
                return files.map(file -> file.getFileName().toString()).sorted().toList();
            }
        }
    }
}
