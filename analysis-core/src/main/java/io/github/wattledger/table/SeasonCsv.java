package io.github.wattledger.table;

import io.github.wattledger.season.SeasonReview;
import java.io.IOException;

/** The tables of a season as CSV, for callers that do not know the table library. */
public final class SeasonCsv {
    private SeasonCsv() {}

    /** One row a ride ({@link SeasonTables#rides}). */
    public static void rides(SeasonReview season, Appendable out) throws IOException {
        TableCsv.write(SeasonTables.rides(season), out);
    }

    /** One row a calendar day ({@link SeasonTables#days}). */
    public static void days(SeasonReview season, Appendable out) throws IOException {
        TableCsv.write(SeasonTables.days(season), out);
    }

    /** One row a duration ({@link SeasonTables#bests}). */
    public static void bests(SeasonReview season, Appendable out) throws IOException {
        TableCsv.write(SeasonTables.bests(season), out);
    }
}
