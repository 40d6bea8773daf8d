package io.github.wattledger.clean;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.SecondState;
import java.util.Arrays;

/**
 * Fills short gaps while the timer runs, and marks the others missing. A file whose device writes only when something
 * changes has its power and cadence held through a gap; in a file of one sample a second, a second without a record is
 * missing, and only what changes slowly is interpolated.
 */
final class Gaps {
    /** Gaps up to this long are filled: over a longer one, too much can have happened. */
    private static final int LONGEST_SECONDS = 10;

    /** A file is of variable interval when more than this share of its intervals exceeds a second. */
    private static final double VARIABLE_SHARE = 0.1;

    private static final Channel[] SLOW = {
        Channel.HEART_RATE,
        Channel.SPEED,
        Channel.ALTITUDE,
        Channel.DISTANCE,
        Channel.LATITUDE,
        Channel.LONGITUDE,
        Channel.TEMPERATURE,
        Channel.RESPIRATION
    };

    private final SecondTable table;

    private Gaps(SecondTable table) {
        this.table = table;
    }

    static void fill(SecondTable table, Notes notes) {
        Gaps gaps = new Gaps(table);
        boolean variable = gaps.isVariableInterval();
        boolean[] held = gaps.markUnrecorded(variable);
        if (variable) {
            gaps.hold(Channel.POWER, held);
            gaps.hold(Channel.CADENCE, held);
            int seconds = count(held);
            notes.found(
                    "variable-interval",
                    seconds,
                    "The device did not write every second: " + Notes.count(seconds, "second")
                            + " in gaps of up to 10 s filled, power and cadence held.");
        }
        for (Channel channel : SLOW) {
            gaps.interpolate(channel);
        }
        gaps.noteMissing(notes);
    }

    private static int count(boolean[] flags) {
        int count = 0;
        for (boolean flag : flags) {
            if (flag) {
                count++;
            }
        }
        return count;
    }

    private boolean isVariableInterval() {
        int intervals = 0;
        int longer = 0;
        int previous = -1;
        boolean pausedBetween = false;
        for (int row = 0; row < table.seconds(); row++) {
            pausedBetween |= table.isPaused(row);
            if (!table.isRecorded(row)) {
                continue;
            }
            if (previous >= 0 && !pausedBetween) {
                intervals++;
                if (row - previous > 1) {
                    longer++;
                }
            }
            previous = row;
            pausedBetween = false;
        }
        return longer > VARIABLE_SHARE * intervals;
    }

    /** Marks running seconds without a record missing, but for those that a variable-interval file lets us fill. */
    private boolean[] markUnrecorded(boolean variable) {
        boolean[] held = new boolean[table.seconds()];
        int row = 0;
        while (row < table.seconds()) {
            if (table.isRecorded(row) || table.isPaused(row)) {
                row++;
                continue;
            }
            int from = row;
            while (row < table.seconds() && !table.isRecorded(row) && !table.isPaused(row)) {
                row++;
            }
            boolean shortEnough = row - from < LONGEST_SECONDS;
            if (variable && shortEnough && from > 0 && row < table.seconds() && table.isRecorded(row)) {
                Arrays.fill(held, from, row, true);
            } else {
                for (int k = from; k < row; k++) {
                    table.setState(k, SecondState.MISSING);
                }
            }
        }
        return held;
    }

    private void hold(Channel channel, boolean[] held) {
        double[] column = table.column(channel);
        if (column == null) {
            return;
        }
        for (int row = 1; row < column.length; row++) {
            if (held[row] && Double.isNaN(column[row])) {
                column[row] = column[row - 1];
            }
        }
    }

    private void interpolate(Channel channel) {
        double[] column = table.column(channel);
        if (column == null) {
            return;
        }
        int previous = -1;
        for (int row = 0; row < column.length; row++) {
            if (Double.isNaN(column[row])) {
                continue;
            }
            int steps = row - previous;
            if (previous >= 0 && steps > 1 && steps <= LONGEST_SECONDS && !anyPaused(previous + 1, row)) {
                double step = (column[row] - column[previous]) / steps;
                for (int k = previous + 1; k < row; k++) {
                    column[k] = column[previous] + step * (k - previous);
                }
            }
            previous = row;
        }
    }

    private boolean anyPaused(int from, int to) {
        for (int row = from; row < to; row++) {
            if (table.isPaused(row)) {
                return true;
            }
        }
        return false;
    }

    private void noteMissing(Notes notes) {
        int missing = 0;
        for (int row = 0; row < table.seconds(); row++) {
            if (table.state(row) == SecondState.MISSING) {
                missing++;
            }
        }
        if (missing > 0) {
            notes.found(
                    "missing-seconds",
                    missing,
                    Notes.count(missing, "second") + " not recorded while the timer ran: left out.");
        }
    }
}
