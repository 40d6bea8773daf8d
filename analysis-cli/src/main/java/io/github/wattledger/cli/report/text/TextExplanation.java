package io.github.wattledger.cli.report.text;

import io.github.wattledger.RideReview;
import io.github.wattledger.cli.report.Report;
import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.FindingExplanations;
import io.github.wattledger.cli.report.words.FindingWords;
import io.github.wattledger.cli.report.words.LibraryWords;
import io.github.wattledger.cli.report.words.PlainText;
import io.github.wattledger.cli.report.words.RideWords;
import io.github.wattledger.cli.report.words.RiderWords;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.pacing.Evidence;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.JudgementLimits;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.pacing.price.PriceSteps;
import io.github.wattledger.pacing.price.StretchChange;
import io.github.wattledger.power.Ability;
import io.github.wattledger.power.AbilityEvidence;
import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.ride.Interval;
import java.io.IOException;
import org.jspecify.annotations.Nullable;

/**
 * One finding from the seconds of the ride to its minutes, for people who want to follow every number: at most 80 columns.
 * The computation kept every number that is shown; nothing is computed here.
 */
public final class TextExplanation implements Report {
    private static final int NAME = 32;

    private final FindingKind kind;
    private final JudgementLimits limits;
    private final Units units;

    /**
     * An explanation.
     *
     * @param kind the finding to explain
     * @param limits the limits by which the ride was judged
     * @param units in which masses are shown
     */
    public TextExplanation(FindingKind kind, JudgementLimits limits, Units units) {
        this.kind = kind;
        this.limits = limits;
        this.units = units;
    }

    @Override
    public void write(RideReview review, Appendable out) throws IOException {
        Page page = new Page();
        String ride = RideWords.name(review.source(), "this ride");
        Finding finding = review.pacing().finding(kind).orElse(null);
        if (finding == null) {
            String reason = review.pacing().verdictReason();
            page.paragraph("No finding " + kind.id() + " in " + ride + "."
                    + (reason == null ? "" : " The pacing was not judged: " + PlainText.sentence(reason)));
        } else {
            page.paragraph(FindingWords.title(kind) + " in " + ride + ", step by step");
            samples(page, review);
            target(page, review);
            evidence(page, finding);
            if (finding.priceSteps() instanceof PriceSteps.Replayed steps) {
                repaired(page, steps);
                riddenAgain(page, steps);
            } else if (finding.priceSteps() instanceof PriceSteps.Stops steps) {
                stops(page, steps);
            }
            price(page, finding);
            TextBunch.explain(page, review.pacing(), kind);
        }
        out.append(page.toString());
    }

    private static void samples(Page page, RideReview review) {
        PacingReview pacing = review.pacing();
        page.heading("1. FROM SAMPLES TO SECONDS");
        page.line("Seconds of the recording: " + review.ride().seconds() + " from first to last sample, "
                + review.quality().recordedSeconds() + " recorded, "
                + review.quality().missingPowerSeconds() + " without power, "
                + review.quality().repairedSamples() + " samples repaired.");
        switch (review.quality().powerSource()) {
            case WORK_COUNTER -> page.line("Power of a second: the increase of the power meter's work counter.");
            case SAMPLES -> page.line("Power of a second: the recorded sample.");
            case NONE -> page.line("Power: none in this file.");
        }
        page.line("Reviewed: " + review.reviewed() + ". Judged: " + pacing.judged() + ", "
                + review.ability().forSeconds() + " moving seconds.");
    }

    private static void target(Page page, RideReview review) {
        page.heading("2. THRESHOLD AND TARGET");
        page.line(RiderWords.thresholdPower(review));
        Ability ability = review.ability();
        criticalPower(page, ability);
        Double target = ability.sustainablePowerW();
        if (target == null) {
            page.line("Target: none, since no threshold power can be trusted.");
            return;
        }
        AbilityEvidence evidence = ability.evidence();
        SustainablePower sustainable = evidence == null ? null : evidence.sustainable();
        Ability.Source source = ability.source();
        boolean isGuide = source == null || source.isGuide();
        page.line("Target: " + fine(target) + " W, the power to hold for the judged " + ability.forSeconds()
                + " moving seconds, "
                + (isGuide
                        ? "by the guide: from an hour on threshold power times hours to the power of -0.16"
                        : "by own bests in other rides")
                + (sustainable == null
                        ? "."
                        : "; its range is " + fine(sustainable.lowW()) + " to " + fine(sustainable.highW()) + " W."));
    }

    /** What the balance of W' in the evidence rests on. */
    private static void criticalPower(Page page, Ability ability) {
        Double criticalPowerW = ability.criticalPowerW();
        Double wPrimeKJ = ability.wPrimeKJ();
        if (criticalPowerW != null && wPrimeKJ != null) {
            Ability.Source source = ability.source();
            page.line("Critical power: " + fine(criticalPowerW) + " W, W': " + fine(wPrimeKJ) + " kJ, "
                    + (source != null && source.isGiven() ? "as given." : "from the best efforts of this ride."));
        }
    }

