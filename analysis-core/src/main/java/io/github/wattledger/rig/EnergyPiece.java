package io.github.wattledger.rig;

import io.github.wattledger.course.Course;
import io.github.wattledger.course.Place;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The balance of energy over a stretch that was ridden without a gap in the recording and without brakes.
 *
 * @param when its seconds
 * @param startM where it begins, metres from the start of the recording
 * @param lengthM its length, metres
 * @param slopeN what the slope took, newtons; below 0 where it pushed
 * @param resistanceN what resisted beyond slope and bearings, newtons
 * @param newtonsPerKg by how much {@code resistanceN} changes with the mass, newtons per kg
 * @param wheelW mean power at the wheel, watts
 * @param meanSpeedMps mean over the distance
 * @param meanSquare mean over the distance of the square of speed
 * @param north mean over the distance of the northward part of the heading, 0 where it is not known
 * @param east the eastward part
 */
public record EnergyPiece(
        Interval when,
        double startM,
        double lengthM,
        double slopeN,
        double resistanceN,
        double newtonsPerKg,
        double wheelW,
        double meanSpeedMps,
        double meanSquare,
        double north,
        double east) {
    private static final double LONGEST_OVER_LENGTH = 2;

    /**
     * The pieces of a ride, in order, each about as long as asked for. None holds a second in which the brakes were pulled hard: what they take is neither
     * drag nor rolling resistance.
     *
     * @param course the course of this ride
     * @param rig rider and bicycle; a typical drag area does
     * @param airDensityKgPerM3 density of the air
     * @param pieceM length of a piece, metres
     */
    public static List<EnergyPiece> of(Ride ride, Course course, Rig rig, double airDensityKgPerM3, double pieceM) {
        boolean[] known = known(ride, Brakes.pulled(ride, course, rig, airDensityKgPerM3));
        Series distance = ride.series(Channel.DISTANCE);
        List<EnergyPiece> pieces = new ArrayList<>();
        int from = 1;
        for (int second = 1; second < ride.seconds(); second++) {
            if (!known[second]) {
                from = second + 1;
            } else if (distance.get(second) - distance.get(from - 1) >= pieceM) {
                EnergyPiece piece = piece(ride, course, rig, from, second);
                if (piece != null && piece.lengthM <= LONGEST_OVER_LENGTH * pieceM) {
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
        if (joules < Ride.PEDALLING_W * seconds || Double.isNaN(rise)) {
            return null;
        }
        double motion = (square(speed.get(to)) - square(speed.get(from - 1))) / 2;
        double motionJ = rig.inertKg() * motion;
        double bearingsJ = RoadLoad.BEARINGS_N * length + RoadLoad.BEARINGS_N_PER_MPS * squares;
        double heightJ = rig.massKg() * RoadLoad.GRAVITY_MPS2 * rise;
        double resistedJ = rig.driveEfficiency() * joules - motionJ - bearingsJ - heightJ;
        double[] heading = heading(ride, from - 1, to, length);
        return new EnergyPiece(
                new Interval(from, to + 1),
                distance.get(from - 1),
                length,
                heightJ / length,
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

    /** Mean square of the speed through the air in a wind against the heading, (m/s)2. */
    public double airSpeedSquare(double againstMps) {
        return meanSquare + 2 * againstMps * meanSpeedMps + againstMps * againstMps;
    }

    /** The part of a wind against the mean heading, m/s. */
    public double againstMps(double northMps, double eastMps) {
        return northMps * north + eastMps * east;
    }

    private static double square(double value) {
        return value * value;
    }
}
