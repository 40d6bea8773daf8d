package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.json.JsonSchema;
import io.github.wattledger.testing.SchemaCheck;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What the commands write as JSON keeps to the published schemas, names and order included. */
class SchemasTest {
    private static final Path SAMPLES = Path.of("..", "sample-rides");

    @TempDir
    Path temp;

    @Test
    void aSeasonWithADuplicateAndABadFile() throws IOException {
        Path folder = season("season");
        Files.copy(folder.resolve("2026-04-08-evening.fit.gz"), folder.resolve("copy.fit.gz"));
        Files.writeString(folder.resolve("broken.fit"), "not a ride");

        JsonNode json = run(4, "season", folder.toString(), "--format", "json");

        assertFits(JsonSchema.SEASON, json);
        assertThat(json.get("rides").size()).isEqualTo(12);
        assertThat(json.get("duplicates").size()).isEqualTo(1);
        assertThat(json.get("skipped").size()).isEqualTo(1);
    }

    @Test
    void aSeasonWithoutAThreshold() throws IOException {
        Path folder = season("season");
        Files.delete(folder.resolve("rider.toml"));

        assertFits(JsonSchema.SEASON, run(0, "season", folder.toString(), "--format", "json"));
    }

    @Test
    void aSeasonWithoutARide() throws IOException {
        Path folder = Files.createDirectories(temp.resolve("empty"));
        Files.writeString(folder.resolve("broken.fit"), "not a ride");

        assertFits(JsonSchema.SEASON, run(4, "season", folder.toString(), "--format", "json"));
    }

    @Test
    void severalRiders() throws IOException {
        season("riders/one");
        season("riders/two");

        JsonNode json = run(0, "season", temp.resolve("riders").toString(), "--riders", "--format", "json");

        assertFits(JsonSchema.RIDERS, json);
        assertThat(json.get("riders").size()).isEqualTo(2);
    }

    @ParameterizedTest
    @ValueSource(strings = {"over-hard-start.fit", "even-paced.fit", "damaged.fit"})
    void anInspection(String sample) {
        assertFits(
                JsonSchema.INSPECTION, run(0, "inspect", SAMPLES.resolve(sample).toString(), "--format", "json"));
    }

    @Test
    void aComparison() {
        JsonNode json = run(
                0,
                "compare",
                SAMPLES.resolve("over-hard-start.fit").toString(),
                SAMPLES.resolve("even-paced.fit").toString(),
                "--format",
                "json");

        assertFits(JsonSchema.COMPARISON, json);
        assertThat(json.get("others").size()).isEqualTo(1);
        JsonNode other = json.get("others").get(0);
        int points = json.get("course").get("pointCount").asInt();
        assertThat(other.get("gapSeconds").size()).isEqualTo(points);
        assertThat(other.get("powerW").size()).isEqualTo(points);
    }

    private Path season(String name) throws IOException {
        Path folder = Files.createDirectories(temp.resolve(name));
        try (Stream<Path> files = Files.list(SAMPLES.resolve("season"))) {
            for (Path file : files.toList()) {
                Files.copy(file, folder.resolve(file.getFileName().toString()));
            }
        }
        return folder;
    }

    private static JsonNode run(int status, String... arguments) {
        Outcome outcome = Outcome.of(arguments);
        assertThat(outcome.status()).as(outcome.err()).isEqualTo(status);
        return new JsonMapper().readTree(outcome.out());
    }

    private static void assertFits(JsonSchema format, JsonNode json) {
        SchemaCheck.assertFits(format, json.toString());
    }
}
