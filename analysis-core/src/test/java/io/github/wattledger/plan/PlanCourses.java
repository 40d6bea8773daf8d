package io.github.wattledger.plan;

import io.github.wattledger.course.Route;
import io.github.wattledger.ride.RouteLine;
import io.github.wattledger.ride.Series;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.RigChoice;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** Courses made of formulas, and a rider with the numbers of the project's check values. */
final class PlanCourses {
    /** A rider of 75 kg on a bicycle of 9 kg, drag area 0.36 m2, rolling resistance 0.007, threshold 250 W. */
    static final PlanRider RIDER = PlanRider.of(RigChoice.ofNoRide(75.0, 9.0, 0.36, 0.007, Position.HOODS), 250);

    private static final double SPACING_M = 25;
    private static final double METRES_PER_DEGREE = 111_195;

    private PlanCourses() {}

    /** 160 km of hills of 40 m every 4 km on swells of 60 m every 13 km: grades to 4.6 %, about 1,900 m of ascent. */
    static Route hilly() {
        return loop(
                160_000, at -> 300 + 20 * Math.sin(2 * Math.PI * at / 4000) + 30 * Math.sin(2 * Math.PI * at / 13_000));
    }

    static Route flat() {
        return loop(160_000, at -> 100);
    }

    /** A circle at the equator with an altitude by distance. */
    static Route loop(double lengthM, DoubleUnaryOperator altitudeM) {
        int points = (int) Math.round(lengthM / SPACING_M) + 1;
        double radius = lengthM / (2 * Math.PI) / METRES_PER_DEGREE;
        return Route.of(new RouteLine(
                "Test loop",
                Series.generate(points, i -> radius * Math.cos(2 * Math.PI * i / (points - 1))),
                Series.generate(points, i -> radius * Math.sin(2 * Math.PI * i / (points - 1))),
                Series.generate(points, i -> altitudeM.applyAsDouble(i * SPACING_M)),
                Series.generate(points, i -> i * SPACING_M),
                List.of(),
                true));
    }
}
