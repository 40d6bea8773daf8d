package io.github.wattledger.pacing;

import java.io.Serial;
import java.io.Serializable;
import java.util.EnumMap;

/** A value for every {@link JudgementLimit}. */
public final class JudgementLimits implements Serializable {
    @Serial
    private static final long serialVersionUID = 1L;

    /** Every limit at its usual value. */
    public static final JudgementLimits USUAL = new JudgementLimits(new EnumMap<>(JudgementLimit.class));

    private final EnumMap<JudgementLimit, Double> changed;

    private JudgementLimits(EnumMap<JudgementLimit, Double> changed) {
        this.changed = changed;
    }

    /** The value of a limit, in the unit at the end of its name; a limit without a unit is a ratio. */
    public double get(JudgementLimit limit) {
        return changed.getOrDefault(limit, limit.usual());
    }

    /** The value of a limit in whole seconds. */
    int seconds(JudgementLimit limit) {
        return (int) get(limit);
    }

    /**
     * These limits with another value for one of them.
     *
     * @throws IllegalArgumentException when the value lies outside the limit's bounds, or is not whole where it must be
     */
    public JudgementLimits with(JudgementLimit limit, double value) {
        limit.bounds().require(limit.key(), value);
        if (limit.isWhole() && value != Math.rint(value)) {
            throw new IllegalArgumentException(limit.key() + " " + value + ", expected a whole number");
        }
        EnumMap<JudgementLimit, Double> more = new EnumMap<>(changed);
        if (value == limit.usual()) {
            more.remove(limit);
        } else {
            more.put(limit, value);
        }
        return new JudgementLimits(more);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof JudgementLimits that && changed.equals(that.changed);
    }

    @Override
    public int hashCode() {
        return changed.hashCode();
    }

    @Override
    public String toString() {
        return changed.isEmpty() ? "the usual limits" : "the usual limits but " + changed;
    }
}
