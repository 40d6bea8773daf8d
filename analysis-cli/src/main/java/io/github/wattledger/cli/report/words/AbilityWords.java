package io.github.wattledger.cli.report.words;

import io.github.wattledger.RideReview;
import io.github.wattledger.pacing.Verdict;
import io.github.wattledger.power.Ability;
import io.github.wattledger.power.AbilityEvidence;
import io.github.wattledger.power.BestEffort;
import io.github.wattledger.power.CriticalPowerFit;
import io.github.wattledger.power.Durability;
import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.power.ThresholdEstimate;
import io.github.wattledger.power.ThresholdHeartRate;
import io.github.wattledger.ride.Outcome;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What the rider could be expected to hold, and what the ride shows of it. */
public final class AbilityWords {
    private final RideReview review;
    private final Ability ability;
    private final @Nullable AbilityEvidence evidence;
    private final List<String> lines = new ArrayList<>();

    private AbilityWords(RideReview review) {
        this.review = review;
        this.ability = review.ability();
        this.evidence = review.ability().evidence();
    }

    /** A sentence or two for each thing that is known, or why it is not. */
    public static List<String> of(RideReview review) {
        AbilityWords words = new AbilityWords(review);
        words.sustainable();
        words.criticalPower();
        AbilityEvidence evidence = words.evidence;
        if (evidence != null) {
            words.spending(evidence.spending());
            if (review.pacing().verdict() != Verdict.NOT_JUDGED) {
                words.durability(evidence.durability());
            }
            words.threshold(evidence.thresholdEstimate(), evidence.thresholdHeartRate());
        }
        return words.lines;
    }

    private void sustainable() {
        Double watts = ability.sustainablePowerW();
        if (watts == null) {
            lines.add("No guide for this length: "
                    + (review.rider().thresholdPowerW() == null || review.isThresholdDoubtful()
                            ? "threshold power is not known."
                            : "a guide begins at " + Figures.span(SustainablePower.SHORTEST_GUIDE_SECONDS)
                                    + " of riding."));
            return;
        }
        SustainablePower sustainable = evidence == null ? null : evidence.sustainable();
        String range = sustainable == null
                ? ""
                : " (" + Figures.decimal(sustainable.lowW(), 0) + " to " + Figures.watts(sustainable.highW()) + ")";
        Ability.Source source = ability.source();
        if (sustainable != null && sustainable.source() == SustainablePower.Source.OWN_RIDES) {
            lines.addAll(OwnRidesWords.judgedBy(review.rider(), sustainable, ability.forSeconds()));
        } else if (source != null && !source.isGuide()) {
            lines.add("For " + Figures.span(ability.forSeconds()) + ": about " + Figures.watts(watts) + range
                    + ", from your own long bests in other rides.");
        } else {
            lines.add("Guide for " + Figures.span(ability.forSeconds()) + ": about " + Figures.watts(watts) + range
                    + ", from threshold power alone. It is a guide that knows nothing of your endurance, not a fact.");
            lines.addAll(OwnRidesWords.whyNot(review.rider()));
        }
    }

    private void criticalPower() {
        Double criticalPower = ability.criticalPowerW();
        Double wPrime = ability.wPrimeKJ();
        if (criticalPower == null) {
            lines.add("Critical power and W': not known" + refusal() + ".");
            return;
        }
        Double error = ability.fitErrorW();
        lines.add("Critical power " + Figures.watts(criticalPower)
                + (error == null ? "" : " (standard error " + Figures.brief(error) + " W)")
                + (wPrime == null ? "; W' not known" : ", W' " + Figures.decimal(wPrime, 1) + " kJ") + basis() + ".");
        if (wPrime != null) {
            lines.add("Critical power is what you can hold for about half an hour to an hour; W' is the work above it"
                    + " that you have at once, spent in every surge and won back below it.");
        }
    }

    private String refusal() {
        return evidence != null && evidence.criticalPower() instanceof Outcome.Refused<CriticalPowerFit> refusal
                ? ": " + PlainText.of(refusal.reason())
                : "";
    }

    private String basis() {
        if (ability.source() != null && ability.source().isGiven()) {
            return review.rider().rider().criticalPowerW() == null ? ", from your named trials" : ", as given";
        }
        if (evidence == null || !(evidence.criticalPower() instanceof Outcome.Of<CriticalPowerFit> fit)) {
            return "";
        }
        List<BestEffort> efforts = fit.value().efforts();
        return ", from the best " + Figures.brief(efforts.get(0).seconds() / 60) + " to "
                + Figures.minutes(efforts.get(efforts.size() - 1).seconds() / 60)
                + " of this ride; right only if those were all-out, otherwise too low";
    }

    private void spending(AbilityEvidence.@Nullable Spending spending) {
        if (spending == null) {
            return;
        }
        lines.add("W' balance: lowest " + Figures.decimal(spending.lowestKJ(), 1) + " kJ at "
                + Figures.clock(spending.lowestSecond() + 1.0) + "; below a quarter for "
                + Figures.span(spending.secondsBelowQuarter()) + "."
                + (spending.warning() == null
                        ? ""
                        : " A balance below 0 means that critical power or W' is set too low."));
    }

    private void durability(List<Durability> all) {
        if (all.isEmpty()) {
            return;
        }
        Map<Double, List<String>> byLevel = new LinkedHashMap<>();
        for (Durability each : all) {
            byLevel.computeIfAbsent(each.afterKJ(), level -> new ArrayList<>())
                    .add("best " + each.seconds() / 60 + " min " + Figures.watts(each.tiredW()) + " ("
                            + Figures.watts(each.fresherW()) + " before, " + Figures.signed(each.changePercent(), 0)
                            + " %)");
        }
        byLevel.forEach((level, bests) ->
                lines.add("After " + Figures.decimal(level, 0) + " kJ: " + String.join(", ", bests) + "."));
        lines.add(
                "That shows tiredness only where both efforts were all-out. For comparison: trained amateurs lost about"
                        + " 10 % of 5- and 20-minute power after 1000 hard kJ (Barsumyan 2025), professionals 2 to 3 %.");
    }

    private void threshold(@Nullable ThresholdEstimate estimate, @Nullable ThresholdHeartRate heartRate) {
        if (estimate != null) {
            lines.add("Threshold power estimated from this ride: " + Figures.watts(estimate.watts()) + " ("
                    + Figures.decimal(estimate.lowW(), 0) + " to " + Figures.watts(estimate.highW())
                    + " if the efforts were all-out, more if not), "
                    + switch (estimate.basis()) {
                        case TWENTY_MINUTES -> "95 % of the best 20 minutes.";
                        case CRITICAL_POWER -> "its critical power.";
                    });
        }
        if (heartRate != null) {
            lines.add("Heart rate in a steady " + heartRate.seconds() / 60 + " min near threshold ("
                    + Figures.watts(heartRate.meanPowerW()) + "): " + Figures.beats(heartRate.heartRateBpm()) + ".");
        }
    }
}
