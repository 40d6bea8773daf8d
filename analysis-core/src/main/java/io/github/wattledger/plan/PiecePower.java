package io.github.wattledger.plan;

import io.github.wattledger.rig.RoadLoad;

/** One piece of road under one rider: power and speed belong to each other, and one of them is best for a given price of effort. */
final class PiecePower {
    private static final int MOST_STEPS = 100;
    private static final double TOLERANCE_MPS = 1e-11;

    private final RoadLoad load;
    private final RoadPiece piece;
    private final double leastMps;
    private final double mostMps;

    PiecePower(RoadLoad load, RoadPiece piece, PowerLimits limits) {
        this.load = load;
        this.piece = piece;
        double fastest = limits.fastestMps();
        double rolling = Math.min(fastest, load.speedMps(0, piece.grade(), piece.headwindMps()));
        double floorW = piece.grade() > PowerLimits.FLOOR_FROM_GRADE ? limits.floorW() : 0;
        double floor = floorW > 0 ? load.speedMps(floorW, piece.grade(), piece.headwindMps()) : rolling;
        double cap = limits.capW() < Double.MAX_VALUE
                ? load.speedMps(limits.capW(), piece.grade(), piece.headwindMps())
                : fastest;
        this.leastMps = Math.min(fastest, Math.max(Math.max(rolling, floor), limits.slowestMps()));
        this.mostMps = Math.min(fastest, Math.max(cap, leastMps));
    }

    double lengthM() {
        return piece.lengthM();
    }

    /** Power at the pedals for a speed, watts; 0 where the road drives itself. */
    double powerW(double speedMps) {
        return Math.max(0, load.powerW(speedMps, piece.grade(), piece.headwindMps()));
    }

    /** The speed of a power within the limits, m/s. */
    double speedMps(double powerW) {
        return within(load.speedMps(powerW, piece.grade(), piece.headwindMps()));
    }

    /*
     * The best speed makes (c + P^n) / v least, where c is the price of a second in units of P^n. Its derivative has the
     * sign of n P^(n-1) P' v - P^n - c, which rises with v, so bisection between the limits finds the root, and the
     * nearest limit is best where there is none.
     */
    double bestSpeedMps(double price, double exponent, double scaleW) {
        double slow = leastMps;
        double fast = mostMps;
        if (slope(slow, price, exponent, scaleW) >= 0) {
            return slow;
        }
        if (slope(fast, price, exponent, scaleW) <= 0) {
            return fast;
        }
        for (int step = 0; step < MOST_STEPS && fast - slow > TOLERANCE_MPS; step++) {
            double middle = (slow + fast) / 2;
            if (slope(middle, price, exponent, scaleW) < 0) {
                slow = middle;
            } else {
                fast = middle;
            }
        }
        return (slow + fast) / 2;
    }

    /** Powers are divided by a scale so that high exponents stay within what a double holds. */
    private double slope(double speedMps, double price, double exponent, double scaleW) {
        double forceN = load.resistanceN(speedMps, piece.grade(), piece.headwindMps());
        if (forceN <= 0) {
            return -price;
        }
        double power = forceN * speedMps / load.driveEfficiency() / scaleW;
        double rise = (forceN + speedMps * load.resistanceSlopeNPerMps(speedMps, piece.headwindMps()))
                / load.driveEfficiency()
                / scaleW;
        return exponent * Math.pow(power, exponent - 1) * rise * speedMps - Math.pow(power, exponent) - price;
    }

    private double within(double speedMps) {
        return Math.max(leastMps, Math.min(mostMps, speedMps));
    }
}
