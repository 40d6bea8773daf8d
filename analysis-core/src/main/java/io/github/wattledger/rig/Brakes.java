package io.github.wattledger.rig;

import io.github.wattledger.course.Course;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;

/**
 * Where the brakes of a ride were pulled hard: seconds without pedalling in which the rider slows far more than air, tyres
 * and slope can do. Brakes that only hold a speed on a descent do not show here.
 */
public final class Brakes {
    /**
     * Slowing that air, tyres and slope leave unexplained, m/s2. A gust of 5 m/s explains 0.4 of a rider at 36 km/h;
     * riders brake for a bend with 1 to 3. Own choice.
     */
    private static final double UNEXPLAINED_MPS2 = 0.5;

    private Brakes() {}

    /**
     * For each second whether the brakes were pulled hard; false where power, speed or grade is not known.
     *
     * @param course the course of this ride
     * @param rig rider and bicycle; a typical drag area does
     * @param airDensityKgPerM3 density of the air
     */
    public static boolean[] pulled(Ride ride, Course course, Rig rig, double airDensityKgPerM3) {
        Series watts = ride.series(Channel.POWER);
        Series speed = ride.series(Channel.SPEED);
        Series distance = ride.series(Channel.DISTANCE);
        RoadLoad load = RoadLoad.of(rig, airDensityKgPerM3);
        boolean[] pulled = new boolean[ride.seconds()];
        for (int second = 1; second < pulled.length; second++) {
            double slowing = speed.get(second - 1) - speed.get(second);
            if (slowing > UNEXPLAINED_MPS2
                    && watts.get(second) < Ride.PEDALLING_W
                    && ride.state(second) == SecondState.RIDING
                    && ride.state(second - 1) == SecondState.RIDING) {
                double mean = (speed.get(second - 1) + speed.get(second)) / 2;
                double resistanceN = load.resistanceN(mean, course.gradeAtM(distance.get(second)), 0);
                pulled[second] = slowing - resistanceN / rig.inertKg() > UNEXPLAINED_MPS2;
            }
        }
        return pulled;
    }
}
