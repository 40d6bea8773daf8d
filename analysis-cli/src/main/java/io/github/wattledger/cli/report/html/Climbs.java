package io.github.wattledger.cli.report.html;

import io.github.wattledger.RideDetail;
import io.github.wattledger.RideReview;
import io.github.wattledger.RideSplits;
import io.github.wattledger.cli.report.words.ClimbWords;
import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.ReportUnit;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.course.Climb;
import io.github.wattledger.course.ClimbReview;
import io.github.wattledger.pacing.price.LostTime;
import io.github.wattledger.power.SustainablePower;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The climbs beside one another.
 *
 * @param drawn mean power of each over where it lies, or null without climbs or power
 * @param lostHeads the heads of the minutes lost, or nothing where no mistake was priced
 * @param rows the climbs in the order in which they were ridden
 * @param otherwise why there are none, or empty
 */
public record Climbs(@Nullable Markup drawn, List<String> lostHeads, List<Row> rows, String otherwise) {
    private static final int HEIGHT = 170;

    /** The share of the width that a number of two figures takes, and the one that it takes on a telephone. */
    private static final double ROOM = 0.026;

    private static final double ROOM_ON_A_TELEPHONE = 0.065;

    /**
     * A climb.
     *
     * @param where from which distance to which
     * @param gain altitude gained
     * @param grade mean grade, percent
     * @param steepest steepest grade, percent
     * @param time moving time
     * @param power mean power
     * @param perKg watts per kilogram of the rider
     * @param heartRate mean heart rate
     * @param vertical altitude gained in an hour
     * @param lost the minutes lost on it, a number for each head
     * @param again how it compares with the first time on the same road, or empty
     */
    public record Row(
            String where,
            Num gain,
            Num grade,
            Num steepest,
            Num time,
            Num power,
            Num perKg,
            Num heartRate,
            Num vertical,
            List<Num> lost,
            String again) {}

    static Climbs of(RideReview review, RideDetail detail, RideSplits splits, Units units) {
        List<ClimbReview> climbs = review.climbs();
        if (climbs == null) {
            return new Climbs(
                    null, List.of(), List.of(), "Not looked for: there is no altitude, or no distance, in this file.");
        }
        if (climbs.isEmpty()) {
            return new Climbs(
                    null, List.of(), List.of(), "There is none: a climb is " + ClimbWords.whatCounts(units) + ".");
        }
        LostTime lost = review.pacing().lost();
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < climbs.size(); i++) {
            List<Num> minutes = SplitTable.lost(lost, splits.climbs().get(i), "splits.climbs[" + i + "].");
            rows.add(row(climbs.get(i), "climbs[" + i + "].", minutes, units));
        }
        return new Climbs(draw(climbs, detail, units), SplitTable.lostHeads(lost), rows, "");
    }

    private static Row row(ClimbReview review, String path, List<Num> lost, Units units) {
        Climb climb = review.climb();
        return new Row(
                units.distances(climb.startM(), climb.endM()),
                Num.of(path + "gainM", climb.gainM(), units::heightWords),
                Num.tenths(path + "meanGradePercent", climb.meanGrade() * 100, " %"),
                Num.tenths(path + "steepestGradePercent", climb.steepestGrade() * 100, " %"),
                Num.of(path + "movingSeconds", (double) climb.movingSeconds(), Figures::clock),
                Num.of(path + "averagePowerW", climb.averagePowerW(), Figures::watts, "no power"),
                Num.of(path + "wattsPerKg", review.wattsPerKg(), value -> Figures.decimal(value, 2) + " W/kg"),
                Num.of(path + "averageHeartRateBpm", climb.averageHeartRateBpm(), Figures::beats, "no heart rate"),
                Num.of(
                        path + "verticalSpeedMPerHour",
                        climb.verticalSpeedMPerHour(),
                        value -> units.ascentRate().words(value, 0)),
                lost,
                ClimbWords.again(review));
    }

    private static @Nullable Markup draw(List<ClimbReview> climbs, RideDetail detail, Units units) {
        double most = 0;
        double lastM = 1;
        for (ClimbReview review : climbs) {
            Double watts = review.climb().averagePowerW();
            most = watts == null ? most : Math.max(most, watts);
            lastM = Math.max(lastM, review.climb().endM());
        }
        if (most == 0) {
            return null;
        }
        Svg svg = Plot.begin(
                HEIGHT + 46,
                "Mean power of each climb",
                "Each climb is a stroke where it lies on the course; the numbers are in the table.");
        SustainablePower sustainable = detail.sustainable();
        if (sustainable != null) {
            most = Math.max(most, sustainable.highW());
        }
        ReportUnit unit = units.distance();
        Scale along = Scale.linear(0, unit.of(lastM) * 1.02);
        Plot plot = new Plot(svg, 20, HEIGHT, along, Scale.fromZero(most * 1.08));
        if (sustainable != null) {
            plot.band("guide-band", sustainable.lowW(), sustainable.highW());
        }
        plot.levels(3, value -> Figures.decimal(value, 0)).name("Mean power of each climb, W, over " + unit.symbol());
        if (sustainable != null) {
            plot.rule("guide", sustainable.watts());
        }
        strokes(plot, climbs, unit, along.high());
        List<Double> ticks = along.ticks(8);
        for (int i = 0; i < ticks.size(); i++) {
            plot.foot(ticks.get(i), Figures.brief(ticks.get(i)), i % 2 == 1);
        }
        return svg.close("svg").done();
    }

    /** Each climb as a stroke at its mean power, with its number where there is room for one. */
    private static void strokes(Plot plot, List<ClimbReview> climbs, ReportUnit unit, double last) {
        double lastFine = Double.NEGATIVE_INFINITY;
        double lastCoarse = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < climbs.size(); i++) {
            Climb climb = climbs.get(i).climb();
            Double watts = climb.averagePowerW();
            if (watts == null) {
                continue;
            }
            double from = unit.of(climb.startM());
            double to = unit.of(climb.endM());
            plot.bar("climb-pillar", from, to, 0, watts).stroke("climb", from, to, watts);
            double middle = (from + to) / 2;
            boolean isCoarse = middle - lastCoarse >= last * ROOM_ON_A_TELEPHONE;
            if (isCoarse || middle - lastFine >= last * ROOM) {
                String style = isCoarse ? "climb-label" : "climb-label fine";
                plot.label(style, middle, watts, 0, -6, Integer.toString(i + 1));
                lastFine = middle;
                lastCoarse = isCoarse ? middle : lastCoarse;
            }
        }
    }
}
