package io.github.wattledger.pacing;

import io.github.wattledger.ride.Interval;
import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/** What the library's findings and those of a user's own detectors have in common, so that one report shows both. */
public sealed interface AnyFinding extends Serializable permits Finding, OwnFinding {
    /** The fixed word of its kind for programs and reports, lower case with hyphens. */
    String kindId();

    /** How much it weighs. */
    Severity severity();

    /** The seconds it concerns, counted from the first second of the whole recording. */
    Interval when();

    /** The distance at its start, metres from the start of the recording, or null without distance. */
    @Nullable Double startM();

    /** The distance at its end, metres from the start of the recording, or null without distance. */
    @Nullable Double endM();

    /** The numbers it rests on. */
    Evidence evidence();

    /** What to do next time. */
    Advice advice();
}
