package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** {@code --units}: what a report shows in miles, feet, pounds and degrees Fahrenheit, and that nothing is left out. */
class UnitsOptionTest {
    private static final String HARD = "../sample-rides/over-hard-start.fit";
    private static final String EVEN = "../sample-rides/even-paced.fit";
    private static final String COURSE = "../docs/examples/ebbwood-165.gpx";
    private static final double MILE_M = 1609.344;

    /** Watts per kilogram, drag area and density of air have no other unit; a file may be called as it likes. */
    private static final Pattern METRIC = Pattern.compile(
            "(?<![/\\w])(?:km/h|km|kg(?!/m3)|m/s|m/h)(?![\\w/])|[\\d,] +m(?![\\w/'])|deg C|\u00B0 ?C|Celsius|[Kk]ilomet");

    private static final Pattern IMPERIAL =
            Pattern.compile("(?<![/\\w])(?:mi|miles?|mph|ft|ft/h|lb)(?![\\w/])|deg F|\u00B0 ?F|Fahrenheit");

    private static final List<String> TEXT_ALONE = List.of(
            "review " + HARD + " --brief",
            "review " + HARD + " --explain over-hard-start",
            "review " + HARD + " " + EVEN);

    private static final List<String> ALL = List.of(
            "review " + HARD,
            "review " + HARD + " --effort training",
            "review ../sample-rides/damaged.fit",
            "compare " + HARD + " " + EVEN,
            "what-if " + HARD + " --with-mass -2kg --with-temperature 30C",
            "what-if --distance 160km --power 200 --ascent 1500m --with-position aero-bars",
            "plan " + COURSE
                    + " --threshold-power 250 --mass 74kg --wind 3m/s --wind-from 90 --ascent 2000m --temperature 27C",
            "plan " + COURSE + " --threshold-power 250");

