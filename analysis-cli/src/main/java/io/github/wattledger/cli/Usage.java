package io.github.wattledger.cli;

import io.github.wattledger.rider.Rider;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.function.DoubleFunction;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;

/** Errors of usage, reported by the command that the options were given to. */
final class Usage {
    private Usage() {}

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

    /** The path of a name, which may be empty; a usage error when no file of this system can have it. */
    static Path path(@Nullable CommandSpec spec, String option, String name) {
        try {
            return Path.of(name);
        } catch (InvalidPathException e) {
            throw error(spec, "Invalid value for option '" + option + "': not a file name on this system");
        }
    }

    /** The path of a name; a usage error when the name is empty or no file of this system can have it. */
    static Path namedPath(@Nullable CommandSpec spec, String option, String name) {
        if (name.isEmpty()) {
            throw error(spec, "Invalid value for option '" + option + "': the name is empty");
        }
        return path(spec, option, name);
    }

    /** The rider with one number of an option, or as before when the option is not given. */
    static Rider with(
            @Nullable CommandSpec spec,
            Rider rider,
            String option,
            @Nullable Double value,
            DoubleFunction<Rider> change) {
        if (value == null) {
            return rider;
        }
        try {
            return change.apply(value);
        } catch (IllegalArgumentException e) {
            throw error(spec, "Invalid value for option '" + option + "': " + e.getMessage());
        }
    }
}
