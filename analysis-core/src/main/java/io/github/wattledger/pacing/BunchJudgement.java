package io.github.wattledger.pacing;

import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.pacing.price.PricePlan;
import io.github.wattledger.pacing.price.Pricing;
import io.github.wattledger.pacing.price.Repair;
import io.github.wattledger.replay.Replay;
import io.github.wattledger.replay.Shelter;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.rig.RigChoice;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Judges the decisions to hold a bunch that the rider names, and puts the findings there right. */
final class BunchJudgement {
    /** What published measurements say that a close group on a road saves of the drag; see docs/methods.md. */
    private static final double ROAD_SAVING_LOW = 0.25;

    /** On gravel nobody has measured it; speeds are lower and groups looser. Own choice. */
    private static final double UNPAVED_SAVING_LOW = 0.05;

    private static final double SAVING_HIGH = 0.50;

    private static final double SECONDS_PER_MINUTE = 60;

    private static final String PAID =
            "it bought the shelter of the bunch, and letting the bunch go would have been slower";
    private static final String ALONE = "the bunch let go, and ridden alone";
    private static final String WITH_NEXT_GROUP = "the bunch let go, and ridden with the next group as far as you say";
    private static final String OPEN = "whether letting the bunch go would have been faster is open";

    private final Race race;
    private final Company told;
    private final List<Interval> bunches;
    private final boolean isUnpaved;
    private final double savingLow;

    /** @param told what the rider says, in seconds of the whole recording */
    BunchJudgement(Race race, Company told, RigChoice rig) {
        this.race = race;
        this.told = told;
        this.bunches = told.bunches().stream()
                .flatMap(bunch -> inRace(race, bunch).stream())
                .toList();
        this.isUnpaved = rig.isUnpaved();
        this.savingLow = isUnpaved ? UNPAVED_SAVING_LOW : ROAD_SAVING_LOW;
    }

    private static Optional<Interval> inRace(Race race, Interval bunch) {
        return new Interval(0, race.ride().seconds())
                .shifted(race.offsetSeconds())
                .common(bunch)
                .map(within -> within.shifted(-race.offsetSeconds()));
    }

    /** The shelter in which mistakes are repaired: the bunches, at the middle of what they may have saved; null without. */
    @Nullable Shelter kept(Replay replay) {
        double saving = middleSaving();
        Shelter kept = null;
        for (Interval bunch : bunches) {
            kept = replay.sheltered(kept == null ? replay.noShelter() : kept, bunch, saving, 1 - saving);
        }
        return kept;
    }

    private double middleSaving() {
        return (savingLow + SAVING_HIGH) / 2;
    }

    /** The review where the race cannot be ridden again. */
    BunchReview unpriced() {
        return review(List.of());
    }

    /** The decisions of a race with these findings. */
    BunchReview judged(List<Finding> findings, Pricing pricing) {
        List<BunchReview.Decision> decisions = bunches.stream()
                .flatMap(bunch -> BunchDecisions.first(findings, each -> decision(each, bunch, pricing)).stream())
                .toList();
        return review(decisions);
    }

    private BunchReview review(List<BunchReview.Decision> decisions) {
        int inBunch = (int) race.surges().stream()
                .filter(surge -> bunches.stream().anyMatch(bunch -> bunch.contains(surge.fromSecond())))
                .count();
        boolean hasThreshold = !Double.isNaN(race.thresholdPowerW());
        return new BunchReview(
                told,
                savingLow,
                SAVING_HIGH,
                isUnpaved,
                decisions,
                hasThreshold ? inBunch : null,
                hasThreshold ? race.surges().size() - inBunch : null);
    }

    private Optional<BunchReview.Decision> decision(Finding finding, Interval bunch, Pricing pricing) {
        return BunchDecisions.about(finding, race, bunch, told.nextGroupShare(), savingLow, SAVING_HIGH, pricing);
    }

    /** The repairs of those findings where letting the bunch go was faster, and the shelter that they give up. */
    Map<Repair, Pricing.LostShelter> lost(List<Detection> detections, List<Finding> findings, BunchReview review) {
        Map<Repair, Pricing.LostShelter> lost = new HashMap<>();
        for (int i = 0; i < findings.size(); i++) {
            List<BunchReview.Decision> about = about(findings.get(i), review);
            if (outcome(about) == BunchReview.Outcome.LETTING_GO_WAS_FASTER
                    && detections.get(i).found().price() instanceof Repair repair) {
                Interval sheltered = about.get(0).lettingGo().sheltered().shifted(-race.offsetSeconds());
                double saving = middleSaving();
                lost.put(repair, new Pricing.LostShelter(sheltered, saving, 1 - told.nextGroupShare() * saving));
            }
        }
        return lost;
    }

    /**
     * The detections. A bunch of which it is not known that holding it cost something says nothing about the rest of a
     * finding, so such a finding is repaired outside its bunches alone, as far as that is long enough to be a decision.
     */
    List<Detection> outside(List<Detection> detections, List<Finding> findings, BunchReview review) {
        List<Detection> outside = new ArrayList<>();
        for (int i = 0; i < detections.size(); i++) {
            outside.add(outside(detections.get(i), about(findings.get(i), review)));
        }
        return outside;
    }

