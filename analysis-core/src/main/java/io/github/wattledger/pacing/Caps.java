package io.github.wattledger.pacing;

import io.github.wattledger.ride.Decimals;
import org.jspecify.annotations.Nullable;

/** What to ride to next time, in watts and beats. */
final class Caps {
    /** Stands for the cap in a sentence. */
    private static final String CAP = "%s";

    private Caps() {}

    /**
     * Advice with a cap.
     *
     * @param sentences one or two, with {@code %s} where the cap goes
     * @param capW the cap, watts
     */
    static Advice advise(Race race, String sentences, double capW) {
        Double capBpm = capBpm(race, capW);
        String watts = Decimals.of(capW, 0) + " W";
        String cap = capBpm == null ? watts : watts + " or " + Decimals.of(capBpm, 0) + " bpm";
        return new Advice(sentences.replace(CAP, cap), (double) Math.round(capW), capBpm);
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
