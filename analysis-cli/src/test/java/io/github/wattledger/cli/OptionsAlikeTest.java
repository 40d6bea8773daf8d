package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import io.github.wattledger.ride.Interval;
import java.io.IOException;
import java.io.InputStream;
import java.lang.reflect.Field;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.UsageMessageSpec;
import tools.jackson.databind.json.JsonMapper;

/** An option means the same in every command, and the page of the commands says which command has which. */
class OptionsAlikeTest {
    private static final Path PAGE = Path.of("../docs/commands.md");
    private static final String HARD = "../sample-rides/over-hard-start.fit";

    private static Map<String, CommandLine> commands() {
        return Main.commandLine(System.out, System.err, new RideOpener(InputStream.nullInputStream()))
                .getSubcommands();
    }

    /** The rows of the page's table: an option, and the commands that have it. */
    private static Map<String, Set<String>> table() throws IOException {
        Map<String, Set<String>> table = new TreeMap<>();
        List<String> head = List.of();
        for (String line : Files.readAllLines(PAGE)) {
            List<String> cells = new ArrayList<>();
            for (String cell : line.split("\\|", -1)) {
                cells.add(cell.strip());
            }
            if (line.startsWith("| option |")) {
                head = cells;
            } else if (line.startsWith("| `--")) {
                Set<String> have = new TreeSet<>();
                for (int i = 2; i < cells.size(); i++) {
                    if (cells.get(i).equals("yes")) {
                        have.add(head.get(i));
                    }
                }
                table.put(cells.get(1).replace("`", ""), have);
            }
        }
        return table;
    }

    @Test
    void thePageSaysWhichCommandHasWhichOfTheSharedOptions() throws IOException {
        Map<String, Set<String>> shared = new TreeMap<>();
        commands()
                .forEach((name, command) -> command.getCommandSpec()
                        .options()
                        .forEach(option -> shared.computeIfAbsent(option.longestName(), any -> new TreeSet<>())
                                .add(name)));
        shared.values().removeIf(have -> have.size() < 2);
        shared.remove("--help");
        shared.remove("--version");
        assertThat(table()).isEqualTo(shared);
    }

    /** The parser of options takes each text for a format, and warns on standard error where it is none. */
    @Test
    void everyDescriptionIsAFormat() {
        commands()
                .values()
                .forEach(command -> command.getCommandSpec().options().forEach(option -> {
                    if (option.userObject() instanceof Field field) {
                        for (String text :
                                field.getAnnotation(CommandLine.Option.class).description()) {
                            assertThatCode(() -> String.format(Locale.ROOT, text))
                                    .as(text)
                                    .doesNotThrowAnyException();
                        }
                    }
                }));
    }

    /** Taken by the same class the same words are taken; the words of a format differ by what a command can write. */
    @Test
    void aSharedOptionTakesTheSameValues() {
        Map<String, OptionSpec> first = new TreeMap<>();
        commands()
                .forEach((name, command) -> command.getCommandSpec().options().forEach(option -> {
                    OptionSpec before = first.putIfAbsent(option.longestName(), option);
                    if (before != null && !option.longestName().equals("--format")) {
                        assertThat(option.paramLabel())
                                .as("%s %s", name, option)
                                .isEqualTo(before.paramLabel());
                        assertThat(option.type()).as("%s %s", name, option).isEqualTo(before.type());
                        assertThat(converters(option)).as("%s %s", name, option).isEqualTo(converters(before));
                    }
                }));
        assertThat(first).containsKeys("--from", "--rider", "--output");
    }

    private static List<Class<?>> converters(OptionSpec option) {
        List<Class<?>> converters = new ArrayList<>();
        for (Object converter : option.converters()) {
            converters.add(converter.getClass());
        }
        return converters;
    }

    @Test
    void aProfileBesideTheRideCountsInEachCommand(@TempDir Path folder) throws IOException {
        Path ride = Files.copy(Path.of(HARD), folder.resolve("race.fit"));
        String without = Outcome.of("review", ride.toString()).out();
        Files.writeString(folder.resolve("rider.toml"), """
                mass_kg = 61
                [[thresholds]]
                from = 2026-01-01
                power_w = 243
                """);
        assertThat(without).contains("Threshold power: 250 W");
        assertThat(Outcome.of("review", ride.toString()).out())
                .contains("Threshold power: 243 W, from the rider profile.");
        assertThat(Outcome.of("review", ride.toString(), "--threshold-power", "245")
                        .out())
                .contains("Threshold power: 245 W");
        assertThat(Outcome.of("season", folder.toString()).out()).contains("In force: 243 W (profile)");
        assertThat(Outcome.of("what-if", ride.toString(), "--with-power", "+5%").out())
                .contains("rider 61 kg (");
    }

