package io.github.wattledger.season;

import io.github.wattledger.course.Course;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rig.OffTogether;
import io.github.wattledger.rig.RigEstimate;
import org.jspecify.annotations.Nullable;

/**
 * Drag area and rolling resistance as estimated from the whole recording. The estimate separates wind from drag by the
 * direction of travel, which comes from positions. The store keeps no positions. It keeps no directions either: with the
 * distance they would draw the track again to some tens of metres. So the store keeps the estimate itself.
 *
 * @param totalMassKg mass of rider and bicycle, kg, with which the estimate was made; another mass gives another estimate
 * @param estimate the estimate
 */
record KeptEstimate(double totalMassKg, Outcome<RigEstimate> estimate) {
    /** The estimate of a ride, or null where the stored ride alone gives the same estimate. */
    static @Nullable KeptEstimate of(Ride whole, double totalMassKg) {
        boolean hasPositions = whole.has(Channel.LATITUDE) && whole.has(Channel.LONGITUDE);
        if (!hasPositions || !whole.has(Channel.POWER)) {
            return null;
        }
        Outcome<RigEstimate> estimate = RigEstimate.of(whole, Course.of(whole).orElse(null), totalMassKg);
        // How the numbers are off together is of use to a range only, and a season has none that rests on it.
        return new KeptEstimate(
                totalMassKg,
                estimate.found()
                        .map(found -> Outcome.of(found.withTogether(OffTogether.NOTHING)))
                        .orElse(estimate));
    }

    /** The estimate, or null where it was made with another mass. */
    @Nullable Outcome<RigEstimate> with(double massKg) {
        return massKg == totalMassKg ? estimate : null;
    }
}
