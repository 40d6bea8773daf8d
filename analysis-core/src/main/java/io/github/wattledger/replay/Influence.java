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
        /** Mass of the rider, kg. */
        RIDER_MASS,
        /** Mass of the bicycle, kg. */
        BICYCLE_MASS,
        /** Drag area as it is, m2. */
        DRAG_AREA,
        /** The factor by which the other position changes the drag area. */
        POSITION_RATIO,
        /** Coefficient of rolling resistance as it is. */
        ROLLING_RESISTANCE,
        /** Density of the air as it is, kg/m3. */
        AIR_DENSITY,
        /** The factor by which the answer of the model itself can be off. */
        MODEL;

        /** The input's fixed word, lower case with hyphens. */
        public String id() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }
}