    @Test
    void aProfileThatIsNamedGoesBeforeTheOneBesideTheRide(@TempDir Path folder) throws IOException {
        Path ride = Files.copy(Path.of(HARD), folder.resolve("race.fit"));
        Files.writeString(folder.resolve("rider.toml"), "mas_kg = 61");
        Path other = Files.writeString(folder.resolve("other.toml"), "mass_kg = 61");
        Outcome wrong = Outcome.of("review", ride.toString());
        assertThat(wrong.status()).isEqualTo(3);
        assertThat(wrong.err().lines())
                .containsExactly("wattledger review: " + folder.resolve("rider.toml")
                        + ":1: mas_kg: unknown key; did you mean mass_kg?");
        assertThat(Outcome.of("review", ride.toString(), "--rider", other.toString())
                        .status())
                .isZero();
    }

    /** By hand: the first second at which the recorder shows 40 km, in the cleaned recording that the review writes. */
    @Test
    void aDistanceIsThatOfTheRecorder() throws IOException {
        List<String> rows =
                Outcome.of("review", HARD, "--format", "csv").out().lines().toList();
        int column = List.of(rows.get(0).split(",", -1)).indexOf("distance_m");
        int second = 0;
        while (rows.get(second + 1).split(",", -1)[column].isEmpty()
                || Double.parseDouble(rows.get(second + 1).split(",", -1)[column]) < 40_000) {
            second++;
        }
        assertThat(second).isPositive();
        assertThat(JsonMapper.shared()
                        .readTree(
                                Outcome.of("what-if", HARD, "--from", "40km", "--with-power", "+5%", "--format", "json")
                                        .out())
                        .get("source")
                        .get("startSeconds")
                        .asInt())
                .isEqualTo(second);
        String part = "Only " + Interval.clock(second) + " to 7:12:20 of 7:12:20 was reviewed";
        assertThat(Outcome.of("review", HARD, "--from", "40km", "--format", "json")
                        .out())
                .contains(part);
    }

    @Test
    void foldersThatAreNotThereAreMadeForEachOutput(@TempDir Path folder) {
        assertThat(Outcome.of(
                        "inspect",
                        HARD,
                        "--output",
                        folder.resolve("a/b/file.txt").toString()))
                .isEqualTo(new Outcome(0, "", ""));
        assertThat(Outcome.of(
                        "rider",
                        "--example",
                        "--output",
                        folder.resolve("c/d/rider.toml").toString()))
                .isEqualTo(new Outcome(0, "", ""));
        String season = "../sample-rides/season";
        Outcome pages = Outcome.of(
                "season",
                season,
                "--store",
                folder.resolve("store").toString(),
                "--pages",
                folder.resolve("e/f").toString(),
                "--tables",
                folder.resolve("g/h").toString(),
                "--output",
                folder.resolve("i/j/season.txt").toString());
        assertThat(pages).isEqualTo(new Outcome(0, "", ""));
        assertThat(folder.resolve("a/b/file.txt")).isNotEmptyFile();
        assertThat(folder.resolve("c/d/rider.toml")).isNotEmptyFile();
        assertThat(folder.resolve("e/f/index.html")).isNotEmptyFile();
        assertThat(folder.resolve("g/h/rides.csv")).isNotEmptyFile();
        assertThat(folder.resolve("i/j/season.txt")).isNotEmptyFile();
    }

    @Test
    void aProfileIsNotWrittenOverAnother(@TempDir Path folder) throws IOException {
        Path own = Files.writeString(folder.resolve("rider.toml"), "mass_kg = 61");
        Outcome outcome = Outcome.of("rider", "--example", "--output", own.toString());
        assertThat(outcome.status()).isEqualTo(1);
        assertThat(outcome.err().lines())
                .containsExactly("wattledger rider: cannot write " + own + ": it is there already; name another file");
        assertThat(own).hasContent("mass_kg = 61");
    }

    /** A line of a help that is wider than a terminal is broken where nobody wrote a break. */
    @Test
    void noLineOfAHelpIsWrappedByTheTerminal() {
        commands().forEach((name, command) -> {
            UsageMessageSpec usage = command.getCommandSpec().usageMessage();
            List<String> shown = Outcome.of("help", name).out().lines().toList();
            assertThat(Stream.of(usage.header(), usage.description(), usage.footer())
                            .flatMap(Stream::of)
                            .map(String::format))
                    .as(name)
                    .isNotEmpty()
                    .allMatch(shown::contains);
        });
    }
}
