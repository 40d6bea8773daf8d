package io.github.wattledger.pacing;

import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.pacing.price.PriceSteps;
import io.github.wattledger.ride.Interval;
import org.jspecify.annotations.Nullable;

/**
 * One thing about the pacing of a ride that the library found, with the evidence for it.
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
        implements AnyFinding {
    @Override
    public String kindId() {
        return kind.id();
    }
}
