package io.github.wattledger.ride;

import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * A lap as the recorder marked it.
 *
 * @param startEpochSecond its first second, since 1970-01-01T00:00:00Z
 * @param endEpochSecond the second at which it was closed
 * @param normalizedPowerW the normalized power the device stored for it, watts, or null
 */
public record Lap(
        long startEpochSecond,
        long endEpochSecond,
        @Nullable Double normalizedPowerW) implements Serializable {}
