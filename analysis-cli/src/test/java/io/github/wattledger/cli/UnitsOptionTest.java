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
                "plan ../docs/examples/ebbwood-165.gpx --threshold-power 250 --fastest 34 | --fastest 34 | 34mph",
                "plan ../docs/examples/ebbwood-165.gpx --threshold-power 250 --surface 7-9mi=0.01 --surface 12-30=0.01 | --surface 12-30=0.01 | 12-30mi=0.01"
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

    /** Kilometres and miles beside the numbers hold in either system; one unit holds for both places. */
    @ParameterizedTest
    @CsvSource({
        "12-30=0.012, 12km-30km=0.012",
        "12-30=0.012, 12-30km=0.012",
        "25.146-50.292=0.012, 15.625-31.25mi=0.012",
        "25.146-50.292=0.012, 15.625mi-31.25=0.012",
        "25.146-30=0.012, 15.625mi-30km=0.012"
    })
    void aSurfaceIsTakenInMilesToo(String kilometres, String typed) {
        String plan = "plan " + COURSE + " --threshold-power 250 --format json --surface ";
        assertThat(run(plan + typed).out()).isEqualTo(run(plan + kilometres).out());
        String imperial = "plan " + COURSE + " --threshold-power 250 --units imperial --surface ";
        assertThat(run(imperial + "15.625-31.25mi=0.012").out())
                .isEqualTo(run(imperial + "25.146-50.292km=0.012").out());
    }

    /**
     * By the definitions of 1959: 25 and 250 kg are 55.1 and 551.2 lb, 18 and 108 km/h 11.2 and 67.1 mph, 20 m/s 44.7 mph, 30
     * km 98425 ft, -40 and 60 C -40 and 140 F, 10000 km 6213.7 mi. The 13 lb that are left of a rider and a bicycle
     * of 11 kg are 37.3 lb. A limit is rounded so that it can be typed.
     */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "plan COURSE --mass 900lb | --mass 900lb: expected 56 to 551 lb",
                "plan COURSE --mass 900 | --mass 900: expected 56 to 551 lb",
                "plan COURSE --mass heavy | --mass heavy: expected 56 to 551 lb",
                "plan COURSE --bicycle-mass 900lb | --bicycle-mass 900lb: expected 8.9 to 176 lb",
                "plan COURSE --fastest 200mph | --fastest 200mph: expected 12 to 67 mph",
                "plan COURSE --wind 200mph --wind-from 90 | --wind 200mph: expected 0 to 44 mph",
                "plan COURSE --ascent 200000ft | --ascent 200000ft: expected 0 to 98425 ft",
                "plan COURSE --temperature 900F | --temperature 900F: expected -40 to 140 F",
                "plan COURSE --surface 9-7mi=0.01 | --surface 9-7mi=0.01: expected two places, the nearer one first, and a rolling resistance, such as 7.5-19mi=0.012",
                "plan COURSE --surface 200-210mi=0.01 | --surface 200-210mi=0.01: begins after the end of the course, which is 102.6 mi long",
                "what-if --distance 9000mi --power 200 --with-power +5% | --distance 9000mi: expected 0.1 to 6213 mi",
                "what-if --distance 90mi --power 200 --with-mass x | --with-mass x: expected a value or a change, such as 160lb, -7lb or -5%",
                "what-if --distance 90mi --power 200 --mass 163lb --with-mass -150lb | --with-mass -150lb: brings rider and bicycle to 37.3 lb, expected 64 to 727 lb",
                "what-if --distance 90mi --power 2kW --with-mass -5% | --power 2kW: expected 1 to 2500 W",
                "review HARD --from 300mi | --from 300mi: the ride is 104.4 mi long; choose an earlier place",
                "compare HARD EVEN --from 300mi | --from 300mi: the ride is 104.4 mi long; choose an earlier place",
                "compare HARD EVEN --from 9:00 | --from 9:00: the ride is 7:12:20 long; choose an earlier place"
            })
    void aRefusalSpeaksTheUnitsOfItsReader(String command, String message) {
        String words = command.replace("COURSE", COURSE + " --threshold-power 250")
                .replace("HARD", HARD)
                .replace("EVEN", EVEN);
        for (String units : List.of("--units imperial", "--units=Imperial")) {
            Outcome outcome = Outcome.of((words + " " + units).split(" ", -1));
            assertThat(outcome.status()).as(command).isEqualTo(2);
            assertThat(outcome.err().lines().findFirst().orElseThrow())
                    .isEqualTo("wattledger " + words.substring(0, words.indexOf(' ')) + ": " + message);
        }
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
