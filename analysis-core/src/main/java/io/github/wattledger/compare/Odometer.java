package io.github.wattledger.compare;

import io.github.wattledger.course.Place;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.util.Arrays;

/** The distance along a ride: how far it had gone at each second. */
final class Odometer {
    private final double[] metres;

    /** @param metres the distance at the end of each second, never falling; {@code NaN} before the first that is known */
    Odometer(double[] metres) {
        this.metres = metres;
    }

    /** The odometer of a ride by its distance channel, otherwise by its positions under way. */
    static Odometer of(Ride ride) {
        double[] metres = new double[ride.seconds()];
        Series distance = ride.series(Channel.DISTANCE);
        double reached = Double.NaN;
        Place before = null;
        for (int second = 0; second < metres.length; second++) {
            if (ride.has(Channel.DISTANCE)) {
                double at = distance.get(second);
                reached = at < reached || Double.isNaN(at) ? reached : at;
            } else {
                Place here = Place.of(ride, second);
                if (here != null && ride.state(second) == SecondState.RIDING) {
                    reached = before == null ? 0 : reached + before.metresTo(here);
                    before = here;
                }
            }
            metres[second] = reached;
        }
        return new Odometer(metres);
    }

    /** The distance at the end of a second, metres, never falling; {@code NaN} before the first that is known. */
    double metresAt(int second) {
        return metres[second];
    }

    /** The first distance that is known, metres; {@code NaN} when there is none. */
    double firstM() {
        return Arrays.stream(metres)
                .filter(each -> !Double.isNaN(each))
                .findFirst()
                .orElse(Double.NaN);
    }

    /** From the first distance to the last, metres; {@code NaN} when there is none. */
    double lengthM() {
        return metres.length == 0 ? Double.NaN : metres[metres.length - 1] - firstM();
    }

    /** When a distance was reached, in seconds with their fractions: the last moment before the ride went further. */
    double secondAt(double atM) {
        int low = 0;
        int high = metres.length - 1;
        while (low < high) {
            int middle = (low + high) / 2;
            if (metres[middle] >= atM) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        if (low == 0 || !(metres[low] > metres[low - 1])) {
            return low;
        }
        return low - (metres[low] - atM) / (metres[low] - metres[low - 1]);
    }
}
