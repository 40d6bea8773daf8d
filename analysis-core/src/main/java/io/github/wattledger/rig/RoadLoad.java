package io.github.wattledger.rig;

import io.github.wattledger.course.Course;
import io.github.wattledger.rider.Bounds;

/**
 * Power and speed on the road, as in Martin, Milliken, Cobb, McFadden and Coggan, "Validation of a mathematical model for
 * road cycling power", Journal of Applied Biomechanics 14:276-291 (1998). Grades are rise over run; a headwind is
 * positive, a wind from behind negative, both along the road and relative to the ground.
 */
public final class RoadLoad {
    /** Standard gravity, m/s2 (3rd CGPM, 1901). */
    public static final double GRAVITY_MPS2 = 9.80665;

    /** The part of the drag of the wheel bearings that speed does not change, newtons (Martin et al. 1998). */
    public static final double BEARINGS_N = 0.091;

    /** The part of the drag of the wheel bearings that rises with speed, newtons per m/s (Martin et al. 1998). */
    public static final double BEARINGS_N_PER_MPS = 0.0087;

    /** No bicycle is pedalled faster than this; the root lies below it or the answer is this. */
    private static final double FASTEST_MPS = 60;

    private static final double TOLERANCE_MPS = 1e-10;
    private static final int MOST_STEPS = 200;

    private final Rig rig;
    private final double airDensityKgPerM3;
    private final double gravityMps2;

    private RoadLoad(Rig rig, double airDensityKgPerM3, double gravityMps2) {
        this.rig = rig;
        this.airDensityKgPerM3 = airDensityKgPerM3;
        this.gravityMps2 = gravityMps2;
    }

    /**
     * The road load of a rig in air of one density.
     *
     * @param airDensityKgPerM3 0.3 to 1.6 kg/m3, see {@link Air#density()}
     * @throws IllegalArgumentException when the density is out of range or {@code NaN}
     */
    public static RoadLoad of(Rig rig, double airDensityKgPerM3) {
        requireDensity(airDensityKgPerM3);
        return new RoadLoad(rig, airDensityKgPerM3, GRAVITY_MPS2);
    }

    static void requireDensity(double airDensityKgPerM3) {
        Bounds.AIR_DENSITY_KG_PER_M3.require("airDensityKgPerM3", airDensityKgPerM3);
    }

    /** This road load with another local gravity, m/s2, for comparison with papers that round it. */
    RoadLoad withGravityMps2(double other) {
        return new RoadLoad(rig, airDensityKgPerM3, other);
    }

    /** Power against the air at the wheel, watts; negative when the wind pushes. */
    double airW(double speedMps, double headwindMps) {
        return airN(speedMps, headwindMps) * speedMps;
    }

    /** Power against rolling resistance at the wheel, watts. */
    double rollingW(double speedMps, double grade) {
        return rollingN(grade) * speedMps;
    }

    /** Power lost in the wheel bearings, watts. */
    double bearingsW(double speedMps) {
        return (BEARINGS_N + BEARINGS_N_PER_MPS * speedMps) * speedMps;
    }

    /** Power against gravity at the wheel, watts; negative downhill. */
    double gravityW(double speedMps, double grade) {
        return gravityN(grade) * speedMps;
    }

    /** The force that resists steady riding, newtons; negative where the road or the wind pushes harder. */
    public double resistanceN(double speedMps, double grade, double headwindMps) {
        return airN(speedMps, headwindMps)
                + rollingN(grade)
                + BEARINGS_N
                + BEARINGS_N_PER_MPS * speedMps
                + gravityN(grade);
    }

    /**
     * How fast the resisting force rises with speed, newtons per m/s, 0 or more; the grade makes no difference.
     *
     * @param speedMps speed over ground, m/s, 0 or more
     * @param headwindMps wind against the rider, m/s
     */
    public double resistanceSlopeNPerMps(double speedMps, double headwindMps) {
        return airDensityKgPerM3 * (rig.dragAreaM2() + rig.spokeDragAreaM2()) * Math.abs(speedMps + headwindMps)
                + BEARINGS_N_PER_MPS;
    }

    /** Share of the pedals' power that reaches the wheel. */
    public double driveEfficiency() {
        return rig.driveEfficiency();
    }

