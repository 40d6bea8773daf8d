package io.github.wattledger.pacing.price;

/** How a repair changes the power of a stretch. */
public enum StretchChange {
    /**
     * One factor for every pedalled second, so that power is that of the middle of the race on comparable ground; these
     * seconds make up for nothing.
     */
    TO_MIDDLE_POWER,
    /** The pedalled seconds above the target are brought down to it; the seconds of the stretch make up for nothing. */
    CAPPED_AT_TARGET,
    /**
     * One factor for every pedalled second, so that power is what it was earlier on comparable ground; these seconds help to
     * make up for the repair.
     */
    TO_EARLIER_POWER,
    /**
     * One factor for every pedalled second, so that power is that of the race before the stretch on comparable
     * ground; these seconds
     * help to make up for the repair.
     */
    TO_POWER_BEFORE,
    /** Every second stays as it was ridden, and makes up for nothing. */
    AS_RIDDEN
}
