package io.github.wattledger.rider;

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
    /** Kilograms that a rider can have. */
    public static final Bounds RIDER_MASS_KG = new Bounds(25, 250);

    /** Kilograms that a bicycle with its load can have. */
    public static final Bounds BIKE_MASS_KG = new Bounds(4, 80);

    /** Kilograms that rider and bicycle can have together: from the lightest of both to the heaviest of both. */
    public static final Bounds RIG_MASS_KG =
            new Bounds(RIDER_MASS_KG.low + BIKE_MASS_KG.low, RIDER_MASS_KG.high + BIKE_MASS_KG.high);

    /** Watts that a threshold can be. */
    public static final Bounds THRESHOLD_POWER_W = new Bounds(30, 700);

    /** Beats per minute that a threshold can be. */
    public static final Bounds THRESHOLD_HEART_RATE_BPM = new Bounds(60, 230);

    /** Beats per minute that a maximum can be. */
    public static final Bounds MAXIMUM_HEART_RATE_BPM = new Bounds(80, 240);

    /** Square metres of drag area: from a record attempt behind a fairing to upright in a loose coat. */
    public static final Bounds DRAG_AREA_M2 = new Bounds(0.1, 1.0);

    /** Coefficients of rolling resistance: from a polished track to loose sand. */
    public static final Bounds ROLLING_RESISTANCE = new Bounds(0.001, 0.05);

    /** Watts that critical power can be. */
    public static final Bounds CRITICAL_POWER_W = THRESHOLD_POWER_W;

    /** Kilojoules that W′ can be. */
    public static final Bounds W_PRIME_KJ = new Bounds(2, 60);

    /** Seconds that a long best effort can last: from 20 minutes to two days. */
    public static final Bounds LONG_BEST_SECONDS = new Bounds(1200, 172_800);

    /** Teeth that a chainring can have. */
    public static final Bounds CHAINRING_TEETH = new Bounds(16, 70);

    /** Teeth that a cog can have. */
    public static final Bounds COG_TEETH = new Bounds(8, 60);

    /** Metres that a wheel rolls in one turn. */
    public static final Bounds WHEEL_CIRCUMFERENCE_M = new Bounds(1.0, 2.6);

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

    /**
     * Refuses a number that has to be above 0 and has no upper bound.
     *
     * @param name what the number is called
     * @throws IllegalArgumentException when it is 0, below 0, infinite or {@code NaN}
     */
    public static void requireAboveZero(String name, double value) {
        if (!(value > 0 && Double.isFinite(value))) {
            throw new IllegalArgumentException(name + " " + value + ", expected above 0");
        }
    }

    /**
     * Refuses a number that has to be 0 or more and has no upper bound.
     *
     * @param name what the number is called
     * @throws IllegalArgumentException when it is below 0, infinite or {@code NaN}
     */
    public static void requireNotNegative(String name, double value) {
        if (!(value >= 0 && Double.isFinite(value))) {
            throw new IllegalArgumentException(name + " " + value + ", expected 0 or more");
        }
    }

    /** The number itself where it lies within, otherwise the end that is nearer; {@code NaN} stays {@code NaN}. */
    public double nearest(double value) {
        return Math.max(low, Math.min(high, value));
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
