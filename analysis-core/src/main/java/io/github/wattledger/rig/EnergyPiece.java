package io.github.wattledger.rig;

import io.github.wattledger.course.Course;
import io.github.wattledger.course.Place;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The balance of energy over a stretch of 500 m that was ridden without a gap in the recording and without brakes.
 *
 * @param resistanceN what resisted beyond slope and bearings, newtons
 * @param newtonsPerKg by how much {@code resistanceN} changes with the mass, newtons per kg
 * @param wheelW mean power at the wheel, watts
 * @param meanSpeedMps mean over the distance
 * @param meanSquare mean over the distance of the square of speed
 * @param north mean over the distance of the northward part of the heading, 0 where it is not known
 * @param east the eastward part
 */
record EnergyPiece(
        double resistanceN,
        double newtonsPerKg,
        double wheelW,
        double meanSpeedMps,
        double meanSquare,
        double north,
        double east) {
    private static final double PIECE_M = 500;

    /**
     * The pieces of a ride, in order. None holds a second in which the brakes were pulled hard: what they take is neither
     * drag nor rolling resistance.
     */
    static List<EnergyPiece> of(Ride ride, Course course, Rig rig, double airDensityKgPerM3) {
        boolean[] known = known(ride, Brakes.pulled(ride, course, rig, airDensityKgPerM3));
        Series distance = ride.series(Channel.DISTANCE);
        List<EnergyPiece> pieces = new ArrayList<>();
        int from = 1;
        for (int second = 1; second < ride.seconds(); second++) {
            if (!known[second]) {
                from = second + 1;
            } else if (distance.get(second) - distance.get(from - 1) >= PIECE_M) {
                EnergyPiece piece = piece(ride, course, rig, from, second);
                if (piece != null) {
                    pieces.add(piece);
                }
                from = second + 1;
            }
        }
        return pieces;
    }

    /** For each second whether it and the one before were ridden without brakes, with all that counts recorded. */
    private static boolean[] known(Ride ride, boolean[] braked) {
        Series watts = ride.series(Channel.POWER);
        Series speed = ride.series(Channel.SPEED);
        Series distance = ride.series(Channel.DISTANCE);
        boolean[] known = new boolean[ride.seconds()];
        boolean before = false;
        for (int second = 0; second < known.length; second++) {
            boolean moves =
                    ride.state(second) == SecondState.RIDING && speed.isMeasured(second) && distance.isMeasured(second);
            known[second] = before && moves && watts.isMeasured(second) && !braked[second];
            before = moves;
        }
        return known;
    }

    /** The balance from one second to another, both included; null where it was coasted or the altitude is missing. */
    private static @Nullable EnergyPiece piece(Ride ride, Course course, Rig rig, int from, int to) {
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
        double motion = (square(speed.get(to)) - square(speed.get(from - 1))) / 2;
        double motionJ = rig.inertKg() * motion;
        double bearingsJ = RoadLoad.BEARINGS_N * length + RoadLoad.BEARINGS_N_PER_MPS * squares;
        double heightJ = rig.massKg() * RoadLoad.GRAVITY_MPS2 * rise;
        double resistedJ = rig.driveEfficiency() * joules - motionJ - bearingsJ - heightJ;
        double[] heading = heading(ride, from - 1, to, length);
        return new EnergyPiece(
                resistedJ / length,
                -(motion + RoadLoad.GRAVITY_MPS2 * rise) / length,
                rig.driveEfficiency() * joules / seconds,
                squares / length,
                cubes / length,
                heading[0],
                heading[1]);
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
}
