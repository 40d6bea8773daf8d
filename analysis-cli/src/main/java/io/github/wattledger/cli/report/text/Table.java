package io.github.wattledger.cli.report.text;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** Rows in columns as wide as what stands in them, never run together; a column in which nothing stands is left out. */
final class Table {
    /** What stands where there is no value. */
    static final String NONE = "-";

    private static final String WIDE_GAP = "  ";
    private static final String NARROW_GAP = " ";
    private static final String INDENT = "  ";

    private final List<String> heads;
    private final int leftColumns;
    private final List<List<String>> rows = new ArrayList<>();

    /**
     * An empty table.
     *
     * @param leftColumns how many columns, from the first, stand at the left edge; numbers stand at the right one
     * @param heads what stands over the columns
     */
    Table(int leftColumns, List<String> heads) {
        this.leftColumns = leftColumns;
        this.heads = List.copyOf(heads);
    }

    /** A row; {@link #NONE} for what is missing. */
    void row(List<String> cells) {
        if (cells.size() != heads.size()) {
            throw new IllegalArgumentException(cells.size() + " cells, expected " + heads.size());
        }
        rows.add(List.copyOf(cells));
    }

    /** Writes heads and rows. */
    void write(Page page) {
        List<Integer> shown = new ArrayList<>();
        for (int column = 0; column < heads.size(); column++) {
            int each = column;
            if (rows.stream().anyMatch(row -> !row.get(each).equals(NONE))) {
                shown.add(column);
            }
        }
        int[] widths = IntStream.range(0, heads.size()).map(this::width).toArray();
        int columns = INDENT.length() + (shown.size() - 1) * WIDE_GAP.length();
        for (int column : shown) {
            columns += widths[column];
        }
        String gap = columns <= Page.WIDTH ? WIDE_GAP : NARROW_GAP;
        write(page, heads, shown, widths, gap);
        rows.forEach(row -> write(page, row, shown, widths, gap));
    }

    private void write(Page page, List<String> cells, List<Integer> shown, int[] widths, String gap) {
        StringBuilder line = new StringBuilder(INDENT);
        for (int column : shown) {
            String cell = cells.get(column);
            line.append(line.length() == INDENT.length() ? "" : gap)
                    .append(
                            column < leftColumns
                                    ? Page.padRight(cell, widths[column])
                                    : Page.padLeft(cell, widths[column]));
        }
        page.row(line.toString());
    }

    private int width(int column) {
        int width = Page.columns(heads.get(column));
        for (List<String> row : rows) {
            width = Math.max(width, Page.columns(row.get(column)));
        }
        return width;
    }
}
