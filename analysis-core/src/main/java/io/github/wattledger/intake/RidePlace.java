package io.github.wattledger.intake;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import java.io.Serializable;

/** A place in a recording as a person names it: the time since its start, or the distance that the recorder showed there. */
public sealed interface RidePlace extends Serializable {
    /**
     * An elapsed time.
     *
     * @param second seconds since the start of the recording, pauses counted, 0 or more
     */
    record AtSecond(int second) implements RidePlace {
        /** @throws IllegalArgumentException when the time is before the start */
        public AtSecond {
            if (second < 0) {
                throw new IllegalArgumentException("second " + second + ", expected 0 or more");
            }
        }

        @Override
        public int secondOf(Ride ride) {
            return second;
        }

        @Override
        public double metresOf(Ride ride) {
            Series distance = distance(ride);
            for (int at = Math.min(second, ride.seconds() - 1); at >= 0; at--) {
                if (distance.isMeasured(at)) {
                    return distance.get(at);
                }
            }
            return 0;
        }
    }

    /**
     * A distance.
     *
     * @param metres what the recorder showed, metres, 0 or more
     */
    record AtDistance(double metres) implements RidePlace {
        /** @throws IllegalArgumentException when the distance is negative or not finite */
        public AtDistance {
            if (!(metres >= 0 && metres < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("metres " + metres + ", expected 0 or more");
            }
        }

        @Override
        public int secondOf(Ride ride) {
            Series distance = distance(ride);
            int second = 0;
            while (second < ride.seconds() && !(distance.get(second) >= metres)) {
                second++;
            }
            return second;
        }

        @Override
        public double metresOf(Ride ride) {
            return metres;
        }
    }

    /**
     * The second of this place: of a distance the first second at which it was reached, or the number of seconds of the
     * ride where it never was.
     *
     * @param ride the cleaned recording, whole
     * @throws IllegalArgumentException when a distance is asked of a ride that has none, with one line for people
     */
    int secondOf(Ride ride);

    /**
     * The distance of this place, metres: of a time the last distance measured until then, 0 before the first.
     *
     * @param ride the cleaned recording, whole
     * @throws IllegalArgumentException when a time is given and the ride has no distance, with one line for people
     */
    double metresOf(Ride ride);

    private static Series distance(Ride ride) {
        if (!ride.has(Channel.DISTANCE)) {
            throw new IllegalArgumentException("the ride has no distance");
        }
        return ride.series(Channel.DISTANCE);
    }
}
