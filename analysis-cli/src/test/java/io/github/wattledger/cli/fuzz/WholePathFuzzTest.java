package io.github.wattledger.cli.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Some hundred changed files through every command: the short form of the run that docs/robustness.md describes. */
class WholePathFuzzTest {
    private static final int EXECUTIONS = 300;

    @Test
    void noChangedFileBreaksAPromise(@TempDir Path failures) throws Exception {
        FuzzRides rides = FuzzRides.of(Path.of("..", "sample-rides"));
        FuzzRun.Tally tally = FuzzRun.run(rides, 16, 0, EXECUTIONS, 2, failures);
        assertThat(tally.broken()).isEmpty();
        // The changes are neither so small that nothing happens, nor so large that nothing is read.
        assertThat(tally.fates().values().stream().mapToInt(Integer::intValue).sum())
                .isEqualTo(EXECUTIONS);
        assertThat(tally.fates().getOrDefault(WholePath.Fate.REPAIRED, 0)).isGreaterThan(EXECUTIONS / 10);
        assertThat(tally.fates().getOrDefault(WholePath.Fate.REFUSED, 0)).isBetween(1, EXECUTIONS / 2);
    }
}
