package io.github.wattledger.pacing;

import io.github.wattledger.pacing.price.PricePlan;
import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import java.util.Optional;

/** The whole race was easier than the rider can hold, and no fade or energy crash explains it. */
final class UnderPaced implements Detector {
    private static final double MODERATE_SHARE = 0.87;
    private static final double HARD_SHARE_OF_THRESHOLD = 0.92;
    private static final double HARD_SHARE_OF_HIGHEST = 0.80;

    @Override
    public Optional<Found> detect(Race race) {
        Interval whole = new Interval(0, race.ride().seconds());
        double normalized = race.normalizedPowerW(whole);
        double share = normalized / race.targetW();
        if (!race.isLongEnough()
                || race.thresholdIsEstimated()
                || !(share < Math.min(race.limit(JudgementLimit.UNDER_PACED_FRACTION), lowestBand(race)))
                || beatsAsInARace(race, whole)) {
            return Optional.empty();
        }
        return Optional.of(new Found(
                share < MODERATE_SHARE ? Severity.MODERATE : Severity.MINOR,
                whole,
                Evidence.none()
                        .with("normalizedPowerW", normalized)
                        .with("targetW", race.targetW())
                        .with("shareOfTargetPercent", share * 100),
                Caps.adviseWatts("There was more to give: ride towards %s, from early on.", race.targetW()),
                new PricePlan.None("see the line against your ability")));
    }

    /**
     * The low end of the coaches' bands over the guide: 0.80 of threshold at 3 h, 0.70 at 6 h and 0.58 at 12 h (common
     * practice, no source). The guide falls more slowly, so that beyond 8 h a ride within the bands is not too easy.
     */
    private static double lowestBand(Race race) {
        double seconds = Math.max(SustainablePower.SHORTEST_GUIDE_SECONDS, race.movingSeconds());
        double hours = Math.max(3, Math.min(12, seconds / 3600));
        double ofThreshold = hours <= 6 ? 0.80 - 0.10 * (hours - 3) / 3 : 0.70 - 0.12 * (hours - 6) / 6;
        return ofThreshold / SustainablePower.guideW(1, 3600 * hours);
    }

    /** A heart that beats high for the whole race had no more to give, whatever the power says. Set on one real ride. */
    private static boolean beatsAsInARace(Race race, Interval whole) {
        double bpm = race.mean(Channel.HEART_RATE, whole);
        Double threshold = race.thresholdHeartRateBpm();
        Double highest = race.highestKnownHeartRateBpm();
        return (threshold != null && bpm >= HARD_SHARE_OF_THRESHOLD * threshold)
                || (highest != null && bpm >= HARD_SHARE_OF_HIGHEST * highest);
    }

    @Override
    public boolean givesWayTo(Detector other, Found own, Found others) {
        return other instanceof Fade || other instanceof EnergyCrash;
    }
}
