package io.github.wattledger.pacing;

import io.github.wattledger.pacing.price.Repair;
import io.github.wattledger.pacing.price.StretchChange;
import io.github.wattledger.ride.Interval;
import java.util.List;
import java.util.Optional;

/** The end was ridden clearly harder than what came before. */
final class LateReserve implements Detector {
    private static final double LAST_SIXTH = 5 / 6.0;
    private static final double MODERATE_OVER_BEFORE = 1.15;

    @Override
    public Optional<Found> detect(Race race) {
        if (!race.isLongEnough()) {
            return Optional.empty();
        }
        Interval last = race.betweenShares(LAST_SIXTH, 1);
        Interval before = new Interval(0, last.fromSecond());
        double overBefore = race.ground().ratio(last, before);
        if (!(overBefore >= race.limit(JudgementLimit.LATE_RESERVE_OVER_REST))) {
            return Optional.empty();
        }
        double lastW = race.ground().meanW(last);
        Evidence evidence = Evidence.none()
                .with("lastSixthNormalizedPowerW", race.normalizedPowerW(last))
                .with("restNormalizedPowerW", race.normalizedPowerW(before))
                .with("gainPercent", (overBefore - 1) * 100);
        return Optional.of(new Found(
                overBefore >= MODERATE_OVER_BEFORE ? Severity.MODERATE : Severity.MINOR,
                last,
                evidence,
                new Advice(
                        "Something was left for the end: spend it earlier, from the middle of the race on, a few watts"
                                + " at a time.",
                        null,
                        null),
                new Repair(
                        Repair.Turn.FACTORS,
                        List.of(new Repair.Stretch(last, StretchChange.TO_POWER_BEFORE, lastW, lastW / overBefore)),
                        0)));
    }

    @Override
    public boolean comparesParts() {
        return true;
    }
}
