package io.github.wattledger.load;

/** Power per heartbeat rate. */
public final class Efficiency {
    private Efficiency() {}
}
