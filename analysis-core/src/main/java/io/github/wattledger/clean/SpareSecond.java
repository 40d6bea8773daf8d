package io.github.wattledger.clean;

/**
 * How much time a channel may have had from one believed row to the next. Times are cut to whole seconds, so a step may
 * have taken up to a second longer than they say; but steps that follow each other share that second, so that over a whole
 * ride a channel changes no more than its limit allows in the time.
 */
final class SpareSecond {
    private final double[] spareSeconds;
    private final boolean isCounter;

    /**
     * Rows of a table.
     *
     * @param seconds the length of the table
     * @param isCounter whether the channel counts on: one that stood may catch up at once, so that time is kept
     */
    SpareSecond(int seconds, boolean isCounter) {
        this.spareSeconds = new double[seconds];
        this.isCounter = isCounter;
    }

    /** The most time that a step from a believed row may have taken, seconds. */
    double mostSeconds(int fromRow, int toRow) {
        return toRow - fromRow + spareSeconds[fromRow];
    }

    /**
     * A row is believed.
     *
     * @param previousRow the believed row before it, or -1 for the first of a stretch
     * @param neededSeconds the least time in which the channel can change as it did
     */
    void believe(int previousRow, int row, double neededSeconds) {
        double left = previousRow < 0 ? 1 : mostSeconds(previousRow, row) - neededSeconds;
        boolean stood = isCounter && neededSeconds == 0;
        spareSeconds[row] = stood ? left : Math.min(1, left);
    }
}
