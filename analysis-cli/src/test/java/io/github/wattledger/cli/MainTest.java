package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.cli.profile.RiderFile;
import io.github.wattledger.intake.Selection;
import io.github.wattledger.pacing.Effort;
import io.github.wattledger.pacing.JudgementLimit;
import io.github.wattledger.pacing.JudgementLimits;
import io.github.wattledger.read.CsvColumns;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.read.UnreadableRideException.Reason;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rider.ThresholdHistory;
import io.github.wattledger.testing.SampleReviews;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
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
                    .contains("--rider", "--session", "--column", "--explain");
            assertThat(outcome.out().replaceAll("\\s+", " ")).contains("1:30 is an hour and a half");
            assertThat(outcome.out().lines()).allMatch(line -> line.length() <= 80);
        }

        @Test
        void outsideTheJarTheVersionIsDevelopment() {
            Outcome outcome = run(NEVER, "--version");
            assertThat(outcome.status()).isZero();
            assertThat(outcome.out()).isEqualTo("wattledger development" + System.lineSeparator());
        }

        @Test
        void helpAndVersionAreCommandsToo() {
            assertThat(run(NEVER, "help")).isEqualTo(run(NEVER, "--help"));
            assertThat(run(NEVER, "help", "review")).isEqualTo(run(NEVER, "review", "--help"));
            assertThat(run(NEVER, "help", "what-if")).isEqualTo(run(NEVER, "what-if", "--help"));
            assertThat(run(NEVER, "version")).isEqualTo(run(NEVER, "--version"));
        }

        @Test
        void helpForWhatIsNoCommandIsOneLine() {
            Outcome outcome = run(NEVER, "help", "seasn");
            assertThat(outcome.status()).isEqualTo(2);
            assertThat(outcome.err().lines())
                    .containsExactly(
                            "wattledger help: there is no command 'seasn' (did you mean season?)",
                            "See 'wattledger help --help'.");
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
                    "review | name a RIDE",
                    "review a.fit --colour | unknown option --colour",
                    "review a.fit --thresold-power 250 | unknown option --thresold-power (did you mean --threshold-power?)",
                    "review a.fit --formt=json | unknown option --formt (did you mean --format?)",
                    "review a.fit --threshold-power abc | --threshold-power abc: expected 30 to 700 W",
                    "review a.fit --threshold-power 250bpm | --threshold-power 250bpm: expected 30 to 700 W",
                    "review a.fit --threshold-power 2e2 | --threshold-power 2e2: expected 30 to 700 W",
                    "review a.fit --threshold-power NaN | --threshold-power NaN: expected 30 to 700 W",
                    "review a.fit --threshold-power . | --threshold-power .: expected 30 to 700 W",
                    "review a.fit --threshold-power 71,5 | --threshold-power 71,5: write the decimals with a point, such as 71.5",
                    "review a.fit --threshold-power 29 | --threshold-power 29: expected 30 to 700 W",
                    "review a.fit --threshold-power 2500 | --threshold-power 2500: expected 30 to 700 W",
                    "review a.fit --threshold-power=-250 | --threshold-power -250: expected 30 to 700 W",
                    "review a.fit --threshold-heart-rate 59 | --threshold-heart-rate 59: expected 60 to 230 bpm",
                    "review a.fit --mass 24.9 | --mass 24.9: expected 25 to 250 kg",
                    "review a.fit --mass 40lb | --mass 40lb: expected 25 to 250 kg",
                    "review a.fit --mass 70st | --mass 70st: expected 25 to 250 kg",
                    "review a.fit --mass | --mass: its value is missing (KG)",
                    "review a.fit --mass 70 --mass 71 | --mass is given twice",
                    "review a.fit --from 90 | --from 90: expected a time such as 1:30:00 or 2h30, or a distance such as 40km or 25mi",
                    "review a.fit --from 1:60 | --from 1:60: expected a time such as 1:30:00 or 2h30, or a distance such as 40km or 25mi",
                    "review a.fit --from 1:5 | --from 1:5: expected a time such as 1:30:00 or 2h30, or a distance such as 40km or 25mi",
                    "review a.fit --from 1:00:60 | --from 1:00:60: expected a time such as 1:30:00 or 2h30, or a distance such as 40km or 25mi",
                    "review a.fit --from 2h60 | --from 2h60: expected a time such as 1:30:00 or 2h30, or a distance such as 40km or 25mi",
                    "review a.fit --from 500m | --from 500m: expected a time such as 1:30:00 or 2h30, or a distance such as 40km or 25mi",
                    "review a.fit --from :30 | --from :30: expected a time such as 1:30:00 or 2h30, or a distance such as 40km or 25mi",
                    "review a.fit --from=-1:30 | --from -1:30: expected a time such as 1:30:00 or 2h30, or a distance such as 40km or 25mi",
                    "review a.fit --from 99999999999:00 | --from 99999999999:00: expected a time such as 1:30:00 or 2h30, or a distance such as 40km or 25mi",
                    "review a.fit --from 99999999999999999999km | --from 99999999999999999999km: expected a time such as 1:30:00 or 2h30, or a distance such as 40km or 25mi",
                    "review a.fit --mass 99999999999999999999 | --mass 99999999999999999999: expected 25 to 250 kg",
                    "review a.fit --from 2:00 --to 1:00 | --to 1:00: must come after --from",
                    "review a.fit --to 0:00 | --to 0:00: must come after the start",
                    "review a.fit --laps 0 | --laps 0: expected a lap such as 3 or a range such as 3-7, counted from 1",
                    "review a.fit --laps 7-3 | --laps 7-3: expected a lap such as 3 or a range such as 3-7, counted from 1",
                    "review a.fit --laps 3- | --laps 3-: expected a lap such as 3 or a range such as 3-7, counted from 1",
                    "review a.fit --laps 1-2-3 | --laps 1-2-3: expected a lap such as 3 or a range such as 3-7, counted from 1",
                    "review a.fit --laps 99999999999 | --laps 99999999999: expected a lap such as 3 or a range such as 3-7, counted from 1",
                    "review a.fit --laps 2 --from 1:00 | --laps cannot be combined with --from or --to",
                    "review a.fit --laps 2 --to 1:00 | --laps cannot be combined with --from or --to",
                    "review a.fit --effort easy | --effort easy: expected auto, race or training",
                    "review a.fit --session 0 | --session 0: expected a number from 1",
                    "review a.fit --session=-1 | --session -1: expected a number from 1",
                    "review a.fit --session two | --session two: expected a number from 1",
                    "review a.csv --column power | --column power: expected NAME=HEADER, for instance 'power=Pwr (W)'",
                    "review a.csv --column =Watt | --column =Watt: expected NAME=HEADER, for instance 'power=Pwr (W)'",
                    "review a.csv --column power= | --column power=: expected NAME=HEADER, for instance 'power=Pwr (W)'",
                    "review a.csv --column powr=Watt | --column powr=Watt: powr is no column that is read (did you mean power?); expected one of time, state, lap, power, heart_rate, cadence, speed, distance, altitude, latitude, longitude, temperature, left_share, accumulated_work, respiration, front_teeth, rear_teeth",
                    "review a.csv --column power=a --column power=b | --column power=b: power is given twice",
                    "review a.fit --rider | --rider: its value is missing (FILE)",
                    "review a.fit --rider= | --rider: the name is empty",
                    "review a.fit --output= | --output: the name is empty",
                    "review a.fit --rider a.toml --rider b.toml | --rider is given twice",
                    "review a.fit --explain | --explain: its value is missing (FINDING)",
                    "review a.fit --explain tired | --explain tired: expected one of over-hard-start, energy-crash, fade, threshold-riding-early, surges, drift, under-paced, late-reserve, stopped-time, spun-out or over-geared",
                    "review a.fit --explain fade --format json | --explain is written as text only",
                    "review a.fit --explain fade --format csv | --explain is written as text only",
                    "review a.fit --explain fade --format html | --explain is written as text only",
                    "review a.fit --format pdf | --format pdf: expected one of text, json, csv, splits or html",
                    "review - - | standard input can be read only once",
                    "review a.fit b.fit --laps 2 | --session, --from, --to, --laps and --explain are for one ride",
                    "review a.fit b.fit --session 2 | --session, --from, --to, --laps and --explain are for one ride",
                    "review a.fit b.fit --explain fade | --session, --from, --to, --laps and --explain are for one ride",
                    "review a.fit b.fit --format json | several rides are written as text only; 'wattledger season' takes them with --format and --pages",
                })
        void isOneLineAndAHint(String words, String message) {
            Outcome outcome = run(NEVER, words.split(" "));
            assertThat(outcome.status()).isEqualTo(2);
            assertThat(outcome.out()).isEmpty();
            assertThat(outcome.err().lines())
                    .containsExactly("wattledger review: " + message, "See 'wattledger review --help'.");
        }

        @Test
        void withoutAnyWordBothAreNamed() {
            Outcome outcome = run(NEVER);
            assertThat(outcome.status()).isEqualTo(2);
            assertThat(outcome.out()).isEmpty();
            assertThat(outcome.err().lines())
                    .containsExactly("wattledger: name a ride to review, or a command", "See 'wattledger --help'.");
        }

        @Test
        void aMistypedCommandIsGuessed() {
            Outcome outcome = run(NEVER, "reviw", "a.fit");
            assertThat(outcome.status()).isEqualTo(2);
            assertThat(outcome.err().lines())
                    .containsExactly(
                            "wattledger: there is no command and no file called 'reviw' (did you mean review?)",
                            "See 'wattledger --help'.");
        }

        /** A recording of another format has no columns that could be named. */
        @Test
        void columnsOfWhatIsNoCsvFileAreToo() {
            Outcome outcome = run(RACE, "review", "a.fit", "--column", "power=Watt");
            assertThat(outcome.status()).isEqualTo(2);
            assertThat(outcome.out()).isEmpty();
            assertThat(outcome.err().lines())
                    .containsExactly(
                            "wattledger review: --column is for CSV files, but this is FIT",
                            "See 'wattledger review --help'.");
        }

        @Test
        void columnsThatMakeNoSenseAreOneLineOfInspectToo() {
            Outcome outcome = run(NEVER, "inspect", "a.csv", "--column", "power");
            assertThat(outcome.status()).isEqualTo(2);
            assertThat(outcome.err().lines())
                    .containsExactly(
                            "wattledger inspect: --column power: expected NAME=HEADER, for instance 'power=Pwr (W)'",
                            "See 'wattledger inspect --help'.");
        }

        @Test
        void inspectTakesTheColumnsItIsTold(@TempDir Path folder) throws Exception {
            Path table = folder.resolve("a.csv");
            Files.writeString(table, "time,Leistung\n0,200\n1,210\n2,220\n");
            assertThat(run(NEVER, "inspect", table.toString()).status()).isEqualTo(3);
            Outcome outcome = run(NEVER, "inspect", table.toString(), "--column", "power=Leistung", "--format", "json");
            assertThat(outcome.status()).isZero();
            assertThat(outcome.out()).contains("\"averagePowerW\": 210,");
        }

        @Test
        void optionsThatDoNotFitTheRideAreToo() {
            Outcome outcome = run(
                    (file, rider, options) -> {
                        throw new IllegalArgumentException("the ride has laps 1 to 4, not 9");
                    },
                    "review",
                    "a.fit",
                    "--laps",
                    "3-9");
            assertThat(outcome.status()).isEqualTo(2);
            assertThat(outcome.out()).isEmpty();
            assertThat(outcome.err().lines())
                    .containsExactly(
                            "wattledger review: --laps 3-9: the ride has laps 1 to 4, not 9",
                            "See 'wattledger review --help'.");
        }
    }

    @Nested
    class Arguments {
        private Rider rider = Rider.UNKNOWN;
        private ReviewOptions options = ReviewOptions.WHOLE_RIDE;
        private @Nullable Path file = Path.of("");
        private CsvColumns columns = CsvColumns.BY_NAME;

        private void read(String... args) {
            Outcome outcome = run(
                    (newFile, newRider, newOptions) -> {
                        file = newFile.file();
                        columns = newOptions.reading().csvColumns();
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
            assertThat(columns).isEqualTo(CsvColumns.BY_NAME);
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
            read("review", "a.fit", "--from", "0:05", "--to", "12:34:56", "--effort", "Race");
            // 5 min = 300 s; 12 h 34 min 56 s = 43,200 + 2,040 + 56 s
            assertThat(options)
                    .isEqualTo(ReviewOptions.WHOLE_RIDE
                            .withSelection(Selection.WHOLE_RIDE.withSeconds(300, 45_296))
                            .withEffort(Effort.RACE));
        }

        /** By hand: 2 h 30 min are 9000 s, 90 min 5400 s, 2 h 5 min 10 s 7510 s. */
        @ParameterizedTest
        @CsvSource({
            "2h30,9000",
            "2H30,9000",
            "2 h 30,9000",
            "2h30min,9000",
            "2h30m,9000",
            "1h5m,3900",
            "2h,7200",
            "90min,5400",
            "2h 5min 10s,7510",
            "45s,45",
            "150:00:00,540000"
        })
        void timesAreTakenAsPeopleTypeThem(String words, int seconds) {
            read("review", "a.fit", "--from", words);
            assertThat(options.selection()).isEqualTo(Selection.WHOLE_RIDE.withSeconds(seconds, null));
        }

        /** By the definition of the international pound, 0.45359237 kg. */
        @ParameterizedTest
        @CsvSource({"74kg,74", "74 kg,74", "74.5KG,74.5", "162lb,73.48196394", "162 lbs,73.48196394", "74,74"})
        void massesAreTakenAsPeopleTypeThem(String words, double massKg) {
            read("review", "a.fit", "--mass", words);
            assertThat(rider).isEqualTo(Rider.UNKNOWN.withMassKg(massKg));
        }

        @ParameterizedTest
        @ValueSource(strings = {"250", "250W", "250 W", "250w", "250 watts", "250.0", "+250"})
        void powersAreTakenAsPeopleTypeThem(String words) {
            read("review", "a.fit", "--threshold-power", words, "--threshold-heart-rate", "165 bpm");
            assertThat(rider).isEqualTo(Rider.UNKNOWN.withThresholdPowerW(250).withThresholdHeartRateBpm(165));
        }

        @Test
        void aRideAloneIsReviewed() {
            read("a.fit");
            assertThat(file).isEqualTo(Path.of("a.fit"));
            read("--threshold-power", "250", "a.fit");
            assertThat(rider).isEqualTo(Rider.UNKNOWN.withThresholdPowerW(250));
            read("-");
            assertThat(file).isNull();
        }

        @Test
        void theEndCanStandAlone() {
            read("review", "a.fit", "--to", "0:00:01", "--effort", "training");
            assertThat(options)
                    .isEqualTo(ReviewOptions.WHOLE_RIDE
                            .withSelection(Selection.WHOLE_RIDE.withSeconds(null, 1))
                            .withEffort(Effort.TRAINING));
        }

        @Test
        void sessionsAreCountedFromOne() {
            read("review", "a.fit", "--session", "2");
            assertThat(options)
                    .isEqualTo(ReviewOptions.WHOLE_RIDE.withSelection(Selection.WHOLE_RIDE.withSessionIndex(1)));
        }

        @Test
        void columnsAreNamed() {
            run(
                    (newFile, newRider, newOptions) -> {
                        columns = newOptions.reading().csvColumns();
                        return SampleReviews.race();
                    },
                    "review",
                    "a.csv",
                    "--column",
                    "power=Pwr (W)",
                    "--column=heart_rate=a=b");
            assertThat(columns).isEqualTo(new CsvColumns(Map.of("power", "Pwr (W)", "heart_rate", "a=b")));
        }

        @ParameterizedTest
        @CsvSource({"3,3,3", "3-7,3,7", "3-3,3,3"})
        void lapsAreOneOrARange(String words, int first, int last) {
            read("review", "a.fit", "--laps", words);
            assertThat(options)
                    .isEqualTo(ReviewOptions.WHOLE_RIDE.withSelection(Selection.WHOLE_RIDE.withLaps(first, last)));
        }
    }

    @Nested
    class Profile {
        @TempDir
        private Path folder = Path.of("");

        private Path profile(String... lines) throws IOException {
            return Files.writeString(folder.resolve("rider.toml"), String.join("\n", lines));
        }

        @Test
        void theProfileReachesTheCoreAndOptionsGoBeforeIt() throws IOException {
            Path file = profile(
                    "mass_kg = 74",
                    "[[thresholds]]",
                    "from = 2026-03-01",
                    "power_w = 250",
                    "[judgement]",
                    "drift_percent = 5");
            ThresholdHistory history =
                    new ThresholdHistory(List.of(new ThresholdHistory.Entry(LocalDate.of(2026, 3, 1), 250.0, null)));
            Outcome outcome = run(
                    (ride, rider, options) -> {
                        assertThat(rider)
                                .isEqualTo(Rider.UNKNOWN
                                        .withMassKg(75.5)
                                        .withThresholds(history)
                                        .withThresholdPowerW(245));
                        assertThat(options.limits())
                                .isEqualTo(JudgementLimits.USUAL.with(JudgementLimit.DRIFT_PERCENT, 5));
                        assertThat(options.selection().fromSecond()).isEqualTo(300);
                        return SampleReviews.race();
                    },
                    "review",
                    "a.fit",
                    "--rider",
                    file.toString(),
                    "--mass",
                    "75.5",
                    "--threshold-power",
                    "245",
                    "--from",
                    "0:05");
            assertThat(outcome.err()).isEmpty();
            assertThat(outcome.status()).isZero();
        }

        @Test
        void itsProblemsAreALineEach() throws IOException {
            Path file = profile("mas_kg = 74", "[[thresholds]]", "power_w = 2500");
            Outcome outcome = run(NEVER, "review", "a.fit", "--rider", file.toString());
            assertThat(outcome.status()).isEqualTo(3);
            assertThat(outcome.out()).isEmpty();
            assertThat(outcome.err().lines())
                    .containsExactly(
                            "wattledger review: " + file + ":1: mas_kg: unknown key; did you mean mass_kg?",
                            "wattledger review: " + file + ":2: thresholds: expected from, the day from which it holds,"
                                    + " such as 2026-03-01; it is missing",
                            "wattledger review: " + file
                                    + ":3: thresholds.power_w: expected a number from 30 to 700, found 2500");
        }

        @Test
        void aMissingOneIsALine() {
            Outcome outcome = run(
                    NEVER,
                    "review",
                    "a.fit",
                    "--rider",
                    folder.resolve("no.toml").toString());
            assertThat(outcome.status()).isEqualTo(3);
            assertThat(outcome.err().lines())
                    .containsExactly("wattledger review: " + folder.resolve("no.toml")
                            + ": there is no such file; check the path");
        }

        /** Through the real core: the sample race is of 13 June 2026, on its rider's clock. */
        @Test
        void theReportNamesTheThresholdOfTheDay() throws IOException {
            Path file = profile(
                    "[[thresholds]]",
                    "from = 2026-01-01",
                    "power_w = 243",
                    "[[thresholds]]",
                    "from = 2026-06-14",
                    "power_w = 299");
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            ByteArrayOutputStream err = new ByteArrayOutputStream();
            int status = Main.run(
                    new String[] {
                        "review",
                        Path.of("..", "sample-rides", "over-hard-start.fit").toString(),
                        "--rider",
                        file.toString()
                    },
                    new PrintStream(out, true, StandardCharsets.UTF_8),
                    new PrintStream(err, true, StandardCharsets.UTF_8));
            assertThat(err.toString(StandardCharsets.UTF_8)).isEmpty();
            assertThat(status).isZero();
            assertThat(out.toString(StandardCharsets.UTF_8))
                    .contains("Threshold power: 243 W, from the rider profile.");
        }

        @Test
        void theExampleIsPrinted() {
            Outcome outcome = run(NEVER, "rider", "--example");
            assertThat(outcome).isEqualTo(new Outcome(0, RiderFile.example(), ""));
        }

        @Test
        void theCommandAsksForItsOption() {
            Outcome outcome = run(NEVER, "rider");
            assertThat(outcome.status()).isEqualTo(2);
            assertThat(outcome.out()).isEmpty();
            assertThat(outcome.err().lines())
                    .containsExactly(
                            "wattledger rider: one of --example and --from-season is needed",
                            "See 'wattledger rider --help'.");
        }
    }

    @Nested
    class Inspection {
        @Test
        void aRideIsInspected() {
            String ride = Path.of("..", "sample-rides", "even-paced.fit").toString();
            Outcome text = run(NEVER, "inspect", ride);
            assertThat(text.err()).isEmpty();
            assertThat(text.status()).isZero();
            assertThat(text.out()).startsWith("Inspection of even-paced.fit\nFIT, ");
            assertThat(run(NEVER, "inspect", ride, "--format", "text")).isEqualTo(text);
            Outcome json = run(NEVER, "inspect", ride, "--format", "json");
            assertThat(json.status()).isZero();
            assertThat(json.out()).startsWith("{\n  \"schema\": \"wattledger.inspection/2\",");
        }

        @Test
        void whatCannotBeReadIsOneLine(@TempDir Path folder) {
            Outcome outcome =
                    run(NEVER, "inspect", folder.resolve("nowhere.fit").toString());
            assertThat(outcome.status()).isEqualTo(3);
            assertThat(outcome.out()).isEmpty();
            assertThat(outcome.err().lines()).hasSize(1).allMatch(line -> line.contains("nowhere.fit"));
        }

        @ParameterizedTest
        @CsvSource(
                delimiter = '|',
                value = {
                    "inspect | name a RIDE",
                    "inspect a.fit b.fit | 'b.fit' is one word too many; put quotes around a name with blanks",
                    "inspect a.fit --format csv | --format csv: expected text or json",
                    "inspect a.fit --from 1:00 | unknown option --from",
                })
        void wrongUsageIsOneLineAndAHint(String words, String part) {
            Outcome outcome = run(NEVER, words.split(" "));
            assertThat(outcome.status()).isEqualTo(2);
            assertThat(outcome.out()).isEmpty();
            assertThat(outcome.err().lines()).hasSize(2);
            assertThat(outcome.err().lines())
                    .containsExactly("wattledger inspect: " + part, "See 'wattledger inspect --help'.");
        }
    }

    /** Through the real core. */
    @Nested
    class RealFiles {
        @TempDir
        private Path folder = Path.of("");

        private Outcome real(String... args) {
            return Outcome.of(args);
        }

        @Test
        void aNamedColumnIsTakenForPower() throws IOException {
            StringBuilder table = new StringBuilder("time,Kurbel\n");
            for (int second = 0; second < 60; second++) {
                table.append("2026-06-14T05:00:")
                        .append(second < 10 ? "0" : "")
                        .append(second)
                        .append("Z,200\n");
            }
            Path file = Files.writeString(folder.resolve("ride.csv"), table);
            Outcome named = real("review", file.toString(), "--column", "power=Kurbel", "--format", "csv");
            assertThat(named.err()).isEmpty();
            assertThat(named.out().lines())
                    .hasSize(61)
                    .startsWith("time,state,power_w", "2026-06-14T05:00:00Z,riding,200");
            Outcome unnamed = real("review", file.toString(), "--format", "csv");
            assertThat(unnamed.status()).isEqualTo(3);
        }

        @Test
        void aSessionThatIsNotThereIsOneLine() {
            String ride = Path.of("..", "sample-rides", "even-paced.fit").toString();
            Outcome outcome = real("review", ride, "--session", "2");
            assertThat(outcome.status()).isEqualTo(3);
            assertThat(outcome.err().lines()).hasSize(1).allMatch(line -> line.contains("has no session 2"));
            assertThat(real("review", ride, "--session", "1").out())
                    .isEqualTo(real("review", ride).out());
        }
    }

    @Nested
    class Input {
        @Test
        void aFileThatCannotBeReadIsOneLine() {
            Outcome outcome = run(
                    (file, rider, options) -> {
                        throw new UnreadableRideException(
                                UnreadableRideException.Reason.NO_SUCH_FILE,
                                file + ": no such file\nor \u001b[31mfolder");
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
            assertThat(outcome.out()).startsWith("pinewood-coast-160.fit, 2026-06-14 07:00");
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
                        throw new UnreadableRideException(UnreadableRideException.Reason.DAMAGED, "a.fit: damaged");
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
        void aFolderThatDoesNotExistIsMade() throws IOException {
            Path target = folder.resolve("no").resolve("such").resolve("report.txt");
            Outcome outcome = run(RACE, "review", "a.fit", "--output", target.toString());
            assertThat(outcome).isEqualTo(new Outcome(0, "", ""));
            assertThat(target).isNotEmptyFile();
        }

        @Test
        void aFailedRunMakesNoFolder() {
            Path target = folder.resolve("no").resolve("report.txt");
            Outcome outcome = run(
                    (ride, rider, options) -> {
                        throw new UnreadableRideException(Reason.DAMAGED, "a.fit: damaged");
                    },
                    "review",
                    "a.fit",
                    "--output",
                    target.toString());
            assertThat(outcome.status()).isEqualTo(3);
            assertThat(target.getParent()).doesNotExist();
        }

        @Test
        void aFileThatStandsInForAFolderIsNamed() throws IOException {
            Path file = Files.writeString(folder.resolve("reports"), "a file");
            Outcome outcome = run(
                    RACE,
                    "review",
                    "a.fit",
                    "--output",
                    file.resolve("report.txt").toString());
            assertThat(outcome.status()).isEqualTo(1);
            assertThat(outcome.err().lines())
                    .containsExactly("wattledger review: cannot make the folder " + file + ": " + file + " is a file");
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
            assertThat(Files.readString(target)).startsWith("pinewood-coast-160.fit");
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
            assertThat(outcome.err())
                    .startsWith("wattledger review: --output "
                            + folder.resolve(".").resolve("a.fit") + ": would overwrite the ride itself");
            assertThat(Files.readString(ride)).isEqualTo("the only copy");
        }

        private List<String> names() throws IOException {
            try (Stream<Path> files = Files.list(folder)) {
                return files.map(file -> file.getFileName().toString()).sorted().toList();
            }
        }
    }
}
