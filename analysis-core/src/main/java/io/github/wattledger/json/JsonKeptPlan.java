package io.github.wattledger.json;

import io.github.wattledger.plan.Ground;
import io.github.wattledger.plan.KeptPlan;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.json.JsonFactory;

/** Reads a plan again that was written by {@link JsonSchema#PLAN}. */
public final class JsonKeptPlan {
    private static final String WANTED =
            "; make it with 'wattledger plan --format json' (in the library, JsonDocument)";

    private JsonKeptPlan() {}

    /**
     * What is kept of a plan.
     *
     * @param text the JSON document
     * @throws IllegalArgumentException when it is no plan of this version, with one line that says why
     */
    public static KeptPlan read(String text) {
        Object document;
        try (JsonParser parser = new JsonFactory().createParser(ObjectReadContext.empty(), text)) {
            parser.nextToken();
            document = value(parser);
        } catch (JacksonException e) {
            throw new IllegalArgumentException(
                    "is no JSON, line "
                            + Math.max(
                                    1,
                                    e.getLocation() == null
                                            ? 1
                                            : e.getLocation().getLineNr()) + WANTED,
                    e);
        }
        if (!(document instanceof Map<?, ?> plan) || !JsonSchema.PLAN.id().equals(plan.get("schema"))) {
            throw new IllegalArgumentException("is no plan (" + JsonSchema.PLAN.id() + ")" + WANTED);
        }
        Map<?, ?> course = object(plan, "course");
        Map<?, ?> opening = object(plan, "opening");
        Map<Ground, Double> caps = new EnumMap<>(Ground.class);
        for (Object each : array(plan, "caps")) {
            Map<?, ?> cap = asObject(each, "caps");
            caps.put(ground(cap.get("ground")), number(cap, "capW"));
        }
        List<KeptPlan.Part> parts = new ArrayList<>();
        for (Object each : array(plan, "sections")) {
            Map<?, ?> part = asObject(each, "sections");
            parts.add(new KeptPlan.Part(
                    String.valueOf(part.get("name")),
                    number(part, "fromM"),
                    number(part, "toM"),
                    number(part, "movingSeconds")));
        }
        Object name = course.get("name");
        return new KeptPlan(
                name == null ? null : name.toString(),
                number(course, "lengthM"),
                number(plan, "stoppedSeconds"),
                number(opening, "seconds"),
                number(opening, "capW"),
                caps,
                parts);
    }

    private static @Nullable Object value(JsonParser parser) {
        JsonToken token = parser.currentToken();
        if (token == JsonToken.START_OBJECT) {
            Map<String, @Nullable Object> object = new LinkedHashMap<>();
            while (parser.nextToken() != JsonToken.END_OBJECT) {
                String name = parser.currentName();
                parser.nextToken();
                object.put(name, value(parser));
            }
            return object;
        }
        if (token == JsonToken.START_ARRAY) {
            List<@Nullable Object> array = new ArrayList<>();
            while (parser.nextToken() != JsonToken.END_ARRAY) {
                array.add(value(parser));
            }
            return array;
        }
        if (token == JsonToken.VALUE_NUMBER_INT || token == JsonToken.VALUE_NUMBER_FLOAT) {
            return parser.getDoubleValue();
        }
        return token == JsonToken.VALUE_STRING ? parser.getString() : null;
    }

    private static Ground ground(@Nullable Object word) {
        for (Ground each : Ground.values()) {
            if (each.id().equals(word)) {
                return each;
            }
        }
        throw new IllegalArgumentException("names the ground \"" + word + "\", which no plan has" + WANTED);
    }

    private static double number(Map<?, ?> object, String name) {
        if (object.get(name) instanceof Double number) {
            return number;
        }
        throw new IllegalArgumentException("has no number \"" + name + "\"" + WANTED);
    }

    private static Map<?, ?> object(Map<?, ?> object, String name) {
        return asObject(object.get(name), name);
    }

    private static Map<?, ?> asObject(@Nullable Object value, String name) {
        if (value instanceof Map<?, ?> map) {
            return map;
        }
        throw new IllegalArgumentException("has no \"" + name + "\"" + WANTED);
    }

    private static List<?> array(Map<?, ?> object, String name) {
        if (object.get(name) instanceof List<?> list) {
            return list;
        }
        throw new IllegalArgumentException("has no \"" + name + "\"" + WANTED);
    }
}
