package io.github.wattledger.cli.report.html;

import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.compare.RideComparison;
import java.io.IOException;

/** A comparison as a page: one file that loads nothing, runs no script, and prints. */
public final class HtmlComparison {
    private final Units units;

    /** A page in these units. */
    public HtmlComparison(Units units) {
        this.units = units;
    }

    /**
     * Writes a comparison.
     *
     * @param comparison what to show
     * @param out where the characters go
     * @throws IOException when {@code out} fails
     */
    public void write(RideComparison comparison, Appendable out) throws IOException {
        HtmlReport.render("compare.jte", ComparisonPage.of(comparison, units), out);
    }
}
