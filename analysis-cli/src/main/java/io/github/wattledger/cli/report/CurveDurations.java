package io.github.wattledger.cli.report;

import java.util.Arrays;

/** The durations at which a report shows a curve that has a value for every second. */
public final class CurveDurations {
    private static final int ABOUT = 40;

    private CurveDurations() {}

    /**
     * About 40 whole seconds, spread evenly on a logarithmic axis from 1 to the longest, both included. There are fewer
     * where neighbours would round to the same second.
     *
     * @param longestSeconds the last duration; with 0 there is none
     */
    public static int[] upTo(int longestSeconds) {
        if (longestSeconds < 1) {
            return new int[0];
        }
        double step = Math.log(longestSeconds) / (ABOUT - 1);
        int[] durations = new int[ABOUT];
        int count = 0;
        for (int i = 0; i < ABOUT; i++) {
            int seconds = Math.min((int) Math.round(Math.exp(i * step)), longestSeconds);
            if (count == 0 || seconds > durations[count - 1]) {
                durations[count++] = seconds;
            }
        }
        return Arrays.copyOf(durations, count);
    }
}
