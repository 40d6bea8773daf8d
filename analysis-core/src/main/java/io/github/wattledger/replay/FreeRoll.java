package io.github.wattledger.replay;

import io.github.wattledger.ride.Median;
import java.util.ArrayList;
import java.util.List;

/**
 * The bins of a ride that were freewheeled: which of them rolled freely, so that their speed follows from slope, air and
 * tyres, and in which wind.
 *
 * <p>A bin rolled freely where its balance of forces explains the recorded speed in the wind of the pedalled bins nearest
 * to it. A rider who holds a speed with the brakes shows far more apparent drag than that.
 */
final class FreeRoll {
    /** So many of the nearest pedalled bins to each side say what the wind was. */
    private static final int PEDALLED_TO_EACH_SIDE = 5;

    /** Free rolling bins so many before and after give their wind, as among pedalled bins. */
    private static final int WIND_REACH = BinForces.WIND_REACH;

    /**
     * Slowing that the wind leaves unexplained from which on the brakes were held, m/s2: what a wind wrong by 3 m/s does to
     * a rider at 45 km/h, or half of what a slope of 3 % pulls. Own choice.
     */
    private static final double HELD_MPS2 = 0.15;

    private final BinForces forces;
    private final ReplayBin[] bins;
    private final double[] windMps;
    private final double[] surplusN;

    /** @param heldCounts whether brakes that only hold a speed are looked for */
    FreeRoll(BinForces forces, ReplayBin[] bins, boolean heldCounts) {
        this.forces = forces;
        this.bins = bins;
        this.windMps = new double[bins.length];
        this.surplusN = new double[bins.length];
        double[] apparentMps = new double[bins.length];
        boolean[] rolls = new boolean[bins.length];
        for (int k = 0; k < bins.length; k++) {
            ReplayBin bin = bins[k];
            rolls[k] = bin.isFreewheeled() && !(heldCounts && isHeld(k));
            apparentMps[k] = rolls[k] && !bin.isBraked() ? forces.apparentWindMps(bin) : Double.NaN;
        }
        for (int k = 0; k < bins.length; k++) {
            windMps[k] = Double.NaN;
            if (rolls[k]) {
                windMps[k] = windMps(k, apparentMps);
                surplusN[k] = forces.surplusN(bins[k], windMps[k]);
            }
        }
    }

    /** Whether another rig changes the speed of a bin that was freewheeled. */
    boolean isFree(int bin) {
        return !Double.isNaN(windMps[bin]);
    }

    /** The wind of a free bin, m/s. */
    double windMps(int bin) {
        return windMps[bin];
    }

    /** What the balance of a free bin leaves over at the recorded speed in that wind, newtons. */
    double surplusN(int bin) {
        return surplusN[bin];
    }

    /** The median around a bin, of pedalled and freely rolling bins alike; that of the nearest pedalled where none is. */
    private double windMps(int at, double[] apparentMps) {
        List<Double> near = new ArrayList<>();
        for (int k = Math.max(0, at - WIND_REACH); k < Math.min(bins.length, at + WIND_REACH + 1); k++) {
            double wind = bins[k].fixed ? apparentMps[k] : bins[k].apparentWindMps;
            if (!Double.isNaN(wind)) {
                near.add(wind);
            }
        }
        return near.isEmpty() ? pedalledWindMps(at) : median(near);
    }

    /** Whether the brakes held the speed of a bin; false where nothing was pedalled that would say what the wind was. */
    private boolean isHeld(int at) {
        double wind = pedalledWindMps(at);
        ReplayBin bin = bins[at];
        return bin.isFreewheeled() && forces.unexplainedN(bin, wind) > HELD_MPS2 * forces.inertKg();
    }

    private double pedalledWindMps(int at) {
        List<Double> near = new ArrayList<>();
        add(near, at, -1);
        add(near, at, 1);
        return near.isEmpty() ? 0 : median(near);
    }

    private void add(List<Double> winds, int at, int step) {
        int found = 0;
        for (int k = at + step; k >= 0 && k < bins.length && found < PEDALLED_TO_EACH_SIDE; k += step) {
            if (!bins[k].fixed) {
                winds.add(bins[k].apparentWindMps);
                found++;
            }
        }
    }

    private static double median(List<Double> values) {
        return Median.of(values.stream().mapToDouble(Double::doubleValue).toArray());
    }
}
