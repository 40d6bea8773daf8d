package io.github.wattledger.cli.fuzz;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import io.github.wattledger.json.JsonSchema;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What every output promises, whatever the input was. Each check adds a line for each promise that is broken. */
final class Promises {
    /** A page of text is as wide as a terminal of old. */
    private static final int COLUMNS = 80;

    private static final int LONGEST_MESSAGE = 1000;

    private static final Pattern NO_NUMBER = Pattern.compile("\\b(NaN|Infinity|null)\\b|\u221e");
    private static final Pattern QUOTED = Pattern.compile("\"[^\"]*\"");
    private static final Pattern PROGRAM_WORDS =
            Pattern.compile("Exception|\\b(java|com|org|io|gg|tools)\\.[a-z]+\\.|internal failure");

    private static final JsonMapper JSON = new JsonMapper();
    private static final Map<String, Schema> SCHEMAS = schemas();

    private final List<String> broken = new ArrayList<>();

    /** One line for each broken promise. */
    List<String> broken() {
        return broken;
    }

    void expect(boolean kept, String promise) {
        if (!kept) {
            broken.add(promise);
        }
    }

    private static Map<String, Schema> schemas() {
        Map<String, Schema> schemas = new HashMap<>();
        for (JsonSchema schema : JsonSchema.values()) {
            schemas.put(
                    schema.id().replaceAll("^wattledger\\.|/\\d+$", ""),
                    SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                            .getSchema(schema.text()));
        }
        return schemas;
    }

    /** A message: one line of words for people, with the program's name before it. */
    void message(String command, String err, int lines) {
        List<String> found = err.lines().toList();
        expect(found.size() == lines, found.size() + " lines of messages, expected " + lines + ": " + err);
        if (!found.isEmpty()) {
            String first = found.get(0);
            expect(first.startsWith("wattledger " + command + ": "), "message begins otherwise: " + first);
            expect(first.length() <= LONGEST_MESSAGE, "a message of " + first.length() + " characters");
            expect(first.chars().noneMatch(Character::isISOControl), "a control character in: " + first);
            expect(!PROGRAM_WORDS.matcher(first).find(), "a message about the program: " + first);
            expect(!first.endsWith("null"), "a message of nothing: " + first);
        }
    }

    /** A report as text. */
    void text(String text) {
        for (String line : text.lines().toList()) {
            expect(columns(line) <= COLUMNS, "a line of " + columns(line) + " columns: " + line);
            expect(line.chars().noneMatch(Character::isISOControl), "a control character in: " + line);
        }
        Matcher matcher = NO_NUMBER.matcher(QUOTED.matcher(text).replaceAll(""));
        expect(!matcher.find(), "no number in: " + text);
    }

    /** Each character counts as one column, but for those that stand on another one and those that are twice as wide. */
    private static int columns(String line) {
        return line.codePoints()
                .map(point -> switch (Character.getType(point)) {
                    case Character.NON_SPACING_MARK, Character.ENCLOSING_MARK, Character.FORMAT -> 0;
                    default -> 1;
                })
                .sum();
    }

    /** A page. */
    void page(String page) {
        expect(page.startsWith("<!DOCTYPE html>"), "a page begins otherwise");
        expect(page.stripTrailing().endsWith("</html>"), "a page ends otherwise");
        Matcher matcher = NO_NUMBER.matcher(page);
        while (matcher.find()) {
            int at = matcher.start();
            boolean isInScript = page.lastIndexOf("<script", at) > page.lastIndexOf("</script", at);
            // What a note quotes from the file stands in quotation marks.
            int textFrom = page.lastIndexOf('>', at) + 1;
            boolean isInTag = page.lastIndexOf('<', at) >= textFrom;
            long quotes = page.substring(textFrom, at)
                    .chars()
                    .filter(each -> each == '"')
                    .count();
            boolean isQuoted = !isInTag && quotes % 2 == 1;
            if (!isInScript && !isQuoted) {
                int from = page.lastIndexOf('<', at);
                broken.add("no number in a page: " + page.substring(from, Math.min(page.length(), at + 100)));
            }
        }
    }

    /**
     * A report as JSON; what does not parse gives an empty node.
     *
     * @param schema the name of its schema, or empty: not checked this time
     */
    JsonNode json(String text, String schema) {
        try {
            JsonNode json = JSON.readTree(text);
            finite(json, "");
            if (!schema.isEmpty()) {
                Objects.requireNonNull(SCHEMAS.get(schema), schema)
                        .validate(text, InputFormat.JSON)
                        .forEach(error -> broken.add("schema " + schema + ": " + error));
            }
            return json;
        } catch (JacksonException e) {
            broken.add("no JSON: " + e.getOriginalMessage());
            return JSON.createObjectNode();
        }
    }

    private void finite(JsonNode node, String where) {
        if (node.isNumber()) {
            expect(Double.isFinite(node.asDouble()), where + " is " + node);
        } else if (node.isObject()) {
            node.propertyNames().forEach(name -> finite(node.get(name), where + "." + name));
        } else {
            for (JsonNode each : node) {
                finite(each, where + "[]");
            }
        }
    }
}
