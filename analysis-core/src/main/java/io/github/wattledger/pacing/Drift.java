package io.github.wattledger.pacing;

import io.github.wattledger.load.Decoupling;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.util.Optional;

/**
 * Heart rate rose at equal power: the last third against what the line of the first half predicts. The usual decoupling
 * percentage goes along as evidence and raises nothing by itself, since it rises whenever power falls.
 */
final class Drift implements Detector {
    private static final double LAST_THIRD = 2 / 3.0;
    private static final double WORKING_FRACTION = 0.4;
    private static final int LEAST_SECONDS = 10 * 60;
    private static final double MODERATE_PERCENT = 5;
    private static final double MAJOR_PERCENT = 8;

    @Override
    public Optional<Finding> detect(Race race) {
        HeartRateModel model = race.heartRateModel();
        double threshold = race.thresholdPowerW();
        if (!model.isUsable() || Double.isNaN(threshold)) {
            return Optional.empty();
        }
        Interval late = race.betweenShares(LAST_THIRD, 1);
        Series bpm = race.ride().series(Channel.HEART_RATE);
        double actual = 0;
        double predicted = 0;
        int count = 0;
        int working = 0;
        for (int second = late.fromSecond(); second < late.toSecond(); second++) {
            if (race.ride().state(second) != SecondState.RIDING
                    || !(model.laggedW(second) > WORKING_FRACTION * threshold)) {
                continue;
            }
            working++;
            if (bpm.isMeasured(second)) {
                actual += bpm.get(second);
                predicted += model.predictedBpm(model.laggedW(second));
                count++;
            }
        }
        if (count < LEAST_SECONDS || count < HeartRateModel.LEAST_COVERAGE * working) {
            return Optional.empty();
        }
        double percent = (actual / predicted - 1) * 100;
        if (!(percent > race.limit(JudgementLimit.DRIFT_PERCENT))) {
            return Optional.empty();
        }
        Severity severity = percent > MAJOR_PERCENT
                ? Severity.MAJOR
                : percent > MODERATE_PERCENT ? Severity.MODERATE : Severity.MINOR;
        Evidence evidence = Evidence.none()
                .with("heartRateOverPredictedPercent", percent)
                .with("actualHeartRateBpm", actual / count)
                .with("predictedHeartRateBpm", predicted / count)
                .with("bpmPer100W", model.bpmPer100W())
                .with("decouplingPercent", Decoupling.of(race.ride()).orElse(Double.NaN));
        return Optional.of(race.finding(
                FindingKind.DRIFT,
                severity,
                late,
                evidence,
                race.notPriced(),
                new Advice(
                        "Heart rate at equal power rises with heat, with fluid lost and with little sleep: look at"
                                + " cooling, drinking and rest before the next one. A rise that is new to the rider, or"
                                + " comes with faintness or chest pain, belongs to a physician.",
                        null,
                        null)));
    }
}
