package io.github.wattledger.pacing;

import io.github.wattledger.load.Decoupling;
import io.github.wattledger.pacing.price.PricePlan;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import java.util.Optional;

/**
 * Heart rate rose at equal power: the last third against what the line of the first half predicts. The usual decoupling
 * percentage is given as evidence, but is no reason for a finding, since it rises whenever power falls.
 */
final class Drift implements Detector {
    private static final double LAST_THIRD = 2 / 3.0;
    private static final double MODERATE_PERCENT = 5;
    private static final double MAJOR_PERCENT = 8;

    @Override
    public boolean comparesParts() {
        return true;
    }

    @Override
    public Optional<Found> detect(Race race) {
        Interval late = race.betweenShares(LAST_THIRD, 1);
        Optional<HeartRateAtEqualPower> heart = HeartRateAtEqualPower.withinFittedRange(race, late);
        if (heart.isEmpty()) {
            return Optional.empty();
        }
        double percent = heart.get().percentOver();
        if (!(percent > race.limit(JudgementLimit.DRIFT_PERCENT))) {
            return Optional.empty();
        }
        Severity severity = percent > MAJOR_PERCENT
                ? Severity.MAJOR
                : percent > MODERATE_PERCENT ? Severity.MODERATE : Severity.MINOR;
        Evidence evidence = Evidence.none()
                .with("heartRateOverPredictedPercent", percent)
                .with("actualHeartRateBpm", heart.get().actualBpm())
                .with("predictedHeartRateBpm", heart.get().predictedBpm())
                .with("bpmPer100W", race.heartRateModel().bpmPer100W())
                .with("decouplingPercent", Decoupling.of(race.ride()).orElse(Double.NaN))
                .with("temperatureC", race.mean(Channel.TEMPERATURE, late))
                .with("temperatureBeforeC", race.mean(Channel.TEMPERATURE, new Interval(0, late.fromSecond())));
        return Optional.of(new Found(
                severity,
                late,
                evidence,
                new Advice(
                        "Heart rate at equal power rises with heat, with fluid lost and with little sleep: look at"
                                + " cooling, drinking and rest before the next one. A rise that is new to the rider, or"
                                + " comes with faintness or chest pain, belongs to a physician.",
                        null,
                        null),
                new PricePlan.None("a heart that beats faster costs no time by itself")));
    }
}
