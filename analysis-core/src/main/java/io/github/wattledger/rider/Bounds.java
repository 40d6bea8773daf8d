package io.github.wattledger.rider;

import java.io.Serial;
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

    /** Degrees Celsius that the air of a ride can have. */
    public static final Bounds TEMPERATURE_C = new Bounds(-40, 60);

    /** Metres above the sea that a road can lie. */
    public static final Bounds ALTITUDE_M = new Bounds(-500, 9000);

    /** Pascals that the air on a road can have, not reduced to sea level. */
    public static final Bounds PRESSURE_PA = new Bounds(20_000, 110_000);

    /** Kilograms that a cubic metre of air on a road can have. */
    public static final Bounds AIR_DENSITY_KG_PER_M3 = new Bounds(0.3, 1.6);

    /** Seconds that a long best effort can last: from 20 minutes to two days. */
    public static final Bounds LONG_BEST_SECONDS = new Bounds(1200, 172_800);

    /** Seconds that a trial for critical power can last: the model is for 2 to 30 minutes. */
    public static final Bounds TRIAL_SECONDS = new Bounds(120, 1800);

    /** Watts that a trial for critical power can have. */
    public static final Bounds TRIAL_POWER_W = new Bounds(30, 1000);

    /**
     * Grams of carbohydrate that a rider can eat in an hour. In the field 6 to 136 were counted (Pfeiffer et al. 2012, Med
     * Sci Sports Exerc 44:344-351).
     */
    public static final Bounds EATEN_G_PER_HOUR = new Bounds(0, 180);

    /** Teeth that a chainring can have. */
    public static final Bounds CHAINRING_TEETH = new Bounds(16, 70);

    /** Teeth that a cog can have. */
    public static final Bounds COG_TEETH = new Bounds(8, 60);

    /** Metres that a wheel rolls in one turn. */
    public static final Bounds WHEEL_CIRCUMFERENCE_M = new Bounds(1.0, 2.6);

    /** Year of birth of a rider. Own choice. */
    public static final Bounds BIRTH_YEAR = new Bounds(1900, 2100);

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
     * @throws OutOfBoundsException when it lies outside, with its name, the value and these bounds
     */
    public void require(String name, @Nullable Double value) {
        if (value != null && !contains(value)) {
            throw new OutOfBoundsException(name, value, this);
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

    /** A number lies outside. The message names it as this library does; a caller with a better name asks for the parts. */
    public static final class OutOfBoundsException extends IllegalArgumentException {
        @Serial
        private static final long serialVersionUID = 1L;

        private final String name;
        private final double value;
        private final Bounds bounds;

        private OutOfBoundsException(String name, double value, Bounds bounds) {
            super(name + " " + value + ", expected " + bounds);
            this.name = name;
            this.value = value;
            this.bounds = bounds;
        }

        /** What the number is called in this library, with its unit, for instance {@code massKg}. */
        public String name() {
            return name;
        }

        /** The number, in the unit of its name; possibly {@code NaN}. */
        public double value() {
            return value;
        }

        /** What it may be, in the unit of its name. */
        public Bounds bounds() {
            return bounds;
        }
    }
}
