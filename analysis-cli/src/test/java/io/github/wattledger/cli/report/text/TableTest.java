package io.github.wattledger.cli.report.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class TableTest {
    private static String written(Table table) {
        Page page = new Page();
        table.write(page);
        return page.toString();
    }

    /** Columns once ran together where a value was as wide as its column: "6.6 %13.4 to 13.4 min". */
    @Test
    void columnsNeverRunTogether() {
        Table table = new Table(1, List.of("day", "decoupling", "cost"));
        table.row(List.of("2026-06-14", "6.6 %", "13.4 to 13.4 min"));
        table.row(List.of("2026-06-15", "-20.5 %", "7 min"));
        assertThat(written(table)).isEqualTo("""
                          day         decoupling              cost
                          2026-06-14       6.6 %  13.4 to 13.4 min
                          2026-06-15     -20.5 %             7 min
                        """);
    }

    @Test
    void aColumnInWhichNothingStandsIsLeftOut() {
        Table table = new Table(1, List.of("km", "bpm", "W"));
        table.row(List.of("1", Table.NONE, "200"));
        table.row(List.of("2", Table.NONE, Table.NONE));
        assertThat(written(table)).isEqualTo("  km    W\n  1   200\n  2     -\n");
    }

    /** 2 + 38 + 1 + 39 columns are 80: there is room for a gap of one. */
    @Test
    void theGapGivesWayBeforeTheLineIsTooLong() {
        Table table = new Table(1, List.of("a", "b"));
        table.row(List.of("x".repeat(38), "y".repeat(39)));
        assertThat(written(table)).contains("  " + "x".repeat(38) + " " + "y".repeat(39) + "\n");
    }
}
