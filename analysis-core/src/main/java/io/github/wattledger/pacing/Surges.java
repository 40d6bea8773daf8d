package io.github.wattledger.pacing;

import io.github.wattledger.pacing.price.Repair;
import io.github.wattledger.pacing.price.StretchChange;
import io.github.wattledger.power.AbilityEvidence;
import io.github.wattledger.power.WPrimeBalance;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Series;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** Repeated short efforts far above threshold. */
final class Surges implements Detector {
    /**
     * The work above critical power that a trained rider has at once, where this rider's own is not known: 17 kJ, the
     * mean of Mitchell et al. 2018 (17.0 kJ), Vinetti et al. 2019 (17.0 kJ) and Spragg et al. 2022 (17.8 kJ), rounded.
     */
    private static final double USUAL_W_PRIME_J = 17_000;

    private static final double MINOR_SHARE_PER_HOUR = 0.10;
    private static final double MODERATE_SHARE_PER_HOUR = 0.25;
    private static final double MAJOR_SHARE_PER_HOUR = 0.50;
    private static final double SECONDS_PER_HOUR = 3600;

    /** This many surges that left less than a quarter of W′ are a way of riding, not a mishap. Own choice. */
    private static final int MAJOR_DRAINED = 3;

    private static final double FINALE_SHARE = 1 / 6.0;

    /** W′ counts as recovered from this share of it on, since it never becomes quite full. Own choice. */
    private static final double RECOVERED_SHARE = 0.9;

    @Override
    public Optional<Found> detect(Race race) {
        double threshold = race.thresholdPowerW();
        if (!race.isLongEnough() || race.thresholdIsEstimated() || Double.isNaN(threshold)) {
            return Optional.empty();
        }
        Tally tally = tally(race, threshold);
        if (tally.surges.isEmpty()) {
            return Optional.empty();
        }
        double hours = race.movingSeconds() / SECONDS_PER_HOUR;
        WPrimeBalance balance = race.wPrimeBalance();
        Draining draining = balance == null ? null : Draining.of(tally.surges, balance, race);
        double spentJ = draining == null ? tally.workJ : draining.spentJ;
        double wPrimeJ = balance == null ? USUAL_W_PRIME_J : balance.wPrimeJ();
        double share = spentJ / hours / wPrimeJ;
        int drained = draining == null ? 0 : draining.drained;
        if (share < MINOR_SHARE_PER_HOUR && drained == 0) {
            return Optional.empty();
        }
        Evidence evidence = Evidence.none()
                .with("count", tally.count)
                .with("totalSeconds", tally.seconds)
                .with("workAboveThresholdKJ", tally.workJ / 1000)
                .with("workAboveThresholdKJPerHour", tally.workJ / 1000 / hours)
                .with("wPrimeSharePerHour", share)
                .with(balance == null ? "usualWPrimeKJ" : "wPrimeKJ", wPrimeJ / 1000)
                .with("longestSeconds", tally.longest)
                .with("highestMeanW", tally.highestMeanW);
        if (draining != null) {
            evidence = draining.addTo(evidence);
        }
        return Optional.of(new Found(
                severity(share, drained),
                new Interval(tally.first, tally.end),
                evidence,
                Caps.adviseWatts(
                        "Keep short efforts below %s: ease over crests and out of corners instead of jumping.",
                        race.limit(JudgementLimit.SURGE_FRACTION) * threshold),
                repair(tally.surges, race.targetW())));
    }

    private static Repair repair(List<Interval> surges, double targetW) {
        List<Repair.Stretch> caps = new ArrayList<>();
        for (Interval surge : surges) {
            caps.add(new Repair.Stretch(surge, StretchChange.CAPPED_AT_TARGET, Double.NaN, targetW));
        }
        return new Repair(Repair.Turn.CAPS, caps, surges.get(0).fromSecond());
    }

    /** What a surge leaves of W′ counts beside what all of them cost: a drained rider cannot answer the next move. */
    private static Severity severity(double sharePerHour, int drained) {
        if (sharePerHour >= MAJOR_SHARE_PER_HOUR || drained >= MAJOR_DRAINED) {
            return Severity.MAJOR;
        }
        return sharePerHour >= MODERATE_SHARE_PER_HOUR || drained > 0 ? Severity.MODERATE : Severity.MINOR;
    }

    /**
     * What surges did to the balance of W′.
     *
     * @param balance the balance
     * @param spentJ work above critical power in all of them, joules
     * @param mostJ work above critical power in the one surge that took most, joules
     * @param lowest the last second of the surge that left least
     * @param drained how many left less than a quarter; those of the last sixth do not count, since W′ may be spent there
     */
    private record Draining(WPrimeBalance balance, double spentJ, double mostJ, int lowest, int drained) {
        static Draining of(List<Interval> surges, WPrimeBalance balance, Race race) {
            int finale = race.betweenShares(1 - FINALE_SHARE, 1).fromSecond();
            double spent = 0;
            double most = 0;
            int lowest = -1;
            int drained = 0;
            for (Interval surge : surges) {
                double spentJ = balance.spentJ(surge);
                int last = surge.toSecond() - 1;
                double leftJ = balance.balanceJ().get(last);
                spent += spentJ;
                most = Math.max(most, spentJ);
                lowest = lowest < 0 || leftJ < balance.balanceJ().get(lowest) ? last : lowest;
                drained += leftJ < AbilityEvidence.LOW_SHARE * balance.wPrimeJ() && last < finale ? 1 : 0;
            }
            return new Draining(balance, spent, most, lowest, drained);
        }

        Evidence addTo(Evidence evidence) {
            OptionalInt recovery = balance.secondsToRecover(lowest, RECOVERED_SHARE);
            return evidence.with("wPrimeSpentKJ", spentJ / 1000)
                    .with("mostWPrimeSpentKJ", mostJ / 1000)
                    .with("lowestWPrimeShare", balance.balanceJ().get(lowest) / balance.wPrimeJ())
                    .with("drainedCount", drained)
                    .with("secondsToRecover", recovery.isPresent() ? recovery.getAsInt() : Double.NaN);
        }
    }

    private static final class Tally {
        final List<Interval> surges = new ArrayList<>();
        int count;
        int seconds;
        int longest;
        int first = -1;
        int end;
        double workJ;
        double highestMeanW;
    }

    /** Adds up the surges of a race, those of an over-hard start apart: they are a part of that finding. */
    private static Tally tally(Race race, double threshold) {
        int from = OverHardStart.isIn(race) ? race.opening().toSecond() : 0;
        Tally tally = new Tally();
        for (Interval surge : race.surges()) {
            if (surge.fromSecond() >= from) {
                add(tally, race.watts(), surge, threshold);
            }
        }
        return tally;
    }

    private static void add(Tally tally, Series watts, Interval surge, double threshold) {
        double workJ = 0;
        for (int second = surge.fromSecond(); second < surge.toSecond(); second++) {
            workJ += Math.max(0, (watts.isMeasured(second) ? watts.get(second) : 0) - threshold);
        }
        tally.surges.add(surge);
        tally.count++;
        tally.seconds += surge.seconds();
        tally.longest = Math.max(tally.longest, surge.seconds());
        tally.first = tally.first < 0 ? surge.fromSecond() : tally.first;
        tally.end = surge.toSecond();
        tally.workJ += workJ;
        tally.highestMeanW = Math.max(tally.highestMeanW, Jumps.meanW(watts, surge));
    }
}
