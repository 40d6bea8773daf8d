package io.github.wattledger.history;

import io.github.wattledger.power.HeartLine;
import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * What one ride shows of its rider beside power: each number null where the ride does not show it.
 *
 * @param heartLine heart rate on power
 * @param dragAreaM2 drag area, square metres
 * @param rollingResistance coefficient of rolling resistance
 * @param openingOverTarget normalized power of the opening over the target, of a ride that was judged as a race
 * @param fadePercent effort lost from early to late on like ground, percent; below 0 where it rose; of such a ride
 * @param openingCapW the power to which its opening should have been held, watts; null where it was not too hard
 * @param descentSpeedMps the speed that was seldom exceeded on descents, metres a second
 */
public record RideTraits(
        @Nullable HeartLine heartLine,
        @Nullable Double dragAreaM2,
        @Nullable Double rollingResistance,
        @Nullable Double openingOverTarget,
        @Nullable Double fadePercent,
        @Nullable Double openingCapW,
        @Nullable Double descentSpeedMps)
        implements Serializable {
    /** A ride that shows none of these. */
    public static final RideTraits NONE = new RideTraits(null, null, null, null, null, null, null);

    /** The same with another heart rate on power. */
    public RideTraits withHeartLine(HeartLine line) {
        return new RideTraits(
                line, dragAreaM2, rollingResistance, openingOverTarget, fadePercent, openingCapW, descentSpeedMps);
    }

    /** The same with another rig. */
    public RideTraits withRig(double newDragAreaM2, @Nullable Double newRollingResistance) {
        return new RideTraits(
                heartLine,
                newDragAreaM2,
                newRollingResistance,
                openingOverTarget,
                fadePercent,
                openingCapW,
                descentSpeedMps);
    }
}
