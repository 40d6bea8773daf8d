package io.github.wattledger.pacing;

import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;

/**
 * How often and how long a rider stood between the first and the last riding second of a part of a ride. A stop is a
 * stretch of seconds that are all {@link SecondState#STOPPED} or {@link SecondState#PAUSED}.
 *
 * @param betweenSeconds from the first riding second to the last, both counted; 0 where nothing was ridden
 * @param stoppedSeconds how many of them the rider stood
 * @param ofTenSeconds how many stops lasted ten seconds or longer
 * @param ofAMinute how many stops lasted a minute or longer
 */
record Stops(int betweenSeconds, int stoppedSeconds, int ofTenSeconds, int ofAMinute) {
    private static final int TEN_SECONDS = 10;
    private static final int MINUTE_SECONDS = 60;

    /** The stops in a part of a ride. */
    static Stops of(Ride ride, Interval part) {
        int from = part.fromSecond();
        int to = part.toSecond();
        while (from < to && ride.state(from) != SecondState.RIDING) {
            from++;
        }
        while (to > from && ride.state(to - 1) != SecondState.RIDING) {
            to--;
        }
        int stopped = 0;
        int ten = 0;
        int minute = 0;
        int length = 0;
        for (int second = from; second < to; second++) {
            SecondState state = ride.state(second);
            if (state == SecondState.STOPPED || state == SecondState.PAUSED) {
                length++;
                stopped++;
                // Counted in the second in which the stop becomes that long; the last second is a riding one.
                ten += length == TEN_SECONDS ? 1 : 0;
                minute += length == MINUTE_SECONDS ? 1 : 0;
            } else {
                length = 0;
            }
        }
        return new Stops(to - from, stopped, ten, minute);
    }

    /** The share of the time in which the rider stood, 0 to 1; {@code NaN} where nothing was ridden. */
    double shareStopped() {
        return stoppedSeconds / (double) betweenSeconds;
    }
}
