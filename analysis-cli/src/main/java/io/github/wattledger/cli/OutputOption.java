package io.github.wattledger.cli;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;

/** {@code --output} of the commands that can write their report into a file. */
final class OutputOption {
    @Option(
            names = "--output",
            paramLabel = "FILE",
            description = "Write the report into this file instead of to standard output.")
    private @Nullable String output;

    /** The file, or null for standard output; a usage error when no file of this system can have the name. */
    @Nullable Path file(@Nullable CommandSpec spec) {
        return output == null ? null : Usage.namedPath(spec, "--output", output);
    }
}
