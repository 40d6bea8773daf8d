package io.github.wattledger.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;

/** {@code --output} of the commands that can write their report into a file. */
final class OutputOption {
    @Option(
            names = "--output",
            paramLabel = "FILE",
            description = "Write the report into this file instead of to standard output. Its folder is made where"
                    + " there is none.")
    private @Nullable String output;

    /**
     * The file, or null for standard output; a usage error when no file of this system can have the name, or it is one of
     * the rides.
     */
    @Nullable Path file(@Nullable CommandSpec spec, List<NamedRide> rides) throws IOException {
        if (output == null) {
            return null;
        }
        Path file = Usage.path(spec, "--output", output);
        for (NamedRide ride : rides) {
            if (ride.isSameFile(file)) {
                throw Usage.refused(spec, "--output", "would overwrite the ride itself");
            }
        }
        return file;
    }
}
