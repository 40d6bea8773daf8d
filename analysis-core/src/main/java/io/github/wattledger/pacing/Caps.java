package io.github.wattledger.pacing;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** What to ride to next time, in watts and beats. */
final class Caps {
    private Caps() {}

    /**
     * Advice with a cap.
     *
     * @param format one or two sentences with {@code %s} where the cap goes
     * @param capW the cap, watts
     */
    static Advice advise(Race race, String format, double capW) {
        Double capBpm = capBpm(race, capW);
        String cap = capBpm == null
                ? String.format(Locale.ROOT, "%.0f W", capW)
                : String.format(Locale.ROOT, "%.0f W or %.0f bpm", capW, capBpm);
        return new Advice(String.format(Locale.ROOT, format, cap), (double) Math.round(capW), capBpm);
    }

    /** Never above threshold heart rate: a cap is there to hold back. */
    private static @Nullable Double capBpm(Race race, double capW) {
        double predicted = race.heartRateModel().capBpm(capW).orElse(Double.NaN);
        if (Double.isNaN(predicted)) {
            return null;
        }
        Double threshold = race.thresholdHeartRateBpm();
        return (double) Math.round(threshold == null ? predicted : Math.min(predicted, threshold));
    }
}
