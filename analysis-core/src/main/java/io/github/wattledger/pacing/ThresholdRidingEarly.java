package io.github.wattledger.pacing;

import io.github.wattledger.pacing.price.Repair;
import io.github.wattledger.pacing.price.StretchChange;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Series;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A long stretch near threshold early in an event that is too long for it. */
final class ThresholdRidingEarly implements Detector {
    private static final double EARLY_SHARE = 1 / 3.0;

    /** Where the target is higher than this share of threshold, riding near threshold is part of the event. */
    private static final double LONG_EVENT_FRACTION = 0.85;

    private static final int MODERATE_SECONDS = 15 * 60;
    private static final int MAJOR_SECONDS = 30 * 60;

    /** A ceiling for climbs and surges early on that leaves the target reachable. */
    private static final double CAP_FRACTION = 0.90;

    @Override
    public Optional<Found> detect(Race race) {
        double threshold = race.thresholdPowerW();
        if (!race.isLongEnough()
                || race.thresholdIsEstimated()
                || !(race.targetW() < LONG_EVENT_FRACTION * threshold)) {
            return Optional.empty();
        }
        List<Interval> stretches = stretches(race, race.betweenShares(0, EARLY_SHARE), threshold);
        if (stretches.isEmpty()) {
            return Optional.empty();
        }
        Interval longest = stretches.get(0);
        int total = 0;
        for (Interval stretch : stretches) {
            total += stretch.seconds();
            longest = stretch.seconds() > longest.seconds() ? stretch : longest;
        }
        double meanW = Jumps.meanW(race.watts(), longest);
        Evidence evidence = Evidence.none()
                .with("longestSeconds", longest.seconds())
                .with("meanPowerW", meanW)
                .with("thresholdFraction", meanW / threshold)
                .with("totalSeconds", total)
                .with("stretchCount", stretches.size());
        Severity severity = total >= MAJOR_SECONDS
                ? Severity.MAJOR
                : total >= MODERATE_SECONDS ? Severity.MODERATE : Severity.MINOR;
        Interval span = new Interval(
                stretches.get(0).fromSecond(),
                stretches.get(stretches.size() - 1).toSecond());
        return Optional.of(new Found(
                severity,
                span,
                evidence,
                Caps.advise(
                        race,
                        "In the first third keep the average of each effort of several minutes below %s, climbs included.",
                        CAP_FRACTION * threshold),
                repair(race, stretches)));
    }

    /** Brings each stretch to the effort of the middle of the race, and never above what was ridden. */
    private static Repair repair(Race race, List<Interval> stretches) {
        Interval middle = race.middle();
        ComparableGround ground = race.ground();
        List<Repair.Stretch> changes = new ArrayList<>();
        for (Interval stretch : stretches) {
            List<Interval> others = new ArrayList<>(stretches);
            others.remove(stretch);
            Interval rest = new Interval(Math.max(middle.fromSecond(), stretch.toSecond()), middle.toSecond());
            double overMiddle = Math.max(1, ground.without(others).ratio(stretch, rest));
            double meanW = ground.meanW(stretch);
            if (overMiddle > 1) {
                changes.add(new Repair.Stretch(stretch, StretchChange.TO_MIDDLE_POWER, meanW, meanW / overMiddle));
            } else {
                double normalizedW = race.normalizedPowerW(stretch);
                changes.add(new Repair.Stretch(
                        stretch, StretchChange.TO_MIDDLE_POWER, normalizedW, Math.min(normalizedW, race.targetW())));
            }
        }
        return new Repair(Repair.Turn.FACTORS, changes, stretches.get(0).fromSecond());
    }

    /** The stretches near threshold in the first third of the race; none where the threshold is not known. */
    static List<Interval> stretches(Race race) {
        double threshold = race.thresholdPowerW();
        return Double.isNaN(threshold) ? List.of() : stretches(race, race.betweenShares(0, EARLY_SHARE), threshold);
    }

    /** A start that was too hard holds the threshold riding that lies mostly within it. */
    @Override
    public boolean givesWayTo(Detector other, Found own, Found others) {
        return other instanceof OverHardStart
                && 2 * own.when().overlapSeconds(others.when()) > own.when().seconds();
    }

    /** Unions of all windows of the least length whose mean is near threshold or above. */
    private static List<Interval> stretches(Race race, Interval early, double threshold) {
        Series watts = race.watts();
        int leastSeconds = race.limitSeconds(JudgementLimit.NEAR_THRESHOLD_SECONDS);
        double leastJ = race.limit(JudgementLimit.NEAR_THRESHOLD_FRACTION) * threshold * leastSeconds;
        List<Interval> found = new ArrayList<>();
        double sum = 0;
        int from = -1;
        int to = -1;
        for (int second = early.fromSecond(); second < early.toSecond(); second++) {
            sum += orZero(watts.get(second));
            int start = second - leastSeconds + 1;
            if (start < early.fromSecond()) {
                continue;
            }
            if (sum >= leastJ) {
                if (from >= 0 && start > to) {
                    found.add(new Interval(from, to));
                    from = -1;
                }
                from = from < 0 ? start : from;
                to = second + 1;
            }
            sum -= orZero(watts.get(start));
        }
        if (from >= 0) {
            found.add(new Interval(from, to));
        }
        return found;
    }

    private static double orZero(double value) {
        return Double.isNaN(value) ? 0 : value;
    }
}
