package io.github.wattledger.clean;

/** Where the watts of a ride come from. */
public enum PowerSource {
    /** The increase of the work counter that the power meter keeps; the samples only where it fails. */
    WORK_COUNTER,
    /** The one-second power samples. */
    SAMPLES,
    /** There is no power. */
    NONE
}
