package io.github.wattledger.cli;

import io.github.wattledger.season.SeasonReview;
import io.github.wattledger.table.SeasonCsv;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;

/** The tables of a season as CSV files in a folder. */
final class SeasonTablesFolder {
    private SeasonTablesFolder() {}

    /** A table as characters. */
    @FunctionalInterface
    private interface TableText {
        void write(SeasonReview season, Appendable out) throws IOException;
    }

    /**
     * Writes {@code rides.csv}, {@code days.csv} and {@code bests.csv}.
     *
     * @throws OutputFailure when the folder or a file cannot be written, with one line for people
     */
    static void write(SeasonReview season, Path folder) throws IOException {
        OutputFile.makeFolder(folder);
        Map<String, TableText> tables = Map.of(
                "rides.csv", SeasonCsv::rides,
                "days.csv", SeasonCsv::days,
                "bests.csv", SeasonCsv::bests);
        for (Map.Entry<String, TableText> table : tables.entrySet()) {
            StringBuilder text = new StringBuilder();
            table.getValue().write(season, text);
            OutputFile.write(folder.resolve(table.getKey()), text);
        }
    }
}
