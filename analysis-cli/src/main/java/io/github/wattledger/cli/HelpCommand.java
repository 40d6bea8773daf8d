package io.github.wattledger.cli;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code wattledger help}: the same as {@code --help}, in the order in which people say it. */
@Command(
        name = "help",
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class,
        customSynopsis = "wattledger help [COMMAND]",
        header = "Shows what a command does, and its options.")
final class HelpCommand implements Callable<Integer> {
    private final PrintStream out;

    @Spec
    private @Nullable CommandSpec spec;

    @Parameters(arity = "0..1", paramLabel = "COMMAND", description = "One of the commands; without it all of them.")
    private @Nullable String command;

    /** @param out where the help goes, as UTF-8 bytes */
    HelpCommand(PrintStream out) {
        this.out = out;
    }

    @Override
    public Integer call() {
        if (spec == null) {
            throw new AssertionError("the command was not built by the parser");
        }
        CommandLine program = spec.parent().commandLine();
        CommandLine asked = command == null ? program : program.getSubcommands().get(command);
        if (asked == null) {
            throw Usage.error(
                    spec,
                    "there is no command '" + command + "'"
                            + UsageMessages.didYouMean(
                                    String.valueOf(command),
                                    program.getSubcommands().keySet()));
        }
        byte[] usage = asked.getUsageMessage().getBytes(StandardCharsets.UTF_8);
        out.write(usage, 0, usage.length);
        return ExitStatus.DONE.code();
    }
}
