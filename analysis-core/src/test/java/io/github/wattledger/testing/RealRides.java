package io.github.wattledger.testing;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A folder of real recordings, named by the environment variable {@code WATTLEDGER_REAL_RIDES}. They show real people's
 * positions and heart rates, so they are not part of this repository; tests that need them are skipped without it.
 */
public final class RealRides {
    private static final String VARIABLE = "WATTLEDGER_REAL_RIDES";

    private RealRides() {}

    /** Whether the folder is there. */
    public static boolean arePresent() {
        String folder = System.getenv(VARIABLE);
        return folder != null && Files.isDirectory(Path.of(folder));
    }

    /** The folder; the calling test is skipped when it is not there. */
    public static Path folder() {
        String folder = System.getenv(VARIABLE);
        assumeTrue(folder != null, VARIABLE + " is not set: the checks against real recordings are skipped");
        Path path = Path.of(folder);
        assumeTrue(
                Files.isDirectory(path), VARIABLE + " is not a folder: the checks against real recordings are skipped");
        return path;
    }

    /** One of the recordings; the calling test is skipped when it is not there. */
    public static Path file(String name) {
        Path file = folder().resolve(name);
        assumeTrue(Files.exists(file), name + " is not among the real recordings: skipped");
        return file;
    }
}
