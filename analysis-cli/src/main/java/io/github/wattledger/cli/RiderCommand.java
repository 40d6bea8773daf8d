package io.github.wattledger.cli;

import io.github.wattledger.cli.profile.RiderFile;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code wattledger rider}: help with the rider profile. */
@Command(
        name = "rider",
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class,
        sortOptions = false,
        customSynopsis = "wattledger rider --example [--output FILE]",
        header = "Helps with the rider profile that --rider takes.",
        footer = {"", "For instance: wattledger rider --example --output rider.toml"})
final class RiderCommand implements Callable<Integer> {
    private final PrintStream out;

    @Option(names = "--example", required = true, description = "Print a commented profile to begin with.")
    private boolean example;

    @Mixin
    private OutputOption output = new OutputOption();

    @Spec
    private @Nullable CommandSpec spec;

    /**
     * A command.
     *
     * @param out where the profile goes, as UTF-8 bytes
     */
    RiderCommand(PrintStream out) {
        this.out = out;
    }

    @Override
    public Integer call() throws IOException {
        Path target = output.file(spec, List.of());
        if (target != null && Files.exists(target)) {
            throw new OutputFailure("cannot write " + target + ": it is there already; name another file");
        }
        if (example) {
            OutputFile.deliver(new StringBuilder(RiderFile.example()), target, out);
        }
        return ExitStatus.DONE.code();
    }
}
