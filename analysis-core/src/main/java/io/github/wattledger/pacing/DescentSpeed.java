package io.github.wattledger.pacing;

import io.github.wattledger.course.Course;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.util.stream.IntStream;
import org.hipparchus.stat.descriptive.rank.Percentile;
import org.hipparchus.stat.descriptive.rank.Percentile.EstimationType;
import org.jspecify.annotations.Nullable;

/** The speed that a rider seldom exceeds on descents: the 95th percentile of the seconds that go down. */
final class DescentSpeed {
    /** Ground is a descent from this grade on. Own choice. */
    private static final double DESCENT_GRADE = -0.03;

    /** Fewer seconds of descents than five minutes say nothing. Own choice. */
    private static final int FEWEST_SECONDS = 300;

    private static final double PERCENTILE = 95;

    private DescentSpeed() {}

    /**
     * The speed, metres a second.
     *
     * @param course the course of the ride, or null where it leads nowhere
     * @return {@code NaN} where the ride goes down for too short a time
     */
    static double mps(Ride ride, @Nullable Course course) {
        if (course == null) {
            return Double.NaN;
        }
        Series speed = ride.series(Channel.SPEED);
        Series distance = ride.series(Channel.DISTANCE);
        double[] speeds = IntStream.range(0, ride.seconds())
                .filter(second -> ride.state(second) == SecondState.RIDING
                        && speed.isMeasured(second)
                        && course.gradeAtM(distance.get(second)) <= DESCENT_GRADE)
                .mapToDouble(speed::get)
                .toArray();
        return speeds.length < FEWEST_SECONDS
                ? Double.NaN
                : new Percentile(PERCENTILE)
                        .withEstimationType(EstimationType.R_7)
                        .evaluate(speeds);
    }
}
