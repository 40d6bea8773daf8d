package io.github.wattledger.cli.report.html;

import io.github.wattledger.season.RiderStanding;
import io.github.wattledger.season.SeasonReview;
import java.io.IOException;
import java.util.List;

/** Several riders as a page, pacing first. */
public final class HtmlRiders {
    /**
     * A rider.
     *
     * @param standing where the rider stands
     * @param season the rider's season
     * @param page the address of the season's page
     */
    public record OneRider(RiderStanding standing, SeasonReview season, String page) {}

    /**
     * Writes the riders.
     *
     * @param riders one for each
     * @param skippedFiles how many files gave no ride
     * @param out where the characters go
     * @throws IOException when {@code out} fails
     */
    public void write(List<OneRider> riders, int skippedFiles, Appendable out) throws IOException {
        HtmlReport.render("riders.jte", RidersPage.of(riders, skippedFiles), out);
    }
}
