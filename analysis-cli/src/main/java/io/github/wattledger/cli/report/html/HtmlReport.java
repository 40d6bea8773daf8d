package io.github.wattledger.cli.report.html;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import io.github.wattledger.RideReview;
import io.github.wattledger.cli.report.Report;
import java.io.IOException;
import org.jspecify.annotations.Nullable;

/** A ride as a page: one file that opens without a network, moves where scripts run, and prints. */
public final class HtmlReport implements Report {
    private static final TemplateEngine TEMPLATES = TemplateEngine.createPrecompiled(
            null,
            ContentType.Html,
            HtmlReport.class.getClassLoader(),
            "io.github.wattledger.cli.report.html.templates");

    private final @Nullable String season;

    /** A page that stands alone. */
    public HtmlReport() {
        this(null);
    }

    /**
     * A page of a season.
     *
     * @param season the address of the season's page, relative to this one, or null
     */
    public HtmlReport(@Nullable String season) {
        this.season = season;
    }

    @Override
    public void write(RideReview review, Appendable out) throws IOException {
        render("race.jte", RacePage.of(review, season), out);
    }

    static void render(String template, Object page, Appendable out) throws IOException {
        StringOutput text = new StringOutput(1 << 19);
        TEMPLATES.render(template, page, text);
        out.append(text.toString());
    }
}
