package io.github.wattledger.pacing;

import io.github.wattledger.rider.Bounds;
import java.util.Locale;

/**
 * A limit of the judgement, from which on something is reported. All limits are this project's own, open to better
 * evidence; {@code docs/methods.md} gives the reason for each. What lies beyond a limit is graded by fixed steps.
 */
public enum JudgementLimit {
    /** Normalized power over target below which a ride is easy for its length, and not judged as a race. */
    RACE_EFFORT_FRACTION(0.85, 0.3, 1.2),
    /** Normalized power of the opening over the target, above which the start may be over-hard. */
    OVER_HARD_START_OVER_TARGET(1.10, 1.0, 1.5),
    /**
     * Effort of the opening over that of the middle of the race on like ground, from which the start may be over-hard: a
     * rider who is better than the target keeps it up.
     */
    OVER_HARD_START_OVER_REST(1.06, 1.0, 1.5),
    /** Power over threshold from which riding is near threshold. */
    NEAR_THRESHOLD_FRACTION(0.95, 0.8, 1.2),
    /** Seconds near threshold from which a stretch early in the race is reported. */
    NEAR_THRESHOLD_SECONDS(8 * 60, 60, 7200),
    /** Power over threshold above which an effort is a surge. */
    SURGE_FRACTION(1.2, 1.0, 3.0),
    /** Seconds from which an effort above that power is a surge. */
    SURGE_SECONDS(8, 1, 300),
    /** Percent of effort lost on like ground from which a ride faded. */
    FADE_PERCENT(10, 1, 50),
    /** Percent of heart rate above what its power predicts, above which it drifted. */
    DRIFT_PERCENT(2.5, 0.5, 30),
    /** Normalized power over target below which a ride is under-paced. */
    UNDER_PACED_FRACTION(0.92, 0.3, 1.0),
    /** Effort of the last sixth over that before it on like ground, from which something was left. */
    LATE_RESERVE_OVER_REST(1.065, 1.0, 2.0),
    /** Seconds above which a stop is reported. */
    STOP_SECONDS(60, 5, 3600);

    private final double usual;
    private final double least;
    private final double most;

    JudgementLimit(double usual, double least, double most) {
        this.usual = usual;
        this.least = least;
        this.most = most;
    }

    /** Its value unless the rider chooses another. */
    public double usual() {
        return usual;
    }

    /** The values it may have. */
    public Bounds bounds() {
        return new Bounds(least, most);
    }

    /** Whether only whole numbers make sense, as for a limit in seconds. */
    public boolean isWhole() {
        return name().endsWith("_SECONDS");
    }

    /** The fixed word of the limit for programs and profiles, lower case with underscores. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}
