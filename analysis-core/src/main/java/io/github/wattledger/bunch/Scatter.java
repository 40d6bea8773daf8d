package io.github.wattledger.bunch;

import io.github.wattledger.rig.EnergyPiece;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * How the pieces of a ride scatter about their model: patches of wind and of surface that reach over several pieces, the
 * place in a bunch, the altitude at the ends of a piece, and what else the air does. All limits are own choices.
 */
final class Scatter {
    /** Patches of wind have some part that rises with the mean wind. */
    private static final double OF_MEAN_WIND = 0.22;

    /** Nobody knows it of a day; gusts that reach further look more like a bunch, so it is taken rather long. */
    private static final double WIND_REACH_M = 3500;

    private static final double SURFACE_REACH_M = 1000;
    private static final double ONE_KIND_OF_ROAD = 0.001;
    private static final double MIXED_ROAD = 0.002;
    private static final double ALTITUDE_M = 0.4;
    private static final double OF_DRAG = 0.03;

    /**
     * What a bunch saves wanders with the place in it, by a quarter of itself or so. Less is taken, so that a bunch that
     * rides evenly is found, too.
     */
    private static final double OF_SAVING = 0.15;

    private static final double SAVING_REACH_M = 500;

    private final RoadPieces pieces;
    private final double surface;
    private final double[] altitude;
    private final double[][] nearInWind;
    private final double[][] nearOnRoad;
    private final double[][] nearInBunch;

    /** @param isOneKind whether the road is of one kind */
    Scatter(RoadPieces pieces, Prior prior, boolean isOneKind) {
        this.pieces = pieces;
        this.surface = square(rollingError(isOneKind) * prior.perRolling());
        int count = pieces.count();
        this.altitude = new double[count];
        this.nearInWind = new double[count][count];
        this.nearOnRoad = new double[count][count];
        this.nearInBunch = new double[count][count];
        for (int i = 0; i < count; i++) {
            altitude[i] = prior.perRolling() * ALTITUDE_M / pieces.get(i).lengthM();
            for (int j = 0; j <= i; j++) {
                double apartM = Math.abs(pieces.middleM(i) - pieces.middleM(j));
                nearInWind[i][j] = Math.exp(-apartM / WIND_REACH_M);
                nearOnRoad[i][j] = Math.exp(-apartM / SURFACE_REACH_M);
                nearInBunch[i][j] =
                        meansNear(pieces.get(i).lengthM(), pieces.get(j).lengthM(), apartM);
            }
        }
    }

    /** How far the coefficient of rolling resistance strays along a road. */
    static double rollingError(boolean isOneKind) {
        return isOneKind ? ONE_KIND_OF_ROAD : MIXED_ROAD;
    }

    /**
     * The covariance of the pieces.
     *
     * @param numbers where the model stands
     * @param patchyMps how patchy the wind is in calm air, m/s
     */
    RealMatrix covariance(DragModel model, double[] numbers, double patchyMps) {
        double wind = square(windMps(numbers, patchyMps));
        int count = pieces.count();
        double[] perMps = new double[count];
        double[] wandering = new double[count];
        for (int i = 0; i < count; i++) {
            perMps[i] = model.dragPerMps(numbers, i);
            wandering[i] = OF_SAVING * (1 - model.dragShare(numbers, i)) * model.loneDrag(numbers, i);
        }
        double[][] covariance = new double[count][count];
        for (int i = 0; i < count; i++) {
            for (int j = 0; j <= i; j++) {
                covariance[i][j] = perMps[i] * perMps[j] * wind * nearInWind[i][j]
                        + surface * nearOnRoad[i][j]
                        + wandering[i] * wandering[j] * nearInBunch[i][j];
                covariance[j][i] = covariance[i][j];
            }
            double drag = model.dragShare(numbers, i) * model.loneDrag(numbers, i);
            covariance[i][i] += 2 * square(altitude[i]) + square(OF_DRAG * drag);
            if (i > 0 && isNext(pieces.get(i - 1), pieces.get(i))) {
                // What one piece has too much of a shared end the other has too little of.
                covariance[i][i - 1] -= altitude[i] * altitude[i - 1];
                covariance[i - 1][i] = covariance[i][i - 1];
            }
        }
        return MatrixUtils.createRealMatrix(covariance);
    }

    /**
     * How patchy the wind is in all, m/s.
     *
     * @param patchyMps how patchy it is in calm air
     */
    static double windMps(double[] numbers, double patchyMps) {
        return Math.hypot(
                patchyMps, OF_MEAN_WIND * Math.hypot(numbers[DragModel.NORTH_WIND], numbers[DragModel.EAST_WIND]));
    }

    /**
     * How alike the means over two pieces are of a saving whose likeness fades with distance: the double integral of the
     * exponential over both, over their lengths.
     */
    static double meansNear(double lengthM, double otherM, double apartM) {
        double one = lengthM / SAVING_REACH_M;
        double other = otherM / SAVING_REACH_M;
        if (apartM == 0) {
            return 2 / one * (1 - fading(one));
        }
        double gapM = Math.max(0, apartM - (lengthM + otherM) / 2);
        return fading(one) * fading(other) * Math.exp(-gapM / SAVING_REACH_M);
    }

    /** The mean of an exponential from 1 down, over some of its reaches. */
    private static double fading(double reaches) {
        return (1 - Math.exp(-reaches)) / reaches;
    }

    private static boolean isNext(EnergyPiece before, EnergyPiece after) {
        return before.when().toSecond() == after.when().fromSecond();
    }

    private static double square(double value) {
        return value * value;
    }
}
