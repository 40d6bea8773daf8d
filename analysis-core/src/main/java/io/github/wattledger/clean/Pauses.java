package io.github.wattledger.clean;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.TimerEvent;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Finds the seconds in which the timer stood: between a timer stop and the next start, or, in a file without stop
 * events, in gaps through which the rider hardly moved.
 */
final class Pauses {
    /** A gap must be longer than this to be taken for a pause where no event says so. */
    private static final int SHORTEST_GAP_SECONDS = 10;

    /** Mean speed over a gap below which the rider stood: well under walking pace. */
    private static final double STANDING_MPS = 1;

    /** Distance covered after a stop event from which the timer must have run again, start event or not. */
    private static final double MOVED_ON_M = 100;

    private final SecondTable table;
    private final Notes notes;

    private Pauses(SecondTable table, Notes notes) {
        this.table = table;
        this.notes = notes;
    }

    static void mark(SecondTable table, List<TimerEvent> events, Notes notes) {
        Pauses pauses = new Pauses(table, notes);
        if (stopsAreTold(events)) {
            pauses.markByEvents(events);
        } else {
            pauses.markByGaps();
        }
        pauses.clearMomentaryValues();
    }

    private static boolean stopsAreTold(List<TimerEvent> events) {
        for (TimerEvent event : events) {
            if (event.kind() == TimerEvent.Kind.STOP) {
                return true;
            }
        }
        return false;
    }

    private void markByEvents(List<TimerEvent> events) {
        List<long[]> stretches = stoppedStretches(events);
        // Some devices write a record in the second of the stop, and so one more than the timer ran for: they stamp
        // each
        // second at its end, and the record of the start belongs to no second. Others write none at the stop.
        int shift = recordsAtStops(stretches) ? 1 : 0;
        for (long[] stretch : stretches) {
            boolean endsTheRide = stretch[0] == table.seconds() - 1;
            if (!endsTheRide) {
                pause(stretch[0] + shift, stretch[1] + shift);
            }
        }
        if (shift == 1) {
            long firstStart = events.stream()
                    .filter(event -> event.kind() == TimerEvent.Kind.START)
                    .mapToLong(event -> table.rowOf(event.epochSecond()))
                    .min()
                    .orElse(-1);
            pause(0, Math.min(firstStart + 1, 1));
        }
    }

    /** Rows from each stop to the next start; the last stop reaches to the end of the table. */
    private List<long[]> stoppedStretches(List<TimerEvent> events) {
        List<TimerEvent> ordered = new ArrayList<>(events);
        ordered.sort(Comparator.comparingLong(TimerEvent::epochSecond));
        List<long[]> stretches = new ArrayList<>();
        long stoppedAt = Long.MIN_VALUE;
        for (TimerEvent event : ordered) {
            long row = table.rowOf(event.epochSecond());
            if (event.kind() == TimerEvent.Kind.STOP && stoppedAt == Long.MIN_VALUE) {
                stoppedAt = row;
            } else if (event.kind() == TimerEvent.Kind.START && stoppedAt != Long.MIN_VALUE) {
                stretches.add(new long[] {stoppedAt, row});
                stoppedAt = Long.MIN_VALUE;
            }
        }
        if (stoppedAt != Long.MIN_VALUE && stoppedAt < table.seconds()) {
            stretches.add(new long[] {stoppedAt, endOfLastPause(stoppedAt)});
        }
        return stretches;
    }

    private long endOfLastPause(long stoppedAt) {
        int stopped = (int) Math.max(0, stoppedAt);
        int standing = stopped;
        while (standing > 0 && !table.isRecorded(standing)) {
            standing--;
        }
        for (int row = stopped + 1; row < table.seconds(); row++) {
            if (table.isRecorded(row) && movedM(standing, row) > MOVED_ON_M) {
                int resumed = stopped + 1;
                while (!table.isRecorded(resumed)) {
                    resumed++;
                }
                notes.found(
                        "timer-start-missing", "After the last timer stop the ride goes on: a start event is missing.");
                return resumed;
            }
        }
        return table.seconds();
    }

    private boolean recordsAtStops(List<long[]> stretches) {
        int with = 0;
        int without = 0;
        for (long[] stretch : stretches) {
            if (stretch[0] >= 0 && stretch[0] < table.seconds()) {
                if (table.isRecorded((int) stretch[0])) {
                    with++;
                } else {
                    without++;
                }
            }
        }
        return with > without;
    }

    private void markByGaps() {
        int previous = 0;
        for (int row = 1; row < table.seconds(); row++) {
            if (!table.isRecorded(row)) {
                continue;
            }
            int gap = row - previous;
            if (gap > SHORTEST_GAP_SECONDS && movedM(previous, row) < STANDING_MPS * gap) {
                pause(previous + 1L, row);
            }
            previous = row;
        }
    }

    /** Metres between two recorded rows; 0 when no distance tells, since a recorder that stops by itself stands. */
    private double movedM(int from, int to) {
        double[] distance = table.column(Channel.DISTANCE);
        if (distance == null || Double.isNaN(distance[from]) || Double.isNaN(distance[to])) {
            return 0;
        }
        return distance[to] - distance[from];
    }

    private void pause(long fromRow, long toRow) {
        int to = (int) Math.min(table.seconds(), toRow);
        for (int row = (int) Math.max(0, fromRow); row < to; row++) {
            table.setState(row, SecondState.PAUSED);
        }
    }

    /** Nothing is ridden while the timer stands; where the rider is and how the heart beats is still worth knowing. */
    private void clearMomentaryValues() {
        for (Channel channel : List.of(Channel.POWER, Channel.CADENCE, Channel.SPEED, Channel.LEFT_SHARE)) {
            double[] column = table.column(channel);
            if (column == null) {
                continue;
            }
            for (int row = 0; row < column.length; row++) {
                if (table.isPaused(row)) {
                    column[row] = Double.NaN;
                }
            }
        }
    }
}
