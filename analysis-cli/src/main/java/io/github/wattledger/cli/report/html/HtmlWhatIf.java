package io.github.wattledger.cli.report.html;

import io.github.wattledger.cli.report.WhatIfReport;
import io.github.wattledger.cli.report.words.Units;
import java.io.IOException;

/** The answer to a what-if as a page: one file that loads nothing, runs no script, and prints. */
public final class HtmlWhatIf {
    private final Units units;

    /** A page in these units. */
    public HtmlWhatIf(Units units) {
        this.units = units;
    }

    /**
     * Writes an answer.
     *
     * @param report what to show
     * @param out where the characters go
     * @throws IOException when {@code out} fails
     */
    public void write(WhatIfReport report, Appendable out) throws IOException {
        HtmlReport.render("whatif.jte", WhatIfPage.of(report, units), out);
    }
}
