package io.github.wattledger.cli.report.words;

import io.github.wattledger.pacing.Finding;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.pacing.Severity;
import io.github.wattledger.pacing.price.Cost;
import java.util.Comparator;
import java.util.List;

/** Which mistakes of a race are named first. */
final class DearestMistakes {
    private DearestMistakes() {}

    /** Mistakes with a price, the dearest first; without any price the weightiest. */
    static List<Finding> of(PacingReview pacing) {
        List<Finding> mistakes = pacing.findings().stream()
                .filter(finding -> finding.severity() != Severity.OBSERVATION)
                .toList();
        List<Finding> priced =
                mistakes.stream().filter(finding -> highMinutes(finding) > 0).toList();
        return (priced.isEmpty() ? mistakes : priced)
                .stream()
                        .sorted(Comparator.comparingDouble((Finding finding) -> -highMinutes(finding)))
                        .toList();
    }

    /** The high end of what a finding cost, minutes; 0 without a price. */
    static double highMinutes(Finding finding) {
        return finding.cost() instanceof Cost.Priced priced ? priced.highMinutes() : 0;
    }
}
