package io.github.wattledger.cli;

import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.replay.Adjustment;
import io.github.wattledger.ride.Decimals;
import io.github.wattledger.rider.Bounds;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.TypeConversionException;

/**
 * A unit in which numbers are typed.
 *
 * @param symbol how it is written in messages; empty for a plain number
 * @param imperialSymbol how the unit of a reader of miles and pounds is written, one of those that may stand behind a number;
 *     that of this unit where there is no other
 * @param inUnit what may stand behind a number, in lower case, and how many of this unit one of it is
 * @param zeroAt for what has another zero: which number of it is zero of this unit
 */
record Unit(String symbol, String imperialSymbol, Map<String, Double> inUnit, Map<String, Double> zeroAt) {
    static final Unit WATT = new Unit("W", Map.of("w", 1.0, "watt", 1.0, "watts", 1.0));
    static final Unit BEATS_PER_MINUTE = new Unit("bpm", Map.of("bpm", 1.0));

    /** Beside it the international avoirdupois pound of 1959. */
    static final Unit KILOGRAM = new Unit("kg", "lb", Map.of("kg", 1.0, "lb", 0.45359237, "lbs", 0.45359237));

    static final Unit SQUARE_METRE = new Unit("m2", Map.of("m2", 1.0, "m\u00B2", 1.0));

    /** Beside it the international foot of 1959. */
    static final Unit METRE = new Unit("m", "ft", Map.of("m", 1.0, "ft", 0.3048));

    /** Beside it the degree Fahrenheit. */
    static final Unit CELSIUS = new Unit(
            "C",
            "F",
            Map.of("c", 1.0, "\u00B0c", 1.0, "f", 5 / 9.0, "\u00B0f", 5 / 9.0),
            Map.of("f", 32.0, "\u00B0f", 32.0));

    static final Unit HECTOPASCAL = new Unit("hPa", Map.of("hpa", 1.0, "mbar", 1.0));
    static final Unit KILOGRAM_PER_CUBIC_METRE = new Unit("kg/m3", Map.of("kg/m3", 1.0, "kg/m\u00B3", 1.0));

    /** Beside it the kilometre and the international mile of 1959 in an hour. */
    static final Unit METRE_PER_SECOND =
            new Unit("m/s", "mph", Map.of("m/s", 1.0, "km/h", 1 / 3.6, "kmh", 1 / 3.6, "mph", 0.44704));

    /** Beside it the international mile of 1959 in an hour. */
    static final Unit KILOMETRE_PER_HOUR = new Unit("km/h", "mph", Map.of("km/h", 1.0, "kmh", 1.0, "mph", 1.609344));

    /** The length of a road. Beside it the international mile of 1959. */
    static final Unit KILOMETRE = new Unit("km", "mi", Map.of("km", 1.0, "mi", 1.609344));

    static final Unit DEGREE = new Unit("degrees", Map.of("degrees", 1.0, "\u00B0", 1.0));

    /** A plain number. */
    static final Unit NONE = new Unit("", Map.of());

    private static final double WHOLE_FROM = 10;
    private static final double TENTHS = 10;
    private static final double SAME = 1e-6;

    private static final Pattern NUMBER = Pattern.compile("([+-]?)(\\d{1,9}\\.?\\d{0,9}|\\.\\d{1,9})\\s*(\\S*)");
    private static final Pattern WITH_COMMA = Pattern.compile("[+-]?(\\d+),(\\d+)\\D*");

    Unit(String symbol, Map<String, Double> inUnit) {
        this(symbol, symbol, inUnit);
    }

    Unit(String symbol, String imperialSymbol, Map<String, Double> inUnit) {
        this(symbol, imperialSymbol, inUnit, Map.of());
    }

    /** A number of this unit with the symbol of the reader's. */
    String words(double number, int decimals, Units units) {
        boolean isImperial = units == Units.IMPERIAL;
        return Decimals.of(isImperial ? imperial(number) : number, decimals)
                + afterNumber(isImperial ? imperialSymbol : symbol);
    }

