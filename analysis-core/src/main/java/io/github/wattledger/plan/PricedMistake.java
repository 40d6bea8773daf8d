package io.github.wattledger.plan;

import java.io.Serializable;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What a usual mistake would cost on this course, at the same effort in all.
 *
 * @param kind the mistake
 * @param amount how large: a factor on the plan's power, watts, or seconds, as the kind says
 * @param minutes what it costs, minutes; null where the rest of the course cannot make up for it
 * @param lowMinutes the least that is plausible, minutes; null where the rest cannot make up for it at any end of the range
 * @param highMinutes the most that is plausible, minutes; null where the rest cannot make up for it at that end
 */
public record PricedMistake(
        Kind kind,
        double amount,
        @Nullable Double minutes,
        @Nullable Double lowMinutes,
        @Nullable Double highMinutes) implements Serializable {
    /** The rest makes up for a mistake with this share of the plan's power at least; with less nobody would race on. Own choice. */
    public static final double LEAST_REST = 0.6;

    /** A usual mistake. */
    public enum Kind {
        /** The first sixth of the time is ridden above the plan; the amount is the factor. */
        OVER_HARD_OPENING,
        /** Every climb of 4 % and more is ridden at threshold; the amount is threshold power, watts. */
        CLIMBS_AT_THRESHOLD,
        /** More time is spent standing; the amount is that time, seconds. */
        LONGER_STOPS;

        /** Its fixed word, lower case with hyphens. */
        public String id() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }
}
