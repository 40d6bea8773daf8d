package io.github.wattledger.load;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * {@link NormalizedPower#of(Ride, Interval)} for many stretches of one ride: one pass over the ride, after which a stretch
 * costs two look-ups. Both ways give the same watts but for rounding. Immutable and safe for many threads.
 */
public final class StretchNormalizedPower {
    private static final int WINDOW = NormalizedPower.WINDOW_SECONDS;

    /** For each second, how many before it carry power. */
    private final int[] poweredBefore;

    /** For each second with power, counted from 0, the fourth powers of the windows that end before it, added up. */
    private final double[] fourthPowersBefore;

    private StretchNormalizedPower(int[] poweredBefore, double[] fourthPowersBefore) {
        this.poweredBefore = poweredBefore;
        this.fourthPowersBefore = fourthPowersBefore;
    }

    /** Passes over a ride once; power recorded while the timer stood is left out. */
    public static StretchNormalizedPower of(Ride ride) {
        Series watts = ride.timerSeries(Channel.POWER);
        int[] poweredBefore = new int[watts.size() + 1];
        double[] fourthPowersBefore = new double[watts.measuredCount() + 1];
        TrailingWindow window = new TrailingWindow();
        for (int second = 0; second < watts.size(); second++) {
            int before = poweredBefore[second];
            poweredBefore[second + 1] = before;
            if (watts.isMeasured(second)) {
                fourthPowersBefore[before + 1] = fourthPowersBefore[before] + window.take(watts.get(second));
                poweredBefore[second + 1]++;
            }
        }
        return new StretchNormalizedPower(poweredBefore, fourthPowersBefore);
    }

    /**
     * Normalized power of a stretch, as if the ride were no more than that.
     *
     * @return watts, or empty when fewer than 30 seconds of it carry power
     * @throws IndexOutOfBoundsException when the stretch does not lie within the ride
     */
    public OptionalDouble of(Interval stretch) {
        Objects.checkFromToIndex(stretch.fromSecond(), stretch.toSecond(), poweredBefore.length - 1);
        // A window that began before the stretch does not count, so the first 29 seconds have none.
        int from = poweredBefore[stretch.fromSecond()] + WINDOW - 1;
        int to = poweredBefore[stretch.toSecond()];
        return to <= from
                ? OptionalDouble.empty()
                : OptionalDouble.of(
                        Math.sqrt(Math.sqrt((fourthPowersBefore[to] - fourthPowersBefore[from]) / (to - from))));
    }
}
