package io.github.wattledger.cli.report.words;

import io.github.wattledger.bunch.BunchProposal;
import io.github.wattledger.pacing.BunchReview;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.pacing.ProposedBunch;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Whether a race looks like a bunch of which the rider says nothing, in sentences. */
public final class ProposedBunchWords {
    /** What stands over these sentences. */
    public static final String TITLE = "In a bunch?";

    private static final double STEP = 0.05;
    private static final String WHERE = "Where, and how much it saved, cannot be told";

    private ProposedBunchWords() {}

    /** A sentence or two for each thing that is known; none where the rider says something, or the ride is no race. */
    public static List<String> of(PacingReview pacing) {
        ProposedBunch proposed = pacing.proposedBunch();
        if (proposed == null) {
            return List.of();
        }
        BunchProposal proposal = proposed.proposal();
        if (!proposal.isFound()) {
            return List.of(notFound(proposal));
        }
        List<String> lines = new ArrayList<>();
        for (BunchProposal.Stretch stretch : proposal.stretches()) {
            lines.add("Probably in a bunch from " + times(stretch, " to ")
                    + ", each end to some 5 min: the air took " + saving(stretch) + " less than alone. "
                    + "Less wind, a sheltered valley or a smoother road would look the same.");
        }
        BunchProposal.Level level = proposal.mostOfRide();
        if (level != null && level.isSheltered()) {
            lines.add(level(level, proposal));
        }
        proposed.decisions().forEach(decision -> lines.add(decision(decision)));
        lines.add("No finding and no price counts on it. " + options(proposal) + " settles it.");
        return lines;
    }

    private static String notFound(BunchProposal proposal) {
        if (proposal.wouldHaveShown().isEmpty()) {
            return "Whether you rode in a bunch cannot be told: " + proposal.whyNoStretches() + ".";
        }
        BunchProposal.Showing showing = proposal.wouldHaveShown().get(0);
        return "No sign of a bunch. One that saved "
                + Figures.fractionAsPercent(STEP * Math.ceil(showing.saving() / STEP)) + " of the drag over the first "
                + showing.minutes() + " min would have shown; a shorter one, or one that saved less, might not have.";
    }

    private static String level(BunchProposal.Level level, BunchProposal proposal) {
        String reason = proposal.whyNoStretches();
        return "Probably in a bunch for most of it: over level ground the air took no more than a drag area of "
                + Figures.decimal(level.mostDragAreaM2(), 2) + " m2 asks for, and "
                + (level.isOwn()
                        ? "yours is " + Figures.decimal(level.comparedWithM2(), 2) + " m2. "
                        : "nobody alone on a road bicycle has under " + Figures.decimal(level.comparedWithM2(), 2)
                                + " m2. ")
                + (proposal.stretches().isEmpty() ? WHERE + (reason == null ? ". " : ": " + reason + ". ") : "")
                + "A wrong mass, or a power meter that reads low, would look the same.";
    }

    private static String decision(BunchReview.Decision decision) {
        String level = BunchWords.levelBriefly(decision);
        return "If that was a bunch, " + outcome(decision.outcome()) + (level.isEmpty() ? "." : ": " + level + ".");
    }

    private static String outcome(BunchReview.Outcome outcome) {
        return switch (outcome) {
            case STAYING_PAID -> "staying with it paid";
            case LETTING_GO_WAS_FASTER -> "letting it go would have been faster";
            case OPEN -> "whether staying with it paid is open";
        };
    }

    /** What stands in a few words, where a hard start or riding over the threshold may have been a bunch; otherwise empty. */
    static String brief(PacingReview pacing) {
        ProposedBunch proposed = pacing.proposedBunch();
        boolean matters = pacing.findings().stream()
                .anyMatch(finding -> finding.kind() == FindingKind.OVER_HARD_START
                        || finding.kind() == FindingKind.THRESHOLD_RIDING_EARLY);
        if (proposed == null || !proposed.proposal().isFound() || !matters) {
            return "";
        }
        BunchProposal proposal = proposed.proposal();
        if (proposal.stretches().isEmpty()) {
            return "Probably in a bunch for most of it; where, and how much it saved, cannot be told.";
        }
        String when = proposal.stretches().stream()
                .map(stretch -> times(stretch, " to "))
                .collect(Collectors.joining(" and "));
        String level = proposed.decisions().stream()
                .findFirst()
                .map(BunchWords::levelBriefly)
                .orElse("");
        return "Probably in a bunch from " + when + (level.isEmpty() ? "" : "; " + level) + ".";
    }

    /** What is not known, and which option says it. */
    static String unknown(@Nullable ProposedBunch proposed) {
        return proposed == null || !proposed.proposal().isFound()
                ? "whether you rode in a bunch"
                : "whether you rode in a bunch (" + options(proposed.proposal()) + " says it)";
    }

    private static String options(BunchProposal proposal) {
        String bunches = proposal.stretches().isEmpty()
                ? "--bunch FROM-TO"
                : proposal.stretches().stream()
                        .map(stretch -> "--bunch " + times(stretch, "-"))
                        .collect(Collectors.joining(" "));
        return bunches + " or --alone";
    }

    private static String times(BunchProposal.Stretch stretch, String between) {
        return Figures.shortClock(stretch.when().fromSecond())
                + between
                + Figures.shortClock(stretch.when().toSecond());
    }

    private static String saving(BunchProposal.Stretch stretch) {
        return Figures.fractionAsPercent(STEP * Math.round(stretch.savingLow() / STEP)) + " to "
                + Figures.fractionAsPercent(STEP * Math.round(stretch.savingHigh() / STEP));
    }
}
