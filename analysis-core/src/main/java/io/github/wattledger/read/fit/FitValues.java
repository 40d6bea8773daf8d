package io.github.wattledger.read.fit;

import org.jspecify.annotations.Nullable;

/** What the values of FIT fields mean, whichever message they stand in. */
final class FitValues {
    /** FIT time 0 is 1989-12-31T00:00:00Z (public FIT profile, type {@code date_time}). */
    static final long EPOCH_SECOND = 631_065_600L;

    private FitValues() {}

    /** The value when it is above 0, otherwise null: devices store 0 where a setting or total was never made. */
    static @Nullable Double positive(@Nullable Double value) {
        return value != null && value > 0 ? value : null;
    }
}