    private static Outcome run(String words, String... more) {
        List<String> all = new ArrayList<>(Arrays.asList(words.split(" ", -1)));
        all.addAll(Arrays.asList(more));
        Outcome outcome = Outcome.of(all.toArray(String[]::new));
        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.status()).isZero();
        return outcome;
    }

    /** The words of a page, without its marks and without what its script reads. */
    private static String words(String page) {
        return page.replaceAll("(?s)<(script|style)\\b.*?</\\1>", " ").replaceAll("<[^>]*>", " ");
    }

    /** Where a unit stands, with what is around it. */
    private static List<String> found(Pattern unit, String words) {
        return unit.matcher(words)
                .results()
                .map(found ->
                        words.substring(Math.max(0, found.start() - 40), Math.min(words.length(), found.end() + 20)))
                .toList();
    }

    static List<String> texts() {
        return Stream.concat(ALL.stream(), TEXT_ALONE.stream()).toList();
    }

    static List<String> pages() {
        return ALL;
    }

    @ParameterizedTest
    @MethodSource("texts")
    void noMetricUnitIsLeftInATextAndNoneIsImperialWithoutTheOption(String command) {
        assertThat(found(METRIC, run(command, "--units", "imperial").out())).isEmpty();
        String usual = run(command).out();
        assertThat(found(IMPERIAL, usual)).isEmpty();
        assertThat(run(command, "--units", "metric").out()).isEqualTo(usual);
    }

    @ParameterizedTest
    @MethodSource("pages")
    void norInAPage(String command) {
        String page = run(command, "--format", "html", "--units", "imperial").out();
        assertThat(found(METRIC, words(page))).isEmpty();
        assertThat(found(IMPERIAL, words(run(command, "--format", "html").out())))
                .isEmpty();
    }

    @Test
    void norInThePagesOfASeason(@TempDir Path folder) throws IOException {
        season(folder.resolve("imperial"), "--units", "imperial");
        season(folder.resolve("metric"));
        List<Path> pages = filesOf(folder.resolve("imperial"));
        assertThat(pages).hasSizeGreaterThan(1);
        for (Path page : pages) {
            assertThat(words(Files.readString(page))).as(page.toString()).doesNotContainPattern(METRIC);
            assertThat(words(Files.readString(folder.resolve("metric").resolve(String.valueOf(page.getFileName())))))
                    .as(page.toString())
                    .doesNotContainPattern(IMPERIAL);
        }
    }

    private static void season(Path pages, String... more) {
        run(
                "season ../sample-rides/season --store " + pages.resolveSibling("store") + " --format json --pages "
                        + pages,
                more);
    }

    private static List<Path> filesOf(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.sorted().toList();
        }
    }

    /** The numbers of the JSON document, which stays metric, divided by what a mile, a foot and a pound are. */
    @Test
    void theNumbersAreThoseOfTheRide() {
        JsonNode json = JsonMapper.shared()
                .readTree(run("review " + HARD, "--format", "json").out());
        double distanceM = json.at("/load/distanceM").asDouble();
        double ascentM = json.at("/load/ascentM").asDouble();
        double speedMps = json.at("/load/averageSpeedMps").asDouble();
        String text = run("review " + HARD, "--units", "imperial").out();
        assertThat(text)
                .startsWith(
                        "over-hard-start.fit, 2026-06-13 06:48 (UTC-07:00), " + tenths(distanceM / MILE_M) + " mi in\n")
                .contains(" " + tenths(distanceM / MILE_M) + " mi ")
                .contains(" " + Math.round(ascentM / 0.3048) + " ft ")
                .contains(" " + tenths(speedMps * 3600 / MILE_M) + " mph ")
                .contains("Mass: " + tenths(74 / 0.45359237) + " lb.");
        double startM = json.at("/pacing/findings/0/startM").asDouble();
        double endM = json.at("/pacing/findings/0/endM").asDouble();
        assertThat(text)
                .contains("Over-hard start (major), 0:12:06 to 1:21:02, miles " + tenths(startM / MILE_M) + " to "
                        + tenths(endM / MILE_M) + "\n");
    }

    private static String tenths(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "review " + HARD + " --format json",
                "review " + HARD + " --format csv",
                "review " + HARD + " --format splits",
                "compare " + HARD + " " + EVEN + " --format json",
                "what-if " + HARD + " --with-power +5% --format json",
                "plan " + COURSE + " --threshold-power 250 --format json",
                "season ../sample-rides/season --format json"
            })
    void whatProgramsReadStaysMetric(String command) {
        List<String> words = new ArrayList<>(Arrays.asList(command.split(" ", -1)));
        words.addAll(List.of("--units", "Imperial"));
        Outcome outcome = Outcome.of(words.toArray(String[]::new));
        assertThat(outcome.status()).isEqualTo(2);
        assertThat(outcome.out()).isEmpty();
        String name = "wattledger " + words.get(0);
        assertThat(outcome.err().lines())
                .containsExactly(
                        name + ": --units Imperial: JSON and CSV stay metric; leave it out, or write text or a page",
                        "See '" + name + " --help'.");
    }

    /** Nobody can tell whether 163 are pounds or kilograms; a share and what has no imperial unit stay as they are. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "what-if --distance 100mi --power 200 --mass 163 --with-mass -5% | --mass 163 | 163lb",
                "what-if --distance 100mi --power 200 --with-mass -5 | --with-mass -5 | -5lb",
                "what-if --distance 100mi --power 200 --temperature 55 --with-mass -5% | --temperature 55 | 55F",
                "what-if --distance 100mi --power 200 --bicycle-mass 22 --with-mass -5% | --bicycle-mass 22 | 22lb",
                "what-if --distance 100mi --power 200 --altitude 3000 --with-mass -5% | --altitude 3000 | 3000ft",
                "plan ../docs/examples/ebbwood-165.gpx --threshold-power 250 --ascent 5900 | --ascent 5900 | 5900ft",
                "plan ../docs/examples/ebbwood-165.gpx --threshold-power 250 --wind 3 | --wind 3 | 3mph",
                "plan ../docs/examples/ebbwood-165.gpx --threshold-power 250 --fastest 34 | --fastest 34 | 34mph"
            })
    void aBareNumberIsRefusedBesideImperialUnits(String command, String option, String example) {
        Outcome outcome = Outcome.of((command + " --units imperial").split(" ", -1));
        assertThat(outcome.status()).isEqualTo(2);
        assertThat(outcome.err())
                .startsWith("wattledger " + command.substring(0, command.indexOf(' ')) + ": " + option
                        + ": with --units imperial say the unit, for instance " + example + "\n");
    }

    /** By the definitions: 68 F are 20 C, a mile an hour 0.44704 m/s, a foot 0.3048 m, a pound 0.45359237 kg. */
    @ParameterizedTest
    @CsvSource({"68F, 20C", "-4F, -20", "32\u00B0F, 0C"})
    void fahrenheitIsTaken(String typed, String celsius) {
        String road = "what-if --distance 100mi --power 200 --with-mass -5% --format json --temperature ";
        assertThat(run(road + typed).out()).isEqualTo(run(road + celsius).out());
    }

    @ParameterizedTest
    @CsvSource({"18km/h, 5", "5mph, 2.2352m/s"})
    void windIsTakenInTheUnitsOfAForecast(String typed, String mps) {
        String plan = "plan " + COURSE + " --threshold-power 250 --wind-from 270 --format json --wind ";
        assertThat(run(plan + typed).out()).isEqualTo(run(plan + mps).out());
    }

    @Test
    void unitsThatAreSaidAndSharesAreTaken() {
        assertThat(run("what-if --distance 100mi --power 200 --mass 163lb --with-mass -5% --units imperial")
                        .out())
                .contains("163 lb");
        assertThat(run("what-if --distance 100mi --power 200 --mass 74kg --with-mass -5lb --units imperial")
                        .out())
                .contains("163 lb");
    }

    @Test
    void anotherWordIsRefused() {
        Outcome outcome = Outcome.of("review", HARD, "--units", "nautical");
        assertThat(outcome.status()).isEqualTo(2);
        assertThat(outcome.err().lines())
                .containsExactly(
                        "wattledger review: --units nautical: expected metric or imperial",
                        "See 'wattledger review --help'.");
    }
}
