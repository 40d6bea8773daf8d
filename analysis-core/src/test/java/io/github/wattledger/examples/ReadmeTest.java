package io.github.wattledger.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What README.md promises is what is run. */
class ReadmeTest {
    private static final Path TOP = Path.of("..");
    private static final Pattern SHELL = Pattern.compile("```sh\\n(.*?)```", Pattern.DOTALL);

    @Test
    void theCommandsAreWhatIsRunOnEveryChange() throws IOException {
        List<String> commands = SHELL.matcher(Files.readString(TOP.resolve("README.md")))
                .results()
                .flatMap(block -> block.group(1).lines())
                .map(String::strip)
                .filter(line -> !line.isEmpty())
                .toList();
        assertThat(commands).hasSizeGreaterThanOrEqualTo(4).contains("mvn -B verify");
        assertThat(Files.readString(TOP.resolve(".ci/run"))).contains(commands);
    }
}
