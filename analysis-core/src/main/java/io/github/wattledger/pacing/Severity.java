package io.github.wattledger.pacing;

import java.util.Locale;

/** How much a finding weighs. */
public enum Severity {
    /** Worth knowing. */
    MINOR,
    /** Worth changing. */
    MODERATE,
    /** Decided the ride. */
    MAJOR;

    /** The severity's fixed word, lower case. */
    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }
}
