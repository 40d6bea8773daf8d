package io.github.wattledger.cli;

import io.github.wattledger.read.CsvColumns;
import io.github.wattledger.read.ReadOptions;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;

/** {@code --column} of the commands that read single files. */
final class ColumnOption {
    private static final String NAME = "--column";

    @Option(
            names = NAME,
            paramLabel = "NAME=HEADER",
            completionCandidates = OptionValues.ColumnNames.class,
            description = "In a CSV file, take the column under HEADER for NAME, for instance 'power=Pwr (W)'. Can be"
                    + " given several times.")
    private List<String> columns = List.of();

    /** How files are read with these columns; a usage error when one of them makes no sense. */
    ReadOptions reading(@Nullable CommandSpec spec) {
        Map<String, String> headers = new LinkedHashMap<>();
        for (String column : columns) {
            int equals = column.indexOf('=');
            if (equals < 1 || equals == column.length() - 1) {
                throw Usage.error(spec, NAME + " " + column + ": expected NAME=HEADER, for instance 'power=Pwr (W)'");
            }
            String name = column.substring(0, equals);
            if (!CsvColumns.names().contains(name)) {
                String guess = UsageMessages.didYouMean(name, CsvColumns.names());
                throw Usage.error(
                        spec,
                        NAME + " " + column + ": " + name + " is no column that is read" + guess + "; expected one of "
                                + String.join(", ", CsvColumns.names()));
            }
            if (headers.put(name, column.substring(equals + 1)) != null) {
                throw Usage.error(spec, NAME + " " + column + ": " + name + " is given twice");
            }
        }
        return ReadOptions.DEFAULT.withCsvColumns(new CsvColumns(headers));
    }

    /** Whether any column was named. */
    boolean isGiven() {
        return !columns.isEmpty();
    }

    /** A usage error when columns were given, but none of the files has any; the formats as the core names them. */
    void requireTable(@Nullable CommandSpec spec, List<@Nullable String> formats) {
        if (!columns.isEmpty() && formats.stream().noneMatch(format -> format != null && format.contains("CSV"))) {
            throw Usage.error(spec, NAME + " is for CSV files, but this is " + formats.get(0));
        }
    }
}
