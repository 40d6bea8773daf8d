package io.github.wattledger.pacing;

import java.util.Locale;

/**
 * How much a finding weighs: by the minutes that it cost at most, as a share of the moving time. {@link #MAJOR} begins at 2 %,
 * {@link #MODERATE} at 0.5 %.
 */
public enum Severity {
    /** It cost nothing: an observation. */
    OBSERVATION,
    /** Worth knowing. */
    MINOR,
    /** Worth changing. */
    MODERATE,
    /** Decided the ride. */
    MAJOR;

    /** Less than this is printed as no minutes at all, and no replay is finer over hours. */
    private static final double NOTHING_SECONDS = 3;

    private static final double MODERATE_SHARE = 0.005;
    private static final double MAJOR_SHARE = 0.02;

    /** The severity of what cost so many seconds of a moving time. */
    static Severity of(double lostSeconds, double movingSeconds) {
        double share = lostSeconds / movingSeconds;
        if (!(lostSeconds >= NOTHING_SECONDS)) {
            return OBSERVATION;
        }
        return share >= MAJOR_SHARE ? MAJOR : share >= MODERATE_SHARE ? MODERATE : MINOR;
    }

    /** The severity's fixed word, lower case. */
    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }
}
