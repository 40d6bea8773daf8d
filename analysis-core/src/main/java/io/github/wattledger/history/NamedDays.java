package io.github.wattledger.history;

import io.github.wattledger.rider.Rider;
import io.github.wattledger.rider.Trial;
import java.io.Serializable;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.Set;

/**
 * The days of which the rider says how hard the rides were.
 *
 * @param allOut days of rides in which the rider gave all
 * @param hard these, and the days of trials and races
 */
public record NamedDays(Set<LocalDate> allOut, Set<LocalDate> hard) implements Serializable {
    /** No day is named. */
    public static final NamedDays NONE = new NamedDays(Set.of(), Set.of());

    /** Copies the sets. */
    public NamedDays {
        allOut = Set.copyOf(allOut);
        hard = Set.copyOf(hard);
    }

    /** The days that a rider names. */
    public static NamedDays of(Rider rider) {
        Set<LocalDate> hard = new HashSet<>(rider.allOutDays());
        hard.addAll(rider.raceDays());
        rider.trials().stream().map(Trial::day).forEach(hard::add);
        return new NamedDays(rider.allOutDays(), hard);
    }

    /** Whether the rider says that the rides of a day were hard. */
    public boolean isHard(LocalDate day) {
        return hard.contains(day);
    }

    /** Whether the rider gave all on a day. */
    public boolean isAllOut(LocalDate day) {
        return allOut.contains(day);
    }
}
