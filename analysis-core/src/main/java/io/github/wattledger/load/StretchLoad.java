package io.github.wattledger.load;

import io.github.wattledger.ride.Interval;
import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * What a stretch of a ride was like. A number that the ride's channels cannot give is null, never 0. Elapsed seconds are
 * moving, standing and missing ones together; times, distance and work of stretches that make up a ride add up to the ride's.
 *
 * @param when its seconds
 * @param movingSeconds seconds under way
 * @param standingSeconds seconds standing still, whether the timer ran or not
 * @param missingSeconds seconds in which the timer ran and nothing was recorded
 * @param distanceM distance covered, metres
 * @param workKJ work done while the timer ran, kilojoules
 * @param averagePowerW mean power over the timer seconds that have it, coasting included, watts
 * @param normalizedPowerW normalized power as if the ride were no more than the stretch ({@link NormalizedPower}), watts; null
 *     under 30 s of power
 * @param averageHeartRateBpm mean heart rate over the timer seconds that have it, beats per minute
 * @param averageSpeedMps distance over moving time, metres per second; null where nothing moved
 * @param averageTemperatureC mean temperature at the recorder over the timer seconds that have it, degrees Celsius
 */
public record StretchLoad(
        Interval when,
        int movingSeconds,
        int standingSeconds,
        int missingSeconds,
        @Nullable Double distanceM,
        @Nullable Double workKJ,
        @Nullable Double averagePowerW,
        @Nullable Double normalizedPowerW,
        @Nullable Double averageHeartRateBpm,
        @Nullable Double averageSpeedMps,
        @Nullable Double averageTemperatureC)
        implements Serializable {
    /** The same with its seconds counted from elsewhere. */
    public StretchLoad shifted(int seconds) {
        return new StretchLoad(
                when.shifted(seconds),
                movingSeconds,
                standingSeconds,
                missingSeconds,
                distanceM,
                workKJ,
                averagePowerW,
                normalizedPowerW,
                averageHeartRateBpm,
                averageSpeedMps,
                averageTemperatureC);
    }
}
