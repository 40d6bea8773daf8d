package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A short command must not pay for what only others need. */
class LoadedClassesTest {
    @ParameterizedTest
    @ValueSource(strings = {"text", "json", "csv"})
    void aReviewLoadsNeitherPagesNorStoresNorTables(String format) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xlog:class+load:stdout",
                        "-cp",
                        System.getProperty("java.class.path"),
                        "io.github.wattledger.cli.Main",
                        "review",
                        "../sample-rides/damaged.fit",
                        "--format",
                        format)
                .redirectErrorStream(true)
                .start();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(1, TimeUnit.MINUTES)).isTrue();
        assertThat(process.exitValue())
                .as(out.substring(Math.max(0, out.length() - 500)))
                .isZero();
        List<String> loaded =
                out.lines().filter(line -> line.contains(" source: ")).toList();
        assertThat(loaded).anyMatch(line -> line.contains("io.github.wattledger.Reviewer"));
        assertThat(loaded)
                .noneMatch(line -> line.contains("io.github.wattledger.cli.report.html.")
                        || line.contains("gg.jte.")
                        || line.contains("tech.tablesaw.")
                        || line.contains("org.sqlite."));
    }
}
