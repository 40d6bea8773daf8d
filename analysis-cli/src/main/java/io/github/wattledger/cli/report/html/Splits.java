package io.github.wattledger.cli.report.html;

import io.github.wattledger.RideReview;
import io.github.wattledger.RideSplits;
import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.SplitWords;
import io.github.wattledger.ride.Interval;
import java.util.ArrayList;
import java.util.List;

/**
 * A ride hour by hour, section by section and lap by lap.
 *
 * @param tables the tables that have something to show
 * @param mostLost where on the course most was lost, a sentence, or empty
 * @param notes what the columns are
 */
public record Splits(List<SplitTable> tables, String mostLost, List<String> notes) {
    static Splits of(RideReview review, RideSplits splits) {
        SplitWords words = SplitWords.of(review);
        List<SplitTable> tables = new ArrayList<>();
        if (SplitWords.anyHours(splits)) {
            tables.add(hours(review, splits.hours()));
        }
        if (!splits.sections().isEmpty()) {
            tables.add(sections(review, splits.sections()));
        }
        if (!splits.laps().isEmpty()) {
            tables.add(laps(review, splits.laps()));
        }
        List<String> notes = new ArrayList<>();
        if (!tables.isEmpty() && !words.legend().isEmpty()) {
            notes.add(words.legend());
        }
        notes.addAll(tables.isEmpty() ? List.of() : words.lostMeans());
        return new Splits(tables, words.mostLost(splits), notes);
    }

    private static SplitTable hours(RideReview review, List<RideSplits.Split> hours) {
        SplitTable.Builder table = new SplitTable.Builder(review, List.of("from"), List.of("km"));
        for (int i = 0; i < hours.size(); i++) {
            String path = "splits.hours[" + i + "].";
            RideSplits.Split hour = hours.get(i);
            table.row(
                    path,
                    hour,
                    List.of(clock(path + "fromSecond", hour.load().when().fromSecond())),
                    List.of(kilometres(path, hour)));
        }
        return table.build("Hour by hour, elapsed time", true);
    }

    private static SplitTable sections(RideReview review, List<RideSplits.Section> sections) {
        SplitTable.Builder table =
                new SplitTable.Builder(review, List.of("from km", "to km", "ground"), List.of("grade"));
        for (int i = 0; i < sections.size(); i++) {
            String path = "splits.sections[" + i + "].";
            RideSplits.Section section = sections.get(i);
            table.row(
                    path,
                    section.split(),
                    List.of(
                            Num.of(path + "startM", section.startM(), Figures::kilometres),
                            Num.of(path + "endM", section.endM(), Figures::kilometres),
                            Num.inWords(SplitWords.road(section))),
                    List.of(Num.of(
                            path + "meanGrade",
                            section.meanGrade(),
                            grade -> Figures.decimal(grade * 100, 1) + " %",
                            "")));
        }
        return table.build("Section by section, where on the course", false);
    }

    private static SplitTable laps(RideReview review, List<RideSplits.Split> laps) {
        SplitTable.Builder table = new SplitTable.Builder(review, List.of("lap", "time"), List.of("from", "km"));
        for (int i = 0; i < laps.size(); i++) {
            String path = "splits.laps[" + i + "].";
            RideSplits.Split lap = laps.get(i);
            Interval when = lap.load().when();
            table.row(
                    path,
                    lap,
                    List.of(Num.inWords(String.valueOf(i + 1)), Num.inWords(Figures.clock(when.seconds()))),
                    List.of(clock(path + "fromSecond", when.fromSecond()), kilometres(path, lap)));
        }
        return table.build("Lap by lap, as the recorder marked them", false);
    }

    private static Num clock(String path, int second) {
        return Num.of(path, (double) second, Figures::clock);
    }

    private static Num kilometres(String path, RideSplits.Split split) {
        return Num.of(path + "distanceM", split.load().distanceM(), Figures::kilometres, "");
    }
}
