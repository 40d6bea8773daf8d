package io.github.wattledger.cli.report.html;

import io.github.wattledger.RideReview;
import io.github.wattledger.RideSplits;
import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.PriceEnds;
import io.github.wattledger.cli.report.words.SplitWords;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.load.StretchLoad;
import io.github.wattledger.pacing.price.LostTime;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The parts of a ride as the rows of a table, without the columns in which no part has a number.
 *
 * @param title what it splits the ride by
 * @param isPrinted whether it is printed, too
 * @param heads the heads of the columns
 * @param rows a cell for each head; the first names the row
 */
public record SplitTable(String title, boolean isPrinted, List<Head> heads, List<List<Num>> rows) {
    /**
     * The head of a column.
     *
     * @param words what is in it
     * @param isForemost whether a telephone shows it without scrolling
     */
    public record Head(String words, boolean isForemost) {}

    /** The minutes lost in a part, the end for the same energy first; nothing where no mistake was priced. */
    static List<Num> lost(@Nullable LostTime lost, RideSplits.Split split, String path) {
        if (lost == null) {
            return List.of();
        }
        Num low = Num.of(path + "lostLowMinutes", split.lostLowMinutes(), SplitTable::tenths, "");
        Num high = Num.of(path + "lostHighMinutes", split.lostHighMinutes(), SplitTable::tenths, "");
        return PriceEnds.of(lost.lowEnd()).isHighFirst() ? List.of(high, low) : List.of(low, high);
    }

    /** The heads of {@link #lost}. */
    static List<String> lostHeads(@Nullable LostTime lost) {
        return lost == null
                ? List.of()
                : PriceEnds.of(lost.lowEnd()).names().stream()
                        .map(end -> "lost, " + end)
                        .toList();
    }

    private static String tenths(double value) {
        return Figures.decimal(value, 1);
    }

    /** Puts a table together, row by row. */
    static final class Builder {
        private final RideReview review;
        private final Units units;
        private final int foremost;
        private final List<String> heads = new ArrayList<>();
        private final List<List<Num>> rows = new ArrayList<>();

        /**
         * Begins a table.
         *
         * @param units in which lengths and speeds are shown
         * @param first the heads before the power, which a telephone shows without scrolling
         * @param more the heads after the minutes lost
         */
        Builder(RideReview review, Units units, List<String> first, List<String> more) {
            this.review = review;
            this.units = units;
            List<String> numbers = SplitWords.of(review, units).heads();
            heads.addAll(first);
            heads.add(numbers.get(0));
            heads.addAll(lostHeads(review.pacing().lost()));
            this.foremost = heads.size();
            heads.addAll(more);
            heads.addAll(numbers.subList(1, numbers.size()));
        }

        /** Adds a row; its first and further cells stand under the heads of the same names. */
        void row(String path, RideSplits.Split split, List<Num> first, List<Num> more) {
            List<Num> numbers = numbers(path, split.load());
            List<Num> row = new ArrayList<>(first);
            row.add(numbers.get(0));
            row.addAll(lost(review.pacing().lost(), split, path));
            row.addAll(more);
            row.addAll(numbers.subList(1, numbers.size()));
            rows.add(row);
        }

        /** The table of the rows so far. */
        SplitTable build(String title, boolean isPrinted) {
            List<Integer> columns = new ArrayList<>();
            for (int column = 0; column < heads.size(); column++) {
                int each = column;
                if (rows.stream().anyMatch(row -> !row.get(each).text().isEmpty())) {
                    columns.add(column);
                }
            }
            return new SplitTable(
                    title,
                    isPrinted,
                    columns.stream()
                            .map(column -> new Head(heads.get(column), column < foremost))
                            .toList(),
                    rows.stream()
                            .map(row -> columns.stream().map(row::get).toList())
                            .toList());
        }

        /** The numbers in the order of {@link SplitWords#heads}. */
        private List<Num> numbers(String path, StretchLoad load) {
            Double normalized = load.normalizedPowerW();
            Double target = review.pacing().targetW();
            return List.of(
                    whole(path + "averagePowerW", load.averagePowerW()),
                    whole(path + "normalizedPowerW", normalized),
                    Num.inWords(
                            normalized == null || target == null ? "" : Figures.fractionAsPercent(normalized / target)),
                    whole(path + "averageHeartRateBpm", load.averageHeartRateBpm()),
                    Num.of(
                            path + "averageSpeedMps",
                            load.averageSpeedMps(),
                            mps -> units.speed().number(mps, 1),
                            ""),
                    Num.of(
                            path + "averageTemperatureC",
                            load.averageTemperatureC(),
                            celsius -> units.temperature().number(celsius, 0),
                            ""),
                    load.standingSeconds() == 0
                            ? Num.inWords("")
                            : Num.of(path + "standingSeconds", (double) load.standingSeconds(), Figures::clock));
        }

        private static Num whole(String path, @Nullable Double value) {
            return Num.of(path, value, number -> Figures.decimal(number, 0), "");
        }
    }
}
