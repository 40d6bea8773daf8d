package io.github.wattledger.replay;

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
}
