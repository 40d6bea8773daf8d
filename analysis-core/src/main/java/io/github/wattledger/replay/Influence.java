package io.github.wattledger.replay;

import io.github.wattledger.rig.Measure;
import java.io.Serializable;
import java.util.Locale;

/**
 * What one uncertain input does to the answer, the others staying as they are.
 *
 * @param input the input
 * @param range its value and how far it can be off
 * @param savedAtLowMinutes minutes saved with the input at its low end
 * @param savedAtHighMinutes minutes saved with the input at its high end
 */
public record Influence(Input input, Measure range, double savedAtLowMinutes, double savedAtHighMinutes)
        implements Serializable {
    /** A number that can be off. */
    public enum Input {
        /** Mass of the rider, kg. What was estimated with the mass moves along with it. */
        RIDER_MASS,
        /** Mass of the bicycle, kg. What was estimated with the mass moves along with it. */
        BICYCLE_MASS,
        /** Drag area as it is, m2. A rolling resistance that was estimated along with it moves the other way. */
        DRAG_AREA,
        /** The factor by which the other position changes the drag area. */
        POSITION_RATIO,
        /** Coefficient of rolling resistance as it is; where it moves along with the drag area, what can be off beside. */
        ROLLING_RESISTANCE,
        /** Density of the air as it is, kg/m3. */
        AIR_DENSITY,
        /**
         * Which share of the speed that a faster rig wins where it rolls freely is ridden out: whether the rider would brake
         * there, in bends say, no recording shows.
         */
        BRAKES,
        /** The factor by which the answer of the model itself can be off. */
        MODEL;

        /** The input's fixed word, lower case with hyphens. */
        public String id() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }
}
