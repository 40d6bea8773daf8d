package io.github.wattledger.cli.report.text;

import io.github.wattledger.cli.report.words.BunchWords;
import io.github.wattledger.pacing.BunchReview;
import io.github.wattledger.pacing.FindingKind;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** The part of a text about the bunch that the rider names. */
final class TextBunch {
    private TextBunch() {}

    static void write(Page page, @Nullable BunchReview review) {
        List<String> lines = BunchWords.of(review);
        if (!lines.isEmpty()) {
            page.heading(BunchWords.TITLE.toUpperCase(Locale.ROOT));
            lines.forEach(page::line);
        }
    }

    /** How the decision about the stretch of a finding was ridden again. */
    static void explain(Page page, @Nullable BunchReview review, FindingKind kind) {
        if (review == null) {
            return;
        }
        for (BunchReview.Decision decision : review.decisions()) {
            if (decision.kind() == kind) {
                page.heading("7. THE BUNCH, LET GO");
                BunchWords.steps(decision).forEach(page::line);
            }
        }
        write(page, review);
    }
}
