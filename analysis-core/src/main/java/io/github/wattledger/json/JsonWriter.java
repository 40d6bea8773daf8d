package io.github.wattledger.json;

import io.github.wattledger.ride.Series;
import io.github.wattledger.ride.StartTime;
import java.io.StringWriter;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.PrettyPrinter;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.core.util.DefaultIndenter;
import tools.jackson.core.util.DefaultPrettyPrinter;
import tools.jackson.core.util.Separators;

/**
 * Writes the names and values of a document in the way that all documents of this project share: what is not known is
 * {@code null}, never 0, and a number has at most three decimals unless its place asks for more.
 */
final class JsonWriter {
    private static final int DECIMALS = 3; // finer than any sensor here, coarse enough to hide binary fractions

    private final JsonGenerator json;

    private JsonWriter(JsonGenerator json) {
        this.json = json;
    }

    /**
     * Gives one document of a schema; lines end with a line feed on every system.
     *
     * @param schema the name of the schema, which is the first value of the document
     * @param body writes the other names and values
     */
    static String document(String schema, Consumer<JsonWriter> body) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(new Indented(), text)) {
            json.writeStartObject();
            json.writeStringProperty("schema", schema);
            body.accept(new JsonWriter(json));
            json.writeEndObject();
        }
        return text.append('\n').toString();
    }

    /** Begins an object, which {@link #end()} ends. */
    void begin(String name) {
        json.writeName(name).writeStartObject();
    }

    /** Ends the object that was begun last. */
    void end() {
        json.writeEndObject();
    }

    /** An object, or {@code null} where there is nothing; the body writes the names and values of the object. */
    <T> void object(String name, @Nullable T value, Consumer<? super T> body) {
        if (value == null) {
            none(name);
        } else {
            begin(name);
            body.accept(value);
            end();
        }
    }

    /** An array with one object for each element; the body writes the names and values of an object. */
    <T> void objects(String name, Iterable<? extends T> elements, Consumer<T> body) {
        json.writeName(name).writeStartArray();
        for (T element : elements) {
            json.writeStartObject();
            body.accept(element);
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    /** An array of texts. */
    void strings(String name, List<String> values) {
        json.writeName(name).writeStartArray();
        values.forEach(json::writeString);
        json.writeEndArray();
    }

    /** An array with the values of a series, {@code null} where nothing was measured. */
    void series(String name, Series values) {
        json.writeName(name).writeStartArray();
        for (int i = 0; i < values.size(); i++) {
            if (values.isMeasured(i) && Double.isFinite(values.get(i))) {
                json.writeNumber(plain(values.get(i), DECIMALS));
            } else {
                json.writeNull();
            }
        }
        json.writeEndArray();
    }

    /** A name without a value. */
    void none(String name) {
        json.writeNullProperty(name);
    }

    void string(String name, @Nullable String value) {
        if (value == null) {
            json.writeNullProperty(name);
        } else {
            json.writeStringProperty(name, value);
        }
    }

    /** When a ride began, on the rider's clock where the file knows it and in UTC otherwise; null without dates. */
    void startTime(Instant start, @Nullable Integer utcOffsetSeconds) {
        string("startTime", StartTime.of(start, utcOffsetSeconds).iso());
    }

    /** A calendar day, for instance {@code 2026-05-02}. */
    void day(String name, @Nullable LocalDate value) {
        string(name, value == null ? null : value.toString());
    }

    void flag(String name, boolean value) {
        json.writeBooleanProperty(name, value);
    }

    void flagOrNull(String name, @Nullable Boolean value) {
        if (value == null) {
            json.writeNullProperty(name);
        } else {
            json.writeBooleanProperty(name, value);
        }
    }

    void whole(String name, long value) {
        json.writeNumberProperty(name, value);
    }

    void wholeOrNull(String name, @Nullable Integer value) {
        if (value == null) {
            json.writeNullProperty(name);
        } else {
            json.writeNumberProperty(name, value);
        }
    }

    /** A constant by its word: its name in lower case, with hyphens between its parts. */
    void word(String name, Enum<?> constant) {
        string(name, constant.name().toLowerCase(Locale.ROOT).replace('_', '-'));
    }

    /** A number to three decimals. */
    void number(String name, @Nullable Double value) {
        number(name, value, DECIMALS);
    }

    /** A number to so many decimals; one that is not finite is {@code null}. */
    void number(String name, @Nullable Double value, int decimals) {
        if (value == null || !Double.isFinite(value)) {
            json.writeNullProperty(name);
        } else {
            json.writeName(name).writeNumber(plain(value, decimals));
        }
    }

    /** A finite number without exponent, trailing zeros or minus zero. */
    private static String plain(double value, int decimals) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    /** Two spaces a level and line feeds on every system, so that the same review gives the same bytes. */
    private static final class Indented extends ObjectWriteContext.Base {
        @Override
        public PrettyPrinter getPrettyPrinter() {
            DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
            Separators colonAfterName = Separators.createDefaultInstance()
                    .withObjectNameValueSpacing(Separators.Spacing.AFTER)
                    .withArrayEmptySeparator("")
                    .withObjectEmptySeparator("");
            return new DefaultPrettyPrinter(colonAfterName)
                    .withObjectIndenter(indenter)
                    .withArrayIndenter(indenter);
        }

        @Override
        public boolean hasPrettyPrinter() {
            return true;
        }
    }
}
