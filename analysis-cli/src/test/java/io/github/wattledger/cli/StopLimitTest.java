package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A profile may say which stops are long enough to be reported; a report names the limit in force. */
class StopLimitTest {
    private static final String RIDE = "../sample-rides/over-hard-start.fit";

    private static String report(String... options) {
        String[] arguments = new String[options.length + 2];
        arguments[0] = "review";
        arguments[1] = RIDE;
        System.arraycopy(options, 0, arguments, 2, options.length);
        Outcome outcome = Outcome.of(arguments);
        assertThat(outcome.err()).isEmpty();
        return outcome.out().replaceAll("\\s+", " ");
    }

    @Test
    void isTheUsualOneWithoutAProfile() {
        assertThat(report()).contains("of more than 60 s");
    }

    @Test
    void isThatOfTheProfile(@TempDir Path folder) throws IOException {
        Path profile = folder.resolve("rider.toml");
        Files.writeString(profile, "[judgement]\nstop_seconds = 200\n");
        assertThat(report("--rider", profile.toString()))
                .contains("of more than 200 s")
                .doesNotContain("more than a minute", "60 s");
    }
}
