package io.github.wattledger.cli;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code wattledger completion}: lets a shell complete commands, options, their values and file names. */
@Command(
        name = "completion",
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class,
        customSynopsis = "wattledger completion",
        header = "Prints what lets bash or zsh complete commands and options.",
        footer = {
            "",
            "For the shell that is open: source <(wattledger completion)",
            "For every shell: put that line into ~/.bashrc or ~/.zshrc."
        })
final class CompletionCommand implements Callable<Integer> {
    private final PrintStream out;

    @Spec
    private @Nullable CommandSpec spec;

    /** @param out where the script goes, as UTF-8 bytes */
    CompletionCommand(PrintStream out) {
        this.out = out;
    }

    @Override
    public Integer call() {
        if (spec == null) {
            throw new AssertionError("the command was not built by the parser");
        }
        byte[] script = CompletionScript.of(spec.parent()).getBytes(StandardCharsets.UTF_8);
        out.write(script, 0, script.length);
        return ExitStatus.DONE.code();
    }
}
