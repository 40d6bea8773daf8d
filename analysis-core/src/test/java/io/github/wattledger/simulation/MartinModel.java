package io.github.wattledger.simulation;

/**
 * The road-load equation of Martin, Milliken, Cobb, McFadden and Coggan (1998), "Validation of a mathematical model for
 * road cycling power", Journal of Applied Biomechanics 14:276-291, written here independently of the library.
 */
final class MartinModel {
    /** Standard gravity, m/s2 (3rd CGPM, 1901). */
    static final double GRAVITY_MPS2 = 9.80665;
    /** Share of the pedals' power that reaches the wheel (paper: drive efficiency). */
    static final double DRIVE_EFFICIENCY = 0.976;
    /** Moment of inertia of both wheels over their radius squared, kg (paper: 0.14 kg m2, 0.311 m). */
    static final double WHEEL_INERTIA_KG = 0.14 / (0.311 * 0.311);

    /** Incremental drag area of turning spokes, m2. */
    private static final double SPOKE_DRAG_AREA_M2 = 0.0044;

    private MartinModel() {}

    /** Power against the air, watts; negative when the wind pushes. */
    static double airW(double speedMps, double headwindMps, double dragAreaM2, double airDensityKgPerM3) {
        double airSpeed = speedMps + headwindMps;
        return airDensityKgPerM3
                / 2
                * (dragAreaM2 + SPOKE_DRAG_AREA_M2)
                * airSpeed
                * StrictMath.abs(airSpeed)
                * speedMps;
    }

    /** Power against rolling resistance, watts. */
    static double rollingW(double speedMps, double rollingResistance, double massKg, double cosine) {
        return rollingResistance * massKg * GRAVITY_MPS2 * cosine * speedMps;
    }

    /** Power lost in the wheel bearings, watts. */
    static double bearingsW(double speedMps) {
        return speedMps * (91 + 8.7 * speedMps) / 1000;
    }

    /** Power against gravity, watts; negative downhill. */
    static double gravityW(double speedMps, double massKg, double sine) {
        return massKg * GRAVITY_MPS2 * sine * speedMps;
    }

    /** Mass that resists a change of speed, the wheels' rotation included, kg. */
    static double inertKg(double massKg) {
        return massKg + WHEEL_INERTIA_KG;
    }
}
