package io.github.wattledger.cli;

import io.github.wattledger.cli.report.Report;
import io.github.wattledger.cli.report.csv.CsvReport;
import io.github.wattledger.cli.report.html.HtmlReport;
import io.github.wattledger.cli.report.json.JsonReport;
import io.github.wattledger.cli.report.text.TextReport;
import io.github.wattledger.read.ReadOptions;

/** The forms in which a review can be asked for. */
enum ReportFormat {
    TEXT,
    JSON,
    CSV,
    HTML;

    /** How to read the file: only JSON names its digest. */
    ReadOptions reading() {
        return ReadOptions.DEFAULT.withDigest(this == JSON);
    }

    /** The report; only its own classes are loaded. */
    Report report() {
        return switch (this) {
            case TEXT -> new TextReport();
            case JSON -> new JsonReport();
            case CSV -> new CsvReport();
            case HTML -> new HtmlReport();
        };
    }
}
