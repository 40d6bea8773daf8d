package io.github.wattledger.pacing;

import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.pacing.price.LostTime;
import io.github.wattledger.pacing.price.PriceSteps;
import io.github.wattledger.pacing.price.Pricing;
import io.github.wattledger.pacing.price.Repair;
import io.github.wattledger.ride.Interval;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * All priced mistakes of a race together: what was ridden wrongly is repaired at once and ridden again, and what has a known
 * price, which no other power changes, is added.
 *
 * @param entry the line of the ledger
 * @param lost where that time was lost
 */
record AllAtOnce(TimeLedger.Entry entry, LostTime lost) {
    private static final double SECONDS_PER_MINUTE = 60;

    /**
     * The mistakes of a race together.
     *
     * @param findings what was detected, priced, in the order of the detections
     * @param pricing prices the race, or null where it cannot be ridden again
     * @return null where nothing was priced
     */
    static @Nullable AllAtOnce of(
            Race race, List<Detection> detections, List<Finding> findings, @Nullable Pricing pricing) {
        List<Integer> dearestFirst = IntStream.range(0, findings.size())
                .boxed()
                .filter(i -> findings.get(i).cost() instanceof Cost.Priced)
                .sorted(Comparator.comparingDouble((Integer i) -> -mostMinutes(findings.get(i))))
                .toList();
        List<Integer> counted = dearestFirst.stream()
                .filter(i -> findings.get(i).severity() != Severity.OBSERVATION)
                .toList();
        if (counted.isEmpty()) {
            return null;
        }
        return of(race, detections, findings, counted.size() == 1 ? counted : dearestFirst, pricing);
    }

    private static AllAtOnce of(
            Race race,
            List<Detection> detections,
            List<Finding> findings,
            List<Integer> dearestFirst,
            @Nullable Pricing pricing) {
        List<Repair> repairs = new ArrayList<>();
        List<Cost> alone = new ArrayList<>();
        List<Finding> known = new ArrayList<>();
        for (int i : dearestFirst) {
            if (detections.get(i).found().price() instanceof Repair repair) {
                repairs.add(repair);
                alone.add(findings.get(i).cost());
            } else {
                known.add(findings.get(i));
            }
        }
        Interval judged = new Interval(0, race.ride().seconds()).shifted(race.offsetSeconds());
        LostTime lost = LostTime.none(judged);
        double low = 0;
        double high = 0;
        if (pricing != null && !repairs.isEmpty()) {
            Pricing.Together together = pricing.priceOfAll(repairs, alone);
            if (together.cost() instanceof Cost.Priced price && together.lost() != null) {
                low = price.lowMinutes();
                high = price.highMinutes();
                lost = together.lost();
            }
        }
        for (Finding finding : known) {
            if (finding.cost() instanceof Cost.Priced price) {
                low += price.lowMinutes();
                high += price.highMinutes();
                lost = withStops(lost, finding, price);
            }
        }
        return new AllAtOnce(new TimeLedger.Entry(TimeLedger.ALL_AT_ONCE, low, high), lost);
    }

    /** The high end of what a finding cost, minutes; 0 where it has no price. */
    static double mostMinutes(Finding finding) {
        return finding.cost() instanceof Cost.Priced price ? price.highMinutes() : 0;
    }

    /** Each stop costs what it took, and an equal part of what slowing down and getting going again cost. */
    private static LostTime withStops(LostTime before, Finding finding, Cost.Priced price) {
        List<Interval> stops = finding.priceSteps() instanceof PriceSteps.Stops steps
                        && !steps.stops().isEmpty()
                ? steps.stops()
                : List.of(finding.when());
        double allSeconds = stops.stream().mapToInt(Interval::seconds).sum();
        double beyondLow = (price.highMinutes() - price.lowMinutes()) * SECONDS_PER_MINUTE / stops.size();
        LostTime lost = before;
        for (Interval stop : stops) {
            double seconds = price.lowMinutes() * SECONDS_PER_MINUTE * stop.seconds() / allSeconds;
            lost = lost.withStop(stop, seconds, seconds + beyondLow);
        }
        return lost;
    }
}
