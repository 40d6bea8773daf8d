package io.github.wattledger.load;

/** Aerobic decoupling. */
public final class Decoupling {
    private Decoupling() {}
}
