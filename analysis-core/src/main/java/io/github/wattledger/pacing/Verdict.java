package io.github.wattledger.pacing;

import java.util.Locale;

/** The pacing of a ride in one word or two. */
public enum Verdict {
    /** Much too hard at the start. */
    OVER_HARD_START,
    /** Neither start nor end stands out, but the effort went up and down. */
    UNEVEN,
    /** Power went down on comparable ground. */
    FADED,
    /** Held steady. */
    EVEN,
    /** The second half was the harder one. */
    NEGATIVE_SPLIT,
    /** Easier throughout than the rider can hold. */
    UNDER_PACED,
    /** There was nothing to judge, or nothing to judge it by. */
    NOT_JUDGED;

    /** The verdict in words, lower case. */
    public String words() {
        return switch (this) {
            case OVER_HARD_START -> "over-hard start";
            case UNDER_PACED -> "under-paced";
            case UNEVEN, FADED, EVEN, NEGATIVE_SPLIT, NOT_JUDGED ->
                name().toLowerCase(Locale.ROOT).replace('_', ' ');
        };
    }
}
