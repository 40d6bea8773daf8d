package io.github.wattledger.cli;

import io.github.wattledger.replay.Adjustment;
import io.github.wattledger.rider.Bounds;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.TypeConversionException;

/** Units in which numbers are typed: the one that is taken where none is written, and others that people write. */
enum Unit {
    WATT("W", List.of(new Spelled("w"), new Spelled("watt"), new Spelled("watts"))),
    BEATS_PER_MINUTE("bpm", List.of(new Spelled("bpm"))),
    /** The pound is the international avoirdupois pound of 1959. */
    KILOGRAM("kg", List.of(new Spelled("kg"), new Spelled("lb", 0.45359237), new Spelled("lbs", 0.45359237))),
    SQUARE_METRE("m2", List.of(new Spelled("m2"), new Spelled("m\u00B2"))),
    /** The foot is the international foot of 1959. */
    METRE("m", List.of(new Spelled("m"), new Spelled("ft", 0.3048))),
    CELSIUS("C", List.of(new Spelled("c"), new Spelled("\u00B0c"))),
    HECTOPASCAL("hPa", List.of(new Spelled("hpa"), new Spelled("mbar"))),
    KILOGRAM_PER_CUBIC_METRE("kg/m3", List.of(new Spelled("kg/m3"), new Spelled("kg/m\u00B3"))),
    /** A plain number. */
    NONE("", List.of());

    private static final Pattern NUMBER =
            Pattern.compile("([+-]?)((?:\\d+\\.?\\d*|\\.\\d+))\\s*(\\S*)", Pattern.UNICODE_CHARACTER_CLASS);
    private static final Pattern WITH_COMMA = Pattern.compile("[+-]?(\\d+),(\\d+)\\D*");

    private final String symbol;
    private final List<Spelled> spellings;

    Unit(String symbol, List<Spelled> spellings) {
        this.symbol = symbol;
        this.spellings = spellings;
    }

    /**
     * A unit as it may be written.
     *
     * @param word in lower case
     * @param inBase how many of the unit taken without a word it is
     */
    private record Spelled(String word, double inBase) {
        Spelled(String word) {
            this(word, 1);
        }
    }

    /** How the unit is written in a message, with a blank before it; empty for a plain number. */
    String afterNumber() {
        return symbol.isEmpty() ? "" : " " + symbol;
    }

    /** What is expected of a number, for messages. */
    String expected(Bounds bounds) {
        return "expected " + bounds + afterNumber();
    }

    /**
     * A number such as {@code 250}, {@code 250W} or {@code 250 W}, in this unit.
     *
     * @throws TypeConversionException when it is none, or lies outside the bounds
     */
    double number(String typed, Bounds bounds) {
        double number = inThisUnit(written(typed, expected(bounds)), expected(bounds));
        if (!bounds.contains(number)) {
            throw new TypeConversionException(expected(bounds));
        }
        return number;
    }

    /**
     * A change of a number: a value ({@code 72kg}), a difference ({@code -3kg}) or a share more or less ({@code +5%}).
     *
     * @throws TypeConversionException when it is none, or a value outside the bounds
     */
    Adjustment change(String typed, Bounds bounds, String examples) {
        String expected = "expected a value or a change, such as " + examples;
        Matcher written = written(typed, expected);
        boolean isSigned = !written.group(1).isEmpty();
        if (written.group(3).equals("%")) {
            if (!isSigned) {
                throw new TypeConversionException(expected);
            }
            return Adjustment.times(1 + Double.parseDouble(written.group(1) + written.group(2)) / 100);
        }
        double number = inThisUnit(written, expected);
        if (!isSigned && !bounds.contains(number)) {
            throw new TypeConversionException(expected(bounds));
        }
        return isSigned ? Adjustment.by(number) : Adjustment.to(number);
    }

    private static Matcher written(String typed, String expected) {
        String stripped = typed.strip();
        Matcher comma = WITH_COMMA.matcher(stripped);
        if (comma.matches()) {
            throw new TypeConversionException(
                    "write the decimals with a point, such as " + comma.group(1) + "." + comma.group(2));
        }
        Matcher number = NUMBER.matcher(stripped);
        if (!number.matches()) {
            throw new TypeConversionException(expected);
        }
        return number;
    }

    private double inThisUnit(Matcher written, String expected) {
        double number = Double.parseDouble(written.group(1) + written.group(2));
        String word = written.group(3).toLowerCase(Locale.ROOT);
        if (word.isEmpty()) {
            return number;
        }
        return spellings.stream()
                .filter(spelling -> spelling.word().equals(word))
                .mapToDouble(spelling -> number * spelling.inBase())
                .findFirst()
                .orElseThrow(() -> new TypeConversionException(expected));
    }
}
