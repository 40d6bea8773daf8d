package io.github.wattledger.clean;

/** What the repairs do with a column of seconds. */
final class Columns {
    private Columns() {}

    /** The rows that have a value, ascending. */
    static int[] measuredRows(double[] column) {
        int count = 0;
        for (double value : column) {
            count += Double.isNaN(value) ? 0 : 1;
        }
        int[] rows = new int[count];
        int next = 0;
        for (int row = 0; row < column.length; row++) {
            if (!Double.isNaN(column[row])) {
                rows[next++] = row;
            }
        }
        return rows;
    }

    /**
     * Writes new values into the kept rows, and between them straight lines into the rows that were measured and not
     * kept; before the first and after the last kept row its value.
     */
    static void replace(double[] column, int[] measured, int[] kept, double[] values) {
        int next = 0;
        for (int row : measured) {
            while (next < kept.length && kept[next] < row) {
                next++;
            }
            if (next < kept.length && kept[next] == row) {
                column[row] = values[next];
            } else if (kept.length == 0) {
                column[row] = Double.NaN;
            } else if (next == 0 || next == kept.length) {
                column[row] = values[Math.min(next, kept.length - 1)];
            } else {
                double share = (row - kept[next - 1]) / (double) (kept[next] - kept[next - 1]);
                column[row] = values[next - 1] + share * (values[next] - values[next - 1]);
            }
        }
    }
}
