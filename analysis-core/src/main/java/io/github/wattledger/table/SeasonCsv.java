package io.github.wattledger.table;

import io.github.wattledger.season.SeasonReview;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** The tables of a season as CSV, written as {@link TableCsv} writes them. The table library is not needed for it. */
public final class SeasonCsv {
    private SeasonCsv() {}

    /** One row a ride, with the columns of {@link SeasonTables#rides}. */
    public static void rides(SeasonReview season, Appendable out) throws IOException {
        write(SeasonLayout.RIDES, season, out);
    }

    /** One row a calendar day, with the columns of {@link SeasonTables#days}. */
    public static void days(SeasonReview season, Appendable out) throws IOException {
        write(SeasonLayout.DAYS, season, out);
    }

    /** One row a duration, with the columns of {@link SeasonTables#bests}. */
    public static void bests(SeasonReview season, Appendable out) throws IOException {
        write(SeasonLayout.BESTS, season, out);
    }

    private static <T> void write(SeasonLayout<T> layout, SeasonReview season, Appendable out) throws IOException {
        CsvRecord.write(layout.columns().stream().map(SeasonColumn::name).toList(), out);
        for (T row : layout.rows().apply(season)) {
            List<String> texts = new ArrayList<>();
            for (SeasonColumn<T> column : layout.columns()) {
                texts.add(CsvRecord.text(column.name(), column.value().apply(row)));
            }
            CsvRecord.write(texts, out);
        }
    }
}