    /** What is expected of a number, for messages to a reader of these units. */
    String expected(Bounds bounds, Units units) {
        return units == Units.IMPERIAL && !imperialSymbol.equals(symbol)
                ? "expected " + inward(imperial(bounds.low()), true) + " to " + inward(imperial(bounds.high()), false)
                        + afterNumber(imperialSymbol)
                : "expected " + bounds + afterNumber(symbol);
    }

    private static String afterNumber(String symbol) {
        return symbol.isEmpty() ? "" : " " + symbol;
    }

    private double imperial(double number) {
        String word = imperialSymbol.toLowerCase(Locale.ROOT);
        return number / inUnit.getOrDefault(word, 1.0) + zeroAt.getOrDefault(word, 0.0);
    }

    /** An end of a range in whole numbers, below ten in tenths, rounded so that the number itself lies within the range. */
    private static String inward(double end, boolean isLow) {
        double steps = Math.abs(end) < WHOLE_FROM ? TENTHS : 1;
        // A whole number must not be lost to the last bit of a division.
        double rounded = Math.rint(end * steps);
        boolean isWhole = Math.abs(rounded - end * steps) < SAME;
        double inward = isWhole ? rounded : isLow ? Math.ceil(end * steps) : Math.floor(end * steps);
        return Decimals.of(inward / steps, inward % steps == 0 ? 0 : 1);
    }

    /**
     * A number such as {@code 250}, {@code 250W} or {@code 250 W}, in this unit.
     *
     * @throws TypeConversionException when it is none, or lies outside the bounds
     */
    double number(String typed, Bounds bounds) {
        Function<Units, String> expected = units -> expected(bounds, units);
        double number = inThisUnit(written(typed, expected), expected);
        if (!bounds.contains(number)) {
            throw new RefusedValue(expected);
        }
        return number;
    }

    /**
     * A change of a number: a value ({@code 72kg}), a difference ({@code -3kg}) or a share more or less ({@code +5%}).
     *
     * @throws TypeConversionException when it is none, or a value outside the bounds
     */
    Adjustment change(String typed, Bounds bounds, String examples) {
        return change(typed, bounds, examples, examples);
    }

    /**
     * A change of a number, with other examples for a reader of miles and pounds.
     *
     * @throws TypeConversionException when it is none, or a value outside the bounds
     */
    Adjustment change(String typed, Bounds bounds, String examples, String imperialExamples) {
        Function<Units, String> expected = units ->
                "expected a value or a change, such as " + (units == Units.IMPERIAL ? imperialExamples : examples);
        Matcher written = written(typed, expected);
        boolean isSigned = !written.group(1).isEmpty();
        if (written.group(3).equals("%")) {
            if (!isSigned) {
                throw new RefusedValue(expected);
            }
            return Adjustment.times(1 + Double.parseDouble(written.group(1) + written.group(2)) / 100);
        }
        double number = inThisUnit(written, expected);
        if (!isSigned && !bounds.contains(number)) {
            throw new RefusedValue(units -> expected(bounds, units));
        }
        return isSigned ? Adjustment.by(number) : Adjustment.to(number);
    }

    private static Matcher written(String typed, Function<Units, String> expected) {
        String stripped = typed.strip();
        Matcher comma = WITH_COMMA.matcher(stripped);
        if (comma.matches()) {
            throw new TypeConversionException(
                    "write the decimals with a point, such as " + comma.group(1) + "." + comma.group(2));
        }
        Matcher number = NUMBER.matcher(stripped);
        if (!number.matches()) {
            throw new RefusedValue(expected);
        }
        return number;
    }

    private double inThisUnit(Matcher written, Function<Units, String> expected) {
        double number = Double.parseDouble(written.group(1) + written.group(2));
        String word = written.group(3).toLowerCase(Locale.ROOT);
        Double factor = word.isEmpty() ? Double.valueOf(1) : inUnit.get(word);
        if (factor == null) {
            throw new RefusedValue(expected);
        }
        return (number - zeroAt.getOrDefault(word, 0.0)) * factor;
    }
}
