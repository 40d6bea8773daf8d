package io.github.wattledger.rig;

import java.io.Serializable;

/**
 * How the numbers of a rig are off together. A ride gives drag area and rolling resistance from one balance of energy, in
 * which the mass counts too: where one of them is wrong, the others are wrong along with it.
 *
 * @param dragAreaM2PerKg what the drag area is more by where the mass is a kilogram more than supposed, m2
 * @param rollingResistancePerKg what the rolling resistance is more by then
 * @param rollingResistancePerM2 what the rolling resistance is more by where the drag area is a square metre more than
 *     supposed; below 0, as a ride shows their sum best
 * @param rollingResistanceAlone the part of the error of the rolling resistance that is left where the drag area is right,
 *     0 to 1
 */
public record OffTogether(
        double dragAreaM2PerKg,
        double rollingResistancePerKg,
        double rollingResistancePerM2,
        double rollingResistanceAlone)
        implements Serializable {
    /** Every number is off by itself. */
    public static final OffTogether NOTHING = new OffTogether(0, 0, 0, 1);
}
