package io.github.wattledger.cli;

import io.github.wattledger.read.CsvColumns;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;

/** {@code --column} of the commands that read one file. */
final class ColumnOption {
    @Option(
            names = "--column",
            paramLabel = "NAME=HEADER",
            description = "In a CSV file, take the column under HEADER for NAME, for instance 'power=Pwr (W)'. Can be"
                    + " given several times.")
    private List<String> columns = List.of();

    /** The columns, or a usage error when one of them makes no sense. */
    CsvColumns csvColumns(@Nullable CommandSpec spec) {
        Map<String, String> headers = new LinkedHashMap<>();
        for (String column : columns) {
            int equals = column.indexOf('=');
            String name = equals < 0 ? column : column.substring(0, equals);
            if (equals < 1 || equals == column.length() - 1) {
                throw Usage.error(
                        spec, "Invalid value for option '--column': expected NAME=HEADER, got '" + column + "'");
            }
            if (headers.put(name, column.substring(equals + 1)) != null) {
                throw Usage.error(spec, "Invalid value for option '--column': " + name + " is given twice");
            }
        }
        try {
            return new CsvColumns(headers);
        } catch (IllegalArgumentException e) {
            throw Usage.error(spec, "Invalid value for option '--column': " + e.getMessage());
        }
    }

    /** A usage error when columns were given for a file that has none. */
    void requireTable(@Nullable CommandSpec spec, @Nullable String format) {
        if (!columns.isEmpty() && (format == null || !format.contains("CSV"))) {
            throw Usage.error(spec, "--column is for CSV files, but this is " + format);
        }
    }
}
