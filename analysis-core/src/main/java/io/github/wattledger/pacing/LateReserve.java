package io.github.wattledger.pacing;

import io.github.wattledger.pacing.price.Repair;
import io.github.wattledger.pacing.price.StretchChange;
import io.github.wattledger.ride.Interval;
import java.util.List;
import java.util.Optional;

/** The end was ridden clearly harder than what came before. */
final class LateReserve implements Detector {
    private static final double LAST_SIXTH = 5 / 6.0;
    private static final double MODERATE_OVER_REST = 1.15;

    @Override
    public Optional<Found> detect(Race race) {
        if (!race.isLongEnough()) {
            return Optional.empty();
        }
        Interval last = race.betweenShares(LAST_SIXTH, 1);
        double lastW = race.normalizedPowerW(last);
        double restW = race.normalizedPowerW(new Interval(0, last.fromSecond()));
        double overRest = lastW / restW;
        if (!(overRest >= race.limit(JudgementLimit.LATE_RESERVE_OVER_REST))) {
            return Optional.empty();
        }
        return Optional.of(new Found(
                overRest >= MODERATE_OVER_REST ? Severity.MODERATE : Severity.MINOR,
                last,
                Evidence.none()
                        .with("lastSixthNormalizedPowerW", lastW)
                        .with("restNormalizedPowerW", restW)
                        .with("gainPercent", (overRest - 1) * 100),
                new Advice(
                        "Something was left for the end: spend it earlier, from the middle of the race on, a few watts"
                                + " at a time.",
                        null,
                        null),
                repair(last, lastW, restW)));
    }

    private static Repair repair(Interval last, double lastW, double restW) {
        return new Repair(
                Repair.Turn.FACTORS, List.of(new Repair.Stretch(last, StretchChange.TO_POWER_BEFORE, lastW, restW)), 0);
    }

    @Override
    public boolean isOfRacesOnly() {
        return true;
    }
}
