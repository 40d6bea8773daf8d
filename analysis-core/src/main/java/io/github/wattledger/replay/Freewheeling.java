package io.github.wattledger.replay;

/** What is supposed of the brakes in bins that were freewheeled, when another rig would roll at another speed. */
enum Freewheeling {
    /** The brakes are pulled where they were in the recording, and where a bin would beat the fastest one of the ride. */
    AS_RECORDED,
    /** The rider never lets a freewheeled bin run faster than it did: another bend, or no more courage. */
    NEVER_FASTER,
    /** Only the brakes that show in single seconds were pulled; what looks like brakes held on a descent was wind. */
    LEAST_BRAKES
}
