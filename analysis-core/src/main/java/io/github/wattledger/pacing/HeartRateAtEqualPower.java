package io.github.wattledger.pacing;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.util.Optional;
import java.util.function.IntPredicate;

/**
 * Heart rate of a stretch, and what the line of the first half predicts for the power of that stretch.
 *
 * @param actualBpm mean heart rate
 * @param predictedBpm mean heart rate that the line predicts for these seconds
 */
record HeartRateAtEqualPower(double actualBpm, double predictedBpm) {
    private static final double WORKING_FRACTION = 0.4;
    private static final int LEAST_SECONDS = 10 * 60;

    /**
     * Compares the seconds above 0.4 times threshold power whose power is among those that the line was fitted on.
     *
     * @return empty without a usable line or threshold, with less than ten minutes, or where a fifth of the heart rate is
     *     missing
     */
    static Optional<HeartRateAtEqualPower> withinFittedRange(Race race, Interval stretch) {
        return of(
                race,
                stretch,
                second -> race.heartRateModel().isFittedAt(race.heartRateModel().laggedW(second)));
    }

    /**
     * Compares the seconds above 0.4 times threshold power.
     *
     * @return empty without a usable line or threshold, with less than ten minutes, or where a fifth of the heart rate is
     *     missing
     */
    static Optional<HeartRateAtEqualPower> of(Race race, Interval stretch) {
        return of(race, stretch, second -> true);
    }

    /** Whether the race tells what heart rate goes with a power at all. */
    static boolean isKnown(Race race) {
        return race.heartRateModel().isUsable() && !Double.isNaN(race.thresholdPowerW());
    }

    private static Optional<HeartRateAtEqualPower> of(Race race, Interval stretch, IntPredicate isCompared) {
        HeartRateModel model = race.heartRateModel();
        double threshold = race.thresholdPowerW();
        if (!isKnown(race)) {
            return Optional.empty();
        }
        Series bpm = race.ride().series(Channel.HEART_RATE);
        double actual = 0;
        double predicted = 0;
        int count = 0;
        int working = 0;
        for (int second = stretch.fromSecond(); second < stretch.toSecond(); second++) {
            if (race.ride().state(second) != SecondState.RIDING
                    || !isCompared.test(second)
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
        return count < LEAST_SECONDS || count < HeartRateModel.LEAST_COVERAGE * working
                ? Optional.empty()
                : Optional.of(new HeartRateAtEqualPower(actual / count, predicted / count));
    }

    /** How far the heart rate lies above the prediction, percent; negative below it. */
    double percentOver() {
        return (actualBpm / predictedBpm - 1) * 100;
    }
}
