package io.github.wattledger.bunch;

import io.github.wattledger.ride.Interval;
import java.io.Serializable;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the balance of forces of a ride proposes about a bunch. It is a proposal: less wind, a sheltered valley or a
 * smoother road look the same.
 *
 * @param stretches the stretches that were probably ridden in a bunch, by rising time; at most two
 * @param mostOfRide the level of the whole ride, or null where it was not compared: on a course that does not come back
 *     to its start, or with under 10 minutes on level ground
 * @param whyNoStretches why stretches cannot be told, one clause without a full stop; null where they can
 * @param wouldHaveShown what would have been found, the longest first, where nothing was; empty otherwise
 * @param oneKindOfRoad whether the road was taken as of one kind, because its rolling resistance was given
 */
public record BunchProposal(
        List<Stretch> stretches,
        @Nullable Level mostOfRide,
        @Nullable String whyNoStretches,
        List<Showing> wouldHaveShown,
        boolean oneKindOfRoad)
        implements Serializable {
    /** Copies the lists. */
    public BunchProposal {
        stretches = List.copyOf(stretches);
        wouldHaveShown = List.copyOf(wouldHaveShown);
    }

    /**
     * A stretch that was probably ridden in a bunch.
     *
     * @param when its seconds
     * @param saving what it saved, the best guess, a share of the lone drag
     * @param savingLow the low end of the range that holds it nine times in ten
     * @param savingHigh the high end
     */
    public record Stretch(Interval when, double saving, double savingLow, double savingHigh) implements Serializable {}

    /**
     * The drag of the whole ride.
     *
     * @param mostDragAreaM2 the most that drag area times what a bunch left of it can have been, over the level ground, m2
     * @param comparedWithM2 the drag area that it is compared with, m2
     * @param isOwn whether that is the rider's own, and not one that nobody on a road bicycle has
     * @param isSheltered whether most of the ride must have been in a bunch, or something is wrong with mass, power or wind
     */
    public record Level(double mostDragAreaM2, double comparedWithM2, boolean isOwn, boolean isSheltered)
            implements Serializable {}

    /**
     * A bunch that would have been found.
     *
     * @param minutes how long it lasts, from the start on
     * @param saving what it would have had to save, a share of the lone drag
     */
    public record Showing(int minutes, double saving) implements Serializable {}

    /** The same with its stretches counted from some seconds earlier. */
    public BunchProposal shifted(int seconds) {
        return new BunchProposal(
                stretches.stream()
                        .map(each -> new Stretch(
                                each.when().shifted(seconds), each.saving(), each.savingLow(), each.savingHigh()))
                        .toList(),
                mostOfRide,
                whyNoStretches,
                wouldHaveShown,
                oneKindOfRoad);
    }

    /** Whether a bunch is proposed for a part of the ride or for most of it. */
    public boolean isFound() {
        return !stretches.isEmpty() || (mostOfRide != null && mostOfRide.isSheltered());
    }
}
