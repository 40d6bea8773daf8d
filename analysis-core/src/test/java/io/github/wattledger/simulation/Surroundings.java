package io.github.wattledger.simulation;

/**
 * What slows or shelters a rider beside the road and the wind.
 *
 * @param limits the fastest speeds that bends and junctions allow
 * @param shelter where other riders break the wind
 */
public record Surroundings(SpeedLimits limits, Shelter shelter) {
    /** A straight road without other riders. */
    public static final Surroundings NONE = new Surroundings(SpeedLimits.NONE, Shelter.NONE);
}
