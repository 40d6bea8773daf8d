package io.github.wattledger.cli;

import io.github.wattledger.read.Spelling;
import java.util.Collection;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.OverwrittenOptionException;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.TypeConversionException;
import picocli.CommandLine.UnmatchedArgumentException;

/** What is said of a command line that cannot be taken: one line that names the option and what was typed. */
final class UsageMessages {
    private UsageMessages() {}

    /** The line, without the name of the program. */
    static String of(ParameterException e) {
        if (e instanceof UnmatchedArgumentException unmatched) {
            return unmatched(unmatched.getCommandLine(), unmatched.getUnmatched());
        }
        if (e instanceof MissingParameterException missing) {
            return missing(missing.getMissing());
        }
        if (e instanceof OverwrittenOptionException twice && twice.getOverwritten() instanceof OptionSpec option) {
            return option.longestName() + " is given twice";
        }
        ArgSpec argument = e.getArgSpec();
        if (e.getCause() instanceof TypeConversionException refused && argument instanceof OptionSpec option) {
            String reason = refused instanceof RefusedValue value
                    ? value.reason(UnitsOption.typed(e.getCommandLine()))
                    : refused.getMessage();
            return option.longestName() + " " + shown(e.getValue()) + ": " + reason;
        }
        return String.valueOf(e.getMessage());
    }

    private static String missing(List<ArgSpec> missing) {
        ArgSpec first = missing.get(0);
        if (!(first instanceof OptionSpec option)) {
            return "name a " + first.paramLabel();
        }
        return option.arity().max() == 0
                ? option.longestName() + " is missing"
                : option.longestName() + ": its value is missing (" + option.paramLabel() + ")";
    }

    private static String unmatched(CommandLine command, List<String> words) {
        String first = words.isEmpty() ? "" : words.get(0);
        if (first.startsWith("-")) {
            int equals = first.indexOf('=');
            String option = equals < 0 ? first : first.substring(0, equals);
            return "unknown option " + option
                    + didYouMean(option, command.getCommandSpec().optionsMap().keySet());
        }
        if (command.getParent() == null) {
            return "there is no command and no file called '" + first + "'"
                    + didYouMean(first, command.getSubcommands().keySet());
        }
        return "'" + first + "' is one word too many; put quotes around a name with blanks";
    }

    /** The nearest of the known words as a question in brackets, or nothing where none is near. */
    static String didYouMean(String word, Collection<String> known) {
        String meant = Spelling.nearest(word, known);
        return meant == null ? "" : " (did you mean " + meant + "?)";
    }

    private static String shown(@Nullable String value) {
        return value == null || value.isBlank() ? "\"" + (value == null ? "" : value) + "\"" : value;
    }
}
