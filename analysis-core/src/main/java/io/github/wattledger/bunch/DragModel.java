package io.github.wattledger.bunch;

import io.github.wattledger.rig.EnergyPiece;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * What a ride's pieces should have met: drag area times what a bunch left of it times the square of the air speed, and
 * rolling resistance. Wind across the road counts, and the wind drifts evenly with time. Its numbers, in this order: drag area, rolling resistance, wind
 * from north and from east in the middle of the ride, by how much each is more at its end, and the saving of each bunch.
 */
final class DragModel {
    static final int AREA = 0;
    static final int ROLLING = 1;
    static final int NORTH_WIND = 2;
    static final int EAST_WIND = 3;
    static final int NORTH_DRIFT = 4;
    static final int EAST_DRIFT = 5;
    static final int FIRST_SAVING = 6;

    // Own choices, m/s: wind at a rider's height, and by how much it changes over half a ride.
    private static final double WIND_MPS = 2.5;
    private static final double DRIFT_MPS = 0.8;

    /** So wide that the ride alone decides on a saving. */
    private static final double SAVING_ERROR = 1;

    /** What a bunch is first taken to save: the middle of the published 25 to 50 %, rounded. */
    private static final double USUAL_SAVING = 0.35;

    private static final double LEAST_AIR_SQUARE = 1;

    private final RoadPieces pieces;
    private final Prior prior;
    private final List<RoadPieces.Span> bunches;

    DragModel(RoadPieces pieces, Prior prior, List<RoadPieces.Span> bunches) {
        this.pieces = pieces;
        this.prior = prior;
        this.bunches = List.copyOf(bunches);
    }

    RoadPieces pieces() {
        return pieces;
    }

    Prior prior() {
        return prior;
    }

    List<RoadPieces.Span> bunches() {
        return bunches;
    }

    int numbers() {
        return FIRST_SAVING + bunches.size();
    }

    /** The same ride with only its first bunches. */
    DragModel withFirst(int count) {
        return new DragModel(pieces, prior, bunches.subList(0, count));
    }

    /** The same ride with one bunch more. */
    DragModel with(RoadPieces.Span bunch) {
        List<RoadPieces.Span> more = new ArrayList<>(bunches);
        more.add(bunch);
        return new DragModel(pieces, prior, more);
    }

    /** Where the search starts. */
    double[] firstGuess() {
        double[] guess = start();
        Arrays.fill(guess, FIRST_SAVING, guess.length, USUAL_SAVING);
        return guess;
    }

    /** Where the prior lies. */
    double[] start() {
        double[] start = new double[numbers()];
        start[AREA] = prior.areaM2();
        start[ROLLING] = prior.rolling();
        return start;
    }

    /** The standard error of a number before the ride is looked at. */
    double priorError(int number) {
        return switch (number) {
            case AREA -> prior.areaErrorM2();
            case ROLLING -> prior.rollingError();
            case NORTH_WIND, EAST_WIND -> WIND_MPS;
            case NORTH_DRIFT, EAST_DRIFT -> DRIFT_MPS;
            default -> SAVING_ERROR;
        };
    }

    /** What of the drag was left in a piece. */
    double dragShare(double[] numbers, int piece) {
        for (int k = 0; k < bunches.size(); k++) {
            if (bunches.get(k).contains(piece)) {
                return 1 - numbers[FIRST_SAVING + k];
            }
        }
        return 1;
    }

    private double northMps(double[] numbers, int piece) {
        return numbers[NORTH_WIND] + pieces.timeShare(piece) * numbers[NORTH_DRIFT];
    }

    private double eastMps(double[] numbers, int piece) {
        return numbers[EAST_WIND] + pieces.timeShare(piece) * numbers[EAST_DRIFT];
    }

    /** The wind against the heading of a piece, m/s. */
    private double againstMps(double[] numbers, int piece) {
        return pieces.get(piece).againstMps(northMps(numbers, piece), eastMps(numbers, piece));
    }

    /** The wind across the heading of a piece, m/s. */
    private double acrossMps(double[] numbers, int piece) {
        EnergyPiece road = pieces.get(piece);
        return eastMps(numbers, piece) * road.north() - northMps(numbers, piece) * road.east();
    }

    /** The square of the air speed along the road; never quite 0, where the search would find no way on. */
    private double alongSquare(double[] numbers, int piece) {
        return Math.max(LEAST_AIR_SQUARE, pieces.get(piece).airSpeedSquare(againstMps(numbers, piece)));
    }

    /** The air speed along the road times the whole one: drag points against the air, and only its part along counts. */
    private double airSquare(double[] numbers, int piece) {
        double along = alongSquare(numbers, piece);
        double across = acrossMps(numbers, piece);
        return Math.sqrt(along * (along + across * across));
    }

    /** The drag alone in a piece, m2 (m/s)2. */
    double loneDrag(double[] numbers, int piece) {
        return numbers[AREA] * airSquare(numbers, piece);
    }

    /** By how much the drag in a piece rises with the wind against it, m2 m/s; wind across is left out. */
    double dragPerMps(double[] numbers, int piece) {
        double airMps = pieces.get(piece).meanSpeedMps() + againstMps(numbers, piece);
        return 2 * numbers[AREA] * dragShare(numbers, piece) * airMps;
    }

    /** What a piece should have met, m2 (m/s)2. */
    double expected(double[] numbers, int piece) {
        return dragShare(numbers, piece) * loneDrag(numbers, piece) + numbers[ROLLING];
    }

    /** By how much that rises with each number. */
    double[] slope(double[] numbers, int piece) {
        EnergyPiece road = pieces.get(piece);
        double share = dragShare(numbers, piece);
        double time = pieces.timeShare(piece);
        double across = acrossMps(numbers, piece);
        double along = alongSquare(numbers, piece);
        double air = airSquare(numbers, piece);
        double perAgainst = numbers[AREA]
                * share
                * (2 * along + across * across)
                / air
                * (road.meanSpeedMps() + againstMps(numbers, piece));
        double perAcross = numbers[AREA] * share * along * across / air;
        double[] slope = new double[numbers()];
        slope[AREA] = share * air;
        slope[ROLLING] = 1;
        slope[NORTH_WIND] = perAgainst * road.north() - perAcross * road.east();
        slope[EAST_WIND] = perAgainst * road.east() + perAcross * road.north();
        slope[NORTH_DRIFT] = time * slope[NORTH_WIND];
        slope[EAST_DRIFT] = time * slope[EAST_WIND];
        for (int k = 0; k < bunches.size(); k++) {
            slope[FIRST_SAVING + k] = bunches.get(k).contains(piece) ? -loneDrag(numbers, piece) : 0;
        }
        return slope;
    }
}
