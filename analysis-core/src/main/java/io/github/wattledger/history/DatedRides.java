package io.github.wattledger.history;

import java.io.Serial;
import java.io.Serializable;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Rides in the order of their days. A season asks for some days about each of thousands of rides, so that what is looked at
 * each time is kept as plain numbers. Immutable.
 */
final class DatedRides implements Serializable {
    @Serial
    private static final long serialVersionUID = 1L;

    @SuppressWarnings("serial") // what toList gives is serializable
    private final List<PastRide> rides;

    /** The day of each ride, days since 1970. */
    private final long[] days;

    /** The threshold power that each ride implies, watts; NaN where it implies none. */
    private final double[] impliedW;

    private DatedRides(List<PastRide> rides) {
        this.rides = rides;
        this.days = rides.stream().mapToLong(ride -> ride.day().toEpochDay()).toArray();
        this.impliedW = rides.stream().mapToDouble(DatedRides::impliedOrNaN).toArray();
    }

    private static double impliedOrNaN(PastRide ride) {
        Double implied = ride.impliedThresholdW();
        return implied == null ? Double.NaN : implied;
    }

    /** Puts rides into the order of their days. */
    static DatedRides of(List<PastRide> rides) {
        return new DatedRides(rides.stream()
                .sorted(Comparator.comparing(PastRide::day)
                        .thenComparing(PastRide::name)
                        .thenComparing(PastRide::ridingHours))
                .toList());
    }

    /** All of them. */
    List<PastRide> all() {
        return rides;
    }

    /** Those from a day on and before another. */
    List<PastRide> between(LocalDate from, LocalDate before) {
        return rides.subList(firstOn(from), firstOn(before));
    }

    /** The ride that implies the highest threshold of those from a day on and before another; of equal ones the earliest. */
    @Nullable OwnThreshold highest(LocalDate from, LocalDate before) {
        int best = -1;
        double highest = 0;
        int to = firstOn(before);
        for (int i = firstOn(from); i < to; i++) {
            if (impliedW[i] > highest) {
                highest = impliedW[i];
                best = i;
            }
        }
        return best < 0 ? null : OwnThreshold.of(rides.get(best), highest);
    }

    /** The index of the first ride of a day or later. */
    int firstOn(LocalDate day) {
        long asked = day.toEpochDay();
        int low = 0;
        int high = days.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (days[middle] < asked) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
