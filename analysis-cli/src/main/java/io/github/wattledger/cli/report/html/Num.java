package io.github.wattledger.cli.report.html;

import io.github.wattledger.cli.report.words.Figures;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.function.DoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * A number of a page: as people read it, and as a program does.
 *
 * @param path where the same number stands in the JSON report, for instance {@code load.workKJ}; empty where it does not
 * @param value the number, plain, at most three decimals, of a coefficient five; null when it could not be computed
 * @param text the number in words, or why there is none
 */
public record Num(String path, @Nullable String value, String text) {
    private static final int DECIMALS = 3; // as in the JSON report
    private static final int FINE_DECIMALS = 5; // as there for coefficients

    static Num of(String path, @Nullable Double value, DoubleFunction<String> words) {
        return of(path, value, words, "not known");
    }

    static Num of(String path, @Nullable Double value, DoubleFunction<String> words, String otherwise) {
        return value == null || !Double.isFinite(value)
                ? new Num(path, null, otherwise)
                : new Num(path, plain(value, DECIMALS), words.apply(value));
    }

    /** A coefficient, of which five decimals count. */
    static Num fine(String path, @Nullable Double value, DoubleFunction<String> words) {
        return fine(path, value, words, "not known");
    }

    static Num fine(String path, @Nullable Double value, DoubleFunction<String> words, String otherwise) {
        return value == null || !Double.isFinite(value)
                ? new Num(path, null, otherwise)
                : new Num(path, plain(value, FINE_DECIMALS), words.apply(value));
    }

    /** A number that the JSON report does not have; empty where there is none. */
    static Num inWords(String text) {
        return new Num("", null, text);
    }

    /** A number in figures alone. */
    static Num whole(String path, int value) {
        return new Num(path, Integer.toString(value), Integer.toString(value));
    }

    /** A number with one decimal. */
    static Num tenths(String path, @Nullable Double value) {
        return tenths(path, value, "");
    }

    /** A number with one decimal, and its unit. */
    static Num tenths(String path, @Nullable Double value, String unit) {
        return of(path, value, number -> Figures.decimal(number, 1) + unit);
    }

    /** A difference with its sign and one decimal. */
    static Num signed(String path, @Nullable Double value) {
        return of(path, value, number -> Figures.signed(number, 1));
    }

    /** A number without decimals, and what follows it: its unit or a mark. */
    static Num rounded(String path, @Nullable Double value, String unit) {
        return of(path, value, number -> Figures.decimal(number, 0) + unit);
    }

    private static String plain(double value, int decimals) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }
}
