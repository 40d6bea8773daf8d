package io.github.wattledger.history;

import java.io.Serializable;
import java.time.LocalDate;

/**
 * A change of threshold power that the rider's own rides show.
 *
 * @param day the day of the ride that showed it
 * @param fromW threshold power before, watts
 * @param toW threshold power from then on, watts
 * @param reason what showed it
 */
public record ThresholdMove(LocalDate day, double fromW, double toW, Reason reason) implements Serializable {
    /** What shows that a threshold has moved. */
    public enum Reason {
        /** Two efforts within six weeks lay at least 2 % above it. */
        TWO_EFFORTS,
        /** One effort lay at least 6 % above it. */
        ONE_FAR_EFFORT,
        /** One effort lay at least 2 % above it, and heart rate at the same power had fallen. */
        EFFORT_AND_HEART_RATE,
        /** Two efforts known as hard, within nine weeks, both lay at least 5 % below it. To be proposed, not applied. */
        HARD_EFFORTS_BELOW
    }

    /** Whether it may be put in force; a fall is only proposed, since own rides are bounds from below. */
    public boolean isRise() {
        return reason != Reason.HARD_EFFORTS_BELOW;
    }
}
