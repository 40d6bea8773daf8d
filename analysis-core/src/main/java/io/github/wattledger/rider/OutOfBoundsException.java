package io.github.wattledger.rider;

import java.io.Serial;

/** A number lies outside its bounds. The message holds all three; a caller with a better name for the number asks for them. */
public final class OutOfBoundsException extends IllegalArgumentException {
    @Serial
    private static final long serialVersionUID = 1L;

    private final String name;
    private final double value;
    private final Bounds bounds;

    OutOfBoundsException(String name, double value, Bounds bounds) {
        super(name + " " + value + ", expected " + bounds);
        this.name = name;
        this.value = value;
        this.bounds = bounds;
    }

    /** What the number is called in this library, with its unit, for instance {@code massKg}. */
    public String name() {
        return name;
    }

    /** The number, in the unit of its name; possibly {@code NaN}. */
    public double value() {
        return value;
    }

    /** What it may be, in the unit of its name. */
    public Bounds bounds() {
        return bounds;
    }
}
