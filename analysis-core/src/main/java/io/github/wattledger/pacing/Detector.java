package io.github.wattledger.pacing;

import java.util.Optional;

/**
 * Looks for one kind of finding, and holds everything that is special about that kind: how it is detected, its evidence, its
 * advice, how it is repaired or why it has no price, and which other findings it gives way to. A detector has no state and
 * does not know its own {@link FindingKind}, which is made with it.
 */
interface Detector {
    /** What was found, or empty when the race does not show it or lacks the channels to see it. */
    Optional<Found> detect(Race race);

    /** The least that this kind weighs, whatever it cost. */
    default Severity leastSeverity() {
        return Severity.OBSERVATION;
    }

    /** Whether this kind compares parts of a ride with one another, which says something of rides that are no race as well. */
    default boolean comparesParts() {
        return false;
    }

    /**
     * Whether what this detector found is left out, because another detector found something that says the same or more.
     *
     * @param other the other detector
     * @param own what this detector found
     * @param others what the other one found
     */
    default boolean givesWayTo(Detector other, Found own, Found others) {
        return false;
    }
}
