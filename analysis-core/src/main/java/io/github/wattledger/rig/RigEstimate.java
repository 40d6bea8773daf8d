package io.github.wattledger.rig;

import io.github.wattledger.course.Course;
import io.github.wattledger.course.Place;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowFieldMatrix;
import org.hipparchus.linear.FieldLUDecomposition;
import org.hipparchus.linear.FieldMatrix;
import org.hipparchus.util.Binary64;
import org.hipparchus.util.MathArrays;
import org.jspecify.annotations.Nullable;

/**
 * Drag area and rolling resistance from a ride itself: the balance of energy over pieces of 500 m, as in the virtual
 * elevation of the trade, put as a line. What the pedals gave, less height and motion won and bearings, per metre, is
 * rolling resistance plus drag area times dynamic pressure. A steady wind is estimated along with it where the ride has
 * positions. The fit is robust: pieces with brakes, drafts and gusts count little.
 *
 * <p>Equation: Martin et al. (1998), Journal of Applied Biomechanics 14:276-291. Drafting shows as less drag, a road that
 * changes as a mean: these are the numbers of this ride, not of the rider.
 *
 * @param refusal why there is no estimate, one clause, or null when there is one
 * @param dragAreaM2 drag area, spokes left out, m2; {@code NaN} when nothing could be fitted
 * @param dragAreaErrorM2 its standard error, m2
 * @param rollingResistance coefficient of rolling resistance, roughness included
 * @param rollingResistanceError its standard error
 * @param pieces the number of pieces that were used
 */
