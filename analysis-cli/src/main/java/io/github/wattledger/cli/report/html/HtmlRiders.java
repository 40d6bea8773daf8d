package io.github.wattledger.cli.report.html;

import java.io.IOException;
import java.util.List;

/** Several riders as a page, pacing first. */
public final class HtmlRiders {
    /**
     * Writes the riders.
     *
     * @param riders one for each
     * @param skippedFiles how many files gave no ride
     * @param out where the characters go
     * @throws IOException when {@code out} fails
     */
    public void write(List<RiderSeason> riders, int skippedFiles, Appendable out) throws IOException {
        HtmlReport.render("riders.jte", RidersPage.of(riders, skippedFiles), out);
    }
}
