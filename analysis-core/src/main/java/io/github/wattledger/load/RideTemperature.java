package io.github.wattledger.load;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import java.io.Serializable;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How warm it was at the recorder, over the timer seconds that have a temperature. The sensor of a head unit in the sun reads
 * several degrees above the air (common practice, no source), so that no number here is computed from it.
 *
 * @param meanC mean, degrees Celsius
 * @param highestC highest, degrees Celsius
 * @param riseC mean of the last sixth of those seconds less that of the first, degrees Celsius; negative where it grew colder
 */
public record RideTemperature(double meanC, double highestC, double riseC) implements Serializable {
    private static final int PARTS = 6;

    /** The temperature of a ride; empty where it was measured in fewer than six seconds. */
    public static Optional<RideTemperature> of(Ride ride) {
        return of(ride.timerSeries(Channel.TEMPERATURE));
    }

    /**
     * The temperature of a series.
     *
     * @param celsius one reading a second, degrees Celsius; {@code NaN} is "not measured"
     */
    public static Optional<RideTemperature> of(Series celsius) {
        double[] measured = new double[celsius.measuredCount()];
        int count = 0;
        double highest = Double.NEGATIVE_INFINITY;
        for (int second = 0; second < celsius.size(); second++) {
            if (celsius.isMeasured(second)) {
                measured[count++] = celsius.get(second);
                highest = Math.max(highest, celsius.get(second));
            }
        }
        if (count < PARTS) {
            return Optional.empty();
        }
        Series all = Series.of(measured);
        int part = count / PARTS;
        double first = mean(all.slice(0, part));
        double last = mean(all.slice(count - part, count));
        return Optional.of(new RideTemperature(mean(all), highest, last - first));
    }

    /**
     * The temperature of a plain array.
     *
     * @param celsius as in {@link #of(Series)}
     */
    public static Optional<RideTemperature> of(double... celsius) {
        return of(Series.of(celsius));
    }

    private static double mean(Series measured) {
        OptionalDouble mean = CompensatedSum.meanOfMeasured(measured);
        return mean.orElse(Double.NaN);
    }
}
