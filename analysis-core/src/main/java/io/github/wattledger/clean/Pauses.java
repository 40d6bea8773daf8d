package io.github.wattledger.clean;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.TimerEvent;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Finds the seconds in which the timer stood: between a timer stop and the next start, or, in a file without stop
 * events, in gaps through which the rider hardly moved. Where a start follows another start after a gap, the recorder
 * itself was off in that gap, and so was its timer.
 */
final class Pauses {
    /** A gap must be longer than this to be taken for a pause where no event says so. */
    private static final int SHORTEST_GAP_SECONDS = 10;

    /** Mean speed over a gap below which the rider stood: well under walking pace. */
    private static final double STANDING_MPS = 1;

    /** Distance covered after a stop event from which the timer must have run again, start event or not. */
    private static final double MOVED_ON_M = 100;

    /** An event further away from the samples than this has a clock gone wrong. */
    private static final long FARTHEST_EVENT_SECONDS = 86_400;

    private final SecondTable table;
    private final Notes notes;

    private Pauses(SecondTable table, Notes notes) {
        this.table = table;
        this.notes = notes;
    }

    static void mark(SecondTable table, List<TimerEvent> events, Notes notes) {
        Pauses pauses = new Pauses(table, notes);
        List<TimerEvent> ordered = pauses.believable(events);
        if (hasStop(ordered)) {
            pauses.markByEvents(ordered);
        } else {
            pauses.markByGaps();
        }
        pauses.markRestarts(ordered);
        pauses.clearMomentaryValues();
    }

    /** The events near the samples, in order of time. */
    private List<TimerEvent> believable(List<TimerEvent> events) {
        List<TimerEvent> ordered = new ArrayList<>();
        for (TimerEvent event : events) {
            long row = table.rowOf(event.epochSecond());
            if (row >= -FARTHEST_EVENT_SECONDS && row <= table.seconds() + FARTHEST_EVENT_SECONDS) {
                ordered.add(event);
            }
        }
        ordered.sort(Comparator.comparingLong(TimerEvent::epochSecond));
        return ordered;
    }

    private static boolean hasStop(List<TimerEvent> events) {
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
        // each second at its end, and the record of the start belongs to no second. Others write none at the stop.
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
    private List<long[]> stoppedStretches(List<TimerEvent> ordered) {
        List<long[]> stretches = new ArrayList<>();
        long stoppedAt = Long.MIN_VALUE;
        for (TimerEvent event : ordered) {
            long row = table.rowOf(event.epochSecond());
            boolean stopped = stoppedAt != Long.MIN_VALUE;
            if (event.kind() == TimerEvent.Kind.START && stopped) {
                stretches.add(new long[] {stoppedAt, row});
                stoppedAt = Long.MIN_VALUE;
            } else if (event.kind() == TimerEvent.Kind.STOP && stopped) {
                long end = endOfPause(stoppedAt, row);
                if (end < row) {
                    stretches.add(new long[] {stoppedAt, end});
                    stoppedAt = row;
                }
            } else if (event.kind() == TimerEvent.Kind.STOP) {
                stoppedAt = row;
            }
        }
        if (stoppedAt != Long.MIN_VALUE && stoppedAt < table.seconds()) {
            stretches.add(new long[] {stoppedAt, endOfPause(stoppedAt, table.seconds())});
        }
        return stretches;
    }

    /**
     * Where a pause that no start event ends is over: at the first sample after the stop if the rider moves on before
     * the limit, otherwise at the limit.
     */
    private long endOfPause(long stoppedAt, long limit) {
        int stopped = (int) Math.max(0, Math.min(stoppedAt, table.seconds() - 1L));
        int standing = stopped;
        while (standing > 0 && !table.isRecorded(standing)) {
            standing--;
        }
        for (int row = stopped + 1; row < Math.min(limit, table.seconds()); row++) {
            if (table.isRecorded(row) && movedM(standing, row) > MOVED_ON_M) {
                int resumed = stopped + 1;
                while (!table.isRecorded(resumed)) {
                    resumed++;
                }
                notes.found("timer-start-missing", "After a timer stop the ride goes on: a start event is missing.");
                return resumed;
            }
        }
        return limit;
    }

    /** Marks the gap before a start that follows another start, and so has no stop: the recorder was off. */
    private void markRestarts(List<TimerEvent> ordered) {
        boolean runs = false;
        int restarts = 0;
        for (TimerEvent event : ordered) {
            long row = table.rowOf(event.epochSecond());
            boolean starts = event.kind() == TimerEvent.Kind.START;
            if (starts && runs && row > 0 && row <= table.seconds()) {
                int from = (int) row;
                while (from > 0 && !table.isRecorded(from - 1)) {
                    from--;
                }
                if (row - from > SHORTEST_GAP_SECONDS) {
                    pause(from, row);
                    restarts++;
                }
            }
            runs = starts;
        }
        if (restarts > 0) {
            notes.found(
                    "timer-stop-missing",
                    "The recorder started again after a gap without having stopped: the gap counts as a pause.");
        }
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

    /** Metres between two recorded rows; 0 when no distance says so, since a recorder that stops by itself stands. */
    private double movedM(int from, int to) {
        double[] distance = table.column(Channel.DISTANCE);
        if (distance == null || Double.isNaN(distance[from]) || Double.isNaN(distance[to])) {
            return 0;
        }
        return distance[to] - distance[from];
    }

    private void pause(long fromRow, long toRow) {
        // Bounded before the cast: a row far outside the table would wrap around into it.
        int from = (int) Math.max(0, Math.min(table.seconds(), fromRow));
        int to = (int) Math.max(0, Math.min(table.seconds(), toRow));
        for (int row = from; row < to; row++) {
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