    private void evidence(Page page, Finding finding) {
        page.heading("3. THE FINDING");
        page.line(FindingWords.title(finding.kind()) + " ("
                + finding.severity().id() + "), " + finding.when() + ", "
                + finding.when().seconds() + " s.");
        for (Evidence.Entry entry : finding.evidence().entries()) {
            page.row("  " + Page.padRight(entry.name(), NAME) + Page.padLeft(fine(entry.value()), 12));
        }
        Double capW = finding.advice().capW();
        if (capW != null) {
            page.row("  " + Page.padRight("cap for next time, W", NAME) + Page.padLeft(fine(capW), 12));
        }
        Double capBpm = finding.advice().capBpm();
        if (capBpm != null) {
            page.row("  " + Page.padRight("cap for next time, bpm", NAME) + Page.padLeft(fine(capBpm), 12));
        }
        page.line(FindingExplanations.of(finding.kind(), limits));
    }

    private static void repaired(Page page, PriceSteps.Replayed steps) {
        page.heading("4. WHAT IS REPAIRED, and which seconds make up for it");
        if (steps.stretches().isEmpty()) {
            page.line("Nothing: there is too little comparable ground.");
        }
        for (PriceSteps.Stretch stretch : steps.stretches()) {
            page.item(stretch(stretch));
        }
        PriceSteps.MakingUp back = steps.makingUp();
        page.line("To keep the whole equal, " + back.seconds() + " other pedalled seconds from "
                + Figures.clock(back.firstSecond()) + " on, " + fine(back.workKJ())
                + " kJ in all, are changed: the power of each by the same share, which is sought from "
                + Figures.brief(PriceSteps.LEAST_SHARE) + " to " + Figures.brief(PriceSteps.MOST_SHARE) + ".");
    }

    private static String stretch(PriceSteps.Stretch stretch) {
        if (stretch.change() == StretchChange.AS_RIDDEN) {
            return stretch.when() + ": in the bunch, as ridden.";
        }
        Double from = stretch.fromW();
        Double factor = stretch.factor();
        String what = switch (stretch.change()) {
            case TO_MIDDLE_POWER -> "power";
            case TO_POWER_BEFORE -> "normalized power, to that of the race before it,";
            case TO_EARLIER_POWER -> "mean power on comparable ground, to that before it,";
            case CAPPED_AT_TARGET -> "every second above the target lowered to the target,";
            case AS_RIDDEN -> "as ridden,";
        };
        String how = from == null || factor == null
                ? " " + fine(stretch.toW()) + " W: " + stretch.changedSeconds() + " pedalled seconds"
                : " " + fine(from) + " W to " + fine(stretch.toW()) + " W: " + stretch.changedSeconds()
                        + " pedalled seconds times " + share(factor);
        double taken = stretch.takenOutKJ();
        return stretch.when() + ": " + what + how + ", " + fine(Math.abs(taken)) + " kJ "
                + (taken < 0 ? "added" : "taken out") + ".";
    }

    private void riddenAgain(Page page, PriceSteps.Replayed steps) {
        page.heading("5. RIDDEN AGAIN, on the recorded road in the recorded air");
        page.row("  " + Page.padRight("", 22) + Page.padLeft("share", 9) + Page.padLeft("work kJ", 11)
                + Page.padLeft("normalized W", 14) + Page.padLeft("moving s", 12) + Page.padLeft("saved s", 10));
        row(
                page,
                "as recorded",
                "-",
                steps.recordedWorkKJ(),
                steps.recordedNormalizedPowerW(),
                steps.recordedMovingSeconds(),
                "-");
        end(page, "same energy", steps.equalWork());
        end(page, "same effort", steps.equalNormalizedPower());
        page.line("Same energy: the work of the recorded race. Same effort: its normalized power.");
        page.line("Rider and bicycle: " + LibraryWords.of(steps.rig().numbers(), units) + ".");
    }

    private static void end(Page page, String label, PriceSteps.@Nullable End end) {
        if (end == null) {
            page.line(label + ": no share brings the race there.");
        } else {
            row(
                    page,
                    label,
                    share(end.share()),
                    end.workKJ(),
                    end.normalizedPowerW(),
                    end.movingSeconds(),
                    fine(end.savedSeconds()));
        }
    }

    private static void row(
            Page page, String label, String share, double workKJ, double normalizedW, double seconds, String saved) {
        page.row("  " + Page.padRight(label, 22) + Page.padLeft(share, 9) + Page.padLeft(fine(workKJ), 11)
                + Page.padLeft(fine(normalizedW), 14) + Page.padLeft(fine(seconds), 12) + Page.padLeft(saved, 10));
    }

    private static void stops(Page page, PriceSteps.Stops steps) {
        page.heading("4. THE STOPS");
        for (Interval stop : steps.stops()) {
            page.item(stop + ", " + stop.seconds() + " s");
        }
    }

    private static void price(Page page, Finding finding) {
        page.heading(finding.priceSteps() instanceof PriceSteps.Replayed ? "6. THE PRICE" : "THE PRICE");
        if (finding.cost() instanceof Cost.Priced priced) {
            page.line(fine(priced.lowMinutes()) + " to " + fine(priced.highMinutes()) + " min: "
                    + PlainText.sentence(priced.how()));
            if (finding.priceSteps() instanceof PriceSteps.Replayed) {
                page.line("The seconds saved divided by 60, the smaller first. Less than 0 counts as 0; when the larger"
                        + " is under a second, both count as 0.");
            }
        } else if (finding.cost() instanceof Cost.NotPriced notPriced) {
            page.line("None: " + PlainText.sentence(notPriced.reason()));
        }
    }

    private static String fine(double value) {
        return Figures.decimal(value, 3);
    }

    private static String share(double value) {
        return Figures.decimal(value, 6);
    }
}
