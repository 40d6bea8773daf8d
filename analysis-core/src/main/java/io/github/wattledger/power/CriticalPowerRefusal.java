package io.github.wattledger.power;

import org.jspecify.annotations.Nullable;

/**
 * Why there is no critical power.
 *
 * @param reason the kind of reason
 * @param text one clause for people, with the numbers, without a full stop
 * @param refusedFit the fit that was not believed, or null when it did not come so far
 */
public record CriticalPowerRefusal(
        Reason reason, String text, @Nullable CriticalPowerFit refusedFit) implements CriticalPowerResult {
    /** Kinds of reasons. */
    public enum Reason {
        /** There is no power, or too little of it. */
        TOO_SHORT,
        /** Fewer durations than a fit with an error needs. */
        TOO_FEW_DURATIONS,
        /** The longest duration is less than three times the shortest. */
        SPAN_TOO_NARROW,
        /** A duration outside the range in which the form holds. */
        DURATION_OUT_OF_RANGE,
        /** W′ or critical power came out at 0 or below. */
        NEGATIVE,
        /** The search found no solution. */
        NOT_CONVERGED,
        /** The search ended on the bound of a parameter. */
        ON_A_BOUND,
        /** The standard errors are too large for the numbers to be of use. */
        TOO_UNCERTAIN,
        /** The efforts cannot all have been maximal. */
        NO_MAXIMAL_EFFORTS
    }
}
