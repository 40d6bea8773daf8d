package io.github.wattledger.simulation.trial;

import java.util.Locale;

/** What can go wrong in a trial race. The names are those of the library's findings. */
enum MistakeKind {
    OVER_HARD_START("OVER_HARD_START"),
    THRESHOLD_RIDING_EARLY("UNEVEN"),
    SURGES("UNEVEN"),
    FADE("FADED"),
    ENERGY_CRASH("FADED"),
    DRIFT("EVEN"),
    STOPPED_TIME("EVEN"),
    UNDER_PACED("UNDER_PACED"),
    LATE_RESERVE("NEGATIVE_SPLIT");

    private final String headline;

    MistakeKind(String headline) {
        this.headline = headline;
    }

    /** The verdict of a race in which this is the only mistake. */
    String headline() {
        return headline;
    }

    /** Whether the verdict of an even race is fitting too: these leave the level of the parts of a race alone. */
    boolean leavesTheRaceEven() {
        return headline.equals("EVEN") || this == SURGES;
    }

    /** Whether the mistake costs time that a rider gets back by riding the same energy otherwise. */
    boolean hasPrice() {
        return this != DRIFT && this != UNDER_PACED;
    }

    /** For tables. */
    String words() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
