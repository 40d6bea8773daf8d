package io.github.wattledger.plan;

import java.io.Serializable;
import java.util.Locale;

/**
 * Whether the cap of one kind of ground was kept.
 *
 * @param ground the kind of ground
 * @param capW the cap, watts
 * @param riddenW fourth-power mean of the power there, of means over 30 seconds, watts
 * @param seconds time under way there, seconds
 * @param secondsAbove how long the mean over 30 seconds was more than 5 % above the cap, seconds
 */
public record CapReview(Ground ground, double capW, double riddenW, int seconds, int secondsAbove)
        implements Serializable {
    /** Meters differ by 2 to 3 %, and nobody holds a number exactly. Own choice. */
    static final double ROOM = 1.05;

    private static final double LEAST = 0.95;

    /** Shorter than this in all is a corner, a rise, a gap to close. Own choice, seconds. */
    static final int LONGEST_ABOVE_SECONDS = 480;

    /** How a cap was kept. */
    public enum Outcome {
        /** Within 5 % of the cap on the whole, and not above it for long. */
        KEPT,
        /** More than 5 % above it for over 8 minutes in all. */
        ABOVE,
        /** More than 5 % below it on the whole. */
        BELOW;

        /** Its fixed word. */
        public String id() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** How it was kept. */
    public Outcome outcome() {
        if (secondsAbove > LONGEST_ABOVE_SECONDS) {
            return Outcome.ABOVE;
        }
        return riddenW < LEAST * capW ? Outcome.BELOW : Outcome.KEPT;
    }
}
