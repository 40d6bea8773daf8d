package io.github.wattledger.simulation;

/**
 * What slows or shelters a rider beside the road and the wind.
 *
 * @param limits the fastest speeds that bends and junctions allow
 * @param shelter where other riders break the wind
 * @param gusts where and when the wind is another than the steady one
 */
public record Surroundings(SpeedLimits limits, Shelter shelter, Gusts gusts) {
    /** A straight road without other riders. */
    public static final Surroundings NONE = new Surroundings(SpeedLimits.NONE, Shelter.NONE);

    /** In a steady wind. */
    public Surroundings(SpeedLimits limits, Shelter shelter) {
        this(limits, shelter, Gusts.NONE);
    }
}
