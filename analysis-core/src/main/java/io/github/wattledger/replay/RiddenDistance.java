package io.github.wattledger.replay;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;

/** The distance of a ride, from the first to the last one recorded under way. */
final class RiddenDistance {
    private final Ride ride;
    private final Series distanceM;
    private double firstM = Double.NaN;
    private double lastM = Double.NaN;

    RiddenDistance(Ride ride) {
        this.ride = ride;
        distanceM = ride.series(Channel.DISTANCE);
        for (int second = 0; second < ride.seconds(); second++) {
            if (distanceM.isMeasured(second) && ride.state(second) == SecondState.RIDING) {
                firstM = Double.isNaN(firstM) ? distanceM.get(second) : firstM;
                lastM = distanceM.get(second);
            }
        }
    }

    /** Its length, metres. */
    double lengthM() {
        return lastM - firstM;
    }

    /** The power of the ride with its pedalled seconds within a part of the distance adjusted, watts, never below 0. */
    Series watts(Adjustment power, Replay.Share part) {
        Series watts = ride.series(Channel.POWER);
        return Series.generate(watts.size(), second -> {
            double place = (distanceM.get(second) - firstM) / (lastM - firstM);
            boolean within = part.equals(Replay.Share.WHOLE) || (place >= part.from() && place < part.to());
            return within && watts.get(second) > 0 ? Math.max(0, power.of(watts.get(second))) : watts.get(second);
        });
    }
}
