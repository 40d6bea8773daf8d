package io.github.wattledger.cli.report.words;

import io.github.wattledger.ride.Decimals;
import io.github.wattledger.ride.Interval;
import java.util.Locale;

/** Numbers as people read them, the same on every machine whatever its language. */
public final class Figures {
    private static final int MINUTE = 60;
    private static final int HOUR = 3600;
    private static final double TEN = 10;
    private static final double GRAMS = 5;

    private Figures() {}

    /** A number with so many decimals, halves rounded away from zero. */
    public static String decimal(double value, int decimals) {
        return Decimals.of(value, decimals);
    }

    /** A number with so many decimals, and a comma after the thousands. */
    public static String grouped(double value, int decimals) {
        return String.format(Locale.ROOT, "%,." + decimals + "f", value);
    }

    /** A number with one decimal below 10 and none above; a decimal 0 is left out. */
    public static String brief(double value) {
        String text = decimal(value, Math.abs(value) < 9.95 ? 1 : 0);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }

    /** A difference with its sign, for instance {@code +3.2} or {@code -0.5}; what rounds to 0 has no sign. */
    public static String signed(double value, int decimals) {
        String text = decimal(value, decimals);
        boolean isZero = Double.parseDouble(text) == 0;
        if (isZero) {
            return text.startsWith("-") ? text.substring(1) : text;
        }
        return value > 0 ? "+" + text : text;
    }

    /** Whole watts, for instance {@code 252 W}. */
    public static String watts(double value) {
        return decimal(value, 0) + " W";
    }

    /** Whole beats per minute. */
    public static String beats(double value) {
        return decimal(value, 0) + " bpm";
    }

    /**
     * Energy that a model says a body used, from kilojoules, without its unit: three digits that count, whole tens at least.
     * Its two ends lie a fifth apart.
     */
    public static String modelledKilojoules(double value) {
        double step = Math.max(TEN, Math.pow(TEN, Math.floor(Math.log10(Math.max(1, value))) - 2));
        return decimal(step * Math.rint(value / step), 0);
    }

    /** Food that a model says a body used or can use, from grams, without its unit: to five grams. */
    public static String modelledGrams(double value) {
        return decimal(GRAMS * Math.rint(value / GRAMS), 0);
    }

    /** Watts a heartbeat, to a hundredth. */
    public static String wattsABeat(double value) {
        return decimal(value, 2) + " W a beat";
    }

    /** Percent, for instance {@code 14 %} or {@code 3.2 %}. */
    public static String percent(double value) {
        return brief(value) + " %";
    }

    /** A fraction as whole percent. */
    public static String fractionAsPercent(double fraction) {
        return decimal(fraction * 100, 0) + " %";
    }

    /** Minutes, for instance {@code 4.5 min} or {@code 41 min}. */
    public static String minutes(double value) {
        return brief(value) + " min";
    }

    /** A range of minutes, for instance {@code 4.0 to 9.2 min}; {@code nothing} where both ends are 0. */
    public static String minutes(double low, double high) {
        String from = decimal(low, 1);
        String to = decimal(high, 1);
        if (to.equals("0.0")) {
            return "nothing";
        }
        return from.equals(to) ? to + " min" : from + " to " + to + " min";
    }

    /** Elapsed time, {@code h:mm:ss}. */
    public static String clock(double seconds) {
        return Interval.clock((int) Math.round(seconds));
    }

    /** Elapsed time without seconds, {@code h:mm}, cut off as on a clock. */
    public static String shortClock(int seconds) {
        return hoursAndMinutes(seconds / MINUTE);
    }

    /** A length of time in the units that suit it: {@code 45 s}, {@code 70 min}, {@code 7 h 2 min}. */
    public static String span(double seconds) {
        if (seconds < 2 * MINUTE) {
            return decimal(seconds, 0) + " s";
        }
        if (seconds < 2 * HOUR) {
            return minutes(seconds / MINUTE);
        }
        long minutes = Math.round(seconds / MINUTE);
        return minutes / MINUTE + " h" + (minutes % MINUTE == 0 ? "" : " " + minutes % MINUTE + " min");
    }

    /** The duration of an effort in one unit where it fits: {@code 5 s}, {@code 20 min}, {@code 2 h}, else a clock. */
    public static String duration(double seconds) {
        if (seconds < MINUTE) {
            return decimal(seconds, 0) + " s";
        }
        if (seconds <= HOUR && seconds % MINUTE == 0) {
            return decimal(seconds / MINUTE, 0) + " min";
        }
        return seconds % HOUR == 0 ? decimal(seconds / HOUR, 0) + " h" : clock(seconds);
    }

    /** A number of things, for instance {@code 1 ride} or {@code 3 rides}. */
    public static String counted(int count, String thing) {
        return count + " " + thing + (count == 1 ? "" : "s");
    }

    private static String hoursAndMinutes(long minutes) {
        return String.format(Locale.ROOT, "%d:%02d", minutes / 60, minutes % 60);
    }
}
