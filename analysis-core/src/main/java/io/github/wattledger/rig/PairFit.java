package io.github.wattledger.rig;

import static io.github.wattledger.rig.EnergyFit.AREA;
import static io.github.wattledger.rig.EnergyFit.EAST_WIND;
import static io.github.wattledger.rig.EnergyFit.NORTH_WIND;
import static io.github.wattledger.rig.EnergyFit.NUMBERS;
import static io.github.wattledger.rig.EnergyFit.ROLLING;

import java.util.List;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.jspecify.annotations.Nullable;

/**
 * Drag area and rolling force of a ride, and how far they can be off. They are off together: a ride that was ridden at
 * nearly one speed shows their sum well and each of them badly, so that what one has too much the other has too little.
 *
 * <p>Three things make them wrong, all of them in the numbers here:
 *
 * <ul>
 *   <li>Chance. Neighbouring pieces share wind and surface, so their residuals count as dependent over {@link #LAGS} pieces
 *       (Newey and West, Econometrica 55:703-708, 1987).
 *   <li>A soft stretch or a gust slows the rider, so that more resistance goes with less speed, which reads as less drag
 *       and more rolling resistance. How much follows from the scatter and from how far a newton slows the rider, if all
 *       of the scatter were such forces; it is nothing, if all of it were the barometer's. Half of it is taken out, and
 *       the other half is half of the width of what remains possible.
 *   <li>The mass with which height and motion were counted: {@code areaPerKg} and {@code rollingNPerKg}.
 * </ul>
 *
 * @param areaM2 drag area, spokes included, m2
 * @param rollingN force of rolling resistance, newtons
 * @param areaErrorM2 standard error of the drag area
 * @param rollingErrorN standard error of the rolling force
 * @param correlation of both errors, -1 to 1
 * @param areaPerKg by how much the drag area changes when the mass is a kilogram more, m2
 * @param rollingNPerKg by how much the rolling force then changes, newtons
 */
