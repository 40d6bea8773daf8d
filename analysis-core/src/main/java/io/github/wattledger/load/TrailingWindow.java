package io.github.wattledger.load;

/** The last 30 seconds with power, whose mean to the fourth power is what normalized power averages. */
final class TrailingWindow {
    /** Length of a full window, seconds. */
    static final int SECONDS = 30;

    private final double[] watts = new double[SECONDS];
    private int next;
    private int taken;
    private double sum;

    /** Takes in a second: the fourth power of the mean then, or 0 while the window is not full. */
    double take(double power) {
        sum += power - watts[next];
        watts[next] = power;
        next = next + 1 == watts.length ? 0 : next + 1;
        taken++;
        double mean = sum / watts.length;
        double square = mean * mean;
        return taken < watts.length ? 0 : square * square;
    }

    /** How many means of a full window there were. */
    int windows() {
        return Math.max(0, taken - watts.length + 1);
    }
}
