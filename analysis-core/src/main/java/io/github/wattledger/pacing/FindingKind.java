package io.github.wattledger.pacing;

import java.util.Locale;

/** What can be wrong with the pacing of a ride. */
public enum FindingKind {
    /** The opening was ridden harder than the whole could be, and harder than the rest was. */
    OVER_HARD_START,
    /** A long stretch near threshold early in an event that is too long for it. */
    THRESHOLD_RIDING_EARLY,
    /** Repeated short efforts far above threshold. */
    SURGES,
    /** Power fell from early to late on comparable ground. */
    FADE,
    /** Power and heart rate fell together. */
    ENERGY_CRASH,
    /** Heart rate rose at equal power. */
    DRIFT,
    /** Stops of more than a minute. */
    STOPPED_TIME,
    /** The whole ride was easier than the rider can hold. */
    UNDER_PACED,
    /** The end was ridden clearly harder than what came before. */
    LATE_RESERVE,
    /** The top gear was too short. */
    SPUN_OUT,
    /** The lowest gear was too tall for the climbs. */
    OVER_GEARED;

    /** The kind's fixed word for programs and reports, lower case with hyphens. */
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
