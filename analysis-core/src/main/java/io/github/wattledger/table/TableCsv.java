package io.github.wattledger.table;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.Table;
import tech.tablesaw.columns.Column;

/**
 * Writes a table as CSV (RFC 4180, but for line feeds as line ends): a header, decimal points, nothing where a value is
 * missing, numbers with at most three decimals but positions with seven.
 */
public final class TableCsv {
    private static final int DECIMALS = 3;
    private static final int POSITION_DECIMALS = 7; // about a centimetre
    private static final CSVFormat FORMAT =
            CSVFormat.RFC4180.builder().setRecordSeparator('\n').get();

    private TableCsv() {}

    /**
     * Writes a table.
     *
     * @param out where the characters go
     * @throws IOException when {@code out} fails
     */
    public static void write(Table table, Appendable out) throws IOException {
        record(table.columnNames(), out);
        for (int row = 0; row < table.rowCount(); row++) {
            List<String> texts = new ArrayList<>(table.columnCount());
            for (Column<?> column : table.columns()) {
                texts.add(text(column, row));
            }
            record(texts, out);
        }
    }

    private static void record(List<String> texts, Appendable out) throws IOException {
        // Not through the library's printer class: it carries an annotation whose own class is nowhere to be had.
        out.append(FORMAT.format(texts.toArray())).append('\n');
    }

    private static String text(Column<?> column, int row) {
        if (column.isMissing(row)) {
            return "";
        }
        if (column instanceof DoubleColumn numbers) {
            boolean position = column.name().endsWith("[deg]");
            BigDecimal rounded = BigDecimal.valueOf(numbers.getDouble(row))
                    .setScale(position ? POSITION_DECIMALS : DECIMALS, RoundingMode.HALF_UP);
            return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
        }
        return neutral(String.valueOf(column.get(row)));
    }

    /** A spreadsheet takes text that begins so for a formula; a file's name may be anything. */
    private static String neutral(String text) {
        return !text.isEmpty() && "=+-@\t\r".indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
    }
}
