package io.github.wattledger.load;

import io.github.wattledger.ride.Series;

/** The mean of the last so many seconds, second by second: what makes one-second readings readable as a line. */
public final class RollingMean {
    private RollingMean() {}

    /**
     * The mean of the measured values among this second and the ones before it, as far as the window reaches back; at
     * the start, and after a stretch without measurements, of the few that there are.
     *
     * @param values one value a second; {@code NaN} (not measured) is left out of the means
     * @param windowSeconds how many seconds a mean looks back on, its own included, at least 1
     * @return a series of the same length in the same unit, {@code NaN} exactly where {@code values} is
     * @throws IllegalArgumentException when the window is shorter than a second, or a value is infinite
     */
    public static Series trailing(Series values, int windowSeconds) {
        if (windowSeconds < 1) {
            throw new IllegalArgumentException("windowSeconds " + windowSeconds + ", expected 1 or more");
        }
        values.requireFinite("values");
        double[] means = new double[values.size()];
        double sum = 0;
        int count = 0;
        for (int second = 0; second < means.length; second++) {
            if (second >= windowSeconds && values.isMeasured(second - windowSeconds)) {
                sum -= values.get(second - windowSeconds);
                count--;
            }
            if (values.isMeasured(second)) {
                sum += values.get(second);
                count++;
                means[second] = sum / count;
            } else {
                means[second] = Double.NaN;
            }
            if (count == 0) {
                sum = 0; // no rounding is carried into the next stretch
            }
        }
        return Series.of(means);
    }

    /** {@link #trailing(Series, int)} for an array, which is copied. */
    public static Series trailing(double[] values, int windowSeconds) {
        return trailing(Series.of(values), windowSeconds);
    }
}
