package io.github.wattledger.replay;

import io.github.wattledger.rig.Measure;
import java.io.Serializable;

/**
 * A change of a number: another value, a difference added to it, or a factor.
 *
 * @param kind how {@code amount} is meant
 * @param amount the value, the difference or the factor
 */
public record Adjustment(Kind kind, double amount) implements Serializable {
    /** How an amount is meant. */
    public enum Kind {
        /** Instead of the number. */
        TO,
        /** Added to the number. */
        BY,
        /** Multiplied with the number. */
        TIMES
    }

    /** @throws IllegalArgumentException when the amount is not finite */
    public Adjustment {
        if (!Double.isFinite(amount)) {
            throw new IllegalArgumentException("amount " + amount + ", expected a finite number");
        }
    }

    /** This value instead of the number. */
    public static Adjustment to(double value) {
        return new Adjustment(Kind.TO, value);
    }

    /** The number and this difference added to it. */
    public static Adjustment by(double difference) {
        return new Adjustment(Kind.BY, difference);
    }

    /** The number times this factor. */
    public static Adjustment times(double factor) {
        return new Adjustment(Kind.TIMES, factor);
    }

    /** The number once adjusted. */
    public double of(double number) {
        return switch (kind) {
            case TO -> amount;
            case BY -> number + amount;
            case TIMES -> number * amount;
        };
    }

    /**
     * The changed number, where the number is one possible value of a measure. Where the new value and the measure were both
     * given they come from one source, so that both are off by the same factor.
     *
     * @param number the possible value
     * @param asItIs the measure
     */
    double of(double number, Measure asItIs) {
        boolean areOffTogether = kind == Kind.TO && asItIs.origin() == Measure.Origin.GIVEN;
        return areOffTogether ? amount * number / asItIs.value() : of(number);
    }
}
