package io.github.wattledger;

import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import java.util.List;
import java.util.Locale;

/** Turns what the caller asked for into seconds of a ride. */
final class SelectedPart {
    private SelectedPart() {}

    /** @throws IllegalArgumentException when the ride has no such part, with one line for people */
    static Interval of(Ride ride, ReviewOptions options) {
        if (options.firstLap() != null) {
            int last = options.lastLap() == null ? options.firstLap() : options.lastLap();
            return ofLaps(ride.laps(), options.firstLap(), last);
        }
        int from = options.fromSecond() == null ? 0 : options.fromSecond();
        int to = options.toSecond() == null ? ride.seconds() : Math.min(options.toSecond(), ride.seconds());
        if (from >= ride.seconds() && from > 0) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "the part begins at %d s, but the ride ends at %d s; choose an earlier start",
                    from,
                    ride.seconds()));
        }
        return new Interval(from, to);
    }

    private static Interval ofLaps(List<Interval> laps, int first, int last) {
        if (last > laps.size()) {
            throw new IllegalArgumentException(
                    laps.isEmpty()
                            ? "the ride has no laps; give the part in elapsed time instead"
                            : "the ride has laps 1 to " + laps.size() + ", not " + last);
        }
        int from = laps.get(first - 1).fromSecond();
        int to = laps.get(last - 1).toSecond();
        if (from >= to) {
            throw new IllegalArgumentException(
                    "laps " + first + " to " + last + " hold no recorded second; choose others");
        }
        return new Interval(from, to);
    }
}
