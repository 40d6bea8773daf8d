package io.github.wattledger.table;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import tech.tablesaw.api.Table;
import tech.tablesaw.columns.Column;

/**
 * Writes a table as CSV (RFC 4180, but for line feeds as line ends): a header, decimal points, nothing where a value is
 * missing, numbers with at most three decimals but positions with seven.
 */
public final class TableCsv {
    private TableCsv() {}

    /**
     * Writes a table.
     *
     * @param out where the characters go
     * @throws IOException when {@code out} fails
     */
    public static void write(Table table, Appendable out) throws IOException {
        CsvRecord.write(table.columnNames(), out);
        for (int row = 0; row < table.rowCount(); row++) {
            List<String> texts = new ArrayList<>(table.columnCount());
            for (Column<?> column : table.columns()) {
                texts.add(CsvRecord.text(column.name(), column.isMissing(row) ? null : column.get(row)));
            }
            CsvRecord.write(texts, out);
        }
    }
}
