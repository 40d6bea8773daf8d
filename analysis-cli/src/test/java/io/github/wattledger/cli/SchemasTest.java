package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What the commands write as JSON keeps to the schemas in the docs, names and order included. */
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

        assertKeepsTo("season", json);
        assertThat(json.get("rides").size()).isEqualTo(12);
        assertThat(json.get("duplicates").size()).isEqualTo(1);
        assertThat(json.get("skipped").size()).isEqualTo(1);
    }

    @Test
    void aSeasonWithoutAThreshold() throws IOException {
        Path folder = season("season");
        Files.delete(folder.resolve("rider.toml"));

        assertKeepsTo("season", run(0, "season", folder.toString(), "--format", "json"));
    }

    @Test
    void aSeasonWithoutARide() throws IOException {
        Path folder = Files.createDirectories(temp.resolve("empty"));
        Files.writeString(folder.resolve("broken.fit"), "not a ride");

        assertKeepsTo("season", run(4, "season", folder.toString(), "--format", "json"));
    }

    @Test
    void severalRiders() throws IOException {
        season("riders/one");
        season("riders/two");

        JsonNode json = run(0, "season", temp.resolve("riders").toString(), "--riders", "--format", "json");

        assertKeepsTo("riders", json);
        assertThat(json.get("riders").size()).isEqualTo(2);
    }

    @ParameterizedTest
    @ValueSource(strings = {"over-hard-start.fit", "even-paced.fit", "damaged.fit"})
    void anInspection(String sample) throws IOException {
        assertKeepsTo("inspection", run(0, "inspect", SAMPLES.resolve(sample).toString(), "--format", "json"));
    }

    @Test
    void aComparison() throws IOException {
        JsonNode json = run(
                0,
                "compare",
                SAMPLES.resolve("over-hard-start.fit").toString(),
                SAMPLES.resolve("even-paced.fit").toString(),
                "--format",
                "json");

        assertKeepsTo("compare", json);
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

    private static void assertKeepsTo(String name, JsonNode json) throws IOException {
        String schema = Files.readString(Path.of("..", "docs", name + ".schema.json"));
        assertThat(SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                        .getSchema(schema)
                        .validate(json.toString(), InputFormat.JSON))
                .isEmpty();
        assertSameOrder(new JsonMapper().readTree(schema), json);
    }

    private static void assertSameOrder(JsonNode schema, JsonNode value) {
        if (value.isObject() && schema.has("properties")) {
            assertThat(names(value)).isEqualTo(names(schema.get("properties")));
            for (String name : names(value)) {
                assertSameOrder(schema.get("properties").get(name), value.get(name));
            }
        } else if (value.isArray() && schema.has("items")) {
            for (JsonNode each : value) {
                assertSameOrder(schema.get("items"), each);
            }
        }
    }

    private static List<String> names(JsonNode object) {
        return new ArrayList<>(object.propertyNames());
    }
}
