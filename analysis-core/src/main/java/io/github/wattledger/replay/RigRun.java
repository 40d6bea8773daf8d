package io.github.wattledger.replay;

import io.github.wattledger.rig.Rig;
import java.util.Arrays;

/**
 * One replay with another rig over the whole or a part of the distance. Bins that rolled freely take the speed at which
 * the other rig would roll. Where the brakes were pulled hard, for a bend or a junction, the other rig comes out of them
 * at the recorded speed: what it won before is braked away.
 */
final class RigRun {
    private final BinForces forces;
    private final ReplayBin[] bins;
    private final Rig rig;
    private final Rig other;
    private final Freewheeling freewheeling;
    private final FreeRoll freeRoll;

    /** The fastest bin of the ride, m/s: nothing shows that the rider would let a freewheeled bin run faster. */
    private final double fastestMps;

    /** Energy of motion won so far, joules per kg: it is what gravity and speed hand on to each other. */
    private double gain;

    RigRun(BinForces forces, ReplayBin[] bins, Rig rig, Rig other, Freewheeling freewheeling) {
        this.forces = forces;
        this.bins = bins;
        this.rig = rig;
        this.other = other;
        this.freewheeling = freewheeling;
        this.fastestMps = Arrays.stream(bins)
                .filter(ReplayBin::isKnown)
                .mapToDouble(bin -> bin.speedMps)
                .max()
                .orElse(0);
        this.freeRoll = new FreeRoll(forces, bins, freewheeling != Freewheeling.LEAST_BRAKES);
    }

    /**
     * Rides the next bin, the bins in order.
     *
     * @param k which bin
     * @param watts its power, or {@code NaN} to keep it as it was
     * @param share how much of it is ridden with the other rig, 0 to 1
     * @return how long a recorded second of it takes, seconds
     */
    double stretch(int k, double watts, double share) {
        ReplayBin bin = bins[k];
        if (Double.isNaN(watts) || (bin.fixed && !freeRoll.isFree(k))) {
            gain = 0;
            return 1;
        }
        Balance most = balance(k, watts, share > 0.5 ? other : rig);
        double settledMps = share == 0 || share == 1
                ? most.speedMps(bin.speedMps, bin.speedMps)
                : balance(k, watts, rig).speedMps(bin.speedMps, bin.speedMps) * (1 - share)
                        + balance(k, watts, other).speedMps(bin.speedMps, bin.speedMps) * share;
        if (bin.fixed && freewheeling == Freewheeling.AS_RECORDED) {
            settledMps = Math.min(settledMps, fastestMps);
        }
        double settledGain = (settledMps * settledMps - bin.speedMps * bin.speedMps) / 2;
        if (bin.fixed && freewheeling == Freewheeling.NEVER_FASTER) {
            settledGain = Math.min(0, settledGain);
            gain = Math.min(0, gain);
        }
        return bin.speedMps
                / ReplayBin.speedAfterGain(bin.speedMps, meanGain(bin, settledGain, most.settlingPerM(settledMps)));
    }

    /** The mean gain over a bin; brings the gain from its start to its end. */
    private double meanGain(ReplayBin bin, double settledGain, double settlingPerM) {
        if (!bin.isBraked()) {
            return rolled(settledGain, settlingPerM * bin.lengthM);
        }
        double before = bin.brakesFrom == 0 ? 0 : rolled(settledGain, settlingPerM * bin.lengthM * bin.brakesFrom);
        double whileBraking = gain / 2;
        gain = 0;
        double rest = 1 - bin.brakesTo;
        double after = rest == 0 ? 0 : rolled(settledGain, settlingPerM * bin.lengthM * rest);
        return before * bin.brakesFrom + whileBraking * (bin.brakesTo - bin.brakesFrom) + after * rest;
    }

    private double rolled(double settledGain, double settlings) {
        double left = Math.exp(-settlings);
        double mean = settledGain + (gain - settledGain) * (1 - left) / settlings;
        gain = settledGain + (gain - settledGain) * left;
        return mean;
    }

    private Balance balance(int k, double watts, Rig with) {
        return bins[k].fixed
                ? forces.balance(bins[k], watts, with, freeRoll.windMps(k), freeRoll.surplusN(k))
                : forces.balance(bins[k], watts, with);
    }
}
