package io.github.wattledger.simulation;

/**
 * Where a ride's energy went, joules.
 *
 * @param pedalJ work at the pedals
 * @param driveLossJ lost in the drive
 * @param airJ given to the air
 * @param rollingJ lost to the road
 * @param bearingsJ lost in bearings
 * @param gravityJ stored in height
 * @param brakesJ lost in the brakes
 * @param kineticJ left in motion at the end
 */
public record EnergyAudit(
        double pedalJ,
        double driveLossJ,
        double airJ,
        double rollingJ,
        double bearingsJ,
        double gravityJ,
        double brakesJ,
        double kineticJ) {
    /** Work that no item accounts for, joules; 0 but for the error of integration. */
    public double unexplainedJ() {
        return pedalJ - driveLossJ - airJ - rollingJ - bearingsJ - gravityJ - brakesJ - kineticJ;
    }
}
