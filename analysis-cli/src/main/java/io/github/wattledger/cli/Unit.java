package io.github.wattledger.cli;

import io.github.wattledger.replay.Adjustment;
import io.github.wattledger.rider.Bounds;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.TypeConversionException;

/**
 * A unit in which numbers are typed.
 *
 * @param symbol how it is written in messages; empty for a plain number
 * @param inUnit what may stand behind a number, in lower case, and how many of this unit one of it is
 * @param zeroAt for what has another zero: which number of it is zero of this unit
 */
record Unit(String symbol, Map<String, Double> inUnit, Map<String, Double> zeroAt) {
    static final Unit WATT = new Unit("W", Map.of("w", 1.0, "watt", 1.0, "watts", 1.0));
    static final Unit BEATS_PER_MINUTE = new Unit("bpm", Map.of("bpm", 1.0));

    /** Beside it the international avoirdupois pound of 1959. */
    static final Unit KILOGRAM = new Unit("kg", Map.of("kg", 1.0, "lb", 0.45359237, "lbs", 0.45359237));

    static final Unit SQUARE_METRE = new Unit("m2", Map.of("m2", 1.0, "m\u00B2", 1.0));

    /** Beside it the international foot of 1959. */
    static final Unit METRE = new Unit("m", Map.of("m", 1.0, "ft", 0.3048));

    /** Beside it the degree Fahrenheit. */
    static final Unit CELSIUS = new Unit(
            "C",
            Map.of("c", 1.0, "\u00B0c", 1.0, "f", 5 / 9.0, "\u00B0f", 5 / 9.0),
            Map.of("f", 32.0, "\u00B0f", 32.0));

    static final Unit HECTOPASCAL = new Unit("hPa", Map.of("hpa", 1.0, "mbar", 1.0));
    static final Unit KILOGRAM_PER_CUBIC_METRE = new Unit("kg/m3", Map.of("kg/m3", 1.0, "kg/m\u00B3", 1.0));

    /** Beside it the kilometre and the international mile of 1959 in an hour. */
    static final Unit METRE_PER_SECOND =
            new Unit("m/s", Map.of("m/s", 1.0, "km/h", 1 / 3.6, "kmh", 1 / 3.6, "mph", 0.44704));

    /** Beside it the international mile of 1959 in an hour. */
    static final Unit KILOMETRE_PER_HOUR = new Unit("km/h", Map.of("km/h", 1.0, "kmh", 1.0, "mph", 1.609344));

    static final Unit DEGREE = new Unit("degrees", Map.of("degrees", 1.0, "\u00B0", 1.0));

    /** A plain number. */
    static final Unit NONE = new Unit("", Map.of());

    private static final Pattern NUMBER = Pattern.compile("([+-]?)(\\d{1,9}\\.?\\d{0,9}|\\.\\d{1,9})\\s*(\\S*)");
    private static final Pattern WITH_COMMA = Pattern.compile("[+-]?(\\d+),(\\d+)\\D*");

    Unit(String symbol, Map<String, Double> inUnit) {
        this(symbol, inUnit, Map.of());
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
        Double factor = word.isEmpty() ? Double.valueOf(1) : inUnit.get(word);
        if (factor == null) {
            throw new TypeConversionException(expected);
        }
        return (number - zeroAt.getOrDefault(word, 0.0)) * factor;
    }
}
