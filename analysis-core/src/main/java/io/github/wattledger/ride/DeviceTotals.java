package io.github.wattledger.ride;

import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * What the recording device itself computed for a session: kept for comparison, never mixed with our own numbers. A
 * field the device did not store is null.
 *
 * @param elapsedSeconds seconds from start to end, pauses included
 * @param timerSeconds seconds while the timer ran
 * @param movingSeconds seconds while moving, by the device's own rule
 * @param distanceM distance, metres
 * @param ascentM sum of ascents, metres
 * @param workKJ work, kilojoules
 * @param averagePowerW average power, watts, by the device's own rule
 * @param normalizedPowerW normalized power, watts
 * @param intensityFactor normalized power over threshold power
 * @param trainingStress training stress, 100 for an hour at threshold
 * @param averageHeartRateBpm average heart rate, beats per minute
 * @param maximumHeartRateBpm highest heart rate, beats per minute
 * @param averageCadenceRpm average cadence, revolutions per minute
 * @param averageSpeedMps average speed, metres per second
 */
public record DeviceTotals(
        @Nullable Double elapsedSeconds,
        @Nullable Double timerSeconds,
        @Nullable Double movingSeconds,
        @Nullable Double distanceM,
        @Nullable Double ascentM,
        @Nullable Double workKJ,
        @Nullable Double averagePowerW,
        @Nullable Double normalizedPowerW,
        @Nullable Double intensityFactor,
        @Nullable Double trainingStress,
        @Nullable Double averageHeartRateBpm,
        @Nullable Double maximumHeartRateBpm,
        @Nullable Double averageCadenceRpm,
        @Nullable Double averageSpeedMps)
        implements Serializable {
    /**
     * The same totals, null where one that rests on power is 0: some devices store 0 W where they had no power meter,
     * which stands for "not known".
     */
    public DeviceTotals withoutZeroPower() {
        return new DeviceTotals(
                elapsedSeconds,
                timerSeconds,
                movingSeconds,
                distanceM,
                ascentM,
                zeroToNull(workKJ),
                zeroToNull(averagePowerW),
                zeroToNull(normalizedPowerW),
                zeroToNull(intensityFactor),
                zeroToNull(trainingStress),
                averageHeartRateBpm,
                maximumHeartRateBpm,
                averageCadenceRpm,
                averageSpeedMps);
    }

    private static @Nullable Double zeroToNull(@Nullable Double value) {
        return value == null || value == 0 ? null : value;
    }
}
