package io.github.wattledger.plan;

import io.github.wattledger.ride.Series;
import io.github.wattledger.rig.Rig;
import io.github.wattledger.rig.RoadLoad;

/**
 * A plan ridden forward second by second, with momentum: what a rider brings into a climb counts.
 *
 * @param arrivalSeconds when each piece ends, seconds under way from the start
 * @param effortW the fourth-power mean of power over time, watts
 */
record TableRide(Series arrivalSeconds, double effortW) {
    private static final double START_MPS = 1.5;
    private static final double SLOWEST_MPS = 0.5;
    private static final double EXPONENT = 4;

    /**
     * Rides a road.
     *
     * @param watts power of each piece, watts
     * @param fastestMps where the rider brakes, m/s
     */
    static TableRide of(PlanRoad road, Conditions day, Series watts, double fastestMps) {
        double[] arrival = new double[road.pieces()];
        double inertKg =
                Rig.of(day.massKg(), day.dragAreaM2(), day.rollingResistance()).inertKg();
        double speed = START_MPS;
        double atM = 0;
        double seconds = 0;
        double sum = 0;
        int piece = 0;
        RoadPiece ground = road.piece(0, day);
        RoadLoad load = road.load(0, day);
        while (piece < road.pieces()) {
            double power = watts.get(piece);
            double forceN = load.resistanceN(speed, ground.grade(), ground.headwindMps());
            double square = speed * speed + 2 * (power * load.driveEfficiency() - forceN * speed) / inertKg;
            double next = Math.min(fastestMps, Math.sqrt(Math.max(SLOWEST_MPS * SLOWEST_MPS, square)));
            double step = (speed + next) / 2;
            sum += Math.pow(power, EXPONENT);
            while (piece < road.pieces() && atM + step >= (piece + 1) * road.pieceM()) {
                arrival[piece] = seconds + ((piece + 1) * road.pieceM() - atM) / step;
                piece++;
                if (piece < road.pieces()) {
                    ground = road.piece(piece, day);
                    load = road.load(piece, day);
                }
            }
            atM += step;
            seconds++;
            speed = next;
        }
        return new TableRide(Series.of(arrival), Math.pow(sum / seconds, 1 / EXPONENT));
    }

    double seconds() {
        return arrivalSeconds.get(arrivalSeconds.size() - 1);
    }

    /** The fourth-power mean of power over so many seconds from the start, watts. */
    double effortUntilW(Series watts, double seconds) {
        double sum = 0;
        double time = 0;
        for (int piece = 0; piece < arrivalSeconds.size() && time < seconds; piece++) {
            double until = Math.min(seconds, arrivalSeconds.get(piece));
            sum += (until - time) * Math.pow(watts.get(piece), EXPONENT);
            time = until;
        }
        return Math.pow(sum / time, 1 / EXPONENT);
    }

    /** When a place is reached, seconds under way. */
    double secondsAtM(double atM, double pieceM) {
        double place = Math.max(0, Math.min(arrivalSeconds.size(), atM / pieceM));
        int piece = Math.min(arrivalSeconds.size() - 1, (int) place);
        double before = piece == 0 ? 0 : arrivalSeconds.get(piece - 1);
        return before + (place - piece) * (arrivalSeconds.get(piece) - before);
    }
}
