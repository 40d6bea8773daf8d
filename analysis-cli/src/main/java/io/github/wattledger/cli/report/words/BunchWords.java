package io.github.wattledger.cli.report.words;

import io.github.wattledger.pacing.BunchReview;
import io.github.wattledger.pacing.Company;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.pacing.price.Cost;
import io.github.wattledger.pacing.price.LettingGo;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Whether it was worth staying with the bunch, in sentences. */
public final class BunchWords {
    /** What stands over these sentences. */
    public static final String TITLE = "Worth staying with the bunch?";

    private static final double WHATEVER_IT_SAVED = 0.60;
    private static final double SECONDS_PER_MINUTE = 60;
    private static final int MOST_IN_BRIEF = 2;
    private static final Set<FindingKind> HARD_EARLY =
            Set.of(FindingKind.OVER_HARD_START, FindingKind.THRESHOLD_RIDING_EARLY);

    private BunchWords() {}

    /** A sentence or two for each thing that is known; none where the rider says nothing of a bunch. */
    public static List<String> of(PacingReview pacing) {
        BunchReview review = pacing.bunch();
        List<String> lines = new ArrayList<>();
        if (review == null) {
            return lines;
        }
        Company told = review.told();
        if (told.isAlone()) {
            lines.add("You say that you rode in no bunch: the prices hold as they stand.");
            return lines;
        }
        if (review.decisions().isEmpty()) {
            lines.add("You say that you rode in a bunch. "
                    + (pacing.findings().stream().anyMatch(finding -> HARD_EARLY.contains(finding.kind()))
                            ? "What you rode too hard early lay outside it, or cannot be ridden again"
                            : "No over-hard start and no threshold riding early was found in it")
                    + ", so there is no decision to judge.");
        } else {
            lines.add(saves(review));
        }
        for (BunchReview.Decision decision : review.decisions()) {
            lines.addAll(decision(pacing, decision));
        }
        if (!pacing.ledger().entries().isEmpty()) {
            lines.add("The other prices are ridden again in the same bunch, with "
                    + Figures.fractionAsPercent((review.savingLow() + review.savingHigh()) / 2)
                    + " less drag than alone: the middle of what is assumed.");
        }
        Integer inBunch = review.surgesInBunch();
        Integer alone = review.surgesAlone();
        if (inBunch != null && alone != null && inBunch + alone > 0) {
            lines.add("Surges: " + inBunch + " in the bunch, " + alone + " outside."
                    + (inBunch > 0 && isPriced(pacing, FindingKind.SURGES)
                            ? " Their price supposes the same bunch without them, which was not wholly yours to choose."
                            : ""));
        }
        return lines;
    }

    /** What came of each decision to stay with a bunch, the longest stretch first, a sentence each. */
    static List<String> brief(PacingReview pacing) {
        BunchReview review = pacing.bunch();
        return review == null
                ? List.of()
                : review.decisions().stream()
                        .sorted(Comparator.comparingInt(
                                each -> -each.lettingGo().hard().seconds()))
                        .limit(MOST_IN_BRIEF)
                        .map(decision -> brief(pacing, decision))
                        .toList();
    }

    private static String brief(PacingReview pacing, BunchReview.Decision decision) {
        LettingGo.BreakEven breakEven = decision.lettingGo().breakEven();
        return "Staying in the bunch "
                + (isToTheEnd(pacing, decision)
                        ? "to the end"
                        : "until "
                                + Figures.shortClock(
                                        decision.lettingGo().sheltered().toSecond()))
                + ": " + briefly(pacing, decision)
                + (breakEven == null || isPricedOutsideAlone(pacing, decision) ? "" : "; " + levelBriefly(breakEven))
                + ".";
    }

    private static boolean isPriced(PacingReview pacing, FindingKind kind) {
        return pacing.finding(kind)
                .map(finding -> finding.cost() instanceof Cost.Priced)
                .orElse(false);
    }

