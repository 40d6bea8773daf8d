package io.github.wattledger.pacing;

import io.github.wattledger.course.Course;
import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.pacing.price.Price;
import io.github.wattledger.pacing.price.PricePlan;
import io.github.wattledger.pacing.price.Pricing;
import io.github.wattledger.pacing.price.Repair;
import io.github.wattledger.power.Ability;
import io.github.wattledger.replay.Replay;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.rig.RigChoice;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * The findings of a ride with their prices, and the lines of the ledger.
 *
 * @param findings the findings, in the order in which they were given
 * @param entries the lines of the ledger
 * @param notes what to know when reading these lines, a sentence each
 */
record PricedFindings(List<Finding> findings, List<TimeLedger.Entry> entries, List<String> notes) {
    private static final double SECONDS_PER_MINUTE = 60;

    /** Nothing found and nothing priced. */
    static final PricedFindings NONE = new PricedFindings(List.of(), List.of(), List.of());

    /**
     * The findings of a race with their prices.
     *
     * @param course the course of the race, or null where it leads nowhere
     * @param rig what the rider rode on
     * @param ability what the race's target rests on
     */
    static PricedFindings of(
            Race race, @Nullable Course course, List<Detection> detections, RigChoice rig, Ability ability) {
        Outcome<Replay> outcome = Replay.of(race.ride(), course, rig.rig());
        if (outcome instanceof Outcome.Refused<Replay> refusal) {
            Price refused = new Price(new Cost.NotPriced(refusal.reason()), null);
            List<Finding> findings =
                    findings(race, detections, plan -> plan instanceof PricePlan.Known known ? known.price() : refused);
            return new PricedFindings(findings, entries(findings), List.of());
        }
        Replay replay = outcome.orElseThrow(AssertionError::new);
        Pricing pricing = new Pricing(race.ride(), race.offsetSeconds(), race.targetW(), replay, rig);
        List<Finding> findings = findings(race, detections, plan -> price(plan, pricing));
        List<TimeLedger.Entry> entries = entries(findings);
        List<String> notes = new ArrayList<>();
        if (entries.size() > 1) {
            entries.add(allAtOnce(detections, findings, pricing));
            notes.add("The parts need not add up to the line for all: repairing one changes what the others cost.");
        }
        pricing.againstAbility(ability).ifPresent(saved -> entries.add(againstAbility(saved, ability)));
        if (!entries.isEmpty()) {
            notes.add(rig.words());
        }
        return new PricedFindings(byWeight(findings), entries, notes);
    }

    private static List<Finding> byWeight(List<Finding> findings) {
        return findings.stream()
                .sorted(Comparator.comparing(Finding::severity)
                        .thenComparingDouble(PricedFindings::mostMinutes)
                        .reversed())
                .toList();
    }

    private static double mostMinutes(Finding finding) {
        return finding.cost() instanceof Cost.Priced price ? price.highMinutes() : 0;
    }

    private static Price price(PricePlan plan, Pricing pricing) {
        if (plan instanceof Repair repair) {
            return pricing.price(repair);
        }
        if (plan instanceof PricePlan.Known known) {
            return known.price();
        }
        if (plan instanceof PricePlan.None none) {
            return new Price(new Cost.NotPriced(none.reason()), null);
        }
        throw new AssertionError(plan);
    }

    private static List<Finding> findings(Race race, List<Detection> detections, Function<PricePlan, Price> prices) {
        List<Finding> findings = new ArrayList<>();
        for (Detection detection : detections) {
            findings.add(finding(race, detection, prices.apply(detection.found().price())));
        }
        return findings;
    }

    /** By what it cost; by how strong it was where the race could not be ridden again. */
    private static Severity severity(Race race, Detection detection, Cost cost) {
        Severity byMinutes = cost instanceof Cost.Priced price
                ? Severity.of(SECONDS_PER_MINUTE * price.highMinutes(), race.movingSeconds())
                : detection.found().price() instanceof PricePlan.None
                        ? Severity.OBSERVATION
                        : detection.found().severity();
        Severity least = detection.kind().detector().leastSeverity();
        return byMinutes.compareTo(least) < 0 ? least : byMinutes;
    }

    /** A finding with its place in the whole recording. */
    private static Finding finding(Race race, Detection detection, Price price) {
        Found found = detection.found();
        Interval when = found.when();
        return new Finding(
                detection.kind(),
                severity(race, detection, price.cost()),
                when.shifted(race.offsetSeconds()),
                JudgedPart.startM(race.ride(), when),
                JudgedPart.endM(race.ride(), when),
                found.evidence(),
                price.cost(),
                found.advice(),
                price.steps());
    }

    private static List<TimeLedger.Entry> entries(List<Finding> findings) {
        List<TimeLedger.Entry> entries = new ArrayList<>();
        for (Finding finding : findings) {
            if (finding.cost() instanceof Cost.Priced price && finding.severity() != Severity.OBSERVATION) {
                entries.add(new TimeLedger.Entry(finding.kindId(), price.lowMinutes(), price.highMinutes()));
            }
        }
        return entries;
    }

    /** Every priced mistake repaired at once, and the known prices beside them, which no other power changes. */
    private static TimeLedger.Entry allAtOnce(List<Detection> detections, List<Finding> findings, Pricing pricing) {
        double low = 0;
        double high = 0;
        // To repair the dearest mistake alone is one way of repairing, so that the whole is never less.
        double leastLow = 0;
        double leastHigh = 0;
        List<Repair> repairs = new ArrayList<>();
        List<Integer> dearestFirst = IntStream.range(0, findings.size())
                .boxed()
                .sorted(Comparator.comparingDouble((Integer i) -> -mostMinutes(findings.get(i))))
                .toList();
        for (int i : dearestFirst) {
            if (findings.get(i).cost() instanceof Cost.Priced price) {
                if (detections.get(i).found().price() instanceof Repair repair) {
                    repairs.add(repair);
                    leastLow = Math.max(leastLow, price.lowMinutes());
                    leastHigh = Math.max(leastHigh, price.highMinutes());
                } else {
                    low += price.lowMinutes();
                    high += price.highMinutes();
                }
            }
        }
        if (pricing.priceOfAll(repairs) instanceof Cost.Priced price) {
            leastLow = Math.max(leastLow, price.lowMinutes());
            leastHigh = Math.max(leastHigh, price.highMinutes());
        }
        low += leastLow;
        high += leastHigh;
        return new TimeLedger.Entry(TimeLedger.ALL_AT_ONCE, low, high);
    }

    private static TimeLedger.Entry againstAbility(Pricing.Minutes saved, Ability ability) {
        Ability.Source source = ability.source();
        String words = source == null || source.isGuide() ? "a guide" : "own bests";
        return new TimeLedger.Entry("against your ability (" + words + ")", saved.low(), saved.high());
    }
}
