package io.github.wattledger.json;

import static io.github.wattledger.testing.SchemaCheck.assertFits;
import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.ReviewOptions;
import io.github.wattledger.Reviewer;
import io.github.wattledger.RideReview;
import io.github.wattledger.compare.Comparer;
import io.github.wattledger.course.Course;
import io.github.wattledger.history.RiderHistory;
import io.github.wattledger.intake.Inspector;
import io.github.wattledger.intake.Selection;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.RideInput;
import io.github.wattledger.replay.Replayer;
import io.github.wattledger.replay.WhatIf;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rider.RideNotes;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rig.Air;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.RigChoice;
import io.github.wattledger.season.RacePacing;
import io.github.wattledger.season.RiderFromRides;
import io.github.wattledger.season.RiderStanding;
import io.github.wattledger.season.SeasonRequest;
import io.github.wattledger.season.SeasonReview;
import io.github.wattledger.season.SeasonRun;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Every result that has a schema gives a document that fits it, from the library alone. */
class JsonDocumentTest {
    private static final Path SAMPLES = Path.of("..", "sample-rides");
    private static final Path RACE = SAMPLES.resolve("over-hard-start.fit");

    @Test
    void aReview() throws Exception {
        JsonNode json =
                fitting(JsonSchema.REVIEW, JsonDocument.of(Reviewer.review(RACE, rider(), ReviewOptions.WHOLE_RIDE)));

        // sample-rides/README.md: the race with the mistake.
        assertThat(json.get("source").get("file").stringValue()).isEqualTo("over-hard-start.fit");
        assertThat(json.get("pacing").get("verdict").stringValue()).isEqualTo("over-hard start");
        assertThat(json.get("rider").get("thresholdPowerW").intValue()).isEqualTo(250);
    }

    /** Someone's own watts, without a file. */
    @Test
    void aReviewOfARideThatCameFromNoFile() {
        Instant start = Instant.parse("2026-06-14T04:00:12Z");
        Ride ride = Ride.builder(start, 3600)
                .channel(Channel.POWER, Series.generate(3600, second -> 200))
                .build();

        JsonNode json = fitting(
                JsonSchema.REVIEW, JsonDocument.of(Reviewer.review(ride, Rider.UNKNOWN, ReviewOptions.WHOLE_RIDE)));

        assertThat(json.get("source").get("file").isNull()).isTrue();
        assertThat(json.get("source").get("startTime").stringValue()).isEqualTo("2026-06-14T04:00:12Z");
        // 200 W for 3600 s are 720 kJ.
        assertThat(json.get("load").get("workKJ").intValue()).isEqualTo(720);
    }

    /** A table that counts seconds knows neither day nor hour: no document may say that it was ridden in 1970. */
    @Test
    void theStartOfATableWithoutAClockIsNull(@TempDir Path temp) throws Exception {
        StringBuilder table = new StringBuilder("seconds,power,speed\n");
        for (int second = 0; second < 1200; second++) {
            table.append(second).append(",200,8\n");
        }
        Path folder = Files.createDirectory(temp.resolve("rides"));
        Path file = Files.writeString(folder.resolve("no-clock.csv"), table);

        JsonNode review =
                fitting(JsonSchema.REVIEW, JsonDocument.of(Reviewer.review(file, rider(), ReviewOptions.WHOLE_RIDE)));
        JsonNode inspection = fitting(JsonSchema.INSPECTION, JsonDocument.of(Inspector.inspect(file)));
        JsonNode comparison = fitting(
                JsonSchema.COMPARISON,
                JsonDocument.of(Comparer.compare(
                        List.of(RideInput.of(file), RideInput.of(file)), ReadOptions.DEFAULT, 0, 5_000)));
        SeasonRequest request = SeasonRequest.of(List.of(folder), temp.resolve("store.sqlite"));
        JsonNode season = fitting(JsonSchema.SEASON, JsonDocument.of(SeasonRun.run(request)));

        assertThat(List.of(
                        review.get("source"),
                        inspection.get("sessions").get(0),
                        comparison.get("reference"),
                        comparison.get("others").get(0).get("source"),
                        season.get("rides").get(0)))
                .allMatch(source -> source.get("startTime").isNull());
        assertThat(season.get("rides").get(0).get("day").isNull()).isTrue();
        assertThat(season.toString()).doesNotContain("1970");
        assertThat(season.get("rides").get(0).get("dateDoubt").stringValue()).isEqualTo("no-date");
    }

    @Test
    void anInspection() throws Exception {
        fitting(JsonSchema.INSPECTION, JsonDocument.of(Inspector.inspect(SAMPLES.resolve("damaged.fit"))));
    }

