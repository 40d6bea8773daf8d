package io.github.wattledger.pacing;

import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * What a ride is judged against.
 *
 * @param powerW threshold power, watts, or null when it is not known
 * @param powerIsEstimated whether it was estimated from the ride itself, so that only what compares one part of the ride
 *     with another can be judged by it
 * @param heartRateBpm threshold heart rate, or null when it is not known
 */
public record Thresholds(
        @Nullable Double powerW,
        boolean powerIsEstimated,
        @Nullable Double heartRateBpm) implements Serializable {}
