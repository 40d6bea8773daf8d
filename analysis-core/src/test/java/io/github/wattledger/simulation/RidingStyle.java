package io.github.wattledger.simulation;

/**
 * How far real pedalling strays from what was meant.
 *
 * @param variationFraction standard deviation of one-second power around the plan, as a fraction
 * @param freewheelsPerHour how often the rider stops pedalling for some seconds: bends, dust, a bottle
 */
public record RidingStyle(double variationFraction, double freewheelsPerHour) {
    /** Exactly the plan. */
    public static final RidingStyle METRONOME = new RidingStyle(0, 0);
    /** What a rough road makes of a plan. */
    public static final RidingStyle FOREST_ROAD = new RidingStyle(0.09, 25);
}