    private static boolean isToTheEnd(PacingReview pacing, BunchReview.Decision decision) {
        return decision.lettingGo().sheltered().toSecond() >= pacing.judged().toSecond() - SECONDS_PER_MINUTE;
    }

    /** At which saving both decisions are level, in a few words; empty where there is none. */
    static String levelBriefly(BunchReview.Decision decision) {
        LettingGo.BreakEven breakEven = decision.lettingGo().breakEven();
        return breakEven == null ? "" : levelBriefly(breakEven);
    }

    private static String levelBriefly(LettingGo.BreakEven breakEven) {
        if (breakEven.high() <= 0) {
            return "holding on cost nothing even without shelter";
        }
        if (breakEven.low() > WHATEVER_IT_SAVED) {
            return "whatever it saved";
        }
        return "equally fast had it saved " + Figures.fractionAsPercent(breakEven.low()) + " to "
                + Figures.fractionAsPercent(breakEven.high()) + " of the drag";
    }

    private static String briefly(PacingReview pacing, BunchReview.Decision decision) {
        return switch (decision.outcome()) {
            case STAYING_PAID -> "it paid";
            case LETTING_GO_WAS_FASTER -> "letting it go was faster";
            case OPEN ->
                isPriced(pacing, decision.kind()) ? "open, only the rest is priced" : "open, its cost in no total";
        };
    }

    private static List<String> decision(PacingReview pacing, BunchReview.Decision decision) {
        LettingGo lettingGo = decision.lettingGo();
        List<String> lines = new ArrayList<>();
        lines.add(Figures.span(lettingGo.hard().seconds()) + ofWhole(pacing, decision) + " at "
                + Figures.decimal(100 * (lettingGo.hardPowerW() / lettingGo.targetW() - 1), 0)
                + " % above your target to stay with the bunch, "
                + (isToTheEnd(pacing, decision)
                        ? "in which you rode to the end"
                        : "which you left at "
                                + Figures.clock(lettingGo.sheltered().toSecond()))
                + ", you say.");
        LettingGo.BreakEven breakEven = lettingGo.breakEven();
        lines.add(breakEven == null ? minutes(lettingGo) : level(breakEven));
        if (lettingGo.nextGroupShare() > 0) {
            lines.add("A next group counts for " + Figures.fractionAsPercent(lettingGo.nextGroupShare())
                    + " of that way.");
        }
        lines.add(outcome(decision.outcome()));
        if (isPricedOutsideAlone(pacing, decision)) {
            lines.add("The rest of it lay outside the bunch, and only that rest is priced.");
        }
        return lines;
    }

    /** How long the whole of a finding is of which a part lay in a bunch; empty where it is hardly longer than that part. */
    private static String ofWhole(PacingReview pacing, BunchReview.Decision decision) {
        double whole = pacing.finding(decision.kind())
                .map(finding -> finding.when().seconds())
                .orElse(0);
        return whole < decision.lettingGo().hard().seconds() + SECONDS_PER_MINUTE
                ? ""
                : " of the " + Figures.span(whole) + " of the " + FindingWords.name(decision.kind());
    }

    private static boolean isPricedOutsideAlone(PacingReview pacing, BunchReview.Decision decision) {
        return decision.outcome() != BunchReview.Outcome.LETTING_GO_WAS_FASTER && isPriced(pacing, decision.kind());
    }

    private static String level(LettingGo.BreakEven breakEven) {
        if (breakEven.high() <= 0) {
            return "Holding on cost nothing even without shelter.";
        }
        if (breakEven.low() > WHATEVER_IT_SAVED) {
            return "Letting it go was faster whatever the bunch saved.";
        }
        String end = breakEven.high() >= LettingGo.BreakEven.HIGHEST ? "more than " : "";
        return "Letting it go was faster unless the bunch saved you more than "
                + Figures.fractionAsPercent(breakEven.equalWork())
                + " of the drag if the effort cost you nothing later, or " + end
                + Figures.fractionAsPercent(breakEven.equalNormalizedPower())
                + " if it cost you as much as normalized power says.";
    }

