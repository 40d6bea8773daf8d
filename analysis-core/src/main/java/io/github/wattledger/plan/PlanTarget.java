package io.github.wattledger.plan;

import io.github.wattledger.power.SustainablePower;
import java.io.Serializable;
import java.util.Locale;

/**
 * How hard the whole race is planned.
 *
 * @param watts normalized power under way, watts
 * @param origin where it comes from
 * @param sustainable what the rider can hold for the time that results
 * @param isLimited whether the highest power allowed anywhere does not give the effort asked for, so that this is less
 */
public record PlanTarget(double watts, Origin origin, SustainablePower sustainable, boolean isLimited)
        implements Serializable {
    /** Where a target comes from. */
    public enum Origin {
        /** What the rider can hold for the time that results. */
        SUSTAINABLE,
        /** The rider named a power. */
        GIVEN,
        /** The rider named a time. */
        GOAL_TIME;

        /** Its fixed word, lower case with hyphens. */
        public String id() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /** How a target stands to what the rider can hold. */
    public enum Standing {
        /** Below the range: there is time in hand. */
        BELOW,
        /** Within the range. */
        WITHIN,
        /** Above the range: not to be expected. */
        ABOVE;

        /** Its fixed word. */
        public String id() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** How it stands to the rider's range. */
    public Standing standing() {
        if (watts > sustainable.highW()) {
            return Standing.ABOVE;
        }
        return watts < sustainable.lowW() ? Standing.BELOW : Standing.WITHIN;
    }
}
