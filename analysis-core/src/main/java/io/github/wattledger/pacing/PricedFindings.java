package io.github.wattledger.pacing;

import io.github.wattledger.bunch.BunchProposal;
import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.course.Course;
import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.pacing.price.LostTime;
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
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * The findings of a ride with their prices, and the lines of the ledger.
 *
 * @param findings the findings, in the order in which they were given
 * @param entries the lines of the ledger
 * @param notes what to know when reading these lines, a sentence each
 * @param lost where the time was lost that {@link TimeLedger#allAtOnce} counts, or null where nothing was priced
 * @param bunch the bunches that the rider names, or null where nothing is said of them
 * @param proposed what the ride itself proposes then, or null
 */
record PricedFindings(
        List<Finding> findings,
        List<TimeLedger.Entry> entries,
        List<String> notes,
        @Nullable LostTime lost,
        @Nullable BunchReview bunch,
        @Nullable ProposedBunch proposed) {
    private static final double SECONDS_PER_MINUTE = 60;

    /** Nothing found and nothing priced. */
    static final PricedFindings NONE = new PricedFindings(List.of(), List.of(), List.of(), null, null, null);

    /**
     * The findings of a race with their prices.
     *
     * @param course the course of the race, or null where it leads nowhere
     * @param rig what the rider rode on
     * @param ability what the race's target rests on
     * @param company what the rider says of it
     * @param proposal what the ride itself proposes where the rider says nothing, or null
     * @param cancellation when to end early
     */
    static PricedFindings of(
            Race race,
            @Nullable Course course,
            List<Detection> detections,
            RigChoice rig,
            Ability ability,
            Company company,
            @Nullable BunchProposal proposal,
            Cancellation cancellation) {
        BunchJudgement bunches = company.isSaid() ? new BunchJudgement(race, company, rig) : null;
        Outcome<Replay> outcome = Replay.of(race.ride(), course, rig.rig());
        if (outcome instanceof Outcome.Refused<Replay> refusal) {
            Price refused = new Price(new Cost.NotPriced(refusal.reason()), null);
            List<Finding> findings =
                    findings(race, detections, plan -> plan instanceof PricePlan.Known known ? known.price() : refused);
            AllAtOnce whole = AllAtOnce.of(race, detections, findings, null);
            return new PricedFindings(
                    findings,
                    entries(findings),
                    List.of(),
                    whole == null ? null : whole.lost(),
                    bunches == null ? null : bunches.unpriced(),
                    proposal == null ? null : ProposedBunch.of(proposal, race, findings, null));
        }
        Replay replay = outcome.orElseThrow(AssertionError::new);
        Pricing pricing = new Pricing(
                race.ride(),
                race.offsetSeconds(),
                race.targetW(),
                replay,
                rig,
                cancellation,
                bunches == null ? null : bunches.kept(replay));
        List<Finding> findings = findings(race, detections, plan -> price(plan, pricing));
        BunchReview bunch = null;
        Pricing decided = pricing;
        List<Detection> repaired = detections;
        if (bunches != null) {
            bunch = bunches.judged(findings, pricing);
            repaired = bunches.outside(detections, findings, bunch);
            Map<Repair, Pricing.LostShelter> lost = bunches.lost(detections, findings, bunch);
            if (!lost.isEmpty() || !repaired.equals(detections)) {
                Pricing letGo = pricing.whereLost(lost);
                findings = findings(race, repaired, plan -> price(plan, letGo));
                decided = letGo;
            }
            findings = bunches.corrected(findings, repaired, bunch);
        }
        List<TimeLedger.Entry> entries = entries(findings);
        List<String> notes = new ArrayList<>();
        AllAtOnce whole = entries.isEmpty() ? null : AllAtOnce.of(race, repaired, findings, decided);
        if (whole != null && entries.size() > 1) {
            entries.add(whole.entry());
            notes.add("The parts need not add up to the line for all: repairing one changes what the others cost.");
        }
        pricing.againstAbility(ability).ifPresent(saved -> entries.add(againstAbility(saved, ability)));
        if (!entries.isEmpty()) {
            notes.add(rig.words());
        }
        ProposedBunch proposed = proposal == null ? null : ProposedBunch.of(proposal, race, findings, pricing);
        return new PricedFindings(
                byWeight(findings), entries, notes, whole == null ? null : whole.lost(), bunch, proposed);
    }

    /** The findings that a verdict may rest on: the rider's own choice for most of their seconds. */
    List<Finding> ownFindings() {
        return bunch == null
                ? findings
                : findings.stream()
                        .filter(finding -> !bunch.excusesMostOf(finding))
                        .toList();
    }

    private static List<Finding> byWeight(List<Finding> findings) {
        return findings.stream()
                .sorted(Comparator.comparing(Finding::severity)
                        .thenComparingDouble(AllAtOnce::mostMinutes)
                        .reversed())
                .toList();
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

    private static TimeLedger.Entry againstAbility(Pricing.Minutes saved, Ability ability) {
        Ability.Source source = ability.source();
        String words = source == null || source.isGuide() ? "a guide" : "own bests";
        return new TimeLedger.Entry("against your ability (" + words + ")", saved.low(), saved.high());
    }
}
