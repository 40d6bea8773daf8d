package io.github.wattledger.bunch;

import io.github.wattledger.rig.Measure;
import io.github.wattledger.rig.Rig;
import io.github.wattledger.rig.RigChoice;
import io.github.wattledger.rig.RoadLoad;

/**
 * What is believed of a rider alone and of the road before a ride is looked at. Forces are divided by half the density of
 * the air, so that drag is an area times a square of speed.
 *
 * @param areaM2 drag area alone, spokes included, m2
 * @param areaErrorM2 its standard error, m2
 * @param rolling rolling resistance, m2 (m/s)2
 * @param rollingError its standard error
 * @param perRolling what a coefficient of rolling resistance of 1 would be, m2 (m/s)2
 */
record Prior(double areaM2, double areaErrorM2, double rolling, double rollingError, double perRolling) {
    // Riders of whom nothing is known, own choices: between tall on the hoods and low in the drops.
    private static final double UNKNOWN_AREA_M2 = 0.34;
    private static final double UNKNOWN_AREA_ERROR_M2 = 0.06;

    /** The drag area of a rider's other rides is right to this on the next. Own choice. */
    private static final double KNOWN_AREA_FRACTION = 0.06;

    private static final double ROLLING_ERROR = 0.0015;

    static Prior of(RigChoice choice, double densityKgPerM3) {
        Rig rig = choice.rig();
        boolean isKnown = isKnown(choice.dragAreaM2());
        double area = isKnown ? rig.dragAreaM2() : UNKNOWN_AREA_M2;
        Measure rolling = choice.rollingResistance();
        double coefficient = isKnown(rolling) ? rig.rollingResistance() : Rig.TYPICAL_ROLLING_RESISTANCE;
        double coefficientError =
                rolling.origin() == Measure.Origin.GIVEN ? (rolling.high() - rolling.low()) / 2 : ROLLING_ERROR;
        double perRolling = rig.massKg() * RoadLoad.GRAVITY_MPS2 / (densityKgPerM3 / 2);
        return new Prior(
                area + rig.spokeDragAreaM2(),
                isKnown ? KNOWN_AREA_FRACTION * area : UNKNOWN_AREA_ERROR_M2,
                coefficient * perRolling,
                coefficientError * perRolling,
                perRolling);
    }

    /** Whether a number comes from elsewhere than the ride: a bunch is in what the ride itself shows. */
    static boolean isKnown(Measure number) {
        return number.origin() == Measure.Origin.GIVEN || number.origin() == Measure.Origin.OWN_RIDES;
    }
}
