package io.github.wattledger.pacing;

import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Series;
import java.util.Optional;

/** Repeated short efforts far above threshold. */
final class Surges implements Detector {
    /** A lapse as short as this does not end a surge: pedalling is not that smooth. */
    private static final int LAPSE_SECONDS = 2;

    /**
     * The work above critical power that a trained rider has at once, where this rider's own is not known: 17 kJ, the
     * mean of Mitchell et al. 2018 (17.0 kJ), Vinetti et al. 2019 (17.0 kJ) and Spragg et al. 2022 (17.8 kJ), rounded.
     */
    private static final double USUAL_W_PRIME_J = 17_000;

    private static final double MINOR_SHARE_PER_HOUR = 0.10;
    private static final double MODERATE_SHARE_PER_HOUR = 0.25;
    private static final double MAJOR_SHARE_PER_HOUR = 0.50;
    private static final double SECONDS_PER_HOUR = 3600;

    @Override
    public Optional<Finding> detect(Race race) {
        double threshold = race.thresholdPowerW();
        if (!race.isLongEnough() || race.thresholdIsEstimated() || Double.isNaN(threshold)) {
            return Optional.empty();
        }
        Tally tally = tally(race, threshold);
        double perHourJ = tally.workJ / (race.movingSeconds() / SECONDS_PER_HOUR);
        boolean wPrimeIsOwn = !Double.isNaN(race.wPrimeJ());
        double wPrimeJ = wPrimeIsOwn ? race.wPrimeJ() : USUAL_W_PRIME_J;
        double share = perHourJ / wPrimeJ;
        if (share < MINOR_SHARE_PER_HOUR) {
            return Optional.empty();
        }
        Severity severity = share >= MAJOR_SHARE_PER_HOUR
                ? Severity.MAJOR
                : share >= MODERATE_SHARE_PER_HOUR ? Severity.MODERATE : Severity.MINOR;
        Evidence evidence = Evidence.none()
                .with("count", tally.count)
                .with("totalSeconds", tally.seconds)
                .with("workAboveThresholdKJ", tally.workJ / 1000)
                .with("workAboveThresholdKJPerHour", perHourJ / 1000)
                .with("wPrimeSharePerHour", share)
                .with(wPrimeIsOwn ? "wPrimeKJ" : "usualWPrimeKJ", wPrimeJ / 1000)
                .with("longestSeconds", tally.longest)
                .with("highestMeanW", tally.highestMeanW);
        return Optional.of(race.finding(
                FindingKind.SURGES,
                severity,
                new Interval(tally.first, tally.end),
                evidence,
                race.notPriced(),
                Caps.advise(
                        race,
                        "Keep short efforts below %s: ease over crests and out of corners instead of jumping.",
                        race.limit(JudgementLimit.SURGE_FRACTION) * threshold)));
    }

    private static final class Tally {
        int count;
        int seconds;
        int longest;
        int first = -1;
        int end;
        double workJ;
        double highestMeanW;
    }

    private static Tally tally(Race race, double threshold) {
        Series watts = race.watts();
        double surgeW = race.limit(JudgementLimit.SURGE_FRACTION) * threshold;
        int leastSeconds = race.limitSeconds(JudgementLimit.SURGE_SECONDS);
        Tally tally = new Tally();
        int from = -1;
        int lastAbove = -1;
        for (int second = 0; second <= watts.size(); second++) {
            boolean above = second < watts.size() && watts.get(second) > surgeW;
            if (above) {
                from = from < 0 ? second : from;
                lastAbove = second;
            } else if (from >= 0 && (second - lastAbove > LAPSE_SECONDS || second == watts.size())) {
                if (lastAbove + 1 - from >= leastSeconds) {
                    add(tally, watts, new Interval(from, lastAbove + 1), threshold);
                }
                from = -1;
            }
        }
        return tally;
    }

    private static void add(Tally tally, Series watts, Interval surge, double threshold) {
        double workJ = 0;
        double sumW = 0;
        for (int second = surge.fromSecond(); second < surge.toSecond(); second++) {
            double each = watts.isMeasured(second) ? watts.get(second) : 0;
            sumW += each;
            workJ += Math.max(0, each - threshold);
        }
        tally.count++;
        tally.seconds += surge.seconds();
        tally.longest = Math.max(tally.longest, surge.seconds());
        tally.first = tally.first < 0 ? surge.fromSecond() : tally.first;
        tally.end = surge.toSecond();
        tally.workJ += workJ;
        tally.highestMeanW = Math.max(tally.highestMeanW, sumW / surge.seconds());
    }
}