    private Detection outside(Detection detection, List<BunchReview.Decision> about) {
        if (outcome(about) == null
                || outcome(about) == BunchReview.Outcome.LETTING_GO_WAS_FASTER
                || !(detection.found().price() instanceof Repair repair)) {
            return detection;
        }
        Repair outside = repair.keeping(about.stream()
                .map(each -> each.lettingGo().hard().shifted(-race.offsetSeconds()))
                .sorted(Comparator.comparingInt(Interval::fromSecond))
                .toList());
        return outside.changedSeconds() < BunchDecisions.SHORTEST_HARD_SECONDS
                ? detection
                : detection.repairedBy(outside);
    }

    /**
     * The findings, those put right that a decision speaks about.
     *
     * @param repaired how each of them was repaired, see {@link #outside}
     */
    List<Finding> corrected(List<Finding> findings, List<Detection> repaired, BunchReview review) {
        List<Finding> corrected = new ArrayList<>();
        for (int i = 0; i < findings.size(); i++) {
            Finding finding = findings.get(i);
            BunchReview.Outcome outcome = outcome(about(finding, review));
            corrected.add(
                    outcome == null
                            ? finding
                            : corrected(
                                    finding,
                                    outcome,
                                    outside(repaired.get(i).found().price())));
        }
        return corrected;
    }

    /** What is priced of a finding of which a part lay in a bunch, in words; null where the whole of it was looked at. */
    private static @Nullable String outside(PricePlan plan) {
        return plan instanceof Repair repair && repair.changedSeconds() < repair.seconds()
                ? "the " + Math.round(repair.changedSeconds() / SECONDS_PER_MINUTE) + " of "
                        + Math.round(repair.seconds() / SECONDS_PER_MINUTE)
                        + " min outside the bunch ridden again without it"
                : null;
    }

    /** The decisions about a finding, the longest first. */
    private static List<BunchReview.Decision> about(Finding finding, BunchReview review) {
        return review.decisions().stream()
                .filter(each -> each.kind() == finding.kind())
                .sorted(Comparator.comparingInt(each -> -each.lettingGo().hard().seconds()))
                .toList();
    }

    /** What came of several decisions together; null without any. */
    private static BunchReview.@Nullable Outcome outcome(List<BunchReview.Decision> decisions) {
        List<BunchReview.Outcome> outcomes =
                decisions.stream().map(BunchReview.Decision::outcome).distinct().toList();
        if (outcomes.isEmpty()) {
            return null;
        }
        return outcomes.size() == 1 ? outcomes.get(0) : BunchReview.Outcome.OPEN;
    }

    /** Only where letting go was faster in any case did holding the bunch cost something. */
    private Finding corrected(Finding finding, BunchReview.Outcome outcome, @Nullable String outside) {
        Cost cost = switch (outcome) {
            case STAYING_PAID -> outside == null ? new Cost.NotPriced(PAID) : priced(finding.cost(), outside);
            case OPEN -> outside == null ? new Cost.NotPriced(OPEN) : priced(finding.cost(), outside);
            case LETTING_GO_WAS_FASTER -> priced(finding.cost(), told.nextGroupShare() > 0 ? WITH_NEXT_GROUP : ALONE);
        };
        return new Finding(
                finding.kind(),
                outcome == BunchReview.Outcome.LETTING_GO_WAS_FASTER || outside != null
                        ? finding.severity()
                        : Severity.OBSERVATION,
                finding.when(),
                finding.startM(),
                finding.endM(),
                finding.evidence(),
                cost,
                advice(finding.advice(), outcome, outside != null),
                finding.priceSteps());
    }

    private static Cost priced(Cost cost, String how) {
        return cost instanceof Cost.Priced price ? new Cost.Priced(price.lowMinutes(), price.highMinutes(), how) : cost;
    }

    private static Advice advice(Advice alone, BunchReview.Outcome outcome, boolean hasOutside) {
        String cap = alone.capW() == null ? "" : Caps.words(alone.capW(), alone.capBpm());
        String outside = hasOutside && !cap.isEmpty() ? "Outside the bunch, hold this stretch to " + cap + ". " : "";
        return switch (outcome) {
            case STAYING_PAID ->
                new Advice(
                        outside
                                + "Staying with such a bunch is worth its pace while you can hold it; sit in, and take no"
                                + " turn that you need not take.",
                        outside.isEmpty() ? null : alone.capW(),
                        outside.isEmpty() ? null : alone.capBpm());
            case OPEN ->
                new Advice(
                        outside + "Whether to let such a bunch go is open. If its pace costs you later, let it go"
                                + (outside.isEmpty() && !cap.isEmpty() ? " and hold this stretch to " + cap : "") + ".",
                        alone.capW(),
                        alone.capBpm());
            case LETTING_GO_WAS_FASTER -> alone;
        };
    }
}
