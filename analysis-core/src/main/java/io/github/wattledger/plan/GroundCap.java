package io.github.wattledger.plan;

import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * How hard to ride on one kind of ground.
 *
 * @param ground the kind of ground
 * @param capW the power to ride there and not to exceed, watts, a multiple of 5
 * @param capBpm the heart rate beside it, beats per minute, or null where the rider's line is not known
 * @param lengthM how much of the course it is, metres
 * @param seconds how long it takes, seconds
 */
public record GroundCap(
        Ground ground, double capW, @Nullable Double capBpm, double lengthM, double seconds) implements Serializable {}
