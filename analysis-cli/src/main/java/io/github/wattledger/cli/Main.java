package io.github.wattledger.cli;

import io.github.wattledger.Reviewer;
import io.github.wattledger.cli.profile.UnreadableProfileException;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.season.SeasonStoreException;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.AutoComplete.GenerateCompletion;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.UnmatchedArgumentException;

/**
 * The program {@code wattledger}. Results go to standard output, messages to standard error; a failure is one line, never
 * a stack trace. Nothing is coloured, hence {@code NO_COLOR} has nothing to switch off.
 */
@Command(
        name = "wattledger",
        synopsisSubcommandLabel = "COMMAND",
        header = "Reviews recorded bicycle rides after the fact.",
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class,
        commandListHeading = "Commands:%n",
        footer = {"", "See 'wattledger COMMAND --help' for the options of a command."})
public final class Main implements Runnable {
    @Spec
    private @Nullable CommandSpec spec;

    private Main() {}

    /** Runs the program and ends the process with its exit status. */
    public static void main(String[] args) {
        // The platform's own stream would encode the report by the locale.
        PrintStream out = new PrintStream(new FileOutputStream(FileDescriptor.out), false, StandardCharsets.UTF_8);
        System.exit(run(args, out, System.err));
    }

    /**
     * Runs the program within this process.
     *
     * @param args the words after the program's name
     * @param out standard output, receives UTF-8
     * @param err standard error
     * @return the exit status
     */
    public static int run(String[] args, PrintStream out, PrintStream err) {
        return run(args, out, err, Reviewer::review);
    }

    static int run(String[] args, PrintStream out, PrintStream err, ReviewCommand.Core core) {
        int status;
        try {
            status = commandLine(out, err, core).execute(args);
        } catch (Error e) {
            message(err, "wattledger", "internal failure: " + e);
            return ExitStatus.INTERNAL_FAILURE.code();
        }
        if (out.checkError() && status == ExitStatus.DONE.code()) {
            message(err, "wattledger", "cannot write to standard output");
            return ExitStatus.INTERNAL_FAILURE.code();
        }
        return status;
    }

    @Override
    public void run() {
        if (spec == null) {
            throw new AssertionError("the command was not built by the parser");
        }
        throw new ParameterException(spec.commandLine(), "Missing command");
    }

    /** The program with all its commands, in the order in which the help names them. */
    static CommandLine commandLine(PrintStream out, PrintStream err, ReviewCommand.Core core) {
        CommandLine program = new CommandLine(new Main())
                .addSubcommand(new ReviewCommand(core, out))
                .addSubcommand(new WhatIfCommand(out))
                .addSubcommand(new CompareCommand(out))
                .addSubcommand(new PlanCommand(out))
                .addSubcommand(new InspectCommand(out))
                .addSubcommand(new SeasonCommand(out, err))
                .addSubcommand(new RiderCommand(out))
                .addSubcommand(new GenerateCompletion())
                .setOut(new PrintWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8), true))
                .setErr(new PrintWriter(new OutputStreamWriter(err, StandardCharsets.UTF_8), true))
                .setColorScheme(Help.defaultColorScheme(Help.Ansi.OFF))
                .setParameterExceptionHandler((e, args) -> usageError(err, e))
                .setExecutionExceptionHandler((e, command, parsed) -> failure(err, e, command));
        OptionValues.registerWords(program);
        return program;
    }

    private static int usageError(PrintStream err, ParameterException e) {
        String command = e.getCommandLine().getCommandSpec().qualifiedName();
        String hint = "";
        if (e instanceof UnmatchedArgumentException unmatched) {
            List<String> suggestions = unmatched.getSuggestions();
            hint = suggestions.isEmpty() ? "" : " (did you mean '" + suggestions.get(0) + "'?)";
        }
        message(err, command, e.getMessage() + hint);
        err.println("See '" + command + " --help'.");
        return ExitStatus.WRONG_USAGE.code();
    }

    private static int failure(PrintStream err, Exception e, CommandLine command) {
        String name = command.getCommandSpec().qualifiedName();
        if (e instanceof UnreadableRideException) {
            message(err, name, String.valueOf(e.getMessage()));
            return ExitStatus.UNREADABLE_INPUT.code();
        }
        if (e instanceof UnreadableProfileException unreadable) {
            unreadable.lines().forEach(line -> message(err, name, line));
            return ExitStatus.UNREADABLE_INPUT.code();
        }
        if (e instanceof OutputFailure || e instanceof SeasonStoreException) {
            message(err, name, String.valueOf(e.getMessage()));
            return ExitStatus.INTERNAL_FAILURE.code();
        }
        message(err, name, "internal failure: " + e + where(e));
        return ExitStatus.INTERNAL_FAILURE.code();
    }

    /** The place of a failure, for the person who has to repair it. */
    private static String where(Exception e) {
        StackTraceElement[] trace = e.getStackTrace();
        return trace.length == 0 ? "" : " at " + trace[0];
    }

    /** Writes one line: a file's name may hold line ends or control sequences of a terminal. */
    private static void message(PrintStream err, String command, String text) {
        StringBuilder line = new StringBuilder(command).append(": ");
        text.codePoints()
                .forEach(c -> line.appendCodePoint(
                        Character.isISOControl(c) || Character.getType(c) == Character.FORMAT ? ' ' : c));
        err.println(line);
    }
}
