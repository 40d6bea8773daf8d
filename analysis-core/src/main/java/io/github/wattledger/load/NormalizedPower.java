package io.github.wattledger.load;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Series;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * Normalized power: the constant power that would have cost about as much as the varying one did. It is the fourth root
 * of the mean of the fourth powers of the trailing 30-second means of power, watts.
 *
 * <p>Source: H. Allen and A. Coggan, Training and Racing with a Power Meter; FIT profile, field {@code
 * normalized_power}. The sources do not say what becomes of the first seconds and of gaps. Here a second without power (paused or missing) is
 * left out and the window runs on across it, and the first 29 seconds, which fill no window, give none.
 */
public final class NormalizedPower {
    /** Length of the trailing mean, seconds. */
    public static final int WINDOW_SECONDS = TrailingWindow.SECONDS;

    private NormalizedPower() {}

    /**
     * Normalized power of one-second power.
     *
     * @param watts one-second power, watts; {@code NaN} (not measured) is left out, 0 (coasting) counts
     * @return watts, or empty when fewer than 30 seconds carry power
     * @throws IllegalArgumentException when a reading is below 0 or infinite
     */
    public static OptionalDouble of(Series watts) {
        return of(watts.requireReadings("watts"), 0, watts.size());
    }

    /** Normalized power of a part of a series, as if the series were no more than that. */
    static OptionalDouble of(Series watts, int from, int to) {
        TrailingWindow window = new TrailingWindow();
        CompensatedSum fourthPowers = new CompensatedSum();
        for (int second = from; second < to; second++) {
            if (watts.isMeasured(second)) {
                fourthPowers.add(window.take(watts.get(second)));
            }
        }
        return window.windows() == 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(Math.sqrt(Math.sqrt(fourthPowers.value() / window.windows())));
    }

    /** {@link #of(Series)} for an array, which is copied. */
    public static OptionalDouble of(double[] watts) {
        return of(Series.of(watts));
    }

    /** Normalized power of a ride's timer seconds; power recorded while the timer stood is left out. */
    public static OptionalDouble of(Ride ride) {
        return of(ride, new Interval(0, ride.seconds()));
    }

    /**
     * {@link #of(Ride)} for a stretch of a ride, as if the ride were no more than that.
     *
     * @throws IndexOutOfBoundsException when the stretch does not lie within the ride
     */
    public static OptionalDouble of(Ride ride, Interval stretch) {
        Objects.checkFromToIndex(stretch.fromSecond(), stretch.toSecond(), ride.seconds());
        return of(ride.timerSeries(Channel.POWER), stretch.fromSecond(), stretch.toSecond());
    }
}
