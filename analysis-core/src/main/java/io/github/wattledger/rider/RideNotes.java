package io.github.wattledger.rider;

import io.github.wattledger.ride.Interval;
import java.io.Serializable;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the rider wrote down about one ride, which no recording can tell. Seconds are counted from the first second of the
 * whole recording.
 *
 * @param event what the ride was, for instance the name of a race, or null
 * @param rider who rode, or null
 * @param feel how the rider felt, in the rider's own words, or null
 * @param heat how hot it felt, in the rider's own words, or null
 * @param eatenGPerHour carbohydrate that was eaten, grams an hour, each within {@link Bounds#EATEN_G_PER_HOUR}: one number
 *     holds for the whole ride, several are of its first hour, its second and so on; empty where it is not known
 * @param stopsNotChosen stops that were not the rider's choice, for instance a puncture
 * @param inBunch when the rider rode in a bunch, seconds; empty where it is not known
 * @param agreed what was agreed for next time, or null
 */
public record RideNotes(
        @Nullable String event,
        @Nullable String rider,
        @Nullable String feel,
        @Nullable String heat,
        List<Double> eatenGPerHour,
        List<StopNotChosen> stopsNotChosen,
        List<Interval> inBunch,
        @Nullable String agreed)
        implements Serializable {
    /** Nothing was written down. */
    public static final RideNotes NONE = new RideNotes(null, null, null, null, List.of(), List.of(), List.of(), null);

    /**
     * Copies the lists.
     *
     * @throws IllegalArgumentException when a text is blank, a number lies outside its range, or a stretch is empty
     */
    public RideNotes {
        requireWords("event", event);
        requireWords("rider", rider);
        requireWords("feel", feel);
        requireWords("heat", heat);
        requireWords("agreed", agreed);
        eatenGPerHour = List.copyOf(eatenGPerHour);
        stopsNotChosen = List.copyOf(stopsNotChosen);
        inBunch = List.copyOf(inBunch);
        eatenGPerHour.forEach(grams -> Bounds.EATEN_G_PER_HOUR.require("eatenGPerHour", grams));
        if (inBunch.stream().anyMatch(Interval::isEmpty)) {
            throw new IllegalArgumentException("inBunch " + inBunch + ", expected no empty stretch");
        }
    }

    /** Whether nothing was written down. */
    public boolean isEmpty() {
        return equals(NONE);
    }

    private static void requireWords(String name, @Nullable String words) {
        if (words != null && words.isBlank()) {
            throw new IllegalArgumentException(name + " is blank, expected words or null");
        }
    }
}
