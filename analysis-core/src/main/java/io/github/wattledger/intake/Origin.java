package io.github.wattledger.intake;

import java.util.Locale;

/** Where a number about the rider comes from. */
public enum Origin {
    /** The caller gave it, for every day. */
    GIVEN,
    /** The rider profile gives it for this day. */
    PROFILE,
    /** It was set on the recording device. */
    DEVICE,
    /** It was estimated from the efforts in this ride: at least this much, perhaps more. */
    ESTIMATED;

    /** The origin's fixed word, lower case. */
    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }
}