    @Test
    void aSeasonAndItsRider(@TempDir Path temp) throws Exception {
        SeasonReview season =
                SeasonRun.run(SeasonRequest.of(List.of(SAMPLES.resolve("season")), temp.resolve("store.sqlite"))
                        .withRider(rider())
                        .withNotes(JsonDocumentTest::notes));

        // sample-rides/README.md: a season of twelve rides.
        JsonNode json = fitting(JsonSchema.SEASON, JsonDocument.of(season));
        assertThat(json.get("rides")).hasSize(12);
        itHoldsWhatIsKnownOfTheRider(json, season);
        RiderStanding standing = RiderStanding.of("One", season);
        JsonNode riders = fitting(JsonSchema.RIDERS, JsonDocument.ofRiders(List.of(standing), 3));
        assertThat(riders.get("skippedFiles").intValue()).isEqualTo(3);
        JsonNode rider = riders.get("riders").get(0);
        assertThat(rider.get("name").stringValue()).isEqualTo("One");
        assertThat(rider.get("lastRaces")).hasSize(3);
        for (int i = 0; i < 3; i++) {
            RacePacing race = standing.races().get(i);
            JsonNode written = rider.get("lastRaces").get(i);
            assertThat(written.get("day").stringValue()).isEqualTo(race.day().toString());
            assertThat(written.get("verdict").stringValue())
                    .isEqualTo(race.verdict().words());
            assertThat(written.get("openingOverTarget").doubleValue())
                    .isCloseTo(requireNonNull(race.openingOverTarget()), within(0.0005));
            assertThat(written.get("fadePercent").doubleValue())
                    .isCloseTo(requireNonNull(race.fadePercent()), within(0.0005));
            assertThat(written.get("keptLastCap").isNull()).isEqualTo(race.keptLastCap() == null);
        }
    }

    /** The notes beside the first two races of the sample season, as far as this test needs them. */
    private static RideNotes notes(Path file) {
        boolean isNoted =
                file.toString().contains("first-race") || file.toString().contains("second-race");
        return isNoted
                ? new RideNotes(null, null, null, null, List.of(), List.of(), List.of(), "open at 215 W")
                : RideNotes.NONE;
    }

    private static void itHoldsWhatIsKnownOfTheRider(JsonNode json, SeasonReview season) {
        RiderFromRides known = Objects.requireNonNull(season.rider());
        JsonNode rider = json.get("rider");
        assertThat(rider.get("sustainable").get(1).get("hours").intValue()).isEqualTo(5);
        assertThat(rider.get("sustainable").get(1).get("watts").doubleValue())
                .isCloseTo(known.sustainable().get(1).power().watts(), within(0.001));
        assertThat(rider.get("history").get("rides").intValue())
                .isEqualTo(known.history().rides());
        assertThat(rider.get("moves")).hasSameSizeAs(known.moves());
        assertThat(rider.get("openingOverTarget").get("median").doubleValue())
                .isCloseTo(
                        known.traits().openingOverTarget().found().orElseThrow().median(), within(0.001));
        // sample-rides/README.md: after the first two races the rider wrote down what was agreed for the next one, and
        // four races are in the season, so that three came after an agreement.
        JsonNode recalls = json.get("pacing").get("recalls");
        assertThat(recalls).hasSize(3);
        assertThat(recalls.get(0).get("agreed").get("day").stringValue()).isEqualTo("2026-04-19");
        assertThat(json.get("recentRidingBests"))
                .hasSameSizeAs(Objects.requireNonNull(season.recentBests()).ridingEfforts());
    }

    @Test
    void aReviewBesideOwnRidesHoldsTheirHistory(@TempDir Path temp) throws Exception {
        SeasonReview season =
                SeasonRun.run(SeasonRequest.of(List.of(SAMPLES.resolve("season")), temp.resolve("store.sqlite"))
                        .withRider(rider()));
        RideReview review =
                Reviewer.review(RACE, rider(), ReviewOptions.WHOLE_RIDE.withOwnRides(season.ownRides(rider())));
        JsonNode json = fitting(JsonSchema.REVIEW, JsonDocument.of(review));
        RiderHistory history = Objects.requireNonNull(review.rider().history());
        // sample-rides/README.md: twelve rides, all of them before the day of this race.
        assertThat(json.get("history").get("rides").intValue()).isEqualTo(12).isEqualTo(history.rides());
        assertThat(json.get("history").get("threshold").get("impliedW").doubleValue())
                .isCloseTo(Objects.requireNonNull(history.threshold()).impliedW(), within(0.001));
        assertThat(json.get("history").get("endurance").get("refusal").stringValue())
                .isEqualTo(history.endurance().refusal().orElseThrow());
        assertThat(json.get("pacing").get("numbers").get("openingOverTarget").doubleValue())
                .isCloseTo(Objects.requireNonNull(review.pacing().numbers().openingOverTarget()), within(0.001));
        JsonNode alone =
                fitting(JsonSchema.REVIEW, JsonDocument.of(Reviewer.review(RACE, rider(), ReviewOptions.WHOLE_RIDE)));
        assertThat(alone.get("history").isNull()).isTrue();
    }

