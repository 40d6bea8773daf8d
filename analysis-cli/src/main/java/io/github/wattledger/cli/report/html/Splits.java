package io.github.wattledger.cli.report.html;

import io.github.wattledger.RideReview;
import io.github.wattledger.RideSplits;
import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.SplitWords;
import io.github.wattledger.cli.report.words.Units;
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
    static Splits of(RideReview review, RideSplits splits, Units units) {
        SplitWords words = SplitWords.of(review, units);
        List<SplitTable> tables = new ArrayList<>();
        if (SplitWords.anyHours(splits)) {
            tables.add(hours(review, splits.hours(), units));
        }
        if (!splits.sections().isEmpty()) {
            tables.add(sections(review, splits.sections(), units));
        }
        if (!splits.laps().isEmpty()) {
            tables.add(laps(review, splits.laps(), units));
        }
        List<String> notes = new ArrayList<>();
        if (!tables.isEmpty() && !words.legend().isEmpty()) {
            notes.add(words.legend());
        }
        notes.addAll(tables.isEmpty() ? List.of() : words.lostMeans());
        return new Splits(tables, words.mostLost(splits), notes);
    }

    private static SplitTable hours(RideReview review, List<RideSplits.Split> hours, Units units) {
        SplitTable.Builder table = new SplitTable.Builder(
                review, units, List.of("from"), List.of(units.distance().symbol()));
        for (int i = 0; i < hours.size(); i++) {
            String path = "splits.hours[" + i + "].";
            RideSplits.Split hour = hours.get(i);
            table.row(
                    path,
                    hour,
                    List.of(clock(path + "fromSecond", hour.load().when().fromSecond())),
                    List.of(distance(path, hour, units)));
        }
        return table.build("Hour by hour, elapsed time", true);
    }

    private static SplitTable sections(RideReview review, List<RideSplits.Section> sections, Units units) {
        SplitTable.Builder table = new SplitTable.Builder(
                review,
                units,
                List.of(
                        "from " + units.distance().symbol(),
                        "to " + units.distance().symbol(),
                        "ground"),
                List.of("grade"));
        for (int i = 0; i < sections.size(); i++) {
            String path = "splits.sections[" + i + "].";
            RideSplits.Section section = sections.get(i);
            table.row(
                    path,
                    section.split(),
                    List.of(
                            Num.of(path + "startM", section.startM(), units::distance),
                            Num.of(path + "endM", section.endM(), units::distance),
                            Num.inWords(SplitWords.road(section))),
                    List.of(Num.fine(
                            path + "meanGrade",
                            section.meanGrade(),
                            grade -> Figures.decimal(grade * 100, 1) + " %",
                            "")));
        }
        return table.build("Section by section, where on the course", false);
    }

    private static SplitTable laps(RideReview review, List<RideSplits.Split> laps, Units units) {
        SplitTable.Builder table = new SplitTable.Builder(
                review,
                units,
                List.of("lap", "time"),
                List.of("from", units.distance().symbol()));
        for (int i = 0; i < laps.size(); i++) {
            String path = "splits.laps[" + i + "].";
            RideSplits.Split lap = laps.get(i);
            Interval when = lap.load().when();
            table.row(
                    path,
                    lap,
                    List.of(Num.inWords(String.valueOf(i + 1)), Num.inWords(Figures.clock(when.seconds()))),
                    List.of(clock(path + "fromSecond", when.fromSecond()), distance(path, lap, units)));
        }
        return table.build("Lap by lap, as the recorder marked them", false);
    }

    private static Num clock(String path, int second) {
        return Num.of(path, (double) second, Figures::clock);
    }

    private static Num distance(String path, RideSplits.Split split, Units units) {
        return Num.of(path + "distanceM", split.load().distanceM(), units::distance, "");
    }
}
