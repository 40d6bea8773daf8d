package io.github.wattledger.clean;

import io.github.wattledger.ride.Channel;

/** Takes out values that no rider produces. The limits sit above any human record. */
final class Spikes {
    private static final double IMPOSSIBLE_W = 2500;
    private static final double SUSPECT_W = 1000;
    private static final double TIMES_NEIGHBOUR = 4;
    private static final int NEIGHBOUR_SECONDS = 5;
    private static final double LOWEST_BPM = 25;
    private static final double HIGHEST_BPM = 240;
    private static final double MOST_BPM_A_SECOND = 40;

    private Spikes() {}

    static void repair(SecondTable table, Notes notes) {
        double[] watts = table.column(Channel.POWER);
        if (watts != null) {
            repairPower(watts, notes);
        }
        double[] bpm = table.column(Channel.HEART_RATE);
        if (bpm != null) {
            repairHeartRate(bpm, notes);
        }
    }

    private static void repairPower(double[] watts, Notes notes) {
        int impossible = 0;
        int below = 0;
        for (int row = 0; row < watts.length; row++) {
            if (watts[row] < 0) {
                watts[row] = Double.NaN;
                below++;
            }
        }
        boolean[] spike = new boolean[watts.length];
        for (int row = 0; row < watts.length; row++) {
            spike[row] = watts[row] > IMPOSSIBLE_W
                    || (watts[row] > SUSPECT_W && watts[row] > TIMES_NEIGHBOUR * largestNeighbour(watts, row));
            if (spike[row]) {
                impossible++;
            }
        }
        for (int row = 0; row < watts.length; row++) {
            if (spike[row]) {
                watts[row] = betweenNeighbours(watts, spike, row);
            }
        }
        if (impossible > 0) {
            notes.repaired(
                    "power-spikes",
                    impossible,
                    Notes.count(impossible, "power spike")
                            + " replaced by the values around them (over 2,500 W, or over 1,000 W and "
                            + "four times all neighbours).");
        }
        if (below > 0) {
            notes.repaired("power-negative", below, Notes.count(below, "power sample") + " below 0 set missing.");
        }
    }

    /** The largest believable value within five seconds either side; infinite when there is none to compare with. */
    private static double largestNeighbour(double[] watts, int row) {
        double largest = Double.NaN;
        int to = Math.min(watts.length - 1, row + NEIGHBOUR_SECONDS);
        for (int k = Math.max(0, row - NEIGHBOUR_SECONDS); k <= to; k++) {
            if (k != row && watts[k] <= IMPOSSIBLE_W && !(watts[k] <= largest)) {
                largest = watts[k];
            }
        }
        return Double.isNaN(largest) ? Double.POSITIVE_INFINITY : largest;
    }

    private static double betweenNeighbours(double[] watts, boolean[] spike, int row) {
        int before = nextGood(watts, spike, row, -1);
        int after = nextGood(watts, spike, row, 1);
        if (before < 0 || after < 0) {
            return before < 0 ? (after < 0 ? Double.NaN : watts[after]) : watts[before];
        }
        return watts[before] + (watts[after] - watts[before]) * (row - before) / (after - before);
    }

    private static int nextGood(double[] watts, boolean[] spike, int row, int step) {
        for (int k = row + step, n = 0; k >= 0 && k < watts.length && n < NEIGHBOUR_SECONDS; k += step, n++) {
            if (!spike[k] && !Double.isNaN(watts[k])) {
                return k;
            }
        }
        return -1;
    }

    /**
     * A value is compared with the last one that was believed within five seconds, so that a leap up and back costs the
     * leap alone, and a lasting change is believed after five seconds.
     */
    private static void repairHeartRate(double[] bpm, Notes notes) {
        int removed = 0;
        int believed = -1;
        for (int row = 0; row < bpm.length; row++) {
            if (Double.isNaN(bpm[row])) {
                continue;
            }
            boolean outside = bpm[row] < LOWEST_BPM || bpm[row] > HIGHEST_BPM;
            boolean leaps = believed >= 0
                    && row - believed <= NEIGHBOUR_SECONDS
                    && Math.abs(bpm[row] - bpm[believed]) > MOST_BPM_A_SECOND;
            if (outside || leaps) {
                bpm[row] = Double.NaN;
                removed++;
            } else {
                believed = row;
            }
        }
        if (removed > 0) {
            notes.repaired(
                    "heart-rate-spikes",
                    removed,
                    Notes.count(removed, "heart-rate sample")
                            + " set missing (outside 25-240 bpm, or a leap of over 40 bpm).");
        }
    }
}