public record RigEstimate(
        @Nullable String refusal,
        double dragAreaM2,
        double dragAreaErrorM2,
        double rollingResistance,
        double rollingResistanceError,
        int pieces)
        implements Serializable {
    private static final double PIECE_M = 500;
    private static final int LEAST_PIECES = 20;

    // Plausible for a person on a bicycle on a road; beyond them something else is at work.
    private static final double LEAST_DRAG_AREA_M2 = 0.15;
    private static final double MOST_DRAG_AREA_M2 = 0.65;
    private static final double LEAST_ROLLING = 0.002;
    private static final double MOST_ROLLING = 0.03;

    /** A drag area less certain than this share of itself is no better than a typical one. */
    private static final double MOST_RELATIVE_ERROR = 0.08;

    /** Wind at a rider's height is of this size, m/s; a weak prior that keeps it from explaining everything. */
    private static final double USUAL_WIND_MPS = 2;

    private static final String TOO_ALIKE = "the ride does not tell drag from rolling resistance closely enough";

    private static final int MOST_ROUNDS = 60;

    /** A round that moves drag area, rolling force and wind by less than this ends the search: m2, N, m/s. */
    private static final double LEAST_STEP = 1e-9;

    /** A pivot as small as this makes the equations singular. */
    private static final double LEAST_PIVOT = 1e-11;

    private static final double TUKEY = 4.685; // 95 % efficiency for normal errors
    private static final double MAD_TO_DEVIATION = 1.4826;

    /** Whether there is an estimate. */
    public boolean isAccepted() {
        return refusal == null;
    }

    /**
     * Estimates from a ride.
     *
     * @param totalMassKg rider and bicycle with all that is on it, kg; both results rise with it
     */
    public static RigEstimate of(Ride ride, double totalMassKg) {
        return of(ride, Course.of(ride).orElse(null), totalMassKg);
    }

    /**
     * The same for who has the course of the ride already.
     *
     * @param course the course of this ride, or null where it leads nowhere
     */
    static RigEstimate of(Ride ride, @Nullable Course course, double totalMassKg) {
        for (Channel channel : List.of(Channel.POWER, Channel.DISTANCE, Channel.SPEED, Channel.ALTITUDE)) {
            if (!ride.has(channel)) {
                return refused("no " + channel.label() + " in this file");
            }
        }
        if (course == null) {
            return refused("the ride leads nowhere");
        }
        // Any drag area does here: wheels, drive and mass are all that is read of it.
        Rig rig = Rig.of(totalMassKg, Position.HOODS.dragAreaM2(), Rig.TYPICAL_ROLLING_RESISTANCE);
        List<Piece> pieces = pieces(ride, course, rig);
        if (pieces.size() < LEAST_PIECES) {
            return refused("too few stretches were pedalled without a gap");
        }
        return fit(pieces, rig, Air.of(ride).density().value());
    }

    private static RigEstimate refused(String reason) {
        return new RigEstimate(reason, Double.NaN, Double.NaN, Double.NaN, Double.NaN, 0);
    }

    /**
     * A stretch pedalled without a gap.
     *
     * @param resistanceN what resisted beyond slope and bearings, newtons
     * @param meanSpeedMps mean over the distance
     * @param meanSquare mean over the distance of the square of speed
     * @param north mean over the distance of the northward part of the heading, 0 where it is not known
     * @param east the eastward part
     */
    private record Piece(double resistanceN, double meanSpeedMps, double meanSquare, double north, double east) {}

    private static List<Piece> pieces(Ride ride, Course course, Rig rig) {
        boolean[] told = told(ride);
        Series distance = ride.series(Channel.DISTANCE);
        List<Piece> pieces = new ArrayList<>();
        int from = 1;
        for (int second = 1; second < ride.seconds(); second++) {
            if (!told[second]) {
                from = second + 1;
            } else if (distance.get(second) - distance.get(from - 1) >= PIECE_M) {
                Piece piece = piece(ride, course, rig, from, second);
                if (piece != null) {
                    pieces.add(piece);
                }
                from = second + 1;
            }
        }
        return pieces;
    }

    /** Which seconds follow one that was ridden too, with all known of them. */
    private static boolean[] told(Ride ride) {
        Series watts = ride.series(Channel.POWER);
        Series speed = ride.series(Channel.SPEED);
        Series distance = ride.series(Channel.DISTANCE);
        boolean[] told = new boolean[ride.seconds()];
        boolean before = false;
        for (int second = 0; second < told.length; second++) {
            boolean moves =
                    ride.state(second) == SecondState.RIDING && speed.isMeasured(second) && distance.isMeasured(second);
            told[second] = before && moves && watts.isMeasured(second);
            before = moves;
        }
        return told;
    }

    private static @Nullable Piece piece(Ride ride, Course course, Rig rig, int from, int to) {
        Series watts = ride.series(Channel.POWER);
        Series speed = ride.series(Channel.SPEED);
        Series distance = ride.series(Channel.DISTANCE);
        double joules = 0;
        double cubes = 0;
        double squares = 0;
        for (int second = from; second <= to; second++) {
            double v = (speed.get(second) + speed.get(second - 1)) / 2;
            joules += watts.get(second);
            squares += v * v;
            cubes += v * v * v;
        }
        double length = distance.get(to) - distance.get(from - 1);
        double rise = course.altitudeAtM(distance.get(to)) - course.altitudeAtM(distance.get(from - 1));
        int seconds = to - from + 1;
        if (joules < Ride.PEDALLING_W * seconds || Double.isNaN(rise) || length > 2 * PIECE_M) {
            return null;
        }
        double motionJ = rig.inertKg() / 2 * (square(speed.get(to)) - square(speed.get(from - 1)));
        double bearingsJ = RoadLoad.BEARINGS_N * length + RoadLoad.BEARINGS_N_PER_MPS * squares;
        double heightJ = rig.massKg() * RoadLoad.GRAVITY_MPS2 * rise;
        double resistedJ = rig.driveEfficiency() * joules - motionJ - bearingsJ - heightJ;
        double[] heading = heading(ride, from - 1, to, length);
        return new Piece(resistedJ / length, squares / length, cubes / length, heading[0], heading[1]);
    }

    /** Northward and eastward metres per metre ridden. */
    private static double[] heading(Ride ride, int from, int to, double lengthM) {
        if (!ride.has(Channel.LATITUDE) || !ride.has(Channel.LONGITUDE)) {
            return new double[] {0, 0};
        }
        Series latitude = ride.series(Channel.LATITUDE);
        Series longitude = ride.series(Channel.LONGITUDE);
        double north = (latitude.get(to) - latitude.get(from)) * Place.METRES_PER_DEGREE / lengthM;
        double east = (longitude.get(to) - longitude.get(from))
                * Place.METRES_PER_DEGREE
                * Math.cos(Math.toRadians(latitude.get(from)))
                / lengthM;
        return Double.isNaN(north + east) ? new double[] {0, 0} : new double[] {north, east};
    }

    private static double square(double value) {
        return value * value;
    }

    /*
     * Gauss-Newton on area, rolling force and the two parts of the wind, with Tukey's weights renewed each round. A piece
     * expects area * density / 2 * mean of (v + h)^2 + rolling, where h is the part of the wind against its heading.
     */
    private static RigEstimate fit(List<Piece> pieces, Rig rig, double density) {
        double[] found = {
            Position.HOODS.dragAreaM2(), rig.rollingResistance() * rig.massKg() * RoadLoad.GRAVITY_MPS2, 0, 0
        };
        double[] residual = new double[pieces.size()];
        double[][] inverse = null;
        double deviation = Double.NaN;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            for (int i = 0; i < residual.length; i++) {
                residual[i] = pieces.get(i).resistanceN - expectedN(pieces.get(i), found, density);
            }
            deviation = Math.max(0.01, MAD_TO_DEVIATION * medianOfAbsolutes(residual));
            double[][] normal = new double[4][4];
            double[] right = new double[4];
            for (int i = 0; i < residual.length; i++) {
                double u = residual[i] / (TUKEY * deviation);
                double weight = Math.abs(u) < 1 ? square(1 - u * u) : 0;
                addTo(normal, right, weight, slope(pieces.get(i), found, density), residual[i]);
            }
            double prior = square(deviation / USUAL_WIND_MPS);
            for (int wind = 2; wind < 4; wind++) {
                normal[wind][wind] += prior;
                right[wind] -= prior * found[wind];
            }
            try {
                inverse = inverse(normal);
            } catch (MathRuntimeException singular) {
                return refused(TOO_ALIKE);
            }
            double longest = 0;
            for (int k = 0; k < found.length; k++) {
                double step = MathArrays.linearCombination(inverse[k], right);
                found[k] += step;
                longest = Math.max(longest, Math.abs(step));
            }
            if (longest < LEAST_STEP) {
                break;
            }
        }
        if (inverse == null) {
            throw new AssertionError("no round was run");
        }
        return judged(
                found[0] - rig.spokeDragAreaM2(),
                deviation * Math.sqrt(Math.max(0, inverse[0][0])),
                found[1] / (rig.massKg() * RoadLoad.GRAVITY_MPS2),
                deviation * Math.sqrt(Math.max(0, inverse[1][1])) / (rig.massKg() * RoadLoad.GRAVITY_MPS2),
                pieces.size());
    }

    /** By what the expected force changes with each of the four numbers. */
    private static double[] slope(Piece piece, double[] found, double density) {
        double against = piece.meanSpeedMps + found[2] * piece.north + found[3] * piece.east;
        return new double[] {
            density / 2 * pressure(piece, found),
            1,
            found[0] * density * against * piece.north,
            found[0] * density * against * piece.east
        };
    }

    private static void addTo(double[][] normal, double[] right, double weight, double[] slope, double residual) {
        for (int row = 0; row < slope.length; row++) {
            right[row] += weight * slope[row] * residual;
            for (int column = 0; column < slope.length; column++) {
                normal[row][column] += weight * slope[row] * slope[column];
            }
        }
    }

    /**
     * The inverse of a symmetric matrix. By the library's matrices of field elements, since the class of its real matrices
     * loads the number formats of the locale, which takes longer than all the rest of the estimate.
     *
     * @throws MathRuntimeException when it is singular
     */
    private static double[][] inverse(double[][] matrix) {
        int size = matrix.length;
        Binary64[][] elements = new Binary64[size][size];
        Binary64[][] identity = new Binary64[size][size];
        for (int row = 0; row < size; row++) {
            for (int column = 0; column < size; column++) {
                elements[row][column] = new Binary64(matrix[row][column]);
                identity[row][column] = row == column ? Binary64.ONE : Binary64.ZERO;
            }
        }
        FieldMatrix<Binary64> inverse = new FieldLUDecomposition<>(
                        new Array2DRowFieldMatrix<>(elements, false), pivot -> Math.abs(pivot.getReal()) < LEAST_PIVOT)
                .getSolver()
                .solve(new Array2DRowFieldMatrix<>(identity, false));
        double[][] numbers = new double[size][size];
        for (int row = 0; row < size; row++) {
            for (int column = 0; column < size; column++) {
                numbers[row][column] = inverse.getEntry(row, column).getReal();
            }
        }
        return numbers;
    }

    private static double expectedN(Piece piece, double[] found, double density) {
        return found[0] * density / 2 * pressure(piece, found) + found[1];
    }

    /** Mean square of the speed through the air. */
    private static double pressure(Piece piece, double[] found) {
        double wind = found[2] * piece.north + found[3] * piece.east;
        return piece.meanSquare + 2 * wind * piece.meanSpeedMps + wind * wind;
    }

    private static double medianOfAbsolutes(double[] values) {
        double[] sorted = values.clone();
        for (int i = 0; i < sorted.length; i++) {
            sorted[i] = Math.abs(sorted[i]);
        }
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }

    private static RigEstimate judged(double area, double areaError, double rolling, double rollingError, int pieces) {
        String refusal = null;
        if (!(areaError <= MOST_RELATIVE_ERROR * Math.abs(area))) {
            refusal = TOO_ALIKE;
        } else if (!(area >= LEAST_DRAG_AREA_M2 && area <= MOST_DRAG_AREA_M2)) {
            refusal =
                    String.format(Locale.ROOT, "it comes out at a drag area of %.2f m2, which is not plausible", area);
        } else if (!(rolling >= LEAST_ROLLING && rolling <= MOST_ROLLING)) {
            refusal = String.format(
                    Locale.ROOT, "it comes out at a rolling resistance of %.4f, which is not plausible", rolling);
        }
        return new RigEstimate(refusal, area, areaError, rolling, rollingError, pieces);
    }
}
