package io.github.wattledger.pacing;

import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Series;
import java.util.Optional;

/**
 * Power and heart rate fell together: power on comparable ground was down for twenty minutes or more, and in the same stretch
 * the heart beat more slowly than that power asked of it before. Running out of fuel looks like that, and so does deep
 * exhaustion; no recording shows which of them it was.
 */
final class EnergyCrash implements Detector {
    private static final int WARM_SECONDS = 20 * 60;

    /** Power must be down for this long, moving seconds. */
    private static final int WINDOW_SECONDS = 20 * 60;

    private static final int STEP_SECONDS = 2 * 60;
    private static final double MOST_KEPT = 0.85;
    private static final double MOST_PERCENT_OVER = -4.5;

    @Override
    public boolean comparesParts() {
        return true;
    }

    @Override
    public Optional<Found> detect(Race race) {
        if (!race.isLongEnough() || !HeartRateAtEqualPower.isKnown(race)) {
            return Optional.empty();
        }
        Interval early = new Interval(
                race.secondAtMoving(Math.min(race.movingSeconds() / 2, WARM_SECONDS)),
                race.betweenShares(0, 0.5).toSecond());
        return fallen(race, early)
                .flatMap(when -> HeartRateAtEqualPower.of(race, when)
                        .filter(heart -> heart.percentOver() < MOST_PERCENT_OVER)
                        .map(heart -> found(race, early, when, heart)));
    }

    /** From the first to the last window of the second half in which power was down. */
    private static Optional<Interval> fallen(Race race, Interval early) {
        int moving = race.movingSeconds();
        Interval found = null;
        for (int from = moving / 2; from + WINDOW_SECONDS <= moving; from += STEP_SECONDS) {
            Interval window = new Interval(race.secondAtMoving(from), race.secondAtMoving(from + WINDOW_SECONDS));
            if (race.ground().ratioOrSteeper(window, early) <= MOST_KEPT) {
                found = new Interval(found == null ? window.fromSecond() : found.fromSecond(), window.toSecond());
            }
        }
        return Optional.ofNullable(found);
    }

    /** A rider who runs empty far from help has more to lose than minutes. */
    @Override
    public Severity leastSeverity() {
        return Severity.MAJOR;
    }

    private static Found found(Race race, Interval early, Interval when, HeartRateAtEqualPower heart) {
        double kept = race.ground().ratioOrSteeper(when, early);
        double percentOver = heart.percentOver();
        double earlyW = race.mean(Channel.POWER, early);
        Evidence evidence = Evidence.none()
                .with("lossPercent", (1 - kept) * 100)
                .with("earlyPowerW", earlyW)
                .with("heartRateOverPredictedPercent", percentOver)
                .with("actualHeartRateBpm", heart.actualBpm())
                .with("predictedHeartRateBpm", heart.predictedBpm())
                .with("hoursBefore", when.fromSecond() / 3600.0)
                .with("workBeforeKJ", workKJ(race, when.fromSecond()))
                .with("temperatureC", race.mean(Channel.TEMPERATURE, when))
                .with("temperatureBeforeC", race.mean(Channel.TEMPERATURE, new Interval(0, when.fromSecond())));
        return new Found(
                Severity.MAJOR,
                when,
                evidence,
                new Advice(
                        "Too little fuel, too hard a start and plain exhaustion can be behind it, and cold or"
                                + " a slipping strap can look alike: no recording tells them apart. What and how much to eat is for a dietitian. Faintness,"
                                + " chest pain or a heart rate that stays odd belong to a physician.",
                        null,
                        null),
                EffortRepair.of(race, early, when));
    }

    private static double workKJ(Race race, int untilSecond) {
        Series watts = race.watts();
        double joules = 0;
        for (int second = 0; second < untilSecond; second++) {
            joules += watts.isMeasured(second) ? watts.get(second) : 0;
        }
        return joules / 1000;
    }
}
