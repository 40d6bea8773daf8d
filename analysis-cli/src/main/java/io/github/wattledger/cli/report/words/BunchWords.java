package io.github.wattledger.cli.report.words;

import io.github.wattledger.pacing.BunchReview;
import io.github.wattledger.pacing.Company;
import io.github.wattledger.pacing.price.LettingGo;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Whether it was worth staying with the bunch, in sentences. */
public final class BunchWords {
    /** What stands over these sentences. */
    public static final String HEADING = "WORTH STAYING WITH THE BUNCH?";

    private static final double WHATEVER_IT_SAVED = 0.60;
    private static final double SECONDS_PER_MINUTE = 60;

    private BunchWords() {}

    /** A sentence or two for each thing that is known; none where the rider says nothing of a bunch. */
    public static List<String> of(@Nullable BunchReview review) {
        List<String> lines = new ArrayList<>();
        if (review == null) {
            return lines;
        }
        Company told = review.told();
        if (told.isAlone()) {
            lines.add("You say that you rode in no bunch: the prices hold as they stand.");
            return lines;
        }
        for (BunchReview.Decision decision : review.decisions()) {
            lines.addAll(decision(review, decision));
        }
        if (review.decisions().isEmpty()) {
            lines.add("You say that you rode in a bunch. None of it that could be priced again was both judged too hard"
                    + " and above your target, so there was no decision to judge.");
        }
        lines.add("Prices elsewhere count what you name as shelter: "
                + Figures.fractionAsPercent((review.savingLow() + review.savingHigh()) / 2)
                + " less drag than alone, the middle of what is assumed.");
        Integer inBunch = review.surgesInBunch();
        Integer alone = review.surgesAlone();
        if (inBunch != null && alone != null && inBunch + alone > 0) {
            lines.add("Surges: " + inBunch + " in the bunch, " + alone + " outside.");
        }
        return lines;
    }

    /** What the verdict rests on, and what came of the decisions to stay with a bunch. */
    static String brief(String because, @Nullable BunchReview review) {
        List<String> parts = new ArrayList<>();
        if (!because.isEmpty()) {
            parts.add(because);
        }
        if (review != null) {
            for (BunchReview.Decision decision : review.decisions()) {
                LettingGo.BreakEven breakEven = decision.lettingGo().breakEven();
                parts.add("Staying with the bunch until "
                        + Figures.shortClock(decision.lettingGo().sheltered().toSecond())
                        + ": " + briefly(decision.outcome())
                        + (breakEven == null
                                ? "."
                                : ", level at " + Figures.fractionAsPercent(breakEven.low()) + " to "
                                        + Figures.fractionAsPercent(breakEven.high()) + " of the drag saved."));
            }
        }
        return String.join(" ", parts);
    }

    private static String briefly(BunchReview.Outcome outcome) {
        return switch (outcome) {
            case STAYING_PAID -> "it paid";
            case LETTING_GO_WAS_FASTER -> "letting it go was faster";
            case OPEN -> "open";
        };
    }

    private static List<String> decision(BunchReview review, BunchReview.Decision decision) {
        LettingGo lettingGo = decision.lettingGo();
        List<String> lines = new ArrayList<>();
        lines.add(Figures.span(lettingGo.hard().seconds()) + " at "
                + Figures.decimal(100 * (lettingGo.hardPowerW() / lettingGo.targetW() - 1), 0)
                + " % above your target to stay with the bunch, which you left at "
                + Figures.clock(lettingGo.sheltered().toSecond()) + ", you say.");
        LettingGo.BreakEven breakEven = lettingGo.breakEven();
        lines.add(breakEven == null ? minutes(lettingGo) : level(breakEven));
        if (lettingGo.nextGroupShare() > 0) {
            lines.add("A next group counts for " + Figures.fractionAsPercent(lettingGo.nextGroupShare())
                    + " of that way.");
        }
        lines.add(saves(review) + outcome(decision.outcome()));
        return lines;
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
        String range =
                Figures.fractionAsPercent(review.savingLow()) + " to " + Figures.fractionAsPercent(review.savingHigh());
        return review.isUnpaved()
                ? "Nobody has measured what a group saves on gravel; " + range + " is assumed. "
                : "Close groups on roads save " + range + " by published measurements. ";
    }

    private static String outcome(BunchReview.Outcome outcome) {
        return switch (outcome) {
            case STAYING_PAID -> "Staying paid.";
            case LETTING_GO_WAS_FASTER -> "Letting it go would have been faster.";
            case OPEN ->
                "Whether staying paid is open: it turns on what the bunch saved and on what the effort cost you later.";
        };
    }

    /** The replays behind a decision, step by step. */
    public static List<String> steps(BunchReview.Decision decision) {
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
