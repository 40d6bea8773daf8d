package io.github.wattledger.table;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.jspecify.annotations.Nullable;

/** How a value stands in a CSV file, and how a record of them is written. */
final class CsvRecord {
    private static final int DECIMALS = 3;
    private static final int POSITION_DECIMALS = 7; // about a centimetre
    private static final CSVFormat FORMAT =
            CSVFormat.RFC4180.builder().setRecordSeparator('\n').get();

    private CsvRecord() {}

    static void write(List<String> texts, Appendable out) throws IOException {
        // Not through the library's printer class: it carries an annotation whose own class is nowhere to be had.
        out.append(FORMAT.format(texts.toArray())).append('\n');
    }

    /** The text of a value; nothing where it is missing: null, or a number that is NaN. */
    static String text(String column, @Nullable Object value) {
        if (value == null) {
            return "";
        }
        if (value instanceof Double number) {
            return number.isNaN() ? "" : decimal(number, column.endsWith("[deg]") ? POSITION_DECIMALS : DECIMALS);
        }
        return neutral(value.toString());
    }

    private static String decimal(double number, int decimals) {
        BigDecimal rounded = BigDecimal.valueOf(number).setScale(decimals, RoundingMode.HALF_UP);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    /** A spreadsheet takes text that begins so for a formula; a file's name may be anything. */
    private static String neutral(String text) {
        return !text.isEmpty() && "=+-@\t\r".indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
    }
}
