package io.github.wattledger.pacing;

import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * What a ride is judged against.
 *
 * @param power threshold power, and whether it is known well enough to say how hard the ride was; where it is only estimated
 *     from the ride itself, parts of the ride can still be compared with one another by it
 * @param heartRateBpm threshold heart rate, beats per minute, or null when it is not known
 * @param highestKnownHeartRateBpm the highest heart rate of the rider that is known from elsewhere than the ride, or null
 */
public record Thresholds(
        KnownThreshold power,
        @Nullable Double heartRateBpm,
        @Nullable Double highestKnownHeartRateBpm) implements Serializable {
    /** Threshold power that a verdict may rest on, watts, or null. */
    public @Nullable Double knownPowerW() {
        return power.isKnown() ? power.powerW() : null;
    }

    /** Threshold power by which parts of the ride can be compared, known or estimated from the ride, watts, or null. */
    @Nullable Double comparingPowerW() {
        return power.isKnown() || power.doubt() == KnownThreshold.Doubt.ESTIMATED_FROM_RIDE ? power.powerW() : null;
    }
}
