package io.github.wattledger.cli;

import io.github.wattledger.cli.profile.UnreadableProfileException;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.season.SeasonStoreException;
import java.io.PrintStream;
import picocli.CommandLine.ParameterException;

/** What is said when something fails: lines on standard error, never a stack trace. */
final class Failures {
    private final PrintStream err;

    /** @param err standard error */
    Failures(PrintStream err) {
        this.err = err;
    }

    /** Says what failed of one ride among several, and names the ride. */
    ExitStatus say(String command, String ride, Exception e) {
        // What could not be read begins with its file.
        boolean isNamed = e instanceof UnreadableRideException || e instanceof UnreadableProfileException;
        return sayAfter(isNamed ? "" : ride + ": ", command, e);
    }

    /** Says what failed, a line for each thing that is wrong, and gives the exit status that goes with it. */
    ExitStatus say(String command, Exception e) {
        return sayAfter("", command, e);
    }

    private ExitStatus sayAfter(String ride, String command, Exception e) {
        if (e instanceof ParameterException wrong) {
            line(command, ride + UsageMessages.of(wrong));
            return ExitStatus.WRONG_USAGE;
        }
        if (e instanceof UnreadableRideException || e instanceof UnreadableStoreException) {
            line(command, ride + e.getMessage());
            return ExitStatus.UNREADABLE_INPUT;
        }
        if (e instanceof UnreadableProfileException unreadable) {
            unreadable.lines().forEach(line -> line(command, ride + line));
            return ExitStatus.UNREADABLE_INPUT;
        }
        boolean isExpected = e instanceof OutputFailure || e instanceof SeasonStoreException;
        line(command, ride + (isExpected ? e.getMessage() : "internal failure: " + e + where(e)));
        return ExitStatus.INTERNAL_FAILURE;
    }

    /** Writes one line: a file's name may hold line ends or control sequences of a terminal. */
    void line(String command, String text) {
        StringBuilder line = new StringBuilder(command).append(": ");
        text.codePoints()
                .forEach(c -> line.appendCodePoint(
                        Character.isISOControl(c) || Character.getType(c) == Character.FORMAT ? ' ' : c));
        err.println(line);
    }

    /** The place of a failure, for the person who has to repair it. */
    private static String where(Exception e) {
        StackTraceElement[] trace = e.getStackTrace();
        return trace.length == 0 ? "" : " at " + trace[0];
    }
}
