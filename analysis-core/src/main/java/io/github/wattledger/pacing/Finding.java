package io.github.wattledger.pacing;

import io.github.wattledger.ride.Interval;
import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * One thing about the pacing of a ride, with the evidence for it.
 *
 * @param kind what it is
 * @param severity how much it weighs
 * @param when the seconds it concerns, counted from the first second of the whole recording
 * @param startM the distance at its start, metres from the start of the recording, or null without distance
 * @param endM the distance at its end, or null without distance
 * @param evidence the numbers it rests on
 * @param cost what it cost
 * @param advice what to do next time
 * @param priceSteps how the price came about, or null where nothing was computed for it
 */
public record Finding(
        FindingKind kind,
        Severity severity,
        Interval when,
        @Nullable Double startM,
        @Nullable Double endM,
        Evidence evidence,
        Cost cost,
        Advice advice,
        @Nullable PriceSteps priceSteps)
        implements Serializable {
    /** A finding that does not tell how its price came about. */
    public Finding(
            FindingKind kind,
            Severity severity,
            Interval when,
            @Nullable Double startM,
            @Nullable Double endM,
            Evidence evidence,
            Cost cost,
            Advice advice) {
        this(kind, severity, when, startM, endM, evidence, cost, advice, null);
    }

    /** The same finding with another price. */
    Finding withCost(Cost other) {
        return new Finding(kind, severity, when, startM, endM, evidence, other, advice, priceSteps);
    }

    /** The same finding with the steps to its price. */
    Finding withPriceSteps(PriceSteps steps) {
        return new Finding(kind, severity, when, startM, endM, evidence, cost, advice, steps);
    }
}
