package io.github.wattledger;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.wattledger.testing.ApiSignatures;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/**
 * What a release promised is still there. The file of its signatures is written anew only with a version that may break
 * them (DEVELOPERS.md); what has come since then lies in {@code target/api-added.txt} after each run.
 */
class ApiBaselineTest {
    private static final Path DOCS = Path.of("..", "docs");
    private static final Path BASELINE = Path.of("src", "test", "resources", "api-" + ApiSignatures.BASELINE + ".txt");

    @Test
    void nothingOfTheBaselineIsGone() throws Exception {
        Set<String> gone = new TreeSet<>(Files.readAllLines(BASELINE));
        assertThat(gone).hasSizeGreaterThan(100);
        gone.removeAll(ApiSignatures.now(DOCS));
        assertThat(gone)
                .as("signatures that were taken away or changed; if a version may do that, write %s anew", BASELINE)
                .isEmpty();
    }

    /** A function of each table of what is called is promised with its static members, which results do not promise. */
    @Test
    void whatEachTableCallsIsPromised() throws Exception {
        assertThat(Files.readAllLines(BASELINE))
                .contains(
                        "Reviewer: public static RideReview review(ride.Ride,rider.Rider,ReviewOptions)",
                        "load.NormalizedPower: public static java.util.OptionalDouble of(double[])",
                        "ride.Recording: public static ride.Recording of(ride.Samples)");
    }

    /** Who implements an interface must not be asked for another method. A default method may come, and any to a sealed one. */
    @Test
    void noInterfaceOfTheBaselineAsksForMore() throws Exception {
        Set<String> baseline = new TreeSet<>(Files.readAllLines(BASELINE));
        SortedSet<String> added = ApiSignatures.now(DOCS);
        added.removeAll(baseline);
        Files.write(Path.of("target", "api-added.txt"), added);
        assertThat(added)
                .filteredOn(line -> line.contains(": public abstract "))
                .filteredOn(line -> isKnown(line.substring(0, line.indexOf(':')), baseline))
                .isEmpty();
    }

    private static boolean isKnown(String type, Set<String> baseline) {
        return baseline.stream().anyMatch(line -> (line + " ").startsWith("interface " + type + " "));
    }
}
