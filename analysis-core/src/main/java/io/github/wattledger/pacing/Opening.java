package io.github.wattledger.pacing;

import io.github.wattledger.load.StretchNormalizedPower;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import org.jspecify.annotations.Nullable;

/**
 * The opening of a race.
 *
 * @param movingSeconds moving seconds of the judged part that belong to it; 0 where the part begins after it
 * @param plannedCapW the normalized power that a plan allows for it, watts; null without a plan
 */
public record Opening(int movingSeconds, @Nullable Double plannedCapW) {
    /** The cap of an opening over the power that can be held: a little room for its climbs and corners. Own choice. */
    public static final double CAP_OVER_TARGET = 1.05;

    /** Meters differ by 2 to 3 %, and nobody holds a number exactly. Own choice. */
    private static final double ABOVE_CAP = 1.05;

    private static final double SHARE = 1 / 6.0;
    private static final int SHORTEST_SECONDS = 20 * 60;
    private static final int LONGEST_SECONDS = 90 * 60;

    /** An opening that nobody planned. */
    static Opening unplanned(int movingSeconds) {
        return new Opening(movingSeconds, null);
    }

    /** How long the opening of a race is: a sixth of its moving time, at least 20 and at most 90 minutes, seconds. */
    public static double secondsOf(double movingSeconds) {
        return Math.min(LONGEST_SECONDS, Math.max(SHORTEST_SECONDS, SHARE * movingSeconds));
    }

    /** Where it lies in a ride: from its start until this much moving time has passed, or to the end of the ride. */
    public Interval in(Ride ride) {
        int moving = 0;
        int second = 0;
        while (second < ride.seconds() && moving < movingSeconds) {
            moving += ride.state(second) == SecondState.RIDING ? 1 : 0;
            second++;
        }
        return new Interval(0, second);
    }

    /** Normalized power of the opening of a ride, watts; {@code NaN} when fewer than 30 seconds of it carry power. */
    public double normalizedPowerW(Ride ride) {
        return StretchNormalizedPower.of(ride).of(in(ride)).orElse(Double.NaN);
    }

    /** Whether a normalized power lies above a planned cap by more than meters differ; false for {@code NaN}. */
    public static boolean isAboveCap(double normalizedPowerW, double capW) {
        return normalizedPowerW > ABOVE_CAP * capW;
    }
}
