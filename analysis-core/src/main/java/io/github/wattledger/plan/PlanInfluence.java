package io.github.wattledger.plan;

import java.io.Serializable;
import java.util.Locale;

/**
 * What one uncertain input does to the time, the others staying as they are.
 *
 * @param input the input
 * @param low its low end, in the unit that the input says
 * @param high its high end
 * @param fasterSeconds by how much the time can be shorter, seconds, 0 or more
 * @param slowerSeconds by how much it can be longer, seconds, 0 or more
 */
public record PlanInfluence(Input input, double low, double high, double fasterSeconds, double slowerSeconds)
        implements Serializable {
    /** A number that can be off. */
    public enum Input {
        /** The power that the rider can hold, watts. */
        SUSTAINABLE_POWER,
        /** Mass of rider and bicycle together, kg. */
        MASS,
        /** Drag area, m2. */
        DRAG_AREA,
        /** Coefficient of rolling resistance. */
        ROLLING_RESISTANCE,
        /** Density of the air, kg/m3. */
        AIR_DENSITY,
        /** Wind at the height of the rider, m/s. */
        WIND,
        /** Ascent of the course, metres. */
        ASCENT;

        /** The input's fixed word, lower case with hyphens. */
        public String id() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    double spreadSeconds() {
        return fasterSeconds + slowerSeconds;
    }

    static PlanInfluence of(Input input, double low, double high, double atLowSeconds, double atHighSeconds) {
        return new PlanInfluence(
                input,
                low,
                high,
                Math.max(0, -Math.min(atLowSeconds, atHighSeconds)),
                Math.max(0, Math.max(atLowSeconds, atHighSeconds)));
    }
}
