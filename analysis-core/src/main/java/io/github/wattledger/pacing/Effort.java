package io.github.wattledger.pacing;

/** Whether a ride is judged as a race. */
public enum Effort {
    /** Judged as a race when it was ridden hard enough to be one. */
    AUTO,
    /** Judged as a race in any case. */
    RACE,
    /** Never judged as a race. */
    TRAINING
}
