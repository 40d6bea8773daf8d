package io.github.wattledger.ride;

import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * The device that recorded a session, with the settings it held for the rider; null where the file does not say.
 *
 * @param name maker and product in words, as far as the file names them
 * @param thresholdPowerW the rider's threshold power as set on the device, watts
 * @param thresholdHeartRateBpm the rider's threshold heart rate as set on the device, beats per minute
 * @param maximumHeartRateBpm the rider's maximum heart rate as set on the device, beats per minute
 * @param riderMassKg the rider's mass as set on the device, kg
 */
public record RecordingDevice(
        @Nullable String name,
        @Nullable Double thresholdPowerW,
        @Nullable Double thresholdHeartRateBpm,
        @Nullable Double maximumHeartRateBpm,
        @Nullable Double riderMassKg)
        implements Serializable {
    /** The threshold power that devices are delivered with, watts. 13 of 43 real rides carry it. */
    public static final double FACTORY_THRESHOLD_POWER_W = 200;

    /** A device of which nothing is known. */
    public static final RecordingDevice UNKNOWN = new RecordingDevice(null, null, null, null, null);
}
