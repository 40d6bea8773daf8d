package io.github.wattledger.load;

import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;

/** The seconds of a ride in which the timer ran: all that were not paused. */
final class TimerSeconds {
    private TimerSeconds() {}

    static int count(Ride ride) {
        return ride.seconds() - ride.countSeconds(SecondState.PAUSED);
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
