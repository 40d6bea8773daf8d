package io.github.wattledger.pacing;

import io.github.wattledger.load.NormalizedPower;
import io.github.wattledger.power.OwnEndurance;
import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import java.io.Serializable;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A threshold power, and whether it is known well enough to say how hard a ride was. A ride can refute a threshold that is
 * set too low; with one that is set too high it only looks easier.
 *
 * @param powerW threshold power, watts; null when there is none, or when it was an estimate that cannot be
 * @param doubt why it is not known, or null when it is known
 * @param evidence the numbers that the doubt rests on, with {@code thresholdPowerW}
 */
public record KnownThreshold(
        @Nullable Double powerW, @Nullable Doubt doubt, Evidence evidence) implements Serializable {
    /** Why a threshold power is not known. */
    public enum Doubt {
        /** There is none. */
        NONE,
        /** It was estimated from the ride itself, which always fits its own estimate. */
        ESTIMATED_FROM_RIDE,
        /** It was estimated from the ride itself, and is more than a rider can have. */
        ESTIMATE_TOO_HIGH,
        /** It is the value that devices are delivered with. */
        FACTORY_SETTING,
        /** The ride was harder than threshold for longer than that can be held. */
        INTENSITY_ABOVE_THRESHOLD,
        /** The ride was far harder than the guide for its length. */
        POWER_ABOVE_GUIDE,
        /** The best hour of the ride was above threshold, which is about the power of an hour. */
        BEST_HOUR_ABOVE_THRESHOLD,
        /** The ride was hard by this threshold, and easy by its heart rate. */
        HEART_RATE_OF_AN_EASY_RIDE
    }

    /**
     * The ride that a threshold is held against.
     *
     * @param ride the reviewed ride
     * @param judged the part of it that is judged, with this threshold where that depends on it
     * @param bestHourW the highest mean power over an hour of the ride, watts, or null where the ride is shorter
     * @param highestKnownHeartRateBpm the highest heart rate of the rider that is known from elsewhere (device, profile,
     *     other rides: the highest of them), or null when none is
     * @param endurance what the rider's own long rides say, or null; a rider who holds more than the guide refutes no
     *     threshold by it
     */
    public record Ridden(
            Ride ride,
            Interval judged,
            @Nullable Double bestHourW,
            @Nullable Double highestKnownHeartRateBpm,
            @Nullable OwnEndurance endurance) {
        /** A ride of whose rider no other ride is known. */
        public Ridden(
                Ride ride, Interval judged, @Nullable Double bestHourW, @Nullable Double highestKnownHeartRateBpm) {
            this(ride, judged, bestHourW, highestKnownHeartRateBpm, null);
        }

        /** @throws IndexOutOfBoundsException when the judged part does not lie within the ride */
        public Ridden {
            Objects.checkFromToIndex(judged.fromSecond(), judged.toSecond(), ride.seconds());
        }
    }

    /** The threshold power that devices are delivered with, watts. */
    static final double FACTORY_W = RecordingDevice.FACTORY_THRESHOLD_POWER_W;

    /** No estimate from a ride is believed above this, watts: a meter that counted twice gave 1,207 W. */
    static final double HIGHEST_ESTIMATE_W = 500;

    /** Nobody holds more than this share of threshold for 45 minutes, by the definition of threshold. */
    static final double HIGHEST_INTENSITY = 1.05;

    static final int INTENSITY_SECONDS = 45 * 60;

    /**
     * Half of normalized and mean power over the guide. Mean power keeps a race with a hard start or surges, whose
     * normalized power alone passes the guide's upper end, from refuting a true threshold: none of 332 simulated races is
     * above it.
     */
    static final double HIGHEST_SHARE_OF_GUIDE = 1.12;

    /** Best hour over threshold. */
    static final double HIGHEST_BEST_HOUR = 1.05;

    /** Highest heart rate of a ride over the highest known, below which the ride was easy. Set on one real ride. */
    static final double EASY_HEART_RATE_SHARE = 0.80;

    /** Normalized power over guide from which a ride is not easy by its power. */
    static final double HARD_SHARE_OF_GUIDE = 0.85;

    /** No threshold at all. */
    public static KnownThreshold none() {
        return new KnownThreshold(null, Doubt.NONE, Evidence.none());
    }

    /**
     * A threshold that the rider gave, now or in a profile: believed unless the ride refutes it.
     *
     * @throws IllegalArgumentException when it is not above 0
     */
    public static KnownThreshold ofRider(double powerW, Ridden ridden) {
        return new Check(powerW, ridden).result();
    }

    /**
     * A threshold that was set on the recording device: believed unless it is the factory's, or the ride refutes it.
     *
     * @throws IllegalArgumentException when it is not above 0
     */
    public static KnownThreshold ofDevice(double powerW, Ridden ridden) {
        Check check = new Check(powerW, ridden);
        return powerW == FACTORY_W ? check.doubted(Doubt.FACTORY_SETTING, check.evidence()) : check.result();
    }

    /**
     * A threshold estimated from the ride itself: never known. Where the ride refutes it, the doubt is the ride's; it is
     * {@link Doubt#ESTIMATED_FROM_RIDE} otherwise, and then parts of the ride may still be compared by it.
     *
     * @throws IllegalArgumentException when it is not above 0
     */
    public static KnownThreshold estimated(double powerW, Ridden ridden) {
        Check check = new Check(powerW, ridden);
        if (powerW > HIGHEST_ESTIMATE_W) {
            return new KnownThreshold(null, Doubt.ESTIMATE_TOO_HIGH, check.evidence());
        }
        KnownThreshold result = check.result();
        return result.isKnown() ? check.doubted(Doubt.ESTIMATED_FROM_RIDE, check.evidence()) : result;
    }

    /** Whether a verdict on how hard the ride was may rest on it. */
    public boolean isKnown() {
        return doubt == null;
    }

    /** One threshold held against one ride. */
    private static final class Check {
        private static final double SECONDS_PER_HOUR = 3600;

        private final double thresholdW;
        private final Ridden ridden;
        private final Ride ride;

        Check(double thresholdW, Ridden ridden) {
            if (!(thresholdW > 0)) {
                throw new IllegalArgumentException("threshold power " + thresholdW + ", expected above 0");
            }
            this.thresholdW = thresholdW;
            this.ridden = ridden;
            this.ride = ridden.ride();
        }

        Evidence evidence() {
            return Evidence.none().with("thresholdPowerW", thresholdW);
        }

        KnownThreshold doubted(Doubt doubt, Evidence evidence) {
            return new KnownThreshold(thresholdW, doubt, evidence);
        }

        KnownThreshold result() {
            int timerSeconds = ride.seconds() - ride.countSeconds(SecondState.PAUSED);
            double intensity = NormalizedPower.of(ride).orElse(Double.NaN) / thresholdW;
            if (intensity > HIGHEST_INTENSITY && timerSeconds > INTENSITY_SECONDS) {
                return doubted(
                        Doubt.INTENSITY_ABOVE_THRESHOLD,
                        evidence()
                                .with("intensityFactor", intensity)
                                .with("timerHours", timerSeconds / SECONDS_PER_HOUR));
            }
            double guideW = guideW();
            double normalizedW = NormalizedPower.of(ride, ridden.judged()).orElse(Double.NaN);
            double mixedShare = (normalizedW + meanPowerW()) / 2 / guideW;
            if (mixedShare > HIGHEST_SHARE_OF_GUIDE) {
                return doubted(
                        Doubt.POWER_ABOVE_GUIDE,
                        evidence().with("guideW", guideW).with("normalizedAndMeanShareOfGuide", mixedShare));
            }
            Double bestHourW = ridden.bestHourW();
            if (bestHourW != null && bestHourW > HIGHEST_BEST_HOUR * thresholdW) {
                return doubted(Doubt.BEST_HOUR_ABOVE_THRESHOLD, evidence().with("bestHourW", bestHourW));
            }
            return heartRateDoubt(normalizedW / guideW);
        }

        private KnownThreshold heartRateDoubt(double shareOfGuide) {
            Double known = ridden.highestKnownHeartRateBpm();
            double highest = highestHeartRateBpm();
            boolean isEasy = known != null && highest < EASY_HEART_RATE_SHARE * known;
            if (known == null || !isEasy || !(shareOfGuide >= HARD_SHARE_OF_GUIDE)) {
                return new KnownThreshold(thresholdW, null, evidence());
            }
            return doubted(
                    Doubt.HEART_RATE_OF_AN_EASY_RIDE,
                    evidence()
                            .with("shareOfGuide", shareOfGuide)
                            .with("highestHeartRateBpm", highest)
                            .with("highestKnownHeartRateBpm", known));
        }

        /**
         * The guide for the judged part, or what own long rides promise for it where that is more; {@code NaN} under 40
         * minutes, where the limits were not tried.
         */
        private double guideW() {
            int ridingSeconds = ride.countSeconds(SecondState.RIDING, ridden.judged());
            if (ridingSeconds < OccasionRules.SHORTEST_SECONDS) {
                return Double.NaN;
            }
            double guideW = SustainablePower.guideW(thresholdW, ridingSeconds);
            OwnEndurance own = ridden.endurance();
            return own == null
                    ? guideW
                    : own.over(thresholdW, ridingSeconds)
                            .map(power -> Math.max(guideW, power.watts()))
                            .orElse(guideW);
        }

        private double meanPowerW() {
            Interval judged = ridden.judged();
            return ride.timerSeries(Channel.POWER)
                    .mean(judged.fromSecond(), judged.toSecond())
                    .orElse(Double.NaN);
        }

        /** The highest heart rate while the timer ran; {@code NaN} without any, which is below nothing. */
        private double highestHeartRateBpm() {
            return ride.timerSeries(Channel.HEART_RATE).maximum().orElse(Double.NaN);
        }
    }
}
