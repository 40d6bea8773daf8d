package io.github.wattledger.cli;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.stream.Stream;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;

/** Which command is meant when the first word names none: {@code wattledger ride.fit} reviews the ride. */
final class CommandChoice {
    private static final String DEFAULT_COMMAND = "review";

    private CommandChoice() {}

    /** The words with a command in front, unless they name one, ask for help, or begin with a word that is no file either. */
    static String[] withCommand(CommandLine program, String[] words) {
        if (words.length == 0 || isTaken(program.getCommandSpec(), words[0]) || !mayBeForReview(words[0])) {
            return words;
        }
        return Stream.concat(Stream.of(DEFAULT_COMMAND), Stream.of(words)).toArray(String[]::new);
    }

    private static boolean isTaken(CommandSpec program, String word) {
        return program.subcommands().containsKey(word) || program.optionsMap().containsKey(word);
    }

    private static boolean mayBeForReview(String word) {
        return word.startsWith("-")
                || word.indexOf('.') >= 0
                || word.indexOf('/') >= 0
                || word.indexOf(File.separatorChar) >= 0
                || isThere(word);
    }

    private static boolean isThere(String word) {
        try {
            return Files.exists(Path.of(word));
        } catch (InvalidPathException e) {
            return false;
        }
    }
}
