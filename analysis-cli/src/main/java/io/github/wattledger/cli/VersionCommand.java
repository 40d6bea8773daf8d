package io.github.wattledger.cli;

import java.io.PrintStream;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

/** {@code wattledger version}: the same as {@code --version}. */
@Command(
        name = "version",
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class,
        customSynopsis = "wattledger version",
        header = "Shows the version of the program.")
final class VersionCommand implements Callable<Integer> {
    private final PrintStream out;

    /** @param out where the version goes */
    VersionCommand(PrintStream out) {
        this.out = out;
    }

    @Override
    public Integer call() {
        for (String line : new ProgramVersion().getVersion()) {
            out.println(line);
        }
        return ExitStatus.DONE.code();
    }
}
