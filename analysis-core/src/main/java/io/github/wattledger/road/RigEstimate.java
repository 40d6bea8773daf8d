package io.github.wattledger.road;

import io.github.wattledger.ride.Ride;
import java.io.Serializable;

/** stub to compile; replaced below. */
public record RigEstimate(double dragAreaM2, double rollingResistance) implements Serializable {
    boolean isAccepted() { return !Double.isNaN(dragAreaM2); }
    static RigEstimate of(Ride ride, double kg) { return new RigEstimate(Double.NaN, Double.NaN); }
}
