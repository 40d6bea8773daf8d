package io.github.wattledger.cli.profile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import io.github.wattledger.pacing.JudgementLimit;
import io.github.wattledger.pacing.JudgementLimits;
import io.github.wattledger.rider.Gears;
import io.github.wattledger.rider.LongBest;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rider.ThresholdHistory;
import io.github.wattledger.rider.ThresholdHistory.Entry;
import io.github.wattledger.rider.Trial;
import io.github.wattledger.rider.ZoneScheme;
import io.github.wattledger.rider.ZoneScheme.Zone;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class RiderFileTest {
    private static RiderProfile parsed(String... lines) throws UnreadableProfileException {
        return RiderFile.parse(String.join("\n", lines), "rider.toml");
    }

    private static List<String> problems(String... lines) {
        UnreadableProfileException problems =
                catchThrowableOfType(UnreadableProfileException.class, () -> parsed(lines));
        assertThat(problems).as("the profile was taken").isNotNull();
        return problems.lines();
    }

    /** 80 kB of brackets: the parser alone would exhaust the stack. */
    @ParameterizedTest
    @ValueSource(strings = {"[", "{ a = ", "[[", "a.", "[ # ]\n"})
    void deepNestingIsOneLine(String level) {
        for (String begin : List.of("mass_kg = ", "x = \"\"\"\n[\n\"\"\"\ngears = ")) {
            assertThat(problems(begin + level.repeat(80_000 / level.length())))
                    .singleElement()
                    .asString()
                    .matches("rider\\.toml:\\d+: brackets or keys are nested more than 50 deep; a rider profile needs"
                            + " three levels");
        }
    }

    /** What only looks like nesting: brackets in comments and strings, and numbers with points. */
    @Test
    void bracketsInWordsAreNotNesting() throws UnreadableProfileException {
        String many = "[".repeat(200);
        assertThat(TomlNesting.tooDeepLine("# " + many
                        + "\na = \"" + many + "\\\"" + many + "\"\nb = '" + many + "'\nc = \"\"\"\n" + many
                        + "\n\"\"\"\nd = '''" + many + "'''\ne = [" + "1.5, ".repeat(200) + "]\n"))
                .isZero();
        assertThat(TomlNesting.tooDeepLine("# one\na = \"\"\"\n\n\"\"\"\nb = " + many))
                .isEqualTo(5);
    }

    @Nested
    class Profiles {
        @Test
        void everythingIsTaken() throws UnreadableProfileException {
            RiderProfile profile = parsed(
                    "mass_kg = 74.5",
                    "bike_mass_kg = 9",
                    "maximum_heart_rate_bpm = 184",
                    "birth_year = 2004",
                    "race_days = [2026-06-13, 2026-08-01]",
                    "all_out = [2026-07-04]",
                    "power_zones = [{name = \"easy\", from_fraction = 0}, {name = \"hard\", from_fraction = 0.9}]",
                    "[[thresholds]]",
                    "from = 2026-03-01",
                    "power_w = 250",
                    "[[thresholds]]",
                    "from = 2025-11-01",
                    "heart_rate_bpm = 163.5",
                    "[[heart_rate_zones]]",
                    "name = \"all\"",
                    "from_fraction = 0.0",
                    "[gears]",
                    "chainrings = [46, 30]",
                    "cogs = [11, 36]",
                    "wheel_circumference_m = 2.19",
                    "[road]",
                    "drag_area_m2 = 0.36",
                    "rolling_resistance = 0.007",
                    "[critical_power]",
                    "power_w = 246",
                    "w_prime_kj = 17.5",
                    "[[long_bests]]",
                    "day = 2026-05-02",
                    "minutes = 150",
                    "power_w = 214",
                    "[[trials]]",
                    "day = 2026-04-05",
                    "minutes = 12",
                    "power_w = 281",
                    "[[trials]]",
                    "day = 2026-04-07",
                    "minutes = 3",
                    "[judgement]",
                    "surge_seconds = 12",
                    "drift_percent = 4.5");
            Rider rider = new Rider(
                    74.5,
                    9.0,
                    null,
                    null,
                    184.0,
                    new ThresholdHistory(List.of(
                            new Entry(LocalDate.of(2025, 11, 1), null, 163.5),
                            new Entry(LocalDate.of(2026, 3, 1), 250.0, null))),
                    new ZoneScheme(List.of(new Zone("easy", 0), new Zone("hard", 0.9))),
                    new ZoneScheme(List.of(new Zone("all", 0))),
                    new Gears(List.of(30, 46), List.of(11, 36), 2.19),
                    0.36,
                    0.007,
                    246.0,
                    17.5,
                    List.of(new LongBest(9000, 214, LocalDate.of(2026, 5, 2))),
                    Set.of(LocalDate.of(2026, 6, 13), LocalDate.of(2026, 8, 1)),
                    Set.of(LocalDate.of(2026, 7, 4)),
                    List.of(
                            new Trial(LocalDate.of(2026, 4, 5), 720, 281.0),
                            new Trial(LocalDate.of(2026, 4, 7), 180, null)),
                    2004);
            JudgementLimits limits = JudgementLimits.USUAL
                    .with(JudgementLimit.SURGE_SECONDS, 12)
                    .with(JudgementLimit.DRIFT_PERCENT, 4.5);
            assertThat(profile).isEqualTo(new RiderProfile(rider, limits));
        }

        @Test
        void aTrialWithoutPowerHasADurationThatASeasonKeeps() {
            assertThat(problems("[[trials]]\nday = 2026-04-05\nminutes = 7"))
                    .containsExactly("rider.toml:3: trials.minutes: expected 2, 3, 5, 8, 10, 12, 15, 20 or 30 where"
                            + " power_w is left out, so that a season's store knows the power; found 7.0");
            assertThat(problems("[[trials]]\nminutes = 1"))
                    .containsExactlyInAnyOrder(
                            "rider.toml:1: trials: expected day, the day of the ride, such as 2026-05-17; it is missing",
                            "rider.toml:2: trials.minutes: expected a number from 2 to 30, found 1");
        }

        @Test
        void raceDaysAreDaysInBrackets() {
            assertThat(problems("race_days = 2026-06-13"))
                    .containsExactly("rider.toml:1: race_days: expected days in brackets, such as"
                            + " [2026-05-16, 2026-06-14], found 2026-06-13");
            assertThat(problems("race_days = [\"13 June\"]"))
                    .containsExactly("rider.toml:1: race_days: expected days such as 2026-06-14, without quotes, found"
                            + " \"13 June\"");
        }

        @Test
        void anEmptyProfileSaysNothing() throws UnreadableProfileException {
            assertThat(parsed("# nothing yet")).isEqualTo(RiderProfile.EMPTY);
            assertThat(parsed("")).isEqualTo(RiderProfile.EMPTY);
        }

        @ParameterizedTest
        @EnumSource
        void everyLimitHasItsKey(JudgementLimit limit) throws UnreadableProfileException {
            double other = limit.isWhole()
                    ? limit.bounds().high() - 1
                    : (limit.usual() + limit.bounds().high()) / 2;
            String value = limit.isWhole() ? Long.toString((long) other) : Double.toString(other);
            assertThat(parsed("[judgement]", limit.key() + " = " + value).limits())
                    .isEqualTo(JudgementLimits.USUAL.with(limit, other));
        }
    }

    /** The invented rider of the sample rides; zones and limits are the documented defaults. */
    @Nested
    class Example {
        @Test
        void theExampleIsTheRiderOfTheSampleRides() throws UnreadableProfileException {
            RiderProfile example = RiderFile.parse(RiderFile.example(), "rider.toml");
            assertThat(example.limits()).isEqualTo(JudgementLimits.USUAL);
            assertThat(example.rider().powerZones()).isEqualTo(ZoneScheme.POWER_SEVEN_LEVELS);
            assertThat(example.rider().heartRateZones()).isEqualTo(ZoneScheme.HEART_RATE_FIVE_LEVELS);
            LocalDate dayOfTheRace = LocalDate.of(2026, 6, 13);
            assertThat(example.rider().massKg()).isEqualTo(74);
            assertThat(example.rider().maximumHeartRateBpm()).isEqualTo(184);
            assertThat(example.rider().thresholds().powerW(dayOfTheRace)).isEqualTo(250);
            assertThat(example.rider().thresholds().heartRateBpm(dayOfTheRace)).isEqualTo(165);
        }

        @Test
        void itNamesEveryKey() {
            assertThat(RiderFile.example())
                    .contains(
                            "mass_kg = ",
                            "bike_mass_kg = ",
                            "maximum_heart_rate_bpm = ",
                            "\nbirth_year = ",
                            "[[thresholds]]",
                            "from = ")
                    .contains("power_w = ", "heart_rate_bpm = ", "[[power_zones]]", "[[heart_rate_zones]]", "name = ")
                    .contains("from_fraction = ", "[gears]", "chainrings = ", "cogs = ", "wheel_circumference_m = ")
                    .contains("[critical_power]", "w_prime_kj = ", "[[long_bests]]", "day = ", "minutes = ")
                    .contains("[road]", "drag_area_m2 = ", "rolling_resistance = ", "[judgement]");
            for (JudgementLimit limit : JudgementLimit.values()) {
                assertThat(RiderFile.example()).contains("\n" + limit.key() + " = ");
            }
            assertThat(RiderFile.example().lines()).allMatch(line -> line.length() <= 80);
        }

        @ParameterizedTest
        @EnumSource
        void thePageOfTheProfileNamesEveryLimitWithItsDefaultAndRange(JudgementLimit limit) throws IOException {
            String page = Files.readString(Path.of("..", "docs", "rider-profile.md"));
            assertThat(page)
                    .containsPattern("\\| `" + limit.key() + "` \\| " + plain(limit.usual()) + " \\| " + limit.bounds()
                            + " \\|");
        }

        private static String plain(double value) {
            String text = Double.toString(value);
            return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
        }
    }

    @Nested
    class Mistakes {
        @Test
        void decimalCommasAreNamedBeforeEverythingElse() {
            assertThat(problems(
                            "mass_kg = 71,5",
                            "mood = 3",
                            "[gears]",
                            "cogs = [11, 13]",
                            "wheel_circumference_m = 2,19 # tape"))
                    .containsExactly(
                            "rider.toml:1: mass_kg: write the decimals with a point: 71.5",
                            "rider.toml:5: wheel_circumference_m: write the decimals with a point: 2.19");
        }

        @Test
        void aCommaWithinWordsIsNone() {
            assertThat(problems("[[power_zones]]", "name = \"a = 1,5\"", "from_fraction = 0", "from_fraction = "))
                    .noneMatch(problem -> problem.contains("decimals"));
        }

        @Test
        void allAreToldAtOnceInTheOrderOfTheFile() {
            assertThat(problems(
                            "mas_kg = 74",
                            "maximum_heart_rate_bpm = \"high\"",
                            "[[thresholds]]",
                            "from = \"2026-03-01\"",
                            "power_w = 2500",
                            "[[thresholds]]",
                            "from = 2026-03-01",
                            "[gears]",
                            "chainrings = [46,",
                            "  30.5]",
                            "wheel_circumference_m = 219",
                            "[judgment]",
                            "surge_seconds = 8"))
                    .containsExactly(
                            "rider.toml:1: mas_kg: unknown key; did you mean mass_kg?",
                            "rider.toml:2: maximum_heart_rate_bpm: expected a number from 80 to 240, found \"high\"",
                            "rider.toml:4: thresholds.from: expected a day such as 2026-03-01, without quotes,"
                                    + " found \"2026-03-01\"",
                            "rider.toml:5: thresholds.power_w: expected a number from 30 to 700, found 2500",
                            "rider.toml:6: thresholds: expected power_w, heart_rate_bpm or both; they are missing",
                            "rider.toml:8: gears: expected cogs, the teeth of each, such as [11, 13, 15]; it is"
                                    + " missing",
                            "rider.toml:9: gears.chainrings: expected a whole number from 16 to 70, found 30.5",
                            "rider.toml:11: gears.wheel_circumference_m: expected a number from 1 to 2.6, found 219",
                            "rider.toml:12: judgment: unknown key; did you mean judgement?");
        }

        @ParameterizedTest
        @CsvSource(
                delimiter = '|',
                value = {
                    "mass_kg = nan | mass_kg: expected a number from 25 to 250, found NaN",
                    "mass_kg = true | mass_kg: expected a number from 25 to 250, found true",
                    "mass_kg = [74] | mass_kg: expected a number from 25 to 250, found a list in brackets",
                    "mass_kg = 7.40 | mass_kg: expected a number from 25 to 250, found 7.4",
                    "bike_mass_kg = 100 | bike_mass_kg: expected a number from 4 to 80, found 100",
                    "gears = 3 | gears: expected a table [gears], found 3",
                    "thresholds = [] | thresholds: expected tables with from and power_w and heart_rate_bpm, found a"
                            + " list in brackets",
                    "gears.cogs = [] | gears.cogs: expected whole numbers in brackets, such as [11, 13, 15], found a"
                            + " list in brackets",
                    "power_zones = [{name = \"a\", from_fraction = 0.1}] | power_zones.from_fraction: expected 0 in the"
                            + " first zone, so that every reading has a zone",
                    "power_zones = [{name = 3, from_fraction = 0}] | power_zones.name: expected words in quotes, found"
                            + " 3",
                    "power_zones = [{from_fraction = 0}] | power_zones: expected name, words in quotes; it is missing",
                    "road.drag_area_m2 = 3 | road.drag_area_m2: expected a number from 0.1 to 1, found 3",
                    "road.rolling_resistance = 0.5 | road.rolling_resistance: expected a number from 0.001 to 0.05,"
                            + " found 0.5",
                    "critical_power.power_w = 246 | critical_power: expected w_prime_kj, the work above it that you"
                            + " have at once, kilojoules; it is missing",
                    "long_bests = [{day = 2026-05-02, minutes = 5, power_w = 300}] | long_bests.minutes: expected a"
                            + " number from 20 to 2880, found 5",
                    "judgement.surge_seconds = 8.5 | judgement.surge_seconds: expected a whole number from 1 to 300,"
                            + " found 8.5",
                    "judgement.fade_percent = 0 | judgement.fade_percent: expected a number from 1 to 50, found 0",
                    "threshold_power_w = 250 | threshold_power_w: unknown key; write power_w under [[thresholds]]",
                    "treshold_power_w = 250 | treshold_power_w: unknown key; write power_w under [[thresholds]]",
                    "cogs = [11, 13] | cogs: unknown key; write it under [gears]",
                    "colour = 1 | colour: unknown key; expected one of mass_kg, bike_mass_kg, maximum_heart_rate_bpm,"
                            + " thresholds, critical_power, long_bests, race_days, all_out, trials, birth_year, power_zones, heart_rate_zones, gears, road, judgement",
                })
        void eachIsToldWord(String line, String problem) {
            assertThat(problems("", line)).contains("rider.toml:2: " + problem);
        }

        @Test
        void zonesMustRise() {
            assertThat(problems(
                            "power_zones = [",
                            "  {name = \"a\", from_fraction = 0},",
                            "  {name = \"b\", from_fraction = 0.9},",
                            "  {name = \"c\", from_fraction = 0.9},",
                            "]"))
                    .containsExactly("rider.toml:4: power_zones.from_fraction: expected more than in the zone before");
        }

        @Test
        void aTableInBracesIsPlacedByItsFirstKey() {
            assertThat(problems("power_zones = [", "  {name = \"a\", from_fraction = 0},", "  {name = \"b\"},", "]"))
                    .containsExactly(
                            "rider.toml:3: power_zones: expected from_fraction, the zone's lower bound over the"
                                    + " threshold; it is missing");
        }

        @Test
        void aDayHasOneEntry() {
            assertThat(problems(
                            "[[thresholds]]",
                            "from = 2026-03-01",
                            "power_w = 250",
                            "[[thresholds]]",
                            "from = 2026-03-01",
                            "power_w = 260"))
                    .containsExactly("rider.toml:5: thresholds.from: 2026-03-01 has thresholds already");
        }

        @Test
        void aCogOccursOnce() {
            assertThat(problems(
                            "[gears]", "chainrings = [46]", "cogs = [11,", "  13, 11]", "wheel_circumference_m = 2.19"))
                    .containsExactly("rider.toml:3: gears.cogs: 11 occurs twice");
        }

        /** What follows the colon is the parser's own wording. */
        @Test
        void whatIsNotTomlIsToldWithItsLine() {
            assertThat(problems("mass_kg = 74", "", "mass_kg = 75"))
                    .containsExactly("rider.toml:3: not TOML: mass_kg previously defined at line 1, column 1");
            assertThat(problems("mass_kg ="))
                    .hasSize(1)
                    .allMatch(line -> line.startsWith("rider.toml:1: not TOML: Unexpected "));
        }

        @Test
        void aLongListIsCut() {
            StringBuilder text = new StringBuilder();
            for (int i = 0; i < 30; i++) {
                text.append("unknown_").append(i).append(" = 1\n");
            }
            assertThat(problems(text.toString())).hasSize(21).last().isEqualTo("rider.toml: and 10 more problems");
        }
    }

    @Nested
    class FilesOnDisk {
        @TempDir
        private Path folder = Path.of("");

        private List<String> problems(Path file) {
            return catchThrowableOfType(UnreadableProfileException.class, () -> RiderFile.read(file))
                    .lines();
        }

        @Test
        void aByteOrderMarkDoesNoHarm() throws IOException, UnreadableProfileException {
            Path file = folder.resolve("rider.toml");
            Files.writeString(file, "\uFEFFmass_kg = 74\r\n", StandardCharsets.UTF_8);
            assertThat(RiderFile.read(file).rider().massKg()).isEqualTo(74);
        }

        @Test
        void whatCannotBeReadIsOneLine() throws IOException {
            Path latin = folder.resolve("latin.toml");
            Files.write(latin, new byte[] {'#', (byte) 0xE4, '\n'});
            assertThat(problems(latin)).containsExactly(latin + ": is not text in UTF-8; save it as such");
            Path nowhere = folder.resolve("nowhere.toml");
            assertThat(problems(nowhere)).containsExactly(nowhere + ": there is no such file; check the path");
            assertThat(problems(folder)).containsExactly(folder + ": is a folder; name the profile in it");
            Path large = folder.resolve("large.toml");
            Files.write(large, new byte[100_001]);
            assertThat(problems(large)).containsExactly(large + ": is too large for a rider profile; is it the ride?");
        }
    }
}
