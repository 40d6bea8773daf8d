package io.github.wattledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.pacing.Advice;
import io.github.wattledger.pacing.Evidence;
import io.github.wattledger.pacing.FindingDetector;
import io.github.wattledger.pacing.JudgedPart;
import io.github.wattledger.pacing.OwnFinding;
import io.github.wattledger.pacing.Severity;
import io.github.wattledger.ride.Interval;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A detector of another jar on the class path is asked, and what it tells stands in each report. */
class PluggedDetectorTest {
    private static final String RIDE = "../sample-rides/even-paced.fit";

    /** Tells of the first ten minutes of whatever is judged. */
    public static final class FirstTenMinutes implements FindingDetector {
        private static final long serialVersionUID = 1L;

        @Override
        public List<OwnFinding> detect(JudgedPart part) {
            Advice advice = new Advice("Look at the first ten minutes again.", null, null);
            return List.of(part.finding("first-ten", Severity.MINOR, new Interval(0, 600), Evidence.none(), advice));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"text", "json", "html"})
    void standsInTheReport(String format, @TempDir Path jar) throws Exception {
        Path services = Files.createDirectories(jar.resolve("META-INF/services"));
        Files.writeString(services.resolve(FindingDetector.class.getName()), FirstTenMinutes.class.getName());
        Thread thread = Thread.currentThread();
        ClassLoader before = thread.getContextClassLoader();
        try (URLClassLoader plugged = new URLClassLoader(new URL[] {jar.toUri().toURL()}, before)) {
            thread.setContextClassLoader(plugged);
            Outcome outcome = Outcome.of("review", RIDE, "--format", format);
            assertThat(outcome.err()).isEmpty();
            assertThat(outcome.out()).contains("Look at the first ten minutes again.");
        } finally {
            thread.setContextClassLoader(before);
        }
    }

    @Test
    void isNotThereWithoutTheJar() {
        assertThat(Outcome.of("review", RIDE).out()).doesNotContain("first ten minutes again");
    }
}
