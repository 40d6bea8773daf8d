package io.github.wattledger.intake;

import java.util.Locale;

/** Where a number about the rider comes from. */
public enum Origin {
    /** The caller gave it, for every day. */
    GIVEN,
    /** The rider profile gives it for this day. */
    PROFILE,
    /** The rider's own earlier rides show it. */
    OWN_RIDES,
    /** It was set on the recording device. */
    DEVICE,
    /** It was estimated from the efforts in this ride: at least this much, perhaps more. */
    ESTIMATED;

    /** The origin's fixed word, lower case with hyphens. */
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
