package io.github.wattledger.energy;

import java.io.Serializable;

/**
 * A number that is known only within wide limits. Whoever shows it shows the two ends.
 *
 * @param low the lower end of what is likely
 * @param middle the value with the middle of every assumption
 * @param high the upper end of what is likely
 */
public record Estimate(double low, double middle, double high) implements Serializable {
    /** @throws IllegalArgumentException when a number is not finite or they are not in order */
    public Estimate {
        if (!(low <= middle && middle <= high) || !Double.isFinite(low) || !Double.isFinite(high)) {
            throw new IllegalArgumentException(
                    "estimate " + low + ", " + middle + ", " + high + ", expected finite numbers in order");
        }
    }

    /**
     * The same estimate of a multiple.
     *
     * @param factor 0 or more, finite
     * @throws IllegalArgumentException when the factor is below 0 or not finite
     */
    public Estimate times(double factor) {
        if (!(factor >= 0)) {
            throw new IllegalArgumentException("factor " + factor + ", expected 0 or more");
        }
        return new Estimate(low * factor, middle * factor, high * factor);
    }
}
