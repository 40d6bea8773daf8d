package io.github.wattledger.bunch;

import io.github.wattledger.course.Course;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rig.EnergyPiece;
import io.github.wattledger.rig.Rig;
import java.util.List;

/**
 * The pieces of a ride that say something of the air: about half a kilometre each, pedalled and not steep.
 *
 * @param all the pieces, in order
 * @param densityKgPerM3 density of the air
 * @param riddenM the ridden distance, metres
 */
record RoadPieces(List<EnergyPiece> all, double densityKgPerM3, double riddenM) {
    private static final double PIECE_M = 500;

    /** A longer ride is cut into longer pieces: work rises with the third power of their number. Own choice. */
    private static final int MOST_PIECES = 200;

    private static final double LEAST_MEAN_W = 60;
    private static final double COASTED_BELOW_W = 20;
    private static final double MOST_COASTED = 0.35;

    /** From this share of the driving force on the slope hides the air. */
    private static final double MOST_SLOPE = 0.7;

    static RoadPieces of(Ride ride, Course course, Rig rig, double densityKgPerM3) {
        double pieceM = Math.max(PIECE_M, course.lengthM() / MOST_PIECES);
        Series watts = ride.series(Channel.POWER);
        List<EnergyPiece> all = EnergyPiece.of(ride, course, rig, densityKgPerM3, pieceM).stream()
                .filter(piece -> isUsable(piece, rig, watts))
                .toList();
        return new RoadPieces(all, densityKgPerM3, course.lengthM());
    }

    private static boolean isUsable(EnergyPiece piece, Rig rig, Series watts) {
        int coasted = 0;
        for (int second = piece.when().fromSecond(); second < piece.when().toSecond(); second++) {
            coasted += watts.get(second) < COASTED_BELOW_W ? 1 : 0;
        }
        double drivingN = piece.wheelW() * piece.when().seconds() / piece.lengthM();
        return piece.wheelW() >= LEAST_MEAN_W * rig.driveEfficiency()
                && coasted <= MOST_COASTED * piece.when().seconds()
                && Math.abs(piece.slopeN()) <= MOST_SLOPE * drivingN;
    }

    /** What they measure together, metres. */
    double usedM() {
        return all.stream().mapToDouble(EnergyPiece::lengthM).sum();
    }

    /** The share of the ridden distance that lies in them. */
    double usedShare() {
        return usedM() / riddenM;
    }

    int count() {
        return all.size();
    }

    EnergyPiece get(int piece) {
        return all.get(piece);
    }

    /** What resisted beyond slope and bearings, over half the density, m2 (m/s)2. */
    double resistance(int piece) {
        return all.get(piece).resistanceN() / (densityKgPerM3 / 2);
    }

    /** The middle of a piece, metres from the start of the recording. */
    double middleM(int piece) {
        return all.get(piece).startM() + all.get(piece).lengthM() / 2;
    }

    /** The time of a piece between the first and the last, -1 to 1. */
    double timeShare(int piece) {
        double first = middleSecond(0);
        double last = middleSecond(count() - 1);
        return last > first ? 2 * (middleSecond(piece) - first) / (last - first) - 1 : 0;
    }

    private double middleSecond(int piece) {
        Interval when = all.get(piece).when();
        return (when.fromSecond() + when.toSecond()) / 2.0;
    }

    /** From the first second of one piece to the last of another. */
    Interval when(Span span) {
        return new Interval(
                all.get(span.from()).when().fromSecond(),
                all.get(span.to() - 1).when().toSecond());
    }

    /** Mean square of speed over some pieces, (m/s)2. */
    double meanSquare(Span span) {
        return all.subList(span.from(), span.to()).stream()
                .mapToDouble(EnergyPiece::meanSquare)
                .average()
                .orElse(Double.NaN);
    }

    /** Pieces from one to before another. */
    record Span(int from, int to) {
        boolean contains(int piece) {
            return piece >= from && piece < to;
        }
    }
}
