package io.github.wattledger.cli.report.text;

import io.github.wattledger.cli.report.words.BunchWords;
import io.github.wattledger.pacing.BunchReview;
import io.github.wattledger.pacing.FindingKind;
import io.github.wattledger.pacing.PacingReview;
import java.util.List;
import java.util.Locale;

/** The part of a text about the bunch that the rider names. */
final class TextBunch {
    private TextBunch() {}

    static void write(Page page, PacingReview pacing) {
        List<String> lines = BunchWords.of(pacing);
        if (!lines.isEmpty()) {
            page.heading(BunchWords.TITLE.toUpperCase(Locale.ROOT));
            lines.forEach(page::line);
        }
    }

    /** How the decision about the stretch of a finding was ridden again. */
    static void explain(Page page, PacingReview pacing, FindingKind kind) {
        BunchReview review = pacing.bunch();
        if (review == null) {
            return;
        }
        for (BunchReview.Decision decision : review.decisions()) {
            if (decision.kind() == kind) {
                page.heading("7. THE BUNCH, LET GO");
                BunchWords.steps(decision).forEach(page::line);
            }
        }
        write(page, pacing);
    }
}
