package io.github.wattledger.cli;

import io.github.wattledger.cli.report.Report;
import io.github.wattledger.cli.report.csv.CsvReport;
import io.github.wattledger.cli.report.csv.CsvSplits;
import io.github.wattledger.cli.report.html.HtmlReport;
import io.github.wattledger.cli.report.text.TextReport;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.json.JsonDocument;
import io.github.wattledger.plan.PlanReview;
import org.jspecify.annotations.Nullable;

/** The forms in which a review can be asked for. */
enum ReportFormat {
    TEXT,
    JSON,
    CSV,
    SPLITS,
    HTML;

    /** Whether people read it, in units of their choice. */
    boolean isForPeople() {
        return this == TEXT || this == HTML;
    }

    /**
     * The report; only its own classes are loaded.
     *
     * @param units in which it is written for people
     * @param plan the ride against its plan, or null where there is none
     */
    Report report(Units units, @Nullable PlanReview plan) {
        return switch (this) {
            case TEXT -> new TextReport(units, plan);
            case JSON ->
                (review, out) -> out.append(JsonDocument.of(review, plan).text());
            case CSV -> new CsvReport();
            case SPLITS -> new CsvSplits();
            case HTML -> new HtmlReport(units, null, plan);
        };
    }
}