    /**
     * Power at the pedals for a steady speed.
     *
     * @param speedMps speed over ground, m/s, 0 or more
     * @param grade rise over run
     * @param headwindMps wind against the rider, m/s
     * @return watts; below 0 is what the brakes take, as the drive cannot; {@code NaN} when an argument is {@code NaN}
     */
    public double powerW(double speedMps, double grade, double headwindMps) {
        double wheelW = resistanceN(speedMps, grade, headwindMps) * speedMps;
        return wheelW > 0 ? wheelW / rig.driveEfficiency() : wheelW;
    }

    /**
     * Mean power at the pedals while speed changes, kinetic energy of wheels included; the resistance is that of the
     * mean of both speeds.
     *
     * @param fromMps speed before
     * @param toMps speed after
     * @param seconds how long the change takes, above 0
     */
    double powerW(double fromMps, double toMps, double seconds, double grade, double headwindMps) {
        double mean = (fromMps + toMps) / 2;
        double wheelW = resistanceN(mean, grade, headwindMps) * mean + kineticW(fromMps, toMps, seconds);
        return wheelW > 0 ? wheelW / rig.driveEfficiency() : wheelW;
    }

    /** Power that goes into motion when speed changes, watts; negative when it slows. */
    double kineticW(double fromMps, double toMps, double seconds) {
        return rig.inertKg() / 2 * (toMps * toMps - fromMps * fromMps) / seconds;
    }

    /**
     * The steady speed of a power. There is exactly one: resistance rises with speed, and the push that a power gives
     * falls with it.
     *
     * @param powerW power at the pedals, watts, 0 or more; at 0 W the speed of free rolling, 0 where the road does not
     *     fall steeply enough
     * @param grade rise over run
     * @param headwindMps wind against the rider, m/s
     * @return m/s, at most 60; {@code NaN} when an argument is {@code NaN}
     * @throws IllegalArgumentException when the power is negative
     */
    public double speedMps(double powerW, double grade, double headwindMps) {
        if (powerW < 0) {
            throw new IllegalArgumentException("powerW " + powerW + ", expected 0 or more");
        }
        if (Double.isNaN(powerW + grade + headwindMps)) {
            return Double.NaN;
        }
        double wheelW = powerW * rig.driveEfficiency();
        double slow = 0;
        double fast = FASTEST_MPS;
        if (resistanceN(fast, grade, headwindMps) * fast <= wheelW) {
            return fast;
        }
        // Bisection on force: bracketed, so it cannot run away, and a few dozen steps cost nothing here.
        for (int step = 0; step < MOST_STEPS && fast - slow > TOLERANCE_MPS; step++) {
            double middle = (slow + fast) / 2;
            if (resistanceN(middle, grade, headwindMps) * middle < wheelW) {
                slow = middle;
            } else {
                fast = middle;
            }
        }
        return (slow + fast) / 2;
    }

    /**
     * How long a course takes at a steady power, each piece ridden at its own steady speed.
     *
     * @param course the road; pieces of unknown altitude count as level
     * @param powerW power at the pedals, watts, above 0
     * @param headwindMps wind against the rider throughout, m/s
     * @return seconds
     * @throws IllegalArgumentException when the power is not above 0
     */
    public double secondsFor(Course course, double powerW, double headwindMps) {
        if (!(powerW > 0)) {
            throw new IllegalArgumentException("powerW " + powerW + ", expected above 0");
        }
        double seconds = 0;
        for (int piece = 0; piece < course.pieces(); piece++) {
            double grade = course.meanGrade(piece, piece + 1);
            seconds += course.stepM() / speedMps(powerW, Double.isNaN(grade) ? 0 : grade, headwindMps);
        }
        return seconds;
    }

    private double airN(double speedMps, double headwindMps) {
        double airMps = speedMps + headwindMps;
        return airDensityKgPerM3 / 2 * (rig.dragAreaM2() + rig.spokeDragAreaM2()) * airMps * Math.abs(airMps);
    }

    private double rollingN(double grade) {
        return rig.rollingResistance() * rig.massKg() * gravityMps2 / Math.sqrt(1 + grade * grade);
    }

    private double gravityN(double grade) {
        return rig.massKg() * gravityMps2 * grade / Math.sqrt(1 + grade * grade);
    }
}
