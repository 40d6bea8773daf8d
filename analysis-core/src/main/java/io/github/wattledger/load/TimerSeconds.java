package io.github.wattledger.load;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;

/** The seconds of a ride in which the timer ran: all that were not paused. */
final class TimerSeconds {
    private TimerSeconds() {}

    static int count(Ride ride) {
        return ride.seconds() - ride.countSeconds(SecondState.PAUSED);
    }

    /** A channel over the whole axis, without what was recorded while the timer stood. */
    static Series channel(Ride ride, Channel channel) {
        Series series = ride.series(channel);
        for (int second = 0; second < series.size(); second++) {
            if (ride.state(second) == SecondState.PAUSED && series.isMeasured(second)) {
                return Series.generate(
                        series.size(), s -> ride.state(s) == SecondState.PAUSED ? Double.NaN : series.get(s));
            }
        }
        return series;
    }

    /**
     * The second of the axis before which the timer had run for so many seconds: the first second that is not among
     * them, or the ride's length when it never ran longer.
     */
    static int endOf(Ride ride, int timerSeconds) {
        int counted = 0;
        for (int second = 0; second < ride.seconds(); second++) {
            if (ride.state(second) != SecondState.PAUSED) {
                if (counted == timerSeconds) {
                    return second;
                }
                counted++;
            }
        }
        return ride.seconds();
    }
}
