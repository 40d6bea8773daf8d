package io.github.wattledger.replay;

import io.github.wattledger.rig.RoadLoad;

/**
 * The difference between the forces on a rider at some speed and those recorded, with all worked out that does not
 * depend on the speed.
 *
 * @param wheelW power at the wheel, watts
 * @param halfDensityArea half the density of the air times drag area, kg/m
 * @param windMps wind along the road, against the rider, m/s
 * @param otherN what was left over in the recorded state, and what rolling and slope ask for beyond it, newtons
 * @param inertKg mass that resists a change of speed, kg
 */
record Balance(double wheelW, double halfDensityArea, double windMps, double otherN, double inertKg) {
    private static final int MOST_STEPS = 100;
    private static final double SPEED_TOLERANCE_MPS = 1e-6;

    /**
     * A step of Newton's as short as this is the last one: the error after it is at most its square over the speed, so
     * 0.0000002 m/s at 5 m/s.
     */
    private static final double LAST_NEWTON_STEP_MPS = 1e-3;

    /** Push less air and bearings, newtons. */
    static double surplusN(double speedMps, double wheelW, double halfDensityArea, double windMps) {
        double airMps = speedMps + windMps;
        return wheelW * (1 / speedMps)
                - halfDensityArea * (airMps * Math.abs(airMps))
                - RoadLoad.BEARINGS_N_PER_MPS * speedMps;
    }

    private double surplusN(double speedMps) {
        return surplusN(speedMps, wheelW, halfDensityArea, windMps) - otherN;
    }

    /** How fast the surplus force falls with speed, newtons per m/s; above 0. */
    double fallN(double speedMps) {
        double secondsPerM = 1 / speedMps;
        return 2 * halfDensityArea * Math.abs(speedMps + windMps)
                + RoadLoad.BEARINGS_N_PER_MPS
                + wheelW * secondsPerM * secondsPerM;
    }

    /** How fast the fall itself changes with speed, newtons per m/s squared. */
    double bendN(double speedMps) {
        double airN = 2 * halfDensityArea * Math.signum(speedMps + windMps);
        return airN - 2 * wheelW / (speedMps * speedMps * speedMps);
    }

    /**
     * One over the distance in which a difference in speed shrinks to 1/e, per metre: how fast the surplus force falls
     * with speed over momentum. That distance is a few metres on a steep climb, near 200 on a fast descent.
     */
    double settlingPerM(double speedMps) {
        return fallN(speedMps) / (inertKg * speedMps);
    }

    /**
     * The speed at which the forces balance, once it has settled; the recorded one when nothing changed. Surplus force
     * falls with speed, so the root is bracketed; where it lies outside, the bound is the answer. The search takes
     * Newton's step where that stays within the bracket, and halves the bracket where not.
     *
     * @param recordedMps a speed within the bracket; the search starts here when {@code nearMps} lies outside
     * @param nearMps where to start
     */
    double speedMps(double recordedMps, double nearMps) {
        double slow = Math.min(ReplayBin.SLOWEST_MPS, recordedMps);
        double fast = ReplayBin.FASTEST_MPS;
        double v = nearMps > slow && nearMps < fast ? nearMps : recordedMps;
        for (int step = 0; step < MOST_STEPS && fast - slow > SPEED_TOLERANCE_MPS; step++) {
            double surplus = surplusN(v);
            if (surplus == 0) {
                return v;
            } else if (surplus > 0) {
                slow = v;
            } else {
                fast = v;
            }
            double next = v + surplus / fallN(v);
            if (!(next > slow && next < fast)) {
                next = (slow + fast) / 2;
            } else if (Math.abs(next - v) < LAST_NEWTON_STEP_MPS) {
                return next;
            }
            v = next;
        }
        return v;
    }
}