    private static String minutes(LettingGo lettingGo) {
        List<String> each = new ArrayList<>();
        for (LettingGo.AtSaving at : lettingGo.savings()) {
            Double seconds = at.letGoEqualNormalizedPowerSeconds();
            if (seconds != null) {
                each.add(Figures.decimal(Math.abs(seconds) / SECONDS_PER_MINUTE, 1) + " min "
                        + (seconds < 0 ? "slower" : "faster") + " had it saved "
                        + Figures.fractionAsPercent(at.savedShare()));
            }
        }
        return "No break-even, since " + lettingGo.noBreakEven() + ". "
                + (each.isEmpty()
                        ? "The rest could not make up for letting it go."
                        : "Letting it go, for the same effort: " + String.join(", ", each) + ".");
    }

    private static String saves(BunchReview review) {
        String range = range(review);
        return review.isUnpaved()
                ? "The rolling resistance is that of unpaved ground, where nobody has measured what a group saves; "
                        + range + " is assumed."
                : "Close groups on roads save " + range + " by published measurements.";
    }

    private static String range(BunchReview review) {
        return Figures.fractionAsPercent(review.savingLow()) + " to " + Figures.fractionAsPercent(review.savingHigh());
    }

    private static String outcome(BunchReview.Outcome outcome) {
        return switch (outcome) {
            case STAYING_PAID -> "Staying paid.";
            case LETTING_GO_WAS_FASTER -> "Letting it go would have been faster.";
            case OPEN ->
                "Whether staying paid is open: it turns on what the bunch saved and on what the effort cost you later.";
        };
    }

    /** The replays behind a decision about a bunch that the rider names, step by step. */
    public static List<String> steps(PacingReview pacing, BunchReview.Decision decision) {
        List<String> lines = new ArrayList<>();
        lines.add(
                isPricedOutsideAlone(pacing, decision)
                        ? "Part 5 rides again only what lay outside the bunch; what lay in it stays as it was ridden."
                        : decision.outcome() == BunchReview.Outcome.LETTING_GO_WAS_FASTER
                                ? "Part 5 rides the race again without the bunch."
                                : "Part 5 rides the same bunch again, only easier. That was not yours to choose, so it is no price.");
        lines.addAll(replays(decision));
        return lines;
    }

    /** The replays behind a decision, whoever names the bunch. */
    public static List<String> replays(BunchReview.Decision decision) {
        LettingGo lettingGo = decision.lettingGo();
        List<String> lines = new ArrayList<>();
        lines.add("The hard stretch " + lettingGo.hard() + " is ridden again at " + Figures.watts(lettingGo.targetW())
                + " instead of " + Figures.watts(lettingGo.hardPowerW())
                + " normalized; what this frees goes to the pedalled seconds after it.");
        lines.add("In a bunch " + lettingGo.sheltered() + ": air took "
                + Figures.fractionAsPercent(lettingGo.airWorkShare()) + " of the driving work there.");
        for (LettingGo.AtSaving at : lettingGo.savings()) {
            lines.add("Had it saved " + Figures.fractionAsPercent(at.savedShare()) + ": let go, same energy "
                    + seconds(at.letGoEqualWorkSeconds()) + ", same effort "
                    + seconds(at.letGoEqualNormalizedPowerSeconds()) + "; the same bunch ridden easier, which was not"
                    + " yours to choose, " + seconds(at.keptEqualWorkSeconds()) + " and "
                    + seconds(at.keptEqualNormalizedPowerSeconds()) + ".");
        }
        lines.add("Seconds saved against the recording; below 0 is slower.");
        return lines;
    }

    private static String seconds(@Nullable Double seconds) {
        return seconds == null ? "not to be had" : Figures.signed(seconds, 0) + " s";
    }
}
