package io.github.wattledger.season;

import io.github.wattledger.course.Course;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rig.RigEstimate;
import org.jspecify.annotations.Nullable;

/**
 * Drag area and rolling resistance as the whole recording told them. The estimate parts wind from drag by the direction
 * of travel, and that by positions, which the store does not keep; nor does it keep directions, from which, with the
 * distance, the track could be drawn again to some tens of metres. So it keeps what came of them.
 *
 * @param totalMassKg rider and bicycle, with which the estimate was made; with another mass it is another
 * @param estimate what came out
 */
record KeptEstimate(double totalMassKg, Outcome<RigEstimate> estimate) {
    /** The estimate of a ride, or null where the stored ride tells all that this one does. */
    static @Nullable KeptEstimate of(Ride whole, double totalMassKg) {
        boolean hasPositions = whole.has(Channel.LATITUDE) && whole.has(Channel.LONGITUDE);
        return hasPositions && whole.has(Channel.POWER)
                ? new KeptEstimate(
                        totalMassKg, RigEstimate.of(whole, Course.of(whole).orElse(null), totalMassKg))
                : null;
    }

    /** The estimate, or null where it was made with another mass. */
    @Nullable Outcome<RigEstimate> with(double massKg) {
        return massKg == totalMassKg ? estimate : null;
    }
}
