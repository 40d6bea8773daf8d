package io.github.wattledger.cli;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;

/** Errors of usage, reported by the command that the options were given to. */
final class Usage {
    private Usage() {}

    /** The name of the program and of the command. */
    static String name(@Nullable CommandSpec spec) {
        return spec == null ? "wattledger" : spec.qualifiedName();
    }

    /**
     * An error of usage, to be thrown.
     *
     * @param spec the command as the parser built it
     * @param message what does not fit, or null when that is not known
     */
    static ParameterException error(@Nullable CommandSpec spec, @Nullable String message) {
        if (spec == null) {
            throw new AssertionError("the command was not built by the parser");
        }
        return new ParameterException(spec.commandLine(), message == null ? "the options do not fit" : message);
    }

    /**
     * The refusal of an option's value, to be thrown: the option, what was typed, and why.
     *
     * @param spec the command as the parser built it
     */
    static ParameterException refused(@Nullable CommandSpec spec, String option, @Nullable String why) {
        return refused(spec, option, 0, why);
    }

    /**
     * The refusal of one value of an option that may be given several times.
     *
     * @param spec the command as the parser built it
     * @param value which of its values, counted from 0
     */
    static ParameterException refused(@Nullable CommandSpec spec, String option, int value, @Nullable String why) {
        if (spec == null) {
            throw new AssertionError("the command was not built by the parser");
        }
        OptionSpec given = spec.commandLine().getParseResult().matchedOption(option);
        String typed = given == null || given.originalStringValues().size() <= value
                ? ""
                : " " + given.originalStringValues().get(value);
        return error(spec, option + typed + ": " + why);
    }

    /** The path of an option's value; a usage error when it is empty or no file of this system can have the name. */
    static Path path(@Nullable CommandSpec spec, String option, String name) {
        if (name.isEmpty()) {
            throw error(spec, option + ": the name is empty");
        }
        try {
            return Path.of(name);
        } catch (InvalidPathException e) {
            throw refused(spec, option, "not a file name on this system");
        }
    }
}