record PairFit(
        double areaM2,
        double rollingN,
        double areaErrorM2,
        double rollingErrorN,
        double correlation,
        double areaPerKg,
        double rollingNPerKg) {
    /** Over so many pieces, 4 km, wind and surface are alike. Own choice. */
    private static final int LAGS = 8;

    /**
     * Drag area and rolling force with how far they can be off, or null when the pieces do not separate the numbers.
     *
     * @param start where the search starts
     */
    static @Nullable PairFit of(List<EnergyPiece> pieces, Rig start, double densityKgPerM3) {
        try {
            return of(EnergyFit.of(pieces, start, densityKgPerM3));
        } catch (MathRuntimeException singular) {
            return null;
        }
    }

    private static PairFit of(EnergyFit fit) {
        double[] residualsN = fit.residualsN();
        RealMatrix inverse = EnergyFit.inverse(curvature(fit, residualsN));
        RealMatrix covariance = inverse.multiply(MatrixUtils.createRealMatrix(scatter(fit, residualsN)))
                .multiplyTransposed(inverse);
        double[] slowed = inverse.operate(slowed(fit, residualsN));
        double[] perKg = inverse.operate(perKg(fit, residualsN));
        // What is left of the slowing lies between half of it to either side: two standard errors.
        double areaVariance = covariance.getEntry(AREA, AREA) + square(slowed[AREA] / 4);
        double rollingVariance = covariance.getEntry(ROLLING, ROLLING) + square(slowed[ROLLING] / 4);
        double both = covariance.getEntry(AREA, ROLLING) + slowed[AREA] * slowed[ROLLING] / 16;
        double product = Math.sqrt(areaVariance * rollingVariance);
        return new PairFit(
                fit.found(AREA) - slowed[AREA] / 2,
                fit.found(ROLLING) - slowed[ROLLING] / 2,
                Math.sqrt(areaVariance),
                Math.sqrt(rollingVariance),
                product > 0 ? Math.max(-1, Math.min(1, both / product)) : 0,
                perKg[AREA],
                perKg[ROLLING]);
    }

    /** The matrix that turns a change of the forces into a change of the four numbers, before it is inverted. */
    private static double[][] curvature(EnergyFit fit, double[] residualsN) {
        double[][] curvature = new double[NUMBERS][NUMBERS];
        for (int i = 0; i < residualsN.length; i++) {
            double[] slope = fit.slope(fit.pieces().get(i));
            double counts = fit.weightSlope(residualsN[i]);
            for (int row = 0; row < NUMBERS; row++) {
                for (int column = 0; column < NUMBERS; column++) {
                    curvature[row][column] += counts * slope[row] * slope[column];
                }
            }
        }
        for (int wind = NORTH_WIND; wind <= EAST_WIND; wind++) {
            curvature[wind][wind] += fit.prior();
        }
        return curvature;
    }

    /** How far the equations scatter, neighbouring pieces together. */
    private static double[][] scatter(EnergyFit fit, double[] residualsN) {
        List<EnergyPiece> pieces = fit.pieces();
        double[][] parts = new double[residualsN.length][];
        for (int i = 0; i < parts.length; i++) {
            parts[i] = fit.slope(pieces.get(i));
            for (int k = 0; k < NUMBERS; k++) {
                parts[i][k] *= fit.weight(residualsN[i]) * residualsN[i];
            }
        }
        double[][] scatter = new double[NUMBERS][NUMBERS];
        for (int lag = 0; lag <= LAGS; lag++) {
            double counts = (1 - lag / (LAGS + 1.0)) * (lag == 0 ? 0.5 : 1);
            for (int i = lag; i < parts.length; i++) {
                for (int row = 0; row < NUMBERS; row++) {
                    for (int column = 0; column < NUMBERS; column++) {
                        scatter[row][column] += counts
                                * (parts[i][row] * parts[i - lag][column] + parts[i - lag][row] * parts[i][column]);
                    }
                }
            }
        }
        for (int wind = NORTH_WIND; wind <= EAST_WIND; wind++) {
            scatter[wind][wind] += fit.prior() * square(fit.deviationN());
        }
        return scatter;
    }

    /** What the equations are off by, if all scatter of the pieces is force that slows the rider. */
    private static double[] slowed(EnergyFit fit, double[] residualsN) {
        double[] slowed = new double[NUMBERS];
        double squares = 0;
        double counts = 0;
        double density = fit.densityKgPerM3();
        double area = fit.found(AREA);
        for (int i = 0; i < residualsN.length; i++) {
            EnergyPiece piece = fit.pieces().get(i);
            double weight = fit.weight(residualsN[i]);
            double v = piece.meanSpeedMps();
            double airMps = v + fit.windMps(piece);
            // Resistance rises and the push of a power falls with speed: newtons per m/s.
            double fallN = density * Math.abs(area * airMps) + piece.wheelW() / (v * v);
            squares += square(weight * residualsN[i]);
            counts += square(weight);
            slowed[AREA] -= weight * density * airMps / fallN;
            slowed[NORTH_WIND] -= weight * density * area * piece.north() / fallN;
            slowed[EAST_WIND] -= weight * density * area * piece.east() / fallN;
        }
        for (int k = 0; k < NUMBERS; k++) {
            slowed[k] *= squares / counts;
        }
        return slowed;
    }

    private static double[] perKg(EnergyFit fit, double[] residualsN) {
        double[] perKg = new double[NUMBERS];
        for (int i = 0; i < residualsN.length; i++) {
            EnergyPiece piece = fit.pieces().get(i);
            double[] slope = fit.slope(piece);
            for (int k = 0; k < NUMBERS; k++) {
                perKg[k] += fit.weightSlope(residualsN[i]) * slope[k] * piece.newtonsPerKg();
            }
        }
        return perKg;
    }

    private static double square(double value) {
        return value * value;
    }
}
