package io.github.wattledger.compare;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** A ride with its odometer, and what it did between two moments of it, given in seconds with their fractions. */
final class TimedRide {
    private final Ride ride;
    private final Odometer odometer;

    /** Seconds under way before each second. */
    private final int[] moving;

    TimedRide(Ride ride) {
        this.ride = ride;
        odometer = Odometer.of(ride);
        moving = new int[ride.seconds() + 1];
        for (int second = 0; second < ride.seconds(); second++) {
            moving[second + 1] = moving[second] + (ride.state(second) == SecondState.RIDING ? 1 : 0);
        }
    }

    Ride ride() {
        return ride;
    }

    Odometer odometer() {
        return odometer;
    }

    /** Time under way between two moments, seconds. */
    double movingSeconds(double from, double to) {
        return movingBefore(to) - movingBefore(from);
    }

    private double movingBefore(double moment) {
        // The value of a second is what was reached by its end; the second before the place counts in part.
        int whole = Math.min(moving.length - 1, (int) Math.floor(moment) + 1);
        int next = Math.min(moving.length - 1, whole + 1);
        return moving[whole] + (moving[next] - moving[whole]) * (moment - Math.floor(moment));
    }

    /** The mean of a channel under way between two moments, or null where nothing was measured. */
    @Nullable Double mean(Channel channel, double from, double to) {
        int first = (int) Math.ceil(from);
        int end = Math.min(ride.seconds(), (int) Math.ceil(to));
        OptionalDouble mean =
                first < end ? ride.meanWhileRiding(channel, new Interval(first, end)) : OptionalDouble.empty();
        return mean.isPresent() ? mean.getAsDouble() : null;
    }

    /** Whether most of the way between two moments has positions. */
    boolean hasPositions(double from, double to) {
        Series latitude = ride.series(Channel.LATITUDE);
        double placedM = 0;
        int begin = (int) Math.ceil(from);
        int end = (int) Math.floor(Math.min(to, ride.seconds() - 1.0));
        for (int second = begin + 1; second <= end; second++) {
            if (latitude.isMeasured(second) && latitude.isMeasured(second - 1)) {
                placedM += odometer.metresAt(second) - odometer.metresAt(second - 1);
            }
        }
        return end > begin && placedM >= (odometer.metresAt(end) - odometer.metresAt(begin)) / 2;
    }
}
