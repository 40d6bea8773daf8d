package io.github.wattledger.cli.report.html;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import io.github.wattledger.RideReview;
import io.github.wattledger.cli.report.Report;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.plan.PlanReview;
import java.io.IOException;
import org.jspecify.annotations.Nullable;

/** A ride as a page: one file that opens without a network, moves where scripts run, and prints. */
public final class HtmlReport implements Report {
    private static final TemplateEngine TEMPLATES = TemplateEngine.createPrecompiled(
            null,
            ContentType.Html,
            HtmlReport.class.getClassLoader(),
            "io.github.wattledger.cli.report.html.templates");

    private final Units units;
    private final @Nullable String season;
    private final @Nullable PlanReview plan;

    /** A page that stands alone, in these units. */
    public HtmlReport(Units units) {
        this(units, null);
    }

    /**
     * A page of a season.
     *
     * @param units in which it is written
     * @param season the address of the season's page, relative to this one, or null
     */
    public HtmlReport(Units units, @Nullable String season) {
        this(units, season, null);
    }

    /**
     * A page of a season, of a ride that may be held against a plan.
     *
     * @param units in which it is written
     * @param season the address of the season's page, relative to this one, or null
     * @param plan the ride against its plan, or null where there is none
     */
    public HtmlReport(Units units, @Nullable String season, @Nullable PlanReview plan) {
        this.units = units;
        this.season = season;
        this.plan = plan;
    }

    @Override
    public void write(RideReview review, Appendable out) throws IOException {
        render("race.jte", RacePage.of(review, units, season, plan), out);
    }

    static void render(String template, Object page, Appendable out) throws IOException {
        StringOutput text = new StringOutput(1 << 19);
        TEMPLATES.render(template, page, text);
        out.append(text.toString());
    }
}
