package io.github.wattledger.pacing;

import java.util.Optional;

/** Looks for one kind of pacing mistake. */
interface Detector {
    /** The finding, or empty when the race does not show it or lacks the channels to tell. */
    Optional<Finding> detect(Race race);
}
