package io.github.wattledger.json;

import static io.github.wattledger.testing.SchemaCheck.assertFits;
import static io.github.wattledger.testing.SchemaCheck.problems;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.intake.Selection;
import io.github.wattledger.pacing.Evidence;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.TimeLedger;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.testing.SampleReviews;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class JsonReviewTest {
    private static final List<String> LOAD_NUMBERS = List.of(
            "elapsedSeconds",
            "timerSeconds",
            "movingSeconds",
            "stoppedSeconds",
            "distanceM",
            "ascentM",
            "workKJ",
            "averagePowerW",
            "normalizedPowerW",
            "intensityFactor",
            "trainingStress",
            "normalizedOverAverage",
            "averageHeartRateBpm",
            "maximumHeartRateBpm",
            "averageCadenceRpm",
            "averageSpeedMps",
            "wattsPerBeat",
            "decouplingPercent");

    private static final List<String> TEMPERATURES =
            List.of("averageTemperatureC", "highestTemperatureC", "temperatureRiseC");

    private static final List<String> SPLIT_NAMES = List.of(
            "fromSecond",
            "toSecond",
            "movingSeconds",
            "standingSeconds",
            "missingSeconds",
            "distanceM",
            "workKJ",
            "averagePowerW",
            "normalizedPowerW",
            "averageHeartRateBpm",
            "averageSpeedMps",
            "averageTemperatureC",
            "lostLowMinutes",
            "lostHighMinutes");

    static Stream<RideReview> reviews() {
        return Stream.of(
                SampleReviews.race(),
                SampleReviews.pricedRace(),
                SampleReviews.raceWithClimbs(),
                SampleReviews.raceWithOwnFinding(),
                SampleReviews.nothingKnown(),
                SampleReviews.race(Verdict.NOT_JUDGED, List.of(), List.of()));
    }

    /** Judged by an independent validator of JSON Schema 2020-12; a reader of the schema sees the order too. */
    @ParameterizedTest
    @MethodSource("reviews")
    void itFollowsThePublishedSchema(RideReview review) {
        assertFits(JsonSchema.REVIEW, json(review));
    }

    @Test
    void whatADetectorOfOnesOwnFoundStandsInAListOfItsOwn() {
        JsonNode pacing = new JsonMapper()
                .readTree(json(SampleReviews.raceWithOwnFinding()))
                .get("pacing");
        JsonNode without = new JsonMapper().readTree(json(SampleReviews.race())).get("pacing");
        assertThat(pacing.get("findings")).isEqualTo(without.get("findings"));
        assertThat(without.get("ownFindings").size()).isZero();
        JsonNode own = pacing.get("ownFindings").get(0);
        assertThat(own.get("kind").stringValue()).isEqualTo("much-coasting");
        assertThat(own.get("startSeconds").intValue()).isEqualTo(300);
        assertThat(own.get("endM").isNull()).isTrue();
        assertThat(own.get("evidence").get("sharePercent").doubleValue()).isEqualTo(22.25);
        assertThat(own.has("costMinutes")).isFalse();
    }

    @Test
    void theSchemaIsStrict() {
        String good = json(SampleReviews.race());
        for (String bad : List.of(
                good.replace("\"trainingStress\"", "\"stress\""),
                good.replace("\"climbs\": null", "\"climbs\": null, \"more\": 1"),
                good.replace("\"climbs\": null", "\"climbs\": 0"),
                good.replace("\"kind\": \"fade\"", "\"kind\": \"slump\""),
                good.replace("\"elapsedSeconds\": 27060", "\"elapsedSeconds\": null"),
                good.replace("2026-06-14T07:00:12+03:00", "2026-06-14 07:00"))) {
            assertThat(bad).isNotEqualTo(good);
            assertThat(problems(JsonSchema.REVIEW, bad)).isNotEmpty();
        }
    }

    /** Names and order as the contract gives them, written down here a second time on purpose. */
    @Test
    void theNamesStandInTheOrderOfTheContract() {
        JsonNode root = tree(SampleReviews.pricedRace());
        assertNames(
                root,
                "schema",
                "source",
                "rider",
                "quality",
                "load",
                "deviceTotals",
                "curve",
                "ability",
                "pacing",
                "climbs",
                "splits",
                "energy",
                "notes",
                "history",
                "againstPlan");
        assertNames(root.get("source"), "file", "format", "sha256", "device", "sport", "startTime", "sessionIndex");
        assertNames(root.get("rider"), "thresholdPowerW", "thresholdPowerSource", "thresholdHeartRateBpm", "massKg");
        assertNames(root.get("quality"), "recordedSeconds", "missingPowerSeconds", "repairedSamples", "notes");
        assertNames(root.get("quality").get("notes").get(0), "code", "seconds", "text");
        List<String> load = new ArrayList<>(LOAD_NUMBERS);
        load.add("powerZones");
        load.add("heartRateZones");
        load.addAll(TEMPERATURES);
        assertThat(names(root.get("load"))).isEqualTo(load);
        assertNames(root.get("load").get("powerZones").get(0), "name", "fromW", "toW", "seconds");
        assertNames(root.get("load").get("heartRateZones").get(0), "name", "fromBpm", "toBpm", "seconds");
        assertThat(names(root.get("deviceTotals"))).isEqualTo(LOAD_NUMBERS);
        assertNames(root.get("curve").get(0), "seconds", "watts");
        assertNames(
                root.get("ability"),
                "criticalPowerW",
                "wPrimeKJ",
                "source",
                "fitErrorW",
                "sustainablePowerW",
                "forSeconds");
        JsonNode pacing = root.get("pacing");
        assertNames(
                pacing,
                "verdict",
                "occasion",
                "secondHalfOverFirst",
                "findings",
                "remarks",
                "ledger",
                "bunch",
                "proposedBunch",
                "ownFindings",
                "leftOut",
                "lostSplit",
                "numbers");
        assertNames(
                pacing.get("findings").get(0),
                "kind",
                "severity",
                "startSeconds",
                "endSeconds",
                "startM",
                "endM",
                "evidence",
                "costMinutes",
                "costNote",
                "advice");
        assertNames(pacing.get("findings").get(0).get("costMinutes"), "low", "high");
        assertNames(
                pacing.get("ledger"), "elapsedMinutes", "movingMinutes", "stoppedMinutes", "missingMinutes", "entries");
        assertNames(pacing.get("ledger").get("entries").get(0), "label", "minutesLow", "minutesHigh");
        assertNames(root.get("splits"), "hours", "sections", "laps", "climbs");
        assertThat(names(root.get("splits").get("hours").get(0))).isEqualTo(SPLIT_NAMES);
    }

    @Test
    void whatIsNotKnownIsNull() {
        JsonNode root = tree(SampleReviews.nothingKnown());
        for (String name : LOAD_NUMBERS.subList(4, LOAD_NUMBERS.size())) {
            assertThat(root.get("load").get(name).isNull()).as(name).isTrue();
        }
        for (String name : TEMPERATURES) {
            assertThat(root.get("load").get(name).isNull()).as(name).isTrue();
        }
        JsonNode hour = root.get("splits").get("hours").get(0);
        for (String name : SPLIT_NAMES.subList(5, SPLIT_NAMES.size())) {
            assertThat(hour.get(name).isNull()).as(name).isTrue();
        }
        assertThat(root.get("splits").get("sections").isEmpty()).isTrue();
        assertThat(root.get("splits").get("laps").isEmpty()).isTrue();
        assertThat(root.get("splits").get("climbs").isEmpty()).isTrue();
        assertThat(root.get("pacing").get("lostSplit").isNull()).isTrue();
        for (String name : List.of("file", "format", "sha256", "device", "sport")) {
            assertThat(root.get("source").get(name).isNull()).as(name).isTrue();
        }
        assertThat(root.get("rider").valueStream().allMatch(JsonNode::isNull)).isTrue();
        assertThat(root.get("deviceTotals").isNull()).isTrue();
        assertThat(root.get("curve").isEmpty()).isTrue();
        assertThat(root.get("climbs").isNull()).isTrue();
        assertThat(root.get("ability").get("source").isNull()).isTrue();
        assertThat(root.get("ability").get("sustainablePowerW").isNull()).isTrue();
    }

    @Test
    void valuesAreThoseOfTheReview() {
        JsonNode root = tree(SampleReviews.race());
        assertThat(root.get("schema").stringValue()).isEqualTo("wattledger.review/2");
        assertThat(root.get("source").get("startTime").stringValue()).isEqualTo("2026-06-14T07:00:12+03:00");
        assertThat(root.get("rider").get("thresholdPowerSource").stringValue()).isEqualTo("given");
        assertThat(root.get("deviceTotals").get("movingSeconds").isNull()).isTrue();
        assertThat(root.get("deviceTotals").get("trainingStress").asInt()).isEqualTo(521);
        assertThat(root.get("ability").get("source").stringValue()).isEqualTo("guide");
        assertThat(root.get("pacing").get("verdict").stringValue()).isEqualTo("over-hard start");
        JsonNode fade = root.get("pacing").get("findings").get(1);
        assertThat(fade.get("kind").stringValue()).isEqualTo("fade");
        assertThat(fade.get("severity").stringValue()).isEqualTo("moderate");
        assertThat(fade.get("startSeconds").intValue()).isEqualTo(4520);
        assertThat(names(fade.get("evidence")))
                .containsExactly("earlyPowerW", "latePowerW", "lossPercent", "slopePercentPerHour", "comparedBlocks");
        assertThat(fade.get("costMinutes").isNull()).isTrue();
        assertThat(fade.get("costNote").stringValue()).isEqualTo("not priced yet");
        // Elapsed 451 = moving 422 + stopped 9 + missing 2 + paused 18, the last of which the contract leaves out.
        assertThat(root.get("pacing").get("ledger").toString())
                .isEqualTo("{\"elapsedMinutes\":451,\"movingMinutes\":422,\"stoppedMinutes\":9,\"missingMinutes\":2,"
                        + "\"entries\":[]}");
    }

    @Test
    void aPriceIsARange() {
        JsonNode finding =
                tree(SampleReviews.pricedRace()).get("pacing").get("findings").get(0);
        assertThat(finding.get("costMinutes").toString()).isEqualTo("{\"low\":3.96,\"high\":9.2}");
        assertThat(finding.get("costNote").stringValue()).isEqualTo("replay: same work, same normalized power");
    }

    /** Times of the whole recording, grades in percent, positions in the list from 0. */
    @Test
    void climbsAreThoseOfTheReview() {
        JsonNode climbs = tree(SampleReviews.raceWithClimbs()).get("climbs");
        assertThat(climbs).hasSize(2);
        // 262.5 W / 71.5 kg = 3.671...
        assertThat(climbs.get(0).toString())
                .isEqualTo("{\"startSeconds\":1200,\"endSeconds\":1620,\"startM\":9000,\"endM\":11100,\"gainM\":105,"
                        + "\"meanGradePercent\":5,\"steepestGradePercent\":8.75,\"movingSeconds\":420,"
                        + "\"averagePowerW\":262.5,\"normalizedPowerW\":264,\"wattsPerKg\":3.671,"
                        + "\"averageHeartRateBpm\":158.25,\"verticalSpeedMPerHour\":900,\"sameAs\":null,"
                        + "\"secondsOverFirst\":null}");
        JsonNode second = climbs.get(1);
        assertThat(second.get("averagePowerW").isNull()).isTrue();
        assertThat(second.get("normalizedPowerW").isNull()).isTrue();
        assertThat(second.get("wattsPerKg").isNull()).isTrue();
        assertThat(second.get("averageHeartRateBpm").isNull()).isTrue();
        assertThat(second.get("sameAs").asInt()).isZero();
        assertThat(second.get("secondsOverFirst").asInt()).isEqualTo(31);
    }

    /** The schema does not let a climb through that lacks a name or has one too many. */
    @Test
    void theSchemaIsStrictWithClimbs() {
        String good = json(SampleReviews.raceWithClimbs());
        for (String bad : List.of(
                good.replace("\"gainM\"", "\"gain\""),
                good.replace("\"sameAs\": 0", "\"sameAs\": \"first\""),
                good.replace("\"movingSeconds\": 451", "\"movingSeconds\": null"))) {
            assertThat(bad).isNotEqualTo(good);
            assertThat(problems(JsonSchema.REVIEW, bad)).isNotEmpty();
        }
    }

    /** Means of the watts of the sample, worked out by hand: its first n seconds are always its hardest n. */
    @Test
    void theCurveRunsFromOneSecondToTheLongest() {
        JsonNode curve = tree(SampleReviews.race()).get("curve");
        assertThat(curve.get(0).toString()).isEqualTo("{\"seconds\":1,\"watts\":600}");
        // (5 x 600 + 55 x 300 + 240 x 250 + 400 x 200) / 700 = 227.857...
        assertThat(curve.get(curve.size() - 1).toString()).isEqualTo("{\"seconds\":700,\"watts\":227.857}");
    }

    /** By definition: hours, and sections, make up the ride, so that each number of theirs adds up to the ride's. */
    @Test
    void thePartsOfARideAddUpToItsTotals() throws UnreadableRideException {
        RideReview review = Reviewer.review(
                Path.of("..", "sample-rides", "over-hard-start.fit"),
                Rider.UNKNOWN.withThresholdPowerW(250),
                ReviewOptions.WHOLE_RIDE);
        assertFits(JsonSchema.REVIEW, json(review));
        JsonNode root = tree(review);
        JsonNode load = root.get("load");
        TimeLedger.Entry all = review.pacing().ledger().allAtOnce().orElseThrow();
        for (String parts : List.of("hours", "sections")) {
            JsonNode split = root.get("splits").get(parts);
            assertThat(split.size()).as(parts).isGreaterThan(1);
            double rounding = 0.0005 * (split.size() + 1) + 1e-9; // three decimals in each part and in the total
            for (String name : List.of("movingSeconds", "distanceM", "workKJ")) {
                assertThat(sum(split, name))
                        .as(parts + " " + name)
                        .isCloseTo(load.get(name).doubleValue(), within(rounding));
            }
            assertThat(sum(split, "lostLowMinutes")).as(parts).isCloseTo(all.minutesLow(), within(rounding));
            assertThat(sum(split, "lostHighMinutes")).as(parts).isCloseTo(all.minutesHigh(), within(rounding));
            assertThat(sum(split, "movingSeconds") + sum(split, "standingSeconds") + sum(split, "missingSeconds"))
                    .as(parts)
                    .isEqualTo(load.get("elapsedSeconds").doubleValue());
        }
        JsonNode section = root.get("splits").get("sections").get(0);
        List<String> sectionNames = new ArrayList<>(SPLIT_NAMES);
        sectionNames.addAll(List.of("startM", "endM", "ground", "meanGrade"));
        assertThat(names(section)).isEqualTo(sectionNames);
        assertThat(root.get("splits").get("climbs").size())
                .isEqualTo(root.get("climbs").size());
        assertThat(root.get("pacing").get("lostSplit").get("lowEnd").stringValue())
                .isIn("same-energy", "same-effort");
    }

    /** 100 s each at 18, 19, 20, 21, 22 and 26 degrees: the mean is 21, and the last sixth is 8 above the first. */
    @Test
    void theTemperatureIsThatOfTheReviewedPart() {
        double[] degrees = {18, 19, 20, 21, 22, 26};
        Ride ride = Ride.builder(Instant.parse("2026-06-14T04:00:00Z"), 600)
                .channel(Channel.TEMPERATURE, Series.generate(600, second -> degrees[second / 100]))
                .build();
        JsonNode whole = tree(Reviewer.review(ride, Rider.UNKNOWN, ReviewOptions.WHOLE_RIDE));
        assertThat(whole.get("load").get("averageTemperatureC").doubleValue()).isEqualTo(21);
        assertThat(whole.get("load").get("highestTemperatureC").doubleValue()).isEqualTo(26);
        assertThat(whole.get("load").get("temperatureRiseC").doubleValue()).isEqualTo(8);
        assertThat(whole.get("splits")
                        .get("hours")
                        .get(0)
                        .get("averageTemperatureC")
                        .doubleValue())
                .isEqualTo(21);
        ReviewOptions firstHalf = ReviewOptions.WHOLE_RIDE.withSelection(Selection.WHOLE_RIDE.withSeconds(0, 300));
        JsonNode part = tree(Reviewer.review(ride, Rider.UNKNOWN, firstHalf));
        assertThat(part.get("load").get("averageTemperatureC").doubleValue()).isEqualTo(19);
        assertThat(part.get("load").get("highestTemperatureC").doubleValue()).isEqualTo(20);
    }

    private static double sum(JsonNode parts, String name) {
        return parts.valueStream()
                .mapToDouble(part -> part.get(name).doubleValue())
                .sum();
    }

    @Test
    void numbersHaveThreeDecimalsAtMostAndNoExponent() {
        Finding finding = SampleReviews.fade(new Cost.NotPriced("no"));
        Evidence evidence = Evidence.none()
                .with("tinyW", 1e-7)
                .with("minusTinyW", -1e-7)
                .with("thirdW", 1.0 / 3)
                .with("halfUpW", 2.0005)
                .with("wholeW", 300.0)
                .with("hugeW", 12_345_678.25);
        Finding odd = new Finding(
                finding.kind(),
                finding.severity(),
                finding.when(),
                null,
                null,
                evidence,
                finding.cost(),
                finding.advice(),
                null);
        String json = json(SampleReviews.race(Verdict.FADED, List.of(odd), List.of()));
        assertThat(json)
                .contains("\"tinyW\": 0,", "\"minusTinyW\": 0,", "\"thirdW\": 0.333,", "\"halfUpW\": 2.001,")
                .contains("\"wholeW\": 300,", "\"hugeW\": 12345678.25");
    }

    @Test
    void wordsFromFilesAreEscaped() {
        String name = "K\u00fcste \"1\" <b>\u001b[31m\n.fit";
        RideReview review = SampleReviews.named(SampleReviews.race(), name, null);
        assertThat(tree(review).get("source").get("file").stringValue()).isEqualTo(name);
        assertThat(json(review)).doesNotContain("\u001b");
    }

    @Test
    void itEndsWithOneLineFeedAndHasNoCarriageReturn() {
        assertThat(json(SampleReviews.race()))
                .endsWith("}\n")
                .doesNotEndWith("\n\n")
                .doesNotContain("\r");
    }

    private static String json(RideReview review) {
        return JsonDocument.of(review).text();
    }

    private static JsonNode tree(RideReview review) {
        return new JsonMapper().readTree(json(review));
    }

    private static void assertNames(JsonNode node, String... expected) {
        assertThat(names(node)).containsExactly(expected);
    }

    private static List<String> names(JsonNode node) {
        return List.copyOf(node.propertyNames());
    }
}
