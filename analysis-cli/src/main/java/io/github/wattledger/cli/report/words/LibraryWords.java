package io.github.wattledger.cli.report.words;

import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The library's sentences, in which every length, speed, mass and temperature is metric, in the units of a reader. */
public final class LibraryWords {
    private static final String NUMBER = "(-?\\d[\\d,]*(?:\\.\\d+)?)";

    /** One number, or two with a word between them, before a unit; what follows tells a change from a state. */
    private static final Pattern METRIC = Pattern.compile("(?<![\\w.,-])(?:" + NUMBER + "( to | and ))?" + NUMBER
            + " (km/h|km|kg|m/s|m|\u00B0C|deg C)(?![\\w/]|\\.\\w)( in a second)?");

    private final Units units;

    private LibraryWords(Units units) {
        this.units = units;
    }

    /**
     * A sentence with each number converted that has such a unit, to as many decimals as it had. For what the library says
     * alone; what a rider wrote is shown as it was written.
     */
    public static String of(String sentence, Units units) {
        return units == Units.METRIC ? sentence : new LibraryWords(units).converted(sentence);
    }

    private String converted(String sentence) {
        return METRIC.matcher(sentence).replaceAll(found -> Matcher.quoteReplacement(converted(found)));
    }

    private String converted(MatchResult found) {
        String unit = found.group(4);
        boolean isChange = found.group(5) != null;
        String first = found.group(1) == null ? "" : converted(found.group(1), unit, isChange) + found.group(2);
        String second = converted(found.group(3), unit, isChange);
        return first + second + " " + symbol(unit) + (isChange ? found.group(5) : "");
    }

    private String converted(String number, String unit, boolean isChange) {
        int point = number.indexOf('.');
        int decimals = point < 0 ? 0 : number.length() - point - 1;
        double ours = Double.parseDouble(number.replace(",", "")) * size(unit);
        double theirs = isChange ? unit(unit).ofDifference(ours) : unit(unit).of(ours);
        return Figures.grouped(theirs, decimals);
    }

    /** How much of the library's unit a unit of its sentences is. */
    private static double size(String unit) {
        return switch (unit) {
            case "km" -> ReportUnit.KILOMETRE.size();
            case "km/h" -> ReportUnit.KILOMETRE_AN_HOUR.size();
            default -> 1;
        };
    }

    private ReportUnit unit(String unit) {
        return switch (unit) {
            case "km" -> units.distance();
            case "km/h" -> units.speed();
            case "kg" -> units.mass();
            case "m" -> units.height();
            case "m/s" -> units.wind();
            default -> units.temperature();
        };
    }

    private String symbol(String unit) {
        ReportUnit theirs = unit(unit);
        return theirs == units.temperature() ? "deg " + theirs.symbol() : theirs.symbol();
    }
}
