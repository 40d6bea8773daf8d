package io.github.wattledger.cli.report.text;

import io.github.wattledger.RideReview;
import io.github.wattledger.RideSplits;
import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.SplitWords;
import io.github.wattledger.cli.report.words.Units;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A ride hour by hour, section by section and lap by lap, in tables. */
final class TextSplits {
    private final Page page;
    private final SplitWords words;
    private final Units units;

    private TextSplits(Page page, SplitWords words, Units units) {
        this.page = page;
        this.words = words;
        this.units = units;
    }

    /** Writes the tables, each under its heading, as far as there is something to show. */
    static void write(Page page, RideReview review, RideSplits splits, Units units) {
        TextSplits text = new TextSplits(page, SplitWords.of(review, units), units);
        text.hours(splits);
        text.sections(splits);
        text.laps(splits);
    }

    private void hours(RideSplits splits) {
        if (!SplitWords.anyHours(splits)) {
            return; // The load of the whole says the same, or there is nothing to say.
        }
        page.heading("HOUR BY HOUR, elapsed time");
        Table table = table(1, "from", units.distance().symbol());
        for (RideSplits.Split hour : splits.hours()) {
            row(table, hour, Figures.clock(hour.load().when().fromSecond()), distance(hour));
        }
        table.write(page);
        legend();
        words.lostMeans().forEach(page::line);
    }

    private void legend() {
        if (!words.legend().isEmpty()) {
            page.line(words.legend());
        }
    }

    private void sections(RideSplits splits) {
        if (splits.sections().isEmpty()) {
            return;
        }
        page.heading("SECTION BY SECTION, where on the course");
        Table table = table(2, units.distance().symbol(), "ground");
        for (RideSplits.Section section : splits.sections()) {
            row(table, section.split(), units.distances(section.startM(), section.endM()), SplitWords.ground(section));
        }
        table.write(page);
        String most = words.mostLost(splits);
        if (!most.isEmpty()) {
            page.line(most);
        }
    }

    private void laps(RideSplits splits) {
        if (splits.laps().isEmpty()) {
            return;
        }
        page.heading("LAPS, as the recorder marked them");
        Table table = table(0, "lap", "from", "time", units.distance().symbol());
        int number = 0;
        for (RideSplits.Split lap : splits.laps()) {
            number++;
            row(
                    table,
                    lap,
                    String.valueOf(number),
                    Figures.clock(lap.load().when().fromSecond()),
                    Figures.clock(lap.load().when().seconds()),
                    distance(lap));
        }
        table.write(page);
    }

    private Table table(int leftColumns, String... first) {
        List<String> heads = new ArrayList<>(List.of(first));
        heads.addAll(words.heads());
        heads.add("lost");
        return new Table(leftColumns, heads);
    }

    private void row(Table table, RideSplits.Split split, String... first) {
        List<String> cells = new ArrayList<>(List.of(first));
        words.numbers(split.load()).forEach(number -> cells.add(orNone(number)));
        cells.add(orNone(words.lost(split)));
        table.row(cells);
    }

    private String distance(RideSplits.Split split) {
        Double metres = split.load().distanceM();
        return metres == null ? Table.NONE : units.distance(metres);
    }

    private static String orNone(@Nullable String cell) {
        return cell == null ? Table.NONE : cell;
    }
}
