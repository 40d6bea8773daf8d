package io.github.wattledger.pacing;

import io.github.wattledger.pacing.price.Repair;
import io.github.wattledger.pacing.price.StretchChange;
import io.github.wattledger.power.WPrimeBalance;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.util.List;
import java.util.Optional;

/** The opening was ridden harder than the whole could be, and harder than the rest was. */
final class OverHardStart implements Detector {
    private static final double MODERATE_OVER_TARGET = 1.15;
    private static final double MAJOR_OVER_TARGET = 1.25;

    /** Whether the opening of a race was over-hard. */
    static boolean isIn(Race race) {
        return race.isLongEnough()
                && isAboveLimit(race, race.normalizedPowerW(race.opening()))
                && race.ground().ratio(race.opening(), race.middle())
                        >= race.limit(JudgementLimit.OVER_HARD_START_OVER_REST);
    }

    /** A plan knows the course and what the rider meant to do; without one the target decides. */
    private static boolean isAboveLimit(Race race, double openingW) {
        Double plannedCapW = race.plannedOpeningCapW();
        return plannedCapW == null
                ? openingW > race.limit(JudgementLimit.OVER_HARD_START_OVER_TARGET) * race.targetW()
                : Opening.isAboveCap(openingW, plannedCapW);
    }

    /** The power not to exceed in the opening, watts. */
    private static double capW(Race race) {
        Double plannedCapW = race.plannedOpeningCapW();
        return plannedCapW == null ? Opening.CAP_OVER_TARGET * race.targetW() : plannedCapW;
    }

    @Override
    public Optional<Found> detect(Race race) {
        if (!isIn(race)) {
            return Optional.empty();
        }
        Interval opening = race.opening();
        double openingW = race.normalizedPowerW(opening);
        double restW = race.normalizedPowerW(race.after(opening));
        double overMiddle = race.ground().ratio(opening, race.middle());
        double ratio = Opening.CAP_OVER_TARGET * openingW / capW(race);
        Severity severity = ratio >= MAJOR_OVER_TARGET
                ? Severity.MAJOR
                : ratio >= MODERATE_OVER_TARGET ? Severity.MODERATE : Severity.MINOR;
        Advice advice = Caps.advise(
                race,
                "Hold the normalized power of the opening, its first " + Math.round(opening.seconds() / 60.0)
                        + " min, to %s, whatever the group does; let it go and ride your own race.",
                capW(race));
        return Optional.of(new Found(
                severity,
                opening,
                evidence(race, opening, openingW, restW).with("overMiddlePercent", (overMiddle - 1) * 100),
                advice,
                repair(opening, race.ground().meanW(opening), overMiddle)));
    }

    /** Brings the opening to the effort of the race's own middle, hill by hill; a climb is never ridden at the flat target. */
    private static Repair repair(Interval opening, double openingW, double overMiddle) {
        return new Repair(
                Repair.Turn.FACTORS,
                List.of(new Repair.Stretch(opening, StretchChange.TO_MIDDLE_POWER, openingW, openingW / overMiddle)),
                0);
    }

    private static Evidence evidence(Race race, Interval opening, double openingW, double restW) {
        Double plannedCapW = race.plannedOpeningCapW();
        Series watts = race.watts();
        double excessJ = 0;
        int above = 0;
        for (int second = opening.fromSecond(); second < opening.toSecond(); second++) {
            if (watts.isMeasured(second) && race.ride().state(second) != SecondState.PAUSED) {
                excessJ += watts.get(second) - race.targetW();
                if (watts.get(second) > race.thresholdPowerW()) {
                    above++;
                }
            }
        }
        double bpm = race.mean(Channel.HEART_RATE, opening);
        Double threshold = race.thresholdHeartRateBpm();
        return Evidence.none()
                .with("openingNormalizedPowerW", openingW)
                .with("restNormalizedPowerW", restW)
                .with("targetW", race.targetW())
                .with("plannedCapW", plannedCapW == null ? Double.NaN : plannedCapW)
                .with("excessWorkKJ", excessJ / 1000)
                .with("minutesAboveThreshold", Double.isNaN(race.thresholdPowerW()) ? Double.NaN : above / 60.0)
                .with("openingSeconds", opening.seconds())
                .with("openingHeartRateBpm", bpm)
                .with("thresholdHeartRateFraction", threshold == null ? Double.NaN : bpm / threshold)
                .with("lowestWPrimeShare", lowestWPrimeShare(race, opening));
    }

    private static double lowestWPrimeShare(Race race, Interval opening) {
        WPrimeBalance balance = race.wPrimeBalance();
        return balance == null ? Double.NaN : balance.minimumJ(opening) / balance.wPrimeJ();
    }
}
