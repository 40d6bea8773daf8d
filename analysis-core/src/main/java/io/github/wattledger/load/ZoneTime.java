package io.github.wattledger.load;

import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * The time spent in one zone.
 *
 * @param name the zone's name
 * @param from its lower bound in the unit of the reading, included
 * @param to its upper bound, excluded; null for the highest zone
 * @param seconds seconds with a reading inside the bounds
 */
public record ZoneTime(String name, double from, @Nullable Double to, int seconds) implements Serializable {}
