package io.github.wattledger.cli.report;

import io.github.wattledger.ride.Decimals;
import io.github.wattledger.ride.Interval;

/**
 * Numbers as people read them, the same on every machine. Written by hand because the platform's formatter loads the
 * tables of the locale first.
 */
public final class Figures {
    private static final int MINUTE = 60;
    private static final int HOUR = 3600;

    private Figures() {}

    /** A number with so many decimals, halves rounded away from zero. */
    public static String decimal(double value, int decimals) {
        return Decimals.of(value, decimals);
    }

    /** A number with one decimal below 10 and none above, a decimal 0 left out. */
    public static String brief(double value) {
        String text = decimal(value, Math.abs(value) < 9.95 ? 1 : 0);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }

    /** Whole watts, for instance {@code 252 W}. */
    public static String watts(double value) {
        return decimal(value, 0) + " W";
    }

    /** Whole beats per minute. */
    public static String beats(double value) {
        return decimal(value, 0) + " bpm";
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

    /** Elapsed time, {@code h:mm:ss}. */
    public static String clock(double seconds) {
        return Interval.clock((int) Math.round(seconds));
    }

    /** Elapsed time without seconds, {@code h:mm}, cut off as on a clock. */
    public static String shortClock(int seconds) {
        return seconds / HOUR + ":" + two(seconds / MINUTE % 60);
    }

    /** A length of time in the unit that suits it: {@code 45 s}, {@code 70 min}, {@code 7:02 h}. */
    public static String span(double seconds) {
        if (seconds < 2 * MINUTE) {
            return decimal(seconds, 0) + " s";
        }
        if (seconds < 2 * HOUR) {
            return minutes(seconds / MINUTE);
        }
        long minutes = Math.round(seconds / MINUTE);
        return minutes / 60 + ":" + two(minutes % 60) + " h";
    }

    /** Kilometres from metres, one decimal. */
    public static String kilometres(double metres) {
        return decimal(metres / 1000, 1);
    }

    private static String two(long number) {
        return number < 10 ? "0" + number : Long.toString(number);
    }
}
