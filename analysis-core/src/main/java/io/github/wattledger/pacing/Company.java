package io.github.wattledger.pacing;

import io.github.wattledger.ride.Interval;
import io.github.wattledger.rider.RideNotes;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What the rider says of the company on a ride: what no recording can tell for sure.
 *
 * @param bunches the seconds of the whole recording that were ridden in a bunch, by rising time, each to where it was left; none
 *     where nothing is said
 * @param isAlone whether the rider says that none of the ride was in a bunch
 * @param nextGroupShare for which share of the way a next group would have given the same shelter, had the bunch been let
 *     go, 0 to 1; 0 where none would
 */
public record Company(List<Interval> bunches, boolean isAlone, double nextGroupShare) implements Serializable {
    /** Nothing is said. */
    public static final Company NOT_SAID = new Company(List.of(), false, 0);

    /** The whole ride was ridden without a bunch. */
    public static final Company ALONE = new Company(List.of(), true, 0);

    /** @throws IllegalArgumentException when it contradicts itself, with one line for people */
    public Company {
        bunches = List.copyOf(bunches);
        if (isAlone && !bunches.isEmpty()) {
            throw new IllegalArgumentException("a ride alone has no bunch: give either");
        }
        if (!(nextGroupShare >= 0 && nextGroupShare <= 1)) {
            throw new IllegalArgumentException("next group " + nextGroupShare + ", expected 0 to 1");
        }
        if (nextGroupShare > 0 && bunches.isEmpty()) {
            throw new IllegalArgumentException("a next group needs a bunch that could have been let go");
        }
        for (int i = 1; i < bunches.size(); i++) {
            if (bunches.get(i).fromSecond() < bunches.get(i - 1).toSecond()) {
                throw new IllegalArgumentException("the bunches " + bunches.get(i - 1) + " and " + bunches.get(i)
                        + " overlap or are out of order");
            }
        }
    }

    /** In a bunch for these seconds, the rest alone, with no next group. */
    public static Company inBunches(List<Interval> bunches) {
        return new Company(bunches, false, 0);
    }

    /** What the notes of a ride say: their stretches in a bunch by rising time, those that overlap as one. */
    public static Company noted(RideNotes notes) {
        List<Interval> joined = new ArrayList<>();
        for (Interval bunch : notes.inBunch().stream()
                .sorted(Comparator.comparingInt(Interval::fromSecond))
                .toList()) {
            int last = joined.size() - 1;
            if (last >= 0 && bunch.fromSecond() < joined.get(last).toSecond()) {
                int end = Math.max(bunch.toSecond(), joined.get(last).toSecond());
                joined.set(last, new Interval(joined.get(last).fromSecond(), end));
            } else {
                joined.add(bunch);
            }
        }
        return inBunches(joined);
    }

    /** Whether anything is said. */
    public boolean isSaid() {
        return isAlone || !bunches.isEmpty();
    }
}
