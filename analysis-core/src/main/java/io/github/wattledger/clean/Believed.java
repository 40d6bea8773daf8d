package io.github.wattledger.clean;

import java.util.Arrays;
import java.util.BitSet;

/**
 * Decides which samples of a channel are believed, by whether the step from one to the next is possible. Where a step is
 * not possible, the smaller set of samples is doubted: those that come until a sample again follows from the last
 * believed one, or those believed last from which the new sample does not follow. A change that outlasts
 * {@link #LASTING_SAMPLES} samples on either side is no fault of a sample: a new stretch begins there.
 */
final class Believed {
    /** A fault of the sensor or of a byte is shorter than this; what lasts longer is believed to have happened. */
    static final int LASTING_SAMPLES = 10;

    private static final int NEVER = Integer.MAX_VALUE;

    /** Says what a channel can do. */
    interface Step {
        /** Whether a later row's value can follow from an earlier row's. */
        boolean isPossible(int fromRow, int toRow);

        /** A row is believed after another one of the same stretch, or as the first of its stretch (-1). */
        default void believe(int previousRow, int row) {}
    }

    private final int[] rows;
    private final Step step;
    private final int[] believed;
    private final BitSet stretchStarts = new BitSet();
    private int size;
    private int stretchStart;

    private Believed(int[] rows, Step step) {
        this.rows = rows;
        this.step = step;
        this.believed = new int[rows.length];
    }

    /**
     * Chooses among the rows that have a value.
     *
     * @param rows these rows, ascending
     */
    static Believed among(int[] rows, Step step) {
        Believed chosen = new Believed(rows, step);
        for (int k = 0; k < rows.length; k++) {
            chosen.take(k);
        }
        return chosen;
    }

    private void take(int k) {
        if (size == stretchStart || step.isPossible(believed[size - 1], rows[k])) {
            push(rows[k]);
            return;
        }
        int forward = samplesUntilPossible(k);
        int backward = samplesToTakeBack(rows[k]);
        if (forward == NEVER && backward == NEVER) {
            stretchStarts.set(size);
            stretchStart = size;
            push(rows[k]);
        } else if (backward < forward) {
            size -= backward;
            push(rows[k]);
        }
    }

    private void push(int row) {
        step.believe(size == stretchStart ? -1 : believed[size - 1], row);
        believed[size++] = row;
    }

    /** How many samples from this one on do not follow from the last believed one, or NEVER when that lasts. */
    private int samplesUntilPossible(int k) {
        int last = believed[size - 1];
        for (int n = 1; n <= LASTING_SAMPLES; n++) {
            if (k + n >= rows.length || step.isPossible(last, rows[k + n])) {
                return n;
            }
        }
        return NEVER;
    }

    /** How many of the samples believed last would have to go for a row to follow, or NEVER when too many. */
    private int samplesToTakeBack(int row) {
        for (int n = 1; n <= LASTING_SAMPLES; n++) {
            int before = size - 1 - n;
            if (before < stretchStart) {
                return n;
            }
            if (step.isPossible(believed[before], row)) {
                return n;
            }
        }
        return NEVER;
    }

    /** The believed rows, ascending. */
    int[] believedRows() {
        return Arrays.copyOf(believed, size);
    }

    /** Whether a believed row, by its position among them, begins a new stretch after a change that lasts. */
    boolean startsStretch(int position) {
        return stretchStarts.get(position);
    }

    /** How many samples are not believed. */
    int doubtedCount() {
        return rows.length - size;
    }
}