    @Test
    void aComparison() throws Exception {
        List<RideInput> rides = List.of(RideInput.of(RACE), RideInput.of(SAMPLES.resolve("even-paced.fit")));

        JsonNode json = fitting(
                JsonSchema.COMPARISON,
                JsonDocument.of(Comparer.compare(rides, ReadOptions.DEFAULT, 0, Double.POSITIVE_INFINITY)));

        assertThat(json.get("reference").get("file").stringValue()).isEqualTo("over-hard-start.fit");
        assertThat(json.get("others")).hasSize(1);
    }

    @Test
    void aWhatIfOnARecordedRide() throws Exception {
        Replayer.Replayed replayed = Replayer.whatIf(
                RideInput.of(RACE),
                ReadOptions.DEFAULT,
                rider(),
                Position.HOODS,
                drops(),
                Selection.WHOLE_RIDE.withSeconds(600, 4200),
                null);

        JsonNode json = fitting(JsonSchema.WHAT_IF, JsonDocument.of(replayed));

        assertThat(json.get("source").get("startSeconds").intValue()).isEqualTo(600);
        assertThat(json.get("source").get("endSeconds").intValue()).isEqualTo(4200);
        assertThat(json.get("road").get("ascentM").isNull()).isTrue();
    }

    @Test
    void aWhatIfOnARoad() {
        RigChoice rig = RigChoice.ofNoRide(72.0, 9.0, null, null, Position.HOODS);
        WhatIf.Answer answer = WhatIf.steady(Course.ofHills(160_000, 2_000), 200, rig, Air.UNKNOWN, drops());

        JsonNode json = fitting(JsonSchema.WHAT_IF, JsonDocument.of(answer, 2_000.0));
        assertThat(json.get("source").isNull()).isTrue();
        assertThat(json.get("road").toString()).isEqualTo("{\"distanceM\":160000,\"ascentM\":2000}");

        JsonNode unknown = fitting(JsonSchema.WHAT_IF, JsonDocument.of(answer, null));
        assertThat(unknown.get("road").get("ascentM").isNull()).isTrue();
    }

    /** RFC 8259, section 8.1: JSON between systems is UTF-8. */
    @Test
    void bytesAreUtf8AndTheStreamStaysOpen() throws Exception {
        JsonDocument document = JsonDocument.ofRiders(List.of(), 0);
        boolean[] isClosed = {false};
        ByteArrayOutputStream bytes = new ByteArrayOutputStream() {
            @Override
            public void close() {
                isClosed[0] = true;
            }
        };
        document.writeTo(bytes);

        assertThat(bytes.toString(StandardCharsets.UTF_8)).isEqualTo(document.text());
        assertThat(document).hasToString(document.text());
        assertThat(isClosed[0]).isFalse();
    }

    @Test
    void aStreamThatFailsEndsInItsOwnException() {
        IOException full = new IOException("no space left");
        OutputStream failing = new OutputStream() {
            @Override
            public void write(int b) throws IOException {
                throw full;
            }
        };
        assertThatThrownBy(() -> JsonDocument.ofRiders(List.of(), 0).writeTo(failing))
                .isSameAs(full);
    }

    /** The schema itself says which name and version its documents carry. */
    @ParameterizedTest
    @EnumSource
    void aSchemaNamesTheFormatItDescribes(JsonSchema format) {
        JsonNode schema = JsonMapper.shared().readTree(format.text());

        assertThat(schema.get("$schema").stringValue()).isEqualTo("https://json-schema.org/draft/2020-12/schema");
        assertThat(schema.get("properties").get("schema").get("const").stringValue())
                .isEqualTo(format.id());
        assertThat(format.id()).endsWith("/" + format.version());
    }

    /** Written down a second time on purpose: programs choose by it. */
    @Test
    void theNamesOfTheFormats() {
        assertThat(JsonSchema.values())
                .extracting(JsonSchema::id)
                .containsExactly(
                        "wattledger.review/2",
                        "wattledger.inspection/2",
                        "wattledger.season/2",
                        "wattledger.riders/2",
                        "wattledger.compare/1",
                        "wattledger.what-if/1",
                        "wattledger.plan/1");
    }

    private static Rider rider() {
        return Rider.UNKNOWN.withThresholdPowerW(250).withMassKg(72);
    }

    private static WhatIf.Change drops() {
        return WhatIf.Change.NOTHING.withPosition(Position.DROPS);
    }

    private static JsonNode fitting(JsonSchema format, JsonDocument document) {
        assertThat(document.schema()).isEqualTo(format);
        assertFits(format, document.text());
        return JsonMapper.shared().readTree(document.text());
    }
}
