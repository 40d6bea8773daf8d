package io.github.wattledger.cli.profile;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.tomlj.Toml;
import org.tomlj.TomlParseError;
import org.tomlj.TomlParseResult;

/**
 * The text of a TOML file that a person wrote, up to its tables.
 *
 * @param shortName what the file is called in messages, for instance {@code profile}
 * @param longName the same with an article, for instance {@code a rider profile}
 */
record TomlText(String shortName, String longName) {
    /** Such a file has a few kilobytes; a recorded ride that was given by mistake has more than this. */
    private static final int MOST_BYTES = 100_000;

    private static final Pattern DAY_BEFORE_BRACKET = Pattern.compile("(?m)(\\d{4}-\\d{2}-\\d{2})\\](?=\\s*(?:#.*)?$)");

    /**
     * Reads the text of a file.
     *
     * @throws UnreadableProfileException when there is no such text
     */
    String read(Path file) throws UnreadableProfileException {
        try {
            if (Files.isDirectory(file)) {
                throw new UnreadableProfileException(List.of(file + ": is a folder; name the " + shortName + " in it"));
            }
            if (Files.size(file) > MOST_BYTES) {
                throw new UnreadableProfileException(
                        List.of(file + ": is too large for " + longName + "; is it the ride?"));
            }
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(Files.readAllBytes(file)))
                    .toString();
            return text.startsWith("\uFEFF") ? text.substring(1) : text;
        } catch (NoSuchFileException e) {
            throw new UnreadableProfileException(file + ": there is no such file; check the path", e);
        } catch (AccessDeniedException e) {
            throw new UnreadableProfileException(file + ": no permission to read it; check its owner and mode", e);
        } catch (CharacterCodingException e) {
            throw new UnreadableProfileException(file + ": is not text in UTF-8; save it as such", e);
        } catch (IOException e) {
            throw new UnreadableProfileException(file + ": could not be read (" + e.getMessage() + ")", e);
        }
    }

    /**
     * Parses a text.
     *
     * @throws UnreadableProfileException with the lines that are no TOML
     */
    TomlParseResult parse(String text, Problems problems) throws UnreadableProfileException {
        int tooDeep = TomlNesting.tooDeepLine(text);
        if (tooDeep > 0) {
            problems.add(
                    tooDeep,
                    "brackets or keys are nested more than " + TomlNesting.MOST_LEVELS + " deep; " + longName
                            + " needs three levels");
            problems.throwIfAny();
        }
        TomlParseResult parsed = Toml.parse(withRoomAfterDays(text));
        if (parsed.hasErrors()) {
            DecimalCommas.report(text, problems);
            problems.throwIfAny();
        }
        for (TomlParseError error : parsed.errors()) {
            problems.add(error.position().line(), "not TOML: " + error.getMessage());
        }
        // What the parser could save of a broken file would only bring more complaints of the same cause.
        problems.throwIfAny();
        return parsed;
    }

    /**
     * The parser takes the end of the line for a part of a day that stands right before a closing bracket, and then stumbles
     * over the next line. A space between them helps.
     */
    private static String withRoomAfterDays(String text) {
        return DAY_BEFORE_BRACKET.matcher(text).replaceAll("$1 ]");
    }
}
