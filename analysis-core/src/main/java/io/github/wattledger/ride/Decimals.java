package io.github.wattledger.ride;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Numbers in sentences, the same on every machine. Not by the platform's formatter, which loads the tables of the locale
 * first.
 */
public final class Decimals {
    private Decimals() {}

    /**
     * A number with so many decimals, halves rounded away from zero.
     *
     * @param value a finite number
     * @param decimals 0 or more
     * @throws NumberFormatException when the number is not finite
     */
    public static String of(double value, int decimals) {
        return BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.HALF_UP)
                .toPlainString();
    }
}
