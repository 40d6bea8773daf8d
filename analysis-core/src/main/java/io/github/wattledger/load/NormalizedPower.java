package io.github.wattledger.load;

/** Normalized power. */
public final class NormalizedPower {
    private NormalizedPower() {}
}
