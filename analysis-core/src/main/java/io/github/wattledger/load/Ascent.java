package io.github.wattledger.load;

import io.github.wattledger.ride.Series;
import java.util.OptionalDouble;

/** Metres climbed, from altitude. */
public final class Ascent {
    /**
     * How far altitude must turn back before a rise counts as ended, and the least rise that counts, metres. Our own
     * decision: a barometer's reading wanders by about one metre either way, which spans two; a third keeps a flat road
     * flat.
     */
    public static final double HYSTERESIS_M = 3;

    private Ascent() {}

    /**
     * The sum of the rises from each low point to the next high point, metres. Points closer than {@link #HYSTERESIS_M}
     * in altitude are not told apart.
     *
     * @param altitudeM altitude second by second, metres; {@code NaN} (not measured) is left out
     * @return metres, or empty when no altitude was measured
     * @throws IllegalArgumentException when an altitude is infinite
     */
    public static OptionalDouble metres(Series altitudeM) {
        if (!altitudeM.requireFinite("altitudeM").hasAny()) {
            return OptionalDouble.empty();
        }
        double ascent = 0;
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        boolean rising = false;
        for (int second = 0; second < altitudeM.size(); second++) {
            double altitude = altitudeM.get(second);
            if (Double.isNaN(altitude)) {
                continue;
            }
            if (rising) {
                high = Math.max(high, altitude);
                if (altitude <= high - HYSTERESIS_M) {
                    ascent += high - low;
                    rising = false;
                    low = altitude;
                }
            } else {
                low = Math.min(low, altitude);
                if (altitude >= low + HYSTERESIS_M) {
                    rising = true;
                    high = altitude;
                }
            }
        }
        return OptionalDouble.of(rising ? ascent + high - low : ascent);
    }

    /** {@link #metres(Series)} for an array, which is copied. */
    public static OptionalDouble metres(double[] altitudeM) {
        return metres(Series.of(altitudeM));
    }
}
