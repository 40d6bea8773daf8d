package io.github.wattledger.cli.report.text;

import io.github.wattledger.cli.report.words.BunchWords;
import io.github.wattledger.cli.report.words.ProposedBunchWords;
import io.github.wattledger.pacing.BunchReview;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.pacing.ProposedBunch;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;

/** The part of a text about the bunch that the rider names, or that the ride proposes. */
final class TextBunch {
    private TextBunch() {}

    static void write(Page page, PacingReview pacing) {
        write(page, BunchWords.TITLE, BunchWords.of(pacing));
        write(page, ProposedBunchWords.TITLE, ProposedBunchWords.of(pacing));
    }

    private static void write(Page page, String title, List<String> lines) {
        if (!lines.isEmpty()) {
            page.heading(title.toUpperCase(Locale.ROOT));
            lines.forEach(page::line);
        }
    }

    /** How the decision about the stretch of a finding was ridden again. */
    static void explain(Page page, PacingReview pacing, FindingKind kind) {
        BunchReview review = pacing.bunch();
        ProposedBunch proposed = pacing.proposedBunch();
        if (review != null) {
            explain(page, review.decisions(), kind, decision -> BunchWords.steps(pacing, decision));
            write(page, pacing);
        } else if (proposed != null && proposed.proposal().isFound()) {
            explain(page, proposed.decisions(), kind, BunchWords::replays);
            write(page, pacing);
        }
    }

    private static void explain(
            Page page,
            List<BunchReview.Decision> decisions,
            FindingKind kind,
            Function<BunchReview.Decision, List<String>> steps) {
        for (BunchReview.Decision decision : decisions) {
            if (decision.kind() == kind) {
                page.heading("7. THE BUNCH, LET GO");
                steps.apply(decision).forEach(page::line);
            }
        }
    }
}
