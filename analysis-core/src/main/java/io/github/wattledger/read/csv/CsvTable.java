package io.github.wattledger.read.csv;

import io.github.wattledger.read.ReadNote;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Lap;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.ride.Samples;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.TimerEvent;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** The rows of a table as they come, and the recording that they make. */
final class CsvTable {
    private final Samples.Builder builder = Samples.builder();
    private final boolean withStates;
    private final boolean withLaps;
    private final List<@Nullable SecondState> states = new ArrayList<>();
    private final List<String> lapNames = new ArrayList<>();
    private long latest = Long.MIN_VALUE;
    private int outOfOrder;

    CsvTable(boolean withStates, boolean withLaps) {
        this.withStates = withStates;
        this.withLaps = withLaps;
    }

    int size() {
        return builder.size();
    }

    void begin(long epochSecond) {
        outOfOrder += epochSecond < latest ? 1 : 0;
        latest = Math.max(latest, epochSecond);
        builder.at(epochSecond);
    }

    void set(Channel channel, double value) {
        builder.set(channel, value);
    }

    /** Sets the state of the row begun last; false when the word is no state. */
    boolean setState(String word) {
        SecondState state = null;
        for (SecondState each : SecondState.values()) {
            if (each.name().toLowerCase(Locale.ROOT).equals(word.toLowerCase(Locale.ROOT))) {
                state = each;
            }
        }
        states.add(state);
        return state != null;
    }

    void setLap(String name) {
        lapNames.add(name);
    }

    Recording recording(List<ReadNote> notes) {
        Samples samples = builder.build();
        if (outOfOrder > 0) {
            samples = sorted(samples);
            notes.add(new ReadNote(
                    "rows-out-of-order",
                    String.format(
                            Locale.ROOT,
                            "%,d %s earlier than a row before; the rows were put in order of time.",
                            outOfOrder,
                            outOfOrder == 1 ? "row is" : "rows are")));
        }
        if (!withStates) {
            return recording(samples, List.of(), null);
        }
        List<SecondState> known = knownStates(samples);
        if (known != null) {
            return recording(samples, List.of(), known);
        }
        notes.add(new ReadNote(
                "states-incomplete",
                "The states are not one for each of consecutive seconds: only the pauses are taken from them."));
        return recordingOfRows(samples);
    }

    private Recording recording(Samples samples, List<TimerEvent> events, @Nullable List<SecondState> known) {
        return new Recording(samples, events, laps(samples), null, RecordingDevice.UNKNOWN, null, 0, null, known, null);
    }

    private @Nullable List<SecondState> knownStates(Samples samples) {
        List<SecondState> known = new ArrayList<>(states.size());
        for (int i = 0; i < samples.size(); i++) {
            SecondState state = states.get(i);
            if (state == null || (i > 0 && samples.epochSecond(i) != samples.epochSecond(i - 1) + 1)) {
                return null;
            }
            known.add(state);
        }
        return known;
    }

    /** The rows in which something was recorded, with the timer's stops and starts around those in which it stood. */
    private Recording recordingOfRows(Samples all) {
        Samples.Builder rows = Samples.builder();
        List<TimerEvent> events = new ArrayList<>();
        boolean stands = false;
        for (int i = 0; i < all.size(); i++) {
            boolean pausedHere = states.get(i) == SecondState.PAUSED;
            if (pausedHere != stands) {
                events.add(
                        new TimerEvent(all.epochSecond(i), pausedHere ? TimerEvent.Kind.STOP : TimerEvent.Kind.START));
                stands = pausedHere;
            }
            if (!pausedHere && states.get(i) != SecondState.MISSING) {
                rows.at(all.epochSecond(i));
                for (Channel channel : all.channels()) {
                    rows.set(channel, all.get(channel, i));
                }
            }
        }
        return new Recording(rows.build(), events, laps(all), null, RecordingDevice.UNKNOWN, null, 0, null);
    }

    /** A lap for each stretch of rows with the same name in the lap column. */
    private List<Lap> laps(Samples samples) {
        List<Lap> laps = new ArrayList<>();
        int from = 0;
        for (int i = 1; withLaps && i <= samples.size(); i++) {
            if (i == samples.size() || !Objects.equals(lapNames.get(i), lapNames.get(from))) {
                if (!lapNames.get(from).isEmpty()) {
                    laps.add(new Lap(samples.epochSecond(from), samples.epochSecond(i - 1) + 1, null));
                }
                from = i;
            }
        }
        return laps;
    }

    /** The samples in order of time; those of the same second stay in the order of the rows. */
    private Samples sorted(Samples samples) {
        List<Integer> order = IntStream.range(0, samples.size())
                .boxed()
                .sorted(Comparator.comparingLong(samples::epochSecond))
                .toList();
        Samples.Builder rows = Samples.builder();
        for (int i : order) {
            rows.at(samples.epochSecond(i));
            for (Channel channel : samples.channels()) {
                rows.set(channel, samples.get(channel, i));
            }
        }
        reorder(states, order);
        reorder(lapNames, order);
        return rows.build();
    }

    private static <T extends @Nullable Object> void reorder(List<T> list, List<Integer> order) {
        if (list.isEmpty()) {
            return;
        }
        List<T> copy = new ArrayList<>(list);
        for (int i = 0; i < copy.size(); i++) {
            list.set(i, copy.get(order.get(i)));
        }
    }
}
