package io.github.wattledger.ride;

import java.io.Serializable;
import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * What a number may be: from a lower to an upper end, both included. {@code NaN} never is.
 *
 * @param low the lower end
 * @param high the upper end
 */
public record Bounds(double low, double high) implements Serializable {
    /** @throws IllegalArgumentException when the ends are out of order or not numbers */
    public Bounds {
        if (!(low <= high)) {
            throw new IllegalArgumentException("bounds " + low + " to " + high + ", expected low <= high");
        }
    }

    /** Whether a number lies within. */
    public boolean contains(double value) {
        return value >= low && value <= high;
    }

    /**
     * Refuses a number that lies outside; null, which stands for "not known", passes.
     *
     * @param name what the number is called
     * @throws IllegalArgumentException when it lies outside, with its name, the value and these bounds
     */
    public void require(String name, @Nullable Double value) {
        if (value != null && !contains(value)) {
            throw new IllegalArgumentException(name + " " + value + ", expected " + this);
        }
    }

    /** In words, for instance {@code 25 to 250}. */
    @Override
    public String toString() {
        return plain(low) + " to " + plain(high);
    }

    private static String plain(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }
}
