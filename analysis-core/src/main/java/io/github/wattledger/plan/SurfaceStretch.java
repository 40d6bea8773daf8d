package io.github.wattledger.plan;

import io.github.wattledger.course.Route;
import io.github.wattledger.rider.Bounds;
import java.io.Serializable;

/**
 * A part of a course with a surface of its own.
 *
 * @param fromM where it begins, metres from the start
 * @param toM where it ends, metres from the start, beyond {@code fromM}
 * @param rollingResistance coefficient of rolling resistance there, within {@link Bounds#ROLLING_RESISTANCE}
 */
public record SurfaceStretch(double fromM, double toM, double rollingResistance) implements Serializable {
    /** @throws IllegalArgumentException when it has no length, or the coefficient is out of its range */
    public SurfaceStretch {
        if (!(fromM >= 0 && toM > fromM)) {
            throw new IllegalArgumentException("a stretch from " + fromM + " to " + toM + " m, expected a length");
        }
        Bounds.ROLLING_RESISTANCE.require("rollingResistance", rollingResistance);
    }

    /** Whether it begins before the end of a course; one that does not changes nothing, and no plan takes it. */
    public boolean beginsOn(Route route) {
        return fromM < route.lengthM();
    }
}
