package io.github.wattledger.cli.report.html;

import io.github.wattledger.season.SeasonReview;
import java.io.IOException;

/** A season as a page. */
public final class HtmlSeason {
    /**
     * Writes a season.
     *
     * @param season what to show
     * @param pages the pages of its rides, to which its rows lead
     * @param out where the characters go
     * @throws IOException when {@code out} fails
     */
    public void write(SeasonReview season, PageNames pages, Appendable out) throws IOException {
        HtmlReport.render("season.jte", SeasonPage.of(season, pages), out);
    }
}
