package io.github.wattledger.replay;

import io.github.wattledger.ride.Median;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rig.Rig;
import io.github.wattledger.rig.RoadLoad;
import java.util.Arrays;

/**
 * The forces on a rig in the bins of a recorded ride: the wind that explains the recorded speeds, and the {@link Balance}
 * of a bin with another power or rig.
 */
final class BinForces {
    private static final double MOST_WIND_MPS = 8;

    /**
     * The wind of a bin is the median over so many bins before and after it too: wind does not change as fast as the
     * altitude of a barometer trembles.
     */
    static final int WIND_REACH = 5;

    private final Rig rig;
    private final double densityKgPerM3;

    /**
     * @param rig the rig that was ridden
     * @param densityKgPerM3 density of the air throughout
     */
    BinForces(Rig rig, double densityKgPerM3) {
        this.rig = rig;
        this.densityKgPerM3 = densityKgPerM3;
    }

    /** Works out for each bin whether it keeps its speed, and otherwise its wind and its recorded balance. */
    void explain(ReplayBin[] bins) {
        for (ReplayBin bin : bins) {
            bin.gravityAcrossMps2 = RoadLoad.GRAVITY_MPS2 / Math.sqrt(1 + bin.grade * bin.grade);
            bin.fixed = !bin.isKnown() || bin.watts < Ride.PEDALLING_W;
            bin.apparentWindMps = bin.fixed ? Double.NaN : apparentWindMps(bin);
        }
        for (int k = 0; k < bins.length; k++) {
            ReplayBin bin = bins[k];
            if (!bin.fixed) {
                bin.windMps = Median.of(
                        Arrays.stream(bins, Math.max(0, k - WIND_REACH), Math.min(bins.length, k + WIND_REACH + 1))
                                .filter(near -> !near.fixed)
                                .mapToDouble(near -> near.apparentWindMps)
                                .toArray());
                bin.surplusN = surplusN(bin, bin.windMps);
                expand(bin);
            }
        }
    }

    /** The balance of a bin with another power and rig. */
    Balance balance(ReplayBin bin, double watts, Rig other) {
        return balance(bin, watts, other, bin.windMps, bin.surplusN);
    }

    /** The balance of a bin in a wind of its own. */
    Balance balance(ReplayBin bin, double watts, Rig other, double windMps, double surplusN) {
        double moreN = roadN(other, bin) - roadN(rig, bin);
        double moreKg = other.inertKg() - rig.inertKg();
        if (moreKg != 0) {
            moreN += moreKg * bin.motionMps2();
        }
        return new Balance(
                other.driveEfficiency() * watts, halfDensityArea(other), windMps, surplusN + moreN, other.inertKg());
    }

    /**
     * The balance of a bin with another power and another share of the lone drag, where a bunch saved some of it. The saving
     * hid a part of the wind; what was left over in the recorded state does not change. Where the recorded balance leaves
     * nothing for the air there is nothing to save, and the bin is ridden as it was.
     *
     * @param saving what the bunch saved in the recording, a share of the lone drag
     * @param dragShare what is ridden against, a share of the lone drag
     */
    Balance shelteredBalance(ReplayBin bin, double watts, double saving, double dragShare) {
        return bin.speedMps + bin.windMps <= 0
                ? balance(bin, watts, rig)
                : shelteredBalance(bin, watts, bin.windMps, saving, dragShare);
    }

    /** The same in a wind of its own, which leaves an air speed above 0. */
    Balance shelteredBalance(ReplayBin bin, double watts, double apparentWindMps, double saving, double dragShare) {
        double windMps = (bin.speedMps + apparentWindMps) / Math.sqrt(1 - saving) - bin.speedMps;
        double efficiency = rig.driveEfficiency();
        double loneArea = halfDensityArea(rig);
        // Equal to the bin's own surplus but for rounding, so that nothing changed leaves nothing over.
        double leftOverN = Balance.surplusN(bin.speedMps, efficiency * bin.watts, (1 - saving) * loneArea, windMps);
        return new Balance(efficiency * watts, dragShare * loneArea, windMps, leftOverN, rig.inertKg());
    }

    /** Energy that the air took over a bin, joules; below 0 where it pushed. */
    double airJ(ReplayBin bin) {
        return airN(bin) * bin.lengthM;
    }

    /** Energy that the wheel brought over a bin, joules. */
    double wheelJ(ReplayBin bin) {
        return rig.driveEfficiency() * bin.joules;
    }

    /** What the balance of a bin leaves over at the recorded speed in a wind, newtons. */
    double surplusN(ReplayBin bin, double windMps) {
        return Balance.surplusN(bin.speedMps, rig.driveEfficiency() * bin.watts, halfDensityArea(rig), windMps);
    }

    /** What slows a bin beyond air, tyres, slope and the recorded change of speed in a wind, newtons. */
    double unexplainedN(ReplayBin bin, double windMps) {
        double airMps = bin.speedMps + windMps;
        return airN(bin) - halfDensityArea(rig) * airMps * Math.abs(airMps);
    }

    /** Mass that resists a change of speed, kg. */
    double inertKg() {
        return rig.inertKg();
    }

    /** What the air has to take for the balance of a bin to be even, newtons. */
    private double airN(ReplayBin bin) {
        double v = bin.speedMps;
        return rig.driveEfficiency() * bin.watts / v
                - roadN(rig, bin)
                - RoadLoad.BEARINGS_N
                - RoadLoad.BEARINGS_N_PER_MPS * v
                - kineticN(bin);
    }

    /** The wind along the road that makes the balance of a bin even, m/s, bounded to what wind does. */
    double apparentWindMps(ReplayBin bin) {
        double v = bin.speedMps;
        double airN = airN(bin);
        double airMps = Math.signum(airN) * Math.sqrt(Math.abs(airN) / halfDensityArea(rig));
        return Math.max(-MOST_WIND_MPS, Math.min(MOST_WIND_MPS, airMps - v));
    }

    /** What goes into motion per metre; a replay repeats the recorded change of speed. */
    private double kineticN(ReplayBin bin) {
        double change = bin.endMps * bin.endMps - bin.startMps * bin.startMps;
        return Double.isNaN(change) ? 0 : rig.inertKg() / 2 * change / bin.lengthM;
    }

    /** Rolling and slope, newtons. */
    private static double roadN(Rig of, ReplayBin bin) {
        return of.massKg() * (of.rollingResistance() + bin.grade) * bin.gravityAcrossMps2;
    }

    private double halfDensityArea(Rig of) {
        return densityKgPerM3 / 2 * (of.dragAreaM2() + of.spokeDragAreaM2());
    }

    /** Expands the settled speed by power to the second order: the balance stays 0 while power changes. */
    private void expand(ReplayBin bin) {
        double v = bin.speedMps;
        double efficiency = rig.driveEfficiency();
        Balance recorded = balance(bin, bin.watts, rig);
        double fallN = recorded.fallN(v);
        bin.riseMpsPerW = efficiency / v / fallN;
        bin.bendMpsPerW2 = -bin.riseMpsPerW / fallN * (efficiency / (v * v) + recorded.bendN(v) * bin.riseMpsPerW / 2);
    }
}
