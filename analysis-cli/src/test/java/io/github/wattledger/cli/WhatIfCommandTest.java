package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import io.github.wattledger.json.JsonSchema;
import java.io.IOException;
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
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** {@code wattledger what-if} through the real core. */
class WhatIfCommandTest {
    private static final String RIDE =
            Path.of("..", "sample-rides", "over-hard-start.fit").toString();

    /** The inputs that {@code docs/what-if.md} names for the facts of the trade. */
    private static final String FACTS =
            "what-if --distance 200mi --mass 74 --bicycle-mass 11 --rolling-resistance 0.006"
                    + " --temperature 20 --altitude 0 --drag-area 0.40";

    private static Outcome run(String... args) {
        return Outcome.of(args);
    }

    private static Outcome run(String words) {
        return run(words.replace("RIDE", RIDE).split(" "));
    }

    private static JsonNode json(String words) {
        Outcome outcome = run(words + " --format json");
        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.status()).isZero();
        return JsonMapper.shared().readTree(outcome.out());
    }

    private static double saved(String words) {
        return json(words).get("savedMinutes").get("value").asDouble();
    }

    /** Facts of the trade (common practice, no source), within a quarter for any power from 150 to 250 W. */
    @ParameterizedTest
    @ValueSource(ints = {150, 175, 200, 225, 250})
    void factsOfTheTradeAreMetWithTheInputsOfTheDocs(int watts) {
        String road = FACTS + " --power " + watts;
        double hoodsToDrops = saved(road + " --with-drag-area -20%");
        double dropsToAero = saved(road.replace("0.40", "0.32") + " --with-drag-area -20%");
        double quarter = saved(road + " --with-drag-area -36% --share 25%");
        assertThat(hoodsToDrops).isCloseTo(43, within(0.25 * 43));
        assertThat(dropsToAero).isCloseTo(39, within(0.25 * 39));
        assertThat(saved(road + " --with-drag-area 0.256")).isCloseTo(82, within(0.25 * 82));
        assertThat(quarter).isCloseTo(20, within(0.25 * 20));
    }

    @Nested
    class Answers {
        @Test
        void goIntoAFileWhereOneIsNamed(@TempDir Path folder) throws IOException {
            Path page = folder.resolve("what-if.html");
            String words = "what-if --distance 200mi --power 200 --with-position drops --format html";
            Outcome written = run((words + " --output " + page).split(" "));
            assertThat(written.err()).isEmpty();
            assertThat(written.out()).isEmpty();
            assertThat(Files.readString(page)).isEqualTo(run(words).out()).startsWith("<!DOCTYPE html>");
            Path inNewFolder = folder.resolve("none").resolve("page.html");
            run((words + " --output " + inNewFolder).split(" "));
            assertThat(inNewFolder).hasSameTextualContentAs(page);
        }

        @Test
        void ofARoadNameTheMinutesTheirRangeAndWhatTheyRestOn() {
            Outcome outcome = run("what-if --distance 200mi --power 200 --with-position drops");
            assertThat(outcome.err()).isEmpty();
            assertThat(outcome.status()).isZero();
            assertThat(outcome.out())
                    .startsWith("What if: drops instead of hoods (drag area 0.307 instead of 0.358 m2)")
                    .containsPattern("Saves \\d+ min \\(\\d+ to \\d+ min\\)\\.")
                    .contains("321.9 km at a steady 200 W, level", "typical values", "There is no wind")
                    .contains("the other position, drag times 0.80 to 0.92");
            assertThat(outcome.out().lines()).allMatch(line -> line.length() <= 80);
        }

        @Test
        void ofARideKeepItsTimeAndItsMass() {
            Outcome outcome = run("what-if RIDE --with-power -5%");
            assertThat(outcome.err()).isEmpty();
            assertThat(outcome.out())
                    .startsWith("What if: 5 % less power, over the whole distance")
                    .containsPattern("Costs \\S+ min \\(\\S+ to \\S+ min\\)")
                    .containsPattern("as it is +7:01:42") // moving time as in the review of the same ride
                    .contains("rider 74 kg (as set on the device)", "estimated from this ride");
            assertThat(outcome.out().lines()).allMatch(line -> line.length() <= 80);
        }

        @Test
        void givenNumbersGoBeforeTheProfile(@TempDir Path folder) throws IOException {
            Path profile = Files.writeString(
                    folder.resolve("rider.toml"), "mass_kg = 60\nbike_mass_kg = 9\n[road]\ndrag_area_m2 = 0.33\n");
            JsonNode answer = JsonMapper.shared()
                    .readTree(run(
                                    "what-if",
                                    "--distance=100km",
                                    "--power=200",
                                    "--rider=" + profile,
                                    "--mass=70",
                                    "--with-mass=-2",
                                    "--format=json")
                            .out());
            assertThat(answer.get("asItIs").get("massKg").asDouble()).isEqualTo(79);
            assertThat(answer.get("changed").get("massKg").asDouble()).isEqualTo(77);
            assertThat(answer.get("asItIs").get("dragAreaM2").asDouble()).isEqualTo(0.33);
        }

        @Test
        void kilometresAndMilesAreTheSameRoad() {
            // 200 miles of 1609.344 m are 321.8688 km.
            JsonNode miles = json("what-if --distance 200mi --power 200 --with-power +10");
            assertThat(miles.get("road").get("distanceM").asDouble()).isEqualTo(321_868.8);
            assertThat(miles).isEqualTo(json("what-if --distance 321.8688km --power 200 --with-power 210"));
        }

        /** 20 lb are 9.0718474 kg, by the definition of the international pound; 328.084 ft are 100 m to a millimetre. */
        @Test
        void unitsAreTakenAsPeopleTypeThem() {
            String road = "what-if --distance 100km --with-mass -1 ";
            assertThat(json(road + "--power 200W --mass 74kg --bicycle-mass 20lb --ascent 328.084ft"))
                    .isEqualTo(json(road + "--power 200 --mass 74 --bicycle-mass 9.0718474 --ascent 100.0000032"));
            assertThat(json("what-if --distance 100KM --power 200 --with-power +10W --with-temperature 30C"))
                    .isEqualTo(json("what-if --distance 100km --power 200 --with-power +10 --with-temperature 30"));
        }

        @Test
        void theAnswerCanGoIntoAFile(@TempDir Path folder) throws IOException {
            Path target = folder.resolve("answers").resolve("drops.txt");
            String question = "what-if --distance 100km --power 200 --with-position drops";
            assertThat(run(question + " --output " + target)).isEqualTo(new Outcome(0, "", ""));
            assertThat(Files.readString(target)).isEqualTo(run(question).out());
        }

        @Test
        void everyChangeOfARoadCounts() {
            String road = "what-if --distance 160km --power 200 --ascent 1500 ";
            for (String change : List.of(
                    "--with-position aero-bars",
                    "--with-drag-area 0.30",
                    "--with-drag-area -10%",
                    "--with-mass -3",
                    "--with-mass 70",
                    "--with-rolling-resistance 0.005",
                    "--with-rolling-resistance -10%",
                    "--with-power +5%",
                    "--with-temperature 30",
                    "--with-altitude 1500",
                    "--with-pressure 950",
                    "--with-air-density 1.1")) {
                assertThat(saved(road + change)).as(change).isPositive();
            }
        }

        @Test
        void aPartOfARideCanBeAskedFor() {
            JsonNode answer = json("what-if RIDE --from 1:00 --to 3:00:00 --with-position drops --share 50%-100%");
            assertThat(answer.get("source").get("startSeconds").asInt()).isEqualTo(3600);
            assertThat(answer.get("source").get("endSeconds").asInt()).isEqualTo(10_800);
            assertThat(answer.get("extent").get("fromFraction").asDouble()).isEqualTo(0.5);
            assertThat(answer.get("extent").get("isSpread").asBoolean()).isFalse();
            assertThat(answer.get("asItIs").get("powerW").isNull()).isTrue();
        }
    }

    @Nested
    class AsJson {
        private static List<Error> problems(String json) {
            SchemaRegistry registry = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);
            Schema schema = registry.getSchema(JsonSchema.WHAT_IF.text());
            return schema.validate(json, InputFormat.JSON);
        }

        static Stream<String> questions() {
            return Stream.of(
                    "what-if --distance 200mi --power 200 --with-position drops",
                    "what-if --distance 1km --power 150 --ascent 20 --with-mass +5 --share 10%",
                    "what-if --distance 160km --power 200 --air-density 1.1 --mass 70 --bicycle-mass 9 --drag-area 0.3"
                            + " --rolling-resistance 0.0055 --with-rolling-resistance 0.0045",
                    "what-if RIDE --with-position aero-bars --share 75%-100%",
                    "what-if RIDE --with-power +10 --with-temperature 35");
        }

        /** Judged by an independent validator of JSON Schema 2020-12. */
        @ParameterizedTest
        @org.junit.jupiter.params.provider.MethodSource("questions")
        void isFollowed(String words) {
            Outcome outcome = run(words + " --format json");
            assertThat(outcome.status()).isZero();
            assertThat(problems(outcome.out())).isEmpty();
        }

        @Test
        void isStrict() {
            String good =
                    run("what-if --distance 160km --power 200 --rolling-resistance 0.0055 --with-power +5% --format json")
                            .out();
            assertThat(good).contains("\"rollingResistance\": 0.0055");
            for (String bad : List.of(
                    good.replace("\"savedMinutes\"", "\"saved\""),
                    good.replace("\"source\": null", "\"source\": 0"),
                    good.replace("\"position\": \"hoods\"", "\"position\": \"bars\""),
                    good.replace("what-if/1", "what-if/2"),
                    good.replace("\"isSpread\": true", "\"isSpread\": \"yes\""))) {
                assertThat(bad).isNotEqualTo(good);
                assertThat(problems(bad)).isNotEmpty();
            }
        }

        @Test
        void namesStandInItsOrder() {
            JsonNode root = json("what-if RIDE --with-position drops");
            assertThat(root.propertyNames())
                    .containsExactly(
                            "schema",
                            "source",
                            "road",
                            "asItIs",
                            "changed",
                            "extent",
                            "bunchDragSaved",
                            "savedMinutes",
                            "influences",
                            "notes");
            assertThat(root.get("asItIs").propertyNames())
                    .containsExactly(
                            "powerW",
                            "massKg",
                            "position",
                            "dragAreaM2",
                            "rollingResistance",
                            "airDensityKgPerM3",
                            "movingSeconds");
            assertThat(root.get("influences").get(0).propertyNames())
                    .containsExactly(
                            "input", "origin", "value", "low", "high", "savedAtLowMinutes", "savedAtHighMinutes");
        }
    }

    @Nested
    class WrongUsage {
        @ParameterizedTest
        @CsvSource(
                delimiter = '|',
                value = {
                    "what-if --with-power +5% | give a RIDE, or --distance and --power",
                    "what-if --distance 200mi --with-power +5% | without a RIDE, both --distance and --power are needed",
                    "what-if --power 200 --with-power +5% | without a RIDE, both --distance and --power are needed",
                    "what-if RIDE --distance 100km --with-power +5% | --distance is for a road without a ride; a RIDE has its own",
                    "what-if RIDE --temperature 20 --with-power +5% | --temperature is for a road without a ride; a RIDE has its own",
                    "what-if RIDE --with-power 210 | --with-power 210: a ride has no one power; give a change such as +10 or +5%",
                    "what-if RIDE --with-power +5% --from 2:00 --to 1:00 | --to 1:00: must come after --from",
                    "what-if RIDE --with-power +5% --from 20:00 | --from 20:00: the part begins at 20:00:00, but the ride ends at 7:12:20; choose an earlier start",
                    "what-if RIDE --with-power +5% --from 900km | --from 900km: the ride is 168.1 km long; choose an earlier place",
                    "what-if RIDE --with-mass -70 | --with-mass -70: brings rider and bicycle to 15.0 kg, expected 29 to 330 kg",
                    "what-if --distance 100km --power 200 --from 1:00 --with-power +5% | --session, --from and --to are for a RIDE",
                    "what-if --distance 100km --power 200 --column power=a --with-power +5% | --column is for a RIDE",
                    "what-if --distance 200 --power 200 --with-power +5% | --distance 200: expected a distance such as 160km or 200mi",
                    "what-if --distance mi --power 200 --with-power +5% | --distance mi: expected a distance such as 160km or 200mi",
                    "what-if --distance=-5km --power 200 --with-power +5% | --distance -5km: expected a distance such as 160km or 200mi",
                    "what-if --distance 0km --power 200 --with-power +5% | --distance 0km: expected 0.1 to 10000 km",
                    "what-if --distance 100km --power 0 --with-power +5% | --power 0: expected 1 to 2500 W",
                    "what-if --distance 100km --power 200 --with-power 5% | --with-power 5%: expected a value or a change, such as 210, +10 or +5%",
                    "what-if --distance 100km --power 200 --with-power +-5 | --with-power +-5: expected a value or a change, such as 210, +10 or +5%",
                    "what-if --distance 100km --power 200 --with-power % | --with-power %: expected a value or a change, such as 210, +10 or +5%",
                    "what-if --distance 100km --power 200 --with-power -300 | --with-power -300: brings the power to -100.0 W, expected 1 to 2500 W",
                    "what-if --distance 100km --power 200 --with-position tucked | --with-position tucked: expected hoods, drops or aero-bars",
                    "what-if --distance 100km --power 200 --with-position drops --with-drag-area 0.3 | --with-position and --with-drag-area: another position is another drag area; give one of them",
                    "what-if --distance 100km --power 200 --with-drag-area 3 | --with-drag-area 3: expected 0.1 to 1 m2",
                    "what-if --distance 100km --power 200 --drag-area 0.4 --with-drag-area -95% | --with-drag-area -95%: brings the drag area to 0.0200 m2, expected 0.1 to 1 m2",
                    "what-if --distance 100km --power 200 --rolling-resistance 0.006 --with-rolling-resistance +0.1 | --with-rolling-resistance +0.1: brings the rolling resistance to 0.1060, expected 0.001 to 0.05",
                    "what-if --distance 100km --power 200 --drag-area 3 --with-power +5 | --drag-area 3: expected 0.1 to 1 m2",
                    "what-if --distance 100km --power 200 --mass 7 --with-power +5 | --mass 7: expected 25 to 250 kg",
                    "what-if --distance 100km --power 200 --bicycle-mass 200lb --with-power +5 | --bicycle-mass 200lb: expected 4 to 80 kg",
                    "what-if --distance 100km --power 200 --with-power +5 --share 120% | --share 120%: expected a share of the distance such as 25%, or a part such as 75%-100%",
                    "what-if --distance 100km --power 200 --with-power +5 --share 0% | --share 0%: expected a share of the distance such as 25%, or a part such as 75%-100%",
                    "what-if --distance 100km --power 200 --with-power +5 --share 75%-25% | --share 75%-25%: expected a share of the distance such as 25%, or a part such as 75%-100%",
                    "what-if --distance 100km --power 200 --with-power +5 --share 25 | --share 25: expected a share of the distance such as 25%, or a part such as 75%-100%",
                    "what-if --distance 100km --power 200 --ascent 20000 --with-power +5 | --ascent 20000: expected a tenth of the distance at most",
                    "what-if --distance 100km --power 200 --with-temperature 99 | --with-temperature 99: expected -40 to 60 C",
                    "what-if --distance 100km --power 200 --pressure 9 --with-power +5 | --pressure 9: expected 200 to 1100 hPa",
                    "what-if --distance 100km --power 200 --altitude 9001m --with-power +5 | --altitude 9001m: expected -500 to 9000 m",
                    "what-if --distance 100km --power 200 --with-air-density 2 | --with-air-density 2: expected 0.3 to 1.6 kg/m3",
                    "what-if --distance 100km --power 200 --air-density 1.2 --with-temperature 30 | the air is given by --air-density; change it by --with-air-density",
                    "what-if --distance 100km --power 200 --with-power +5 --format csv | --format csv: expected text, json or html",
                    "what-if --distance 100km --power 200 --temperature=-40 --pressure 1100 --with-power +5 | temperature, altitude and pressure make air of 1.64 kg/m3, expected 0.3 to 1.6 kg/m3", // 110000 / (287.05 x 233.15)
                    "what-if --distance 100km --power 200 --with-powr +5 | unknown option --with-powr (did you mean --with-power?)",
                    "what-if RIDE b.fit --with-power +5% | 'b.fit' is one word too many; put quotes around a name with blanks",
                    "what-if RIDE --bunch-share 40% | --bunch-share and --drag-saved are needed together, as in 40% and 25%",
                    "what-if RIDE --bunch-share 40% --drag-saved 95% | --drag-saved 95%: expected more than 0% and at most 90%",
                    "what-if RIDE --bunch-share 140% --drag-saved 25% | --bunch-share 140%: expected a share from 0% to 100%, for instance 40%",
                    "what-if RIDE --bunch-share 0% --drag-saved 25% | --bunch-share 0%: expected more than 0%",
                    "what-if RIDE --bunch-share 40% --drag-saved 25% --with-power +5% | --bunch-share cannot be combined with another change or with --share",
                    "what-if RIDE --bunch-share 40% --drag-saved 85% | --drag-saved 85%: brings the drag area to 0.0545 m2, expected 0.1 to 1 m2",
                    "what-if --distance 200mi --power 200 | nothing is changed: give at least one of --with-position, --with-drag-area, --with-mass, --with-rolling-resistance, --with-power, --with-temperature, --with-altitude, --with-pressure, --with-air-density and --bunch-share",
                    "what-if --distance 200mi --power 200 --share 25% | nothing is changed: give at least one of --with-position, --with-drag-area, --with-mass, --with-rolling-resistance, --with-power, --with-temperature, --with-altitude, --with-pressure, --with-air-density and --bunch-share",
                    "what-if RIDE | nothing is changed: give at least one of --with-position, --with-drag-area, --with-mass, --with-rolling-resistance, --with-power, --with-temperature, --with-altitude, --with-pressure, --with-air-density and --bunch-share",
                })
        void isOneLineAndAHint(String words, String message) {
            Outcome outcome = run(words);
            assertThat(outcome.status()).isEqualTo(2);
            assertThat(outcome.out()).isEmpty();
            assertThat(outcome.err().lines())
                    .containsExactly("wattledger what-if: " + message, "See 'wattledger what-if --help'.");
        }
    }

    @Nested
    class UnreadableInput {
        @TempDir
        private Path folder = Path.of("");

        @Test
        void isOneLine() throws IOException {
            Path noRide = Files.writeString(folder.resolve("notes.txt"), "no ride");
            for (String file :
                    List.of(noRide.toString(), folder.resolve("missing.fit").toString())) {
                Outcome outcome = run("what-if", file, "--with-power", "+5%");
                assertThat(outcome.status()).isEqualTo(3);
                assertThat(outcome.out()).isEmpty();
                assertThat(outcome.err().lines()).hasSize(1);
                assertThat(outcome.err()).startsWith("wattledger what-if: " + file + ": ");
            }
        }

        /** Two points of a track without power. */
        @Test
        void aRideThatCannotBeRiddenAgainIsNamed() throws IOException {
            Path track = Files.writeString(folder.resolve("walk.gpx"), """
                    <?xml version="1.0"?>
                    <gpx version="1.1" creator="test" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>
                    <trkpt lat="45.0" lon="10.0"><ele>10</ele><time>2026-06-14T04:00:00Z</time></trkpt>
                    <trkpt lat="45.0001" lon="10.0"><ele>10</ele><time>2026-06-14T04:00:05Z</time></trkpt>
                    </trkseg></trk></gpx>
                    """);
            Outcome outcome = run("what-if", track.toString(), "--with-power", "+5%");
            assertThat(outcome.status()).isEqualTo(3);
            assertThat(outcome.err().lines())
                    .containsExactly(
                            "wattledger what-if: " + track + ": cannot be ridden again: no power in this file");
        }
    }

    @Test
    void helpNamesEveryOptionWithin80Columns() {
        Outcome outcome = run("what-if", "--help");
        assertThat(outcome.status()).isZero();
        assertThat(outcome.out())
                .contains("RIDE", "--distance", "--power", "--ascent", "--with-position", "--with-drag-area")
                .contains("--with-mass", "--with-rolling-resistance", "--with-power", "--share", "Exit status")
                .contains("--with-temperature", "--with-altitude", "--with-pressure", "--with-air-density", "+5%");
        assertThat(outcome.out().lines()).allMatch(line -> line.length() <= 80);
    }

    /** Twelve rides of the sample season show a rig; the ride itself shows its own, which goes before it. */
    @Test
    void ownRidesStandWhereNothingBetterIsKnown(@TempDir Path temp) {
        String store = temp.resolve("store.sqlite").toString();
        assertThat(Outcome.of("season", "../sample-rides/season", "--store", store)
                        .status())
                .isZero();
        String[] road = {"what-if", "--distance", "160km", "--power", "190", "--with-position", "drops"};
        assertThat(answer(road)).contains("typical values").doesNotContain("own rides");
        assertThat(answer(with(road, "--season", store))).contains("from your own rides");
        assertThat(answer(with(road, "--season", store, "--drag-area", "0.3", "--rolling-resistance", "0.005")))
                .doesNotContain("own rides");
        String[] ride = {"what-if", "../sample-rides/over-hard-start.fit", "--with-position", "drops"};
        assertThat(answer(with(ride, "--season", store)))
                .contains("estimated from this ride")
                .doesNotContain("own rides");
        Outcome without = Outcome.of(with(road, "--season", temp.toString()));
        assertThat(without.status()).isNotZero();
        assertThat(without.err()).contains("wattledger season");
    }

    private static String answer(String... words) {
        Outcome outcome = Outcome.of(words);
        assertThat(outcome.err()).isEmpty();
        return outcome.out().replaceAll("\\s+", " ");
    }

    private static String[] with(String[] words, String... more) {
        return Stream.concat(Stream.of(words), Stream.of(more)).toArray(String[]::new);
    }
}
