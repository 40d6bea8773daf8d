package io.github.wattledger.cli.profile;

import io.github.wattledger.pacing.JudgementLimits;
import io.github.wattledger.rider.Rider;

/**
 * What a rider profile says.
 *
 * @param rider the rider and the bicycle; thresholds are in the history alone
 * @param limits the limits from which the judgement reports something
 */
public record RiderProfile(Rider rider, JudgementLimits limits) {
    /** A profile that says nothing. */
    public static final RiderProfile EMPTY = new RiderProfile(Rider.UNKNOWN, JudgementLimits.USUAL);
}
