package io.github.wattledger.pacing;

import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.pacing.price.Pricing;
import io.github.wattledger.pacing.price.Repair;
import io.github.wattledger.replay.Replay;
import io.github.wattledger.replay.Shelter;
import io.github.wattledger.ride.Decimals;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.rig.RigChoice;
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

    /** A bunch says something about a finding from this share of its seconds on. Own choice. */
    private static final double LEAST_OF_FINDING = 0.5;

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

    /** The findings, those put right that a decision speaks about. */
    List<Finding> corrected(List<Finding> findings, BunchReview review) {
        return findings.stream().map(finding -> corrected(finding, review)).toList();
    }

    private Finding corrected(Finding finding, BunchReview review) {
        BunchReview.Outcome outcome = outcome(about(finding, review));
        return outcome == null ? finding : corrected(finding, outcome);
    }

    /** The decisions about a finding, the longest first; none where most of it was ridden outside a bunch. */
    private static List<BunchReview.Decision> about(Finding finding, BunchReview review) {
        List<BunchReview.Decision> about = review.decisions().stream()
                .filter(each -> each.kind() == finding.kind())
                .sorted(Comparator.comparingInt(each -> -each.lettingGo().hard().seconds()))
                .toList();
        int seconds = about.stream()
                .mapToInt(each -> each.lettingGo().hard().seconds())
                .sum();
        return seconds >= LEAST_OF_FINDING * finding.when().seconds() ? about : List.of();
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
    private Finding corrected(Finding finding, BunchReview.Outcome outcome) {
        Cost cost = switch (outcome) {
            case STAYING_PAID -> new Cost.NotPriced(PAID);
            case OPEN -> new Cost.NotPriced(OPEN);
            case LETTING_GO_WAS_FASTER -> letGo(finding.cost());
        };
        return new Finding(
                finding.kind(),
                outcome == BunchReview.Outcome.LETTING_GO_WAS_FASTER ? finding.severity() : Severity.OBSERVATION,
                finding.when(),
                finding.startM(),
                finding.endM(),
                finding.evidence(),
                cost,
                advice(finding.advice(), outcome),
                finding.priceSteps());
    }

    private Cost letGo(Cost cost) {
        return cost instanceof Cost.Priced price
                ? new Cost.Priced(
                        price.lowMinutes(), price.highMinutes(), told.nextGroupShare() > 0 ? WITH_NEXT_GROUP : ALONE)
                : cost;
    }

    private static Advice advice(Advice alone, BunchReview.Outcome outcome) {
        return switch (outcome) {
            case STAYING_PAID ->
                new Advice(
                        "Staying with such a bunch is worth its pace while you can hold it; sit in, and take no turn that"
                                + " you need not take.",
                        null,
                        null);
            case OPEN ->
                new Advice(
                        "Whether to let such a bunch go is open. If its pace costs you later, let it go"
                                + (alone.capW() == null
                                        ? "."
                                        : " and hold this stretch to " + Decimals.of(alone.capW(), 0) + " W"
                                                + (alone.capBpm() == null
                                                        ? "."
                                                        : " or " + Decimals.of(alone.capBpm(), 0) + " bpm.")),
                        alone.capW(),
                        alone.capBpm());
            case LETTING_GO_WAS_FASTER -> alone;
        };
    }
}
