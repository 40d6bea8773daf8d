package io.github.wattledger.rig;

import io.github.wattledger.ride.Median;
import java.util.List;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.jspecify.annotations.Nullable;

/**
 * Drag area and rolling force that explain the pieces of a ride best, with a steady wind.
 *
 * @param areaM2 drag area, spokes included, m2
 * @param areaErrorM2 its standard error
 * @param rollingN force of rolling resistance, newtons
 * @param rollingErrorN its standard error
 */
record EnergyFit(double areaM2, double areaErrorM2, double rollingN, double rollingErrorN) {
    /** Wind at a rider's height is of this size, m/s; a weak prior that keeps it from explaining everything. */
    private static final double USUAL_WIND_MPS = 2;

    private static final int MOST_ROUNDS = 60;

    /** A round that moves drag area, rolling force and wind by less than this ends the search: m2, N, m/s. */
    private static final double LEAST_STEP = 1e-9;

    /** Pieces never scatter less than this, newtons; without it a perfect fit would divide by 0. */
    private static final double LEAST_DEVIATION_N = 0.01;

    private static final double TUKEY = 4.685; // 95 % efficiency for normal errors
    private static final double MAD_TO_DEVIATION = 1.4826;

    // The four numbers of the search, by their places.
    private static final int AREA = 0;
    private static final int ROLLING = 1;
    private static final int NORTH_WIND = 2;
    private static final int EAST_WIND = 3;
    private static final int NUMBERS = 4;

    /** The fit, or null when the pieces do not separate the numbers. */
    static @Nullable EnergyFit of(List<EnergyPiece> pieces, Rig rig, double density) {
        /*
         * Gauss-Newton on area, rolling force and the two parts of the wind, with Tukey's weights renewed each round. A piece
         * expects area * density / 2 * mean of (v + h)^2 + rolling, where h is the part of the wind against its heading.
         */
        double[] found = new double[NUMBERS];
        found[AREA] = Position.HOODS.dragAreaM2();
        found[ROLLING] = rig.rollingResistance() * rig.massKg() * RoadLoad.GRAVITY_MPS2;
        RealMatrix inverse = MatrixUtils.createRealIdentityMatrix(NUMBERS);
        double deviationN = Double.NaN;
        double longest = Double.POSITIVE_INFINITY;
        for (int round = 0; round < MOST_ROUNDS && longest >= LEAST_STEP; round++) {
            double[] residualsN = residualsN(pieces, found, density);
            deviationN = deviationN(residualsN);
            RealMatrix normal = MatrixUtils.createRealMatrix(NUMBERS, NUMBERS);
            RealVector right = new ArrayRealVector(NUMBERS);
            addEquations(normal, right, pieces, residualsN, deviationN, found, density);
            try {
                inverse = new LUDecomposition(normal).getSolver().getInverse();
            } catch (MathRuntimeException singular) {
                return null;
            }
            RealVector step = inverse.operate(right);
            for (int k = 0; k < NUMBERS; k++) {
                found[k] += step.getEntry(k);
            }
            longest = step.getLInfNorm();
        }
        return new EnergyFit(
                found[AREA],
                deviationN * Math.sqrt(Math.max(0, inverse.getEntry(AREA, AREA))),
                found[ROLLING],
                deviationN * Math.sqrt(Math.max(0, inverse.getEntry(ROLLING, ROLLING))));
    }

    /** The normal equations of one round: pieces by their weights, and the prior of the wind. */
    private static void addEquations(
            RealMatrix normal,
            RealVector right,
            List<EnergyPiece> pieces,
            double[] residualsN,
            double deviationN,
            double[] found,
            double density) {
        for (int i = 0; i < residualsN.length; i++) {
            double u = residualsN[i] / (TUKEY * deviationN);
            double weight = Math.abs(u) < 1 ? square(1 - u * u) : 0;
            double[] slope = slope(pieces.get(i), found, density);
            for (int row = 0; row < NUMBERS; row++) {
                right.addToEntry(row, weight * slope[row] * residualsN[i]);
                for (int column = 0; column < NUMBERS; column++) {
                    normal.addToEntry(row, column, weight * slope[row] * slope[column]);
                }
            }
        }
        double prior = square(deviationN / USUAL_WIND_MPS);
        for (int wind = NORTH_WIND; wind <= EAST_WIND; wind++) {
            normal.addToEntry(wind, wind, prior);
            right.addToEntry(wind, -prior * found[wind]);
        }
    }

    /** By what the expected force of a piece changes with each of the four numbers. */
    private static double[] slope(EnergyPiece piece, double[] found, double density) {
        double against = piece.meanSpeedMps() + found[NORTH_WIND] * piece.north() + found[EAST_WIND] * piece.east();
        return new double[] {
            density / 2 * pressure(piece, found),
            1,
            found[AREA] * density * against * piece.north(),
            found[AREA] * density * against * piece.east()
        };
    }

    private static double[] residualsN(List<EnergyPiece> pieces, double[] found, double density) {
        return pieces.stream()
                .mapToDouble(piece ->
                        piece.resistanceN() - (found[AREA] * density / 2 * pressure(piece, found) + found[ROLLING]))
                .toArray();
    }

    /** Mean square of the speed through the air. */
    private static double pressure(EnergyPiece piece, double[] found) {
        double wind = found[NORTH_WIND] * piece.north() + found[EAST_WIND] * piece.east();
        return piece.meanSquare() + 2 * wind * piece.meanSpeedMps() + wind * wind;
    }

    /** The standard deviation by the median of the absolute residuals, which a few odd pieces do not move. */
    private static double deviationN(double[] residualsN) {
        double[] absolutes = new double[residualsN.length];
        for (int i = 0; i < absolutes.length; i++) {
            absolutes[i] = Math.abs(residualsN[i]);
        }
        return Math.max(LEAST_DEVIATION_N, MAD_TO_DEVIATION * Median.upperOf(absolutes));
    }

    private static double square(double value) {
        return value * value;
    }
}
