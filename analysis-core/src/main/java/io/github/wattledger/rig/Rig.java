package io.github.wattledger.rig;

import io.github.wattledger.rider.Bounds;
import java.io.Serializable;

/**
 * Rider and bicycle as the road feels them.
 *
 * @param massKg rider, clothes, bicycle, bottles and bags together, kg, within {@link Bounds#RIG_MASS_KG}
 * @param dragAreaM2 drag area (drag coefficient times frontal area), spokes left out, m2, within {@link
 *     Bounds#DRAG_AREA_M2}
 * @param rollingResistance coefficient of rolling resistance, roughness of the road included, within {@link
 *     Bounds#ROLLING_RESISTANCE}
 * @param wheelRadiusM radius of the wheels, 0.15 to 0.5 m
 * @param wheelInertiaKgM2 moment of inertia of both wheels together, 0 to 1 kg m2
 * @param driveEfficiency share of the pedals' power that reaches the wheel, 0.8 to 1
 * @param spokeDragAreaM2 drag area of the turning spokes, 0 to 0.05 m2
 */
public record Rig(
        double massKg,
        double dragAreaM2,
        double rollingResistance,
        double wheelRadiusM,
        double wheelInertiaKgM2,
        double driveEfficiency,
        double spokeDragAreaM2)
        implements Serializable {
    /** Mass of a rider of whom nothing is known, kg. Common practice, no source. */
    public static final double TYPICAL_RIDER_KG = 75;

    /** Mass of a bicycle with bottles and a bag, kg. Common practice, no source. */
    public static final double TYPICAL_BICYCLE_KG = 11;

    /** A tyre on rough asphalt or a smooth forest road: between 0.004 (good asphalt) and 0.012 (gravel). From memory. */
    public static final double TYPICAL_ROLLING_RESISTANCE = 0.006;

    // Martin et al. (1998), Journal of Applied Biomechanics 14:276-291.
    private static final double WHEEL_RADIUS_M = 0.311;
    private static final double WHEEL_INERTIA_KG_M2 = 0.14;
    private static final double DRIVE_EFFICIENCY = 0.976;
    private static final double SPOKE_DRAG_AREA_M2 = 0.0044;

    private static final Bounds WHEEL_RADIUS_BOUNDS_M = new Bounds(0.15, 0.5);
    private static final Bounds WHEEL_INERTIA_BOUNDS_KG_M2 = new Bounds(0, 1);
    private static final Bounds DRIVE_EFFICIENCY_BOUNDS = new Bounds(0.8, 1);
    private static final Bounds SPOKE_DRAG_AREA_BOUNDS_M2 = new Bounds(0, 0.05);

    /** @throws IllegalArgumentException when a number lies outside its range */
    public Rig {
        Bounds.RIG_MASS_KG.require("massKg", massKg);
        Bounds.DRAG_AREA_M2.require("dragAreaM2", dragAreaM2);
        Bounds.ROLLING_RESISTANCE.require("rollingResistance", rollingResistance);
        WHEEL_RADIUS_BOUNDS_M.require("wheelRadiusM", wheelRadiusM);
        WHEEL_INERTIA_BOUNDS_KG_M2.require("wheelInertiaKgM2", wheelInertiaKgM2);
        DRIVE_EFFICIENCY_BOUNDS.require("driveEfficiency", driveEfficiency);
        SPOKE_DRAG_AREA_BOUNDS_M2.require("spokeDragAreaM2", spokeDragAreaM2);
    }

    /**
     * Wheels and drive of the published model (Martin et al. 1998) under a rider.
     *
     * @throws IllegalArgumentException when a number lies outside its range
     */
    public static Rig of(double massKg, double dragAreaM2, double rollingResistance) {
        return new Rig(
                massKg,
                dragAreaM2,
                rollingResistance,
                WHEEL_RADIUS_M,
                WHEEL_INERTIA_KG_M2,
                DRIVE_EFFICIENCY,
                SPOKE_DRAG_AREA_M2);
    }

    /** Mass that resists a change of speed, the turning wheels included, kg. */
    public double inertKg() {
        return massKg + wheelInertiaKgM2 / (wheelRadiusM * wheelRadiusM);
    }
}
