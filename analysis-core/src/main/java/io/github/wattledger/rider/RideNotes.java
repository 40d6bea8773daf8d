package io.github.wattledger.rider;

import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rider.MisplacedNote.Fault;
import io.github.wattledger.rider.MisplacedNote.Subject;
import java.io.Serializable;
import java.util.ArrayList;
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

    /**
     * The notes that can be of a recording of some length: a stop or a bunch that begins after its end is left out, and one
     * that ends after it is cut.
     *
     * @param seconds how long the recording is
     */
    public RideNotes within(int seconds) {
        List<StopNotChosen> stops = stopsNotChosen.stream()
                .filter(stop -> stop.fromSecond() < seconds)
                .map(stop -> stop.endingBy(seconds))
                .toList();
        List<Interval> bunches = inBunch.stream()
                .filter(bunch -> bunch.fromSecond() < seconds)
                .map(bunch -> new Interval(bunch.fromSecond(), Math.min(bunch.toSecond(), seconds)))
                .toList();
        return new RideNotes(event, rider, feel, heat, eatenGPerHour, stops, bunches, agreed);
    }

    /**
     * Whether {@link #misplacedIn} may find anything; false spares the look at the recording.
     *
     * @param seconds how long the recording is
     */
    public boolean mayBeMisplacedIn(int seconds) {
        return !stopsNotChosen.isEmpty() || !within(seconds).equals(this);
    }

    /**
     * The notes that do not fit a recording; stops first. An end that lies up to a minute after that of the recording fits,
     * since a rider reads a clock to the minute.
     *
     * @param ride the whole recording
     */
    public List<MisplacedNote> misplacedIn(Ride ride) {
        List<MisplacedNote> misplaced = new ArrayList<>();
        for (int i = 0; i < stopsNotChosen.size(); i++) {
            StopNotChosen stop = stopsNotChosen.get(i);
            Fault fault = outside(stop.fromSecond(), stop.toSecond(), ride);
            if (fault == null && !stop.liesAtAStopOf(ride)) {
                fault = Fault.NO_STOP_THERE;
            }
            if (fault != null) {
                misplaced.add(new MisplacedNote(Subject.STOP, i, fault));
            }
        }
        for (int i = 0; i < inBunch.size(); i++) {
            Fault fault = outside(inBunch.get(i).fromSecond(), inBunch.get(i).toSecond(), ride);
            if (fault != null) {
                misplaced.add(new MisplacedNote(Subject.BUNCH, i, fault));
            }
        }
        return misplaced;
    }

    private static @Nullable Fault outside(int fromSecond, @Nullable Integer toSecond, Ride ride) {
        if (fromSecond >= ride.seconds()) {
            return Fault.AFTER_THE_END;
        }
        boolean endsAfter = toSecond != null && toSecond > ride.seconds() + StopNotChosen.READING_SECONDS;
        return endsAfter ? Fault.ENDS_AFTER_THE_END : null;
    }

    private static void requireWords(String name, @Nullable String words) {
        if (words != null && words.isBlank()) {
            throw new IllegalArgumentException(name + " is blank, expected words or null");
        }
    }
}
