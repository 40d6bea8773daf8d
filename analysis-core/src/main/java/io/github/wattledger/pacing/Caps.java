package io.github.wattledger.pacing;

import io.github.wattledger.ride.Decimals;
import org.jspecify.annotations.Nullable;

/** Advice that names a power not to exceed next time, with the heart rate that goes with it. */
final class Caps {
    /** The place of the cap in a sentence. */
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
        String cap = words(capW, capBpm) + (capBpm == null ? "" : ", whichever comes first");
        return new Advice(sentences.replace(CAP, cap), (double) Math.round(capW), capBpm);
    }

    /**
     * A cap in words, for instance {@code 193 W or 150 bpm}.
     *
     * @param capBpm the heart rate that goes with the power, or null
     */
    static String words(double capW, @Nullable Double capBpm) {
        return Decimals.of(capW, 0) + " W" + (capBpm == null ? "" : " or " + Decimals.of(capBpm, 0) + " bpm");
    }

    /**
     * Advice with a cap on efforts of seconds, which the heart follows too late to be held by.
     *
     * @param sentences one or two, with {@code %s} where the cap goes
     * @param capW the cap, watts
     */
    static Advice adviseWatts(String sentences, double capW) {
        return new Advice(sentences.replace(CAP, words(capW, null)), (double) Math.round(capW), null);
    }

    /**
     * The heart rate at a cap, beats per minute. A cap is there to hold a rider back, so it is never above threshold heart
     * rate, and never above the highest of the race, beyond which the line is a guess.
     */
    private static @Nullable Double capBpm(Race race, double capW) {
        double predicted = race.heartRateModel().capBpm(capW).orElse(Double.NaN);
        if (Double.isNaN(predicted)) {
            return null;
        }
        double highest = race.highestHeartRateBpm();
        Double threshold = race.thresholdHeartRateBpm();
        return (double) Math.round(Math.min(predicted, threshold == null ? highest : Math.min(highest, threshold)));
    }
}
