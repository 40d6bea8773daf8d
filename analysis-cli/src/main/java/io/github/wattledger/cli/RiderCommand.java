package io.github.wattledger.cli;

import io.github.wattledger.cli.profile.RiderFile;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code wattledger rider}: help with the rider profile. */
@Command(
        name = "rider",
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class,
        sortOptions = false,
        customSynopsis = "wattledger rider --example",
        header = "Helps with the rider profile that --rider takes.",
        footer = {"", "For instance: wattledger rider --example > rider.toml"})
final class RiderCommand implements Callable<Integer> {
    private final PrintStream out;

    @Option(names = "--example", required = true, description = "Print a commented profile to begin with.")
    private boolean example;

    /**
     * A command.
     *
     * @param out where the profile goes, as UTF-8 bytes
     */
    RiderCommand(PrintStream out) {
        this.out = out;
    }

    @Override
    public Integer call() {
        if (example) {
            byte[] bytes = RiderFile.example().getBytes(StandardCharsets.UTF_8);
            out.write(bytes, 0, bytes.length);
        }
        return ExitStatus.DONE.code();
    }
}
