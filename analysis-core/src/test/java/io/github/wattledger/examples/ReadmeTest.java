package io.github.wattledger.examples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.wattledger.RideReview;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.read.UnreadableRideException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What README.md promises is what the code does. */
class ReadmeTest {
    private static final Path TOP = Path.of("..");
    private static final Pattern BLOCK = Pattern.compile("```(\\w*)\\n(.*?)```", Pattern.DOTALL);

    private static List<String> blocks(String language) throws IOException {
        Matcher matcher = BLOCK.matcher(Files.readString(TOP.resolve("README.md")));
        return matcher.results()
                .filter(block -> block.group(1).equals(language))
                .map(block -> block.group(2))
                .toList();
    }

    @Test
    void everyLineOfCodeIsCompiledAndRunHere() throws IOException {
        String example = Files.readString(Path.of("src/test/java/io/github/wattledger/examples/EmbeddingExample.java"));
        List<String> code = blocks("java").stream()
                .flatMap(String::lines)
                .map(String::strip)
                .filter(line -> !line.isEmpty() && !line.startsWith("//"))
                .toList();
        assertThat(code).isNotEmpty().allSatisfy(line -> assertThat(example).contains(line));
    }

    @Test
    void theExampleRuns() throws UnreadableRideException {
        RideReview review = EmbeddingExample.wholeReviewOfAFile(TOP.resolve("sample-rides/over-hard-start.fit"));
        assertThat(review.pacing().verdict()).isEqualTo(Verdict.OVER_HARD_START);
        double[] watts = new double[3600];
        java.util.Arrays.fill(watts, 200);
        assertThat(EmbeddingExample.oneMetricFromAnArray(watts).orElseThrow()).isCloseTo(200, within(1e-9));
    }

    @Test
    void theTwoCommandsAreWhatIsRunOnEveryChange() throws IOException {
        List<String> commands = blocks("sh").stream()
                .flatMap(String::lines)
                .map(String::strip)
                .filter(line -> !line.isEmpty())
                .toList();
        assertThat(commands).hasSize(2);
        assertThat(Files.readString(TOP.resolve(".ci/run")).lines().toList()).containsAll(commands);
    }
}
