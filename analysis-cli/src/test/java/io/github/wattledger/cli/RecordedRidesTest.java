package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import io.github.wattledger.json.JsonSchema;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The command on every sample ride and, where the environment variable {@code WATTLEDGER_REAL_RIDES} names a folder of
 * them, on every real recording: either a report that keeps its promises, or one line and status 3.
 */
class RecordedRidesTest {
    private static final Path TOP = Path.of("..");
    private static final int PAGE_WIDTH = 80;

    static List<Path> recordings() throws IOException {
        List<Path> found = new ArrayList<>(fitFiles(TOP.resolve("sample-rides")));
        String real = System.getenv("WATTLEDGER_REAL_RIDES");
        if (real != null) {
            found.addAll(fitFiles(Path.of(real)));
        }
        return found;
    }

    private static List<Path> fitFiles(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(file -> file.toString().endsWith(".fit"))
                    .sorted()
                    .toList();
        }
    }

    private record Outcome(int status, String out, String err) {}

    private static Outcome run(String... arguments) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = Main.run(
                arguments,
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
        return new Outcome(status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    @ParameterizedTest
    @MethodSource("recordings")
    void giveJsonThatKeepsTheSchemaOrOneLine(Path recording) {
        Outcome outcome = run("review", recording.toString(), "--format", "json");
        if (refused(outcome, recording)) {
            return;
        }
        Schema schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(JsonSchema.REVIEW.text());
        assertThat(schema.validate(outcome.out(), com.networknt.schema.InputFormat.JSON))
                .isEmpty();
    }

    @ParameterizedTest
    @MethodSource("recordings")
    void giveTextOfEightyColumnsOrOneLine(Path recording) {
        Outcome outcome = run("review", recording.toString());
        if (refused(outcome, recording)) {
            return;
        }
        assertThat(outcome.out().lines())
                .allSatisfy(line -> assertThat(line.length()).as(line).isLessThanOrEqualTo(PAGE_WIDTH));
        assertThat(outcome.out().toLowerCase(Locale.ROOT))
                .contains("physician")
                .doesNotContain("nan")
                .doesNotContain("null");
    }

    @ParameterizedTest
    @MethodSource("recordings")
    void giveAPageOfHalfAMegabyteAtMostOrOneLine(Path recording) {
        Outcome outcome = run("review", recording.toString(), "--format", "html");
        if (refused(outcome, recording)) {
            return;
        }
        assertThat(outcome.out().getBytes(StandardCharsets.UTF_8).length).isLessThan(500_000);
        assertThat(outcome.out())
                .startsWith("<!DOCTYPE html>")
                .contains("physician")
                .doesNotContainPattern("=\"[^\"]*(NaN|Infinity)")
                .doesNotContainPattern(">[^<]*\\b(NaN|null|Infinity)\\b[^<]*</(td|th|p|li|data|text|title)>");
    }

    private static boolean refused(Outcome outcome, Path recording) {
        if (outcome.status() == ExitStatus.UNREADABLE_INPUT.code()) {
            assertThat(outcome.out()).isEmpty();
            assertThat(outcome.err().lines().toList())
                    .singleElement()
                    .asString()
                    .contains(recording.getFileName().toString());
            return true;
        }
        assertThat(outcome.status()).as(outcome.err()).isEqualTo(ExitStatus.DONE.code());
        assertThat(outcome.err()).isEmpty();
        return false;
    }
}
