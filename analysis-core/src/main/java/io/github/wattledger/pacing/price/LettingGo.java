package io.github.wattledger.pacing.price;

import io.github.wattledger.ride.Interval;
import java.io.Serializable;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What letting a bunch go would have been worth against holding it, by the recorded balance of forces of the ride. The hard
 * stretch is ridden again at the target and without the shelter; what this frees is given back over the pedalled seconds
 * after it, until the total work, or at the other end normalized power, is the recorded one. Where a next group is
 * named, a share of its shelter counts. Seconds are those of the recording.
 *
 * @param hard the seconds ridden above the target to hold the bunch
 * @param sheltered the seconds in the bunch, from the same start to where it was left
 * @param hardPowerW normalized power of the hard stretch, watts
 * @param targetW the power it is ridden at again, watts
 * @param nextGroupShare the share of the sheltered way for which a next group shelters as much, 0 to 1
 * @param airWorkShare the share of the driving work of the sheltered stretch that the air took; {@code NaN} where nothing was
 *     pedalled
 * @param breakEven the savings at which both decisions take equally long; null where the air says too little
 * @param noBreakEven why there is none, one clause; null where there is one
 * @param savings what letting go, and the same bunch ridden easier, would have saved at some savings, by rising saving
 */
public record LettingGo(
        Interval hard,
        Interval sheltered,
        double hardPowerW,
        double targetW,
        double nextGroupShare,
        double airWorkShare,
        @Nullable BreakEven breakEven,
        @Nullable String noBreakEven,
        List<AtSaving> savings)
        implements Serializable {
    /** Copies the list. */
    public LettingGo {
        savings = List.copyOf(savings);
    }

    /**
     * The saving of the bunch, a share of the lone drag, at which holding it and letting it go take equally long: holding it
     * paid where it saved more.
     *
     * @param equalWork where the hard riding cost nothing but its work; 0 where holding on cost nothing even without
     *     shelter, {@link #HIGHEST} where letting go paid up to that
     * @param equalNormalizedPower where it cost as much as normalized power says, in the same way
     */
    public record BreakEven(double equalWork, double equalNormalizedPower) implements Serializable {
        /** No larger saving is tried. */
        public static final double HIGHEST = 0.85;

        /** The lower of both. */
        public double low() {
            return Math.min(equalWork, equalNormalizedPower);
        }

        /** The higher of both. */
        public double high() {
            return Math.max(equalWork, equalNormalizedPower);
        }
    }

    /**
     * Both other decisions at one supposed saving. Seconds saved against the recording, below 0 where it would have been
     * slower; null where no give-back brings the race there.
     *
     * @param savedShare what the bunch is supposed to have saved, a share of the lone drag
     * @param letGoEqualWorkSeconds letting go, at the recorded work; null also where less than {@link #LEAST_GIVE_BACK} of
     *     the later power would be left
     * @param letGoEqualNormalizedPowerSeconds letting go, at the recorded normalized power
     * @param keptEqualWorkSeconds the same bunch ridden easier, which is nobody's to choose, at the recorded work
     * @param keptEqualNormalizedPowerSeconds the same at the recorded normalized power
     */
    public record AtSaving(
            double savedShare,
            @Nullable Double letGoEqualWorkSeconds,
            @Nullable Double letGoEqualNormalizedPowerSeconds,
            @Nullable Double keptEqualWorkSeconds,
            @Nullable Double keptEqualNormalizedPowerSeconds)
            implements Serializable {
        /** Under this share of the later power, letting go at equal work asks a question that nobody would ride. */
        public static final double LEAST_GIVE_BACK = 0.8;
    }
}
