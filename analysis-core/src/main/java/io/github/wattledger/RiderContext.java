package io.github.wattledger;

import java.io.Serializable;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * The rider as a review took him or her; null where it is not known.
 *
 * @param thresholdPowerW threshold power, watts
 * @param thresholdPowerSource where it comes from, null when there is none
 * @param thresholdHeartRateBpm threshold heart rate
 * @param massKg mass of the rider
 */
public record RiderContext(
        @Nullable Double thresholdPowerW,
        @Nullable ThresholdSource thresholdPowerSource,
        @Nullable Double thresholdHeartRateBpm,
        @Nullable Double massKg)
        implements Serializable {
    /** Where a threshold power comes from. */
    public enum ThresholdSource {
        /** The caller gave it. */
        GIVEN,
        /** The rider profile gave it. */
        PROFILE,
        /** It was set on the recording device. */
        DEVICE,
        /** It was estimated from the efforts in this ride: at least this much, perhaps more. */
        ESTIMATED;

        /** The source's fixed word, lower case. */
        public String id() {
            return name().toLowerCase(Locale.ROOT);
        }
    }
}
