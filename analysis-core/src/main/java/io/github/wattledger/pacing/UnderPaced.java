package io.github.wattledger.pacing;

import io.github.wattledger.pacing.price.PricePlan;
import io.github.wattledger.ride.Interval;
import java.util.Optional;

/** The whole race was easier than the rider can hold, and no fade or energy crash explains it. */
final class UnderPaced implements Detector {
    private static final double MODERATE_SHARE = 0.87;

    @Override
    public Optional<Found> detect(Race race) {
        Interval whole = new Interval(0, race.ride().seconds());
        double normalized = race.normalizedPowerW(whole);
        double share = normalized / race.targetW();
        if (!race.isLongEnough()
                || race.thresholdIsEstimated()
                || !(share < race.limit(JudgementLimit.UNDER_PACED_FRACTION))) {
            return Optional.empty();
        }
        return Optional.of(new Found(
                share < MODERATE_SHARE ? Severity.MODERATE : Severity.MINOR,
                whole,
                Evidence.none()
                        .with("normalizedPowerW", normalized)
                        .with("targetW", race.targetW())
                        .with("shareOfTargetPercent", share * 100),
                Caps.advise(race, "There was more to give: ride towards %s from the second hour on.", race.targetW()),
                new PricePlan.None("see the line against your ability")));
    }

    @Override
    public boolean isOfRacesOnly() {
        return true;
    }

    @Override
    public boolean givesWayTo(Detector other, Found own, Found others) {
        return other instanceof Fade || other instanceof EnergyCrash;
    }
}
