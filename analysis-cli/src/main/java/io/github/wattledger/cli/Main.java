package io.github.wattledger.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.InputStream;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/**
 * The program {@code wattledger}. Results go to standard output, messages to standard error; a failure is one line, never
 * a stack trace. Nothing is coloured, hence {@code NO_COLOR} has nothing to switch off.
 */
@Command(
        name = "wattledger",
        customSynopsis = {"wattledger RIDE...", "       wattledger COMMAND ..."},
        header = "Reviews recorded bicycle rides after the fact.",
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class,
        commandListHeading = "Commands:%n",
        footer = {
            "",
            "A RIDE without a COMMAND is reviewed. See 'wattledger help COMMAND' for the",
            "options of a command."
        })
public final class Main implements Runnable {
    @Spec
    private @Nullable CommandSpec spec;

    private Main() {}

    /** Runs the program and ends the process with its exit status. */
    public static void main(String[] args) {
        // The platform's own stream would encode the report by the locale.
        PrintStream out = new PrintStream(new FileOutputStream(FileDescriptor.out), false, StandardCharsets.UTF_8);
        System.exit(run(args, System.in, out, System.err));
    }

    /**
     * Runs the program within this process, with nothing at standard input.
     *
     * @param args the words after the program's name
     * @param out standard output, receives UTF-8
     * @param err standard error
     * @return the exit status
     */
    public static int run(String[] args, PrintStream out, PrintStream err) {
        return run(args, InputStream.nullInputStream(), out, err);
    }

    /**
     * Runs the program within this process.
     *
     * @param args the words after the program's name
     * @param in standard input, read only when the words ask for it
     * @param out standard output, receives UTF-8
     * @param err standard error
     * @return the exit status
     */
    public static int run(String[] args, InputStream in, PrintStream out, PrintStream err) {
        return run(args, out, err, new RideOpener(in));
    }

    static int run(String[] args, PrintStream out, PrintStream err, ReviewCommand.Core core) {
        int status;
        try {
            CommandLine program = commandLine(out, err, core);
            status = program.execute(CommandChoice.withCommand(program, args));
        } catch (Error e) {
            new Failures(err).line("wattledger", "internal failure: " + e);
            return ExitStatus.INTERNAL_FAILURE.code();
        }
        if (out.checkError() && status == ExitStatus.DONE.code()) {
            new Failures(err).line("wattledger", "cannot write to standard output");
            return ExitStatus.INTERNAL_FAILURE.code();
        }
        return status;
    }

    @Override
    public void run() {
        if (spec == null) {
            throw new AssertionError("the command was not built by the parser");
        }
        throw new ParameterException(spec.commandLine(), "name a ride to review, or a command");
    }

    /** The program with all its commands, in the order in which the help names them. */
    static CommandLine commandLine(PrintStream out, PrintStream err, ReviewCommand.Core core) {
        Failures failures = new Failures(err);
        CommandLine program = new CommandLine(new Main())
                .addSubcommand(new ReviewCommand(core, out, failures))
                .addSubcommand(new WhatIfCommand(core, out))
                .addSubcommand(new CompareCommand(core, out))
                .addSubcommand(new PlanCommand(core, out))
                .addSubcommand(new InspectCommand(core, out))
                .addSubcommand(new SeasonCommand(out, err))
                .addSubcommand(new RiderCommand(out))
                .addSubcommand(new HelpCommand(out))
                .addSubcommand(new VersionCommand(out))
                .addSubcommand(new CompletionCommand(out))
                .setOut(new PrintWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8), true))
                .setErr(new PrintWriter(new OutputStreamWriter(err, StandardCharsets.UTF_8), true))
                .setColorScheme(Help.defaultColorScheme(Help.Ansi.OFF))
                .setParameterExceptionHandler((e, args) -> {
                    String command = e.getCommandLine().getCommandSpec().qualifiedName();
                    ExitStatus status = failures.say(command, e);
                    err.println("See '" + command + " --help'.");
                    return status.code();
                })
                .setExecutionExceptionHandler((e, command, parsed) -> failures.say(
                                command.getCommandSpec().qualifiedName(), e)
                        .code());
        OptionWords.register(program);
        return program;
    }
}
