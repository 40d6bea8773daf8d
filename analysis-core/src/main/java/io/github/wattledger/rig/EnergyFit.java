package io.github.wattledger.rig;

import io.github.wattledger.ride.Median;
import java.util.List;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/** The search for the drag area, the rolling force and the steady wind that explain the pieces of a ride best. */
final class EnergyFit {
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
    static final int AREA = 0;
    static final int ROLLING = 1;
    static final int NORTH_WIND = 2;
    static final int EAST_WIND = 3;
    static final int NUMBERS = 4;

    private final List<EnergyPiece> pieces;
    private final double densityKgPerM3;
    private final double[] found = new double[NUMBERS];
    private double deviationN = Double.NaN;

    private EnergyFit(List<EnergyPiece> pieces, Rig start, double densityKgPerM3) {
        this.pieces = pieces;
        this.densityKgPerM3 = densityKgPerM3;
        found[AREA] = start.dragAreaM2();
        found[ROLLING] = start.rollingResistance() * start.massKg() * RoadLoad.GRAVITY_MPS2;
    }

    /**
     * The fit of a ride's pieces.
     *
     * @param start where the search starts
     * @throws MathRuntimeException when the pieces do not separate the numbers
     */
    static EnergyFit of(List<EnergyPiece> pieces, Rig start, double densityKgPerM3) {
        EnergyFit fit = new EnergyFit(pieces, start, densityKgPerM3);
        fit.search();
        return fit;
    }

    /**
     * Gauss-Newton on area, rolling force and the two parts of the wind, with Tukey's weights renewed each round. A piece
     * expects area * density / 2 * mean of (v + h)^2 + rolling, where h is the part of the wind against its heading.
     */
    private void search() {
        double longest = Double.POSITIVE_INFINITY;
        for (int round = 0; round < MOST_ROUNDS && longest >= LEAST_STEP; round++) {
            double[] residualsN = residualsN();
            deviationN = deviationN(residualsN);
            double[][] normal = new double[NUMBERS][NUMBERS];
            double[] right = new double[NUMBERS];
            for (int i = 0; i < residualsN.length; i++) {
                double weight = weight(residualsN[i]);
                double[] slope = slope(pieces.get(i));
                for (int row = 0; row < NUMBERS; row++) {
                    right[row] += weight * slope[row] * residualsN[i];
                    for (int column = 0; column < NUMBERS; column++) {
                        normal[row][column] += weight * slope[row] * slope[column];
                    }
                }
            }
            double prior = prior();
            for (int wind = NORTH_WIND; wind <= EAST_WIND; wind++) {
                normal[wind][wind] += prior;
                right[wind] -= prior * found[wind];
            }
            RealVector step = inverse(normal).operate(MatrixUtils.createRealVector(right));
            for (int k = 0; k < NUMBERS; k++) {
                found[k] += step.getEntry(k);
            }
            longest = step.getLInfNorm();
        }
    }

    static RealMatrix inverse(double[][] matrix) {
        return new LUDecomposition(MatrixUtils.createRealMatrix(matrix))
                .getSolver()
                .getInverse();
    }

    List<EnergyPiece> pieces() {
        return pieces;
    }

    double found(int number) {
        return found[number];
    }

    double deviationN() {
        return deviationN;
    }

    double densityKgPerM3() {
        return densityKgPerM3;
    }

    /** How strongly the prior of the wind pulls towards calm, in the units of the normal equations. */
    double prior() {
        return square(deviationN / USUAL_WIND_MPS);
    }

    /** What a piece counts by its residual: 1 to 0. */
    double weight(double residualN) {
        double u = residualN / (TUKEY * deviationN);
        return Math.abs(u) < 1 ? square(1 - u * u) : 0;
    }

    /** By how much residual times weight changes with the residual. */
    double weightSlope(double residualN) {
        double u = residualN / (TUKEY * deviationN);
        return Math.abs(u) < 1 ? (1 - u * u) * (1 - 5 * u * u) : 0;
    }

    /** By how much the expected force of a piece changes with each of the four numbers. */
    double[] slope(EnergyPiece piece) {
        double airMps = piece.meanSpeedMps() + windMps(piece);
        return new double[] {
            densityKgPerM3 / 2 * pressure(piece),
            1,
            found[AREA] * densityKgPerM3 * airMps * piece.north(),
            found[AREA] * densityKgPerM3 * airMps * piece.east()
        };
    }

    double[] residualsN() {
        return pieces.stream()
                .mapToDouble(piece ->
                        piece.resistanceN() - (found[AREA] * densityKgPerM3 / 2 * pressure(piece) + found[ROLLING]))
                .toArray();
    }

    /** Wind against the heading of a piece, m/s. */
    double windMps(EnergyPiece piece) {
        return piece.againstMps(found[NORTH_WIND], found[EAST_WIND]);
    }

    /** Mean square of the speed through the air. */
    private double pressure(EnergyPiece piece) {
        return piece.airSpeedSquare(windMps(piece));
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
