package io.github.wattledger.cli.report.html;

import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.season.SeasonReview;
import java.io.IOException;
import org.jspecify.annotations.Nullable;

/** A season as a page. */
public final class HtmlSeason {
    private final Units units;
    private final @Nullable String rider;
    private final @Nullable String riders;

    /** A page of one rider, who needs no name. */
    public HtmlSeason(Units units) {
        this(units, null, null);
    }

    /**
     * A page of one of several riders.
     *
     * @param units in which it is written
     * @param rider what the rider is called, or null
     * @param riders the address of the page of all of them, relative to this one, or null
     */
    public HtmlSeason(Units units, @Nullable String rider, @Nullable String riders) {
        this.units = units;
        this.rider = rider;
        this.riders = riders;
    }

    /**
     * Writes a season.
     *
     * @param season what to show
     * @param pages the pages of its rides, to which its rows lead
     * @param out where the characters go
     * @throws IOException when {@code out} fails
     */
    public void write(SeasonReview season, PageNames pages, Appendable out) throws IOException {
        HtmlReport.render("season.jte", SeasonPage.of(season, units, pages, rider, riders), out);
    }
}
