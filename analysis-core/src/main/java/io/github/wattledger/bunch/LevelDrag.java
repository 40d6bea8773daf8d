package io.github.wattledger.bunch;

import io.github.wattledger.bunch.BunchProposal.Level;
import io.github.wattledger.course.Course;
import io.github.wattledger.course.Place;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.Rig;
import io.github.wattledger.rig.RigChoice;
import io.github.wattledger.rig.RoadLoad;
import org.jspecify.annotations.Nullable;

/**
 * The most that drag area times what a bunch left of it can have been over the level ground of a ride: all that rolls,
 * rises and gains speed taken off the work of the pedals, rolling resistance at its low end. On a course that comes back
 * to its start, wind only raises it.
 */
final class LevelDrag {
    private static final double MOST_GRADE = 0.015;
    private static final double LEAST_MPS = 5;
    private static final int LEAST_SECONDS = 600;

    /** Good asphalt, from memory. */
    private static final double LOW_ROLLING_RESISTANCE = 0.005;

    /** A course comes back when its ends are no farther apart than this share of its length. */
    private static final double MOST_APART = 0.2;

    private static final double SHELTERED_BELOW_OWN = 0.80;

    /** Nobody rides so alone on a road bicycle without aero bars; own choice, from memory of published positions. */
    private static final double NOBODY_ALONE_M2 = 0.20;

    private LevelDrag() {}

    /** The level of a ride, or null where there is too little level ground or the course does not come back. */
    static @Nullable Level of(Ride ride, Course course, RigChoice choice, double densityKgPerM3) {
        if (!comesBack(ride, course.lengthM())) {
            return null;
        }
        double most = mostM2(ride, course, choice.rig(), densityKgPerM3);
        boolean isOwn = Prior.isKnown(choice.dragAreaM2());
        if (Double.isNaN(most) || (!isOwn && choice.position() == Position.AERO_BARS)) {
            return null;
        }
        double alone = isOwn ? choice.rig().dragAreaM2() + choice.rig().spokeDragAreaM2() : NOBODY_ALONE_M2;
        return new Level(most, alone, isOwn, most < (isOwn ? SHELTERED_BELOW_OWN * alone : alone));
    }

    private static boolean comesBack(Ride ride, double lengthM) {
        Place first = null;
        Place last = null;
        for (int second = 0; second < ride.seconds() && first == null; second++) {
            first = Place.of(ride, second);
        }
        for (int second = ride.seconds() - 1; second >= 0 && last == null; second--) {
            last = Place.of(ride, second);
        }
        return first != null && last != null && first.metresTo(last) <= MOST_APART * lengthM;
    }

    /** The upper bound, m2, spokes included; {@code NaN} with under ten minutes of level ground. */
    static double mostM2(Ride ride, Course course, Rig rig, double densityKgPerM3) {
        Series watts = ride.series(Channel.POWER);
        Series speed = ride.series(Channel.SPEED);
        Series distance = ride.series(Channel.DISTANCE);
        double rolling = Math.min(LOW_ROLLING_RESISTANCE, rig.rollingResistance());
        double weightN = rig.massKg() * RoadLoad.GRAVITY_MPS2;
        double leftJ = 0;
        double cubes = 0;
        int seconds = 0;
        for (int second = 1; second < ride.seconds(); second++) {
            double fromMps = speed.get(second - 1);
            double toMps = speed.get(second);
            double v = (fromMps + toMps) / 2;
            double fromM = distance.get(second - 1);
            double toM = distance.get(second);
            double grade = course.gradeAtM(toM);
            double riseM = course.altitudeAtM(toM) - course.altitudeAtM(fromM);
            boolean isLevel = Math.abs(grade) < MOST_GRADE
                    && v > LEAST_MPS
                    && ride.state(second) == SecondState.RIDING
                    && ride.state(second - 1) == SecondState.RIDING
                    && !Double.isNaN(riseM + watts.get(second));
            if (isLevel) {
                double motionJ = rig.inertKg() / 2 * (toMps * toMps - fromMps * fromMps);
                double bearingsJ = (RoadLoad.BEARINGS_N + RoadLoad.BEARINGS_N_PER_MPS * v) * v;
                leftJ += rig.driveEfficiency() * watts.get(second)
                        - weightN * (riseM + rolling * v)
                        - bearingsJ
                        - motionJ;
                cubes += v * v * v;
                seconds++;
            }
        }
        return seconds < LEAST_SECONDS ? Double.NaN : leftJ / (densityKgPerM3 / 2 * cubes);
    }
}
