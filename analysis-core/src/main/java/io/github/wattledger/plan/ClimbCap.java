package io.github.wattledger.plan;

import io.github.wattledger.course.RouteClimb;
import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * How hard to ride one climb.
 *
 * @param climb the climb
 * @param name the named point nearest to its top, or null
 * @param capW the cap of the ground of its mean grade, watts
 * @param capBpm the heart rate beside it, beats per minute, or null where the rider's line is not known
 * @param seconds how long it takes, seconds
 */
public record ClimbCap(
        RouteClimb climb,
        @Nullable String name,
        double capW,
        @Nullable Double capBpm,
        double seconds) implements Serializable {}
