package io.github.wattledger.history;

import io.github.wattledger.ride.Outcome;
import java.io.Serializable;
import org.hipparchus.stat.descriptive.rank.Percentile;
import org.hipparchus.stat.descriptive.rank.Percentile.EstimationType;

/**
 * Where a number of several rides lies: its quartiles, interpolated between the ordered values (Hyndman and Fan 1996,
 * Am Stat 50:361, definition 7).
 *
 * @param low a quarter of the rides lie below it
 * @param median half of them do
 * @param high three quarters do
 * @param rides how many rides, at least 3
 */
public record Spread(double low, double median, double high, int rides) implements Serializable {
    /** Fewer rides say nothing. Own choice. */
    public static final int FEWEST = 3;

    /** From so many rides on it is said without reservation. Own choice. */
    public static final int ENOUGH = 5;

    /**
     * The spread of values.
     *
     * @param values one for each ride, none {@code NaN}, in any order
     * @return refused with fewer than three
     */
    public static Outcome<Spread> of(double[] values) {
        if (values.length < FEWEST) {
            return Outcome.refused(values.length + " rides show it, at least " + FEWEST + " are needed");
        }
        Percentile percentile = new Percentile().withEstimationType(EstimationType.R_7);
        percentile.setData(values);
        return Outcome.of(
                new Spread(percentile.evaluate(25), percentile.evaluate(50), percentile.evaluate(75), values.length));
    }

    /** Whether it rests on so few rides that it must be said with reservation. */
    public boolean isFromFew() {
        return rides < ENOUGH;
    }
}
