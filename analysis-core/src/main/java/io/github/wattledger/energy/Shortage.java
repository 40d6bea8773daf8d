package io.github.wattledger.energy;

/** Whether a rider can have been short of carbohydrate at a moment of a ride. */
public enum Shortage {
    /** Even with the high end of what was used and the low end of what a body stores, something was left. */
    UNLIKELY,
    /** The ranges overlap: it can have been so, or not. */
    POSSIBLE,
    /** Even with the low end of what was used and the high end of what a body stores, nothing was left. */
    LIKELY
}
