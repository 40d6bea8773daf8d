package io.github.wattledger.cli.report.html;

import io.github.wattledger.cli.report.words.ComparisonWords;
import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.PlainText;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.compare.CourseComparison;
import io.github.wattledger.compare.CourseComparison.Side;
import io.github.wattledger.compare.CourseComparison.Stretch;
import io.github.wattledger.compare.RideComparison;
import io.github.wattledger.ride.Channel;
import java.util.ArrayList;
import java.util.List;

/**
 * Everything the template of a comparison shows.
 *
 * @param frame what every page has
 * @param place what stands before a place on the course
 * @param title who was ahead, or that there are several
 * @param rides the rides with their numbers
 * @param others each of the others against the first
 */
public record ComparisonPage(Frame frame, String place, String title, List<String> rides, List<Other> others) {
    /** The gap is shown in numbers every so many points, 5 km. */
    private static final int POINTS_A_ROW = 50;

    /**
     * A ride against the first.
     *
     * @param number its number
     * @param outcome who was ahead, in a sentence
     * @param basis how it was compared, in a sentence
     * @param parts what the gap is made of
     * @param total the gap itself
     * @param moving the gap of the time under way
     * @param drawn gap, power, heart rate and altitude along the course
     * @param bars what each stretch cost
     * @param notes what is missing
     * @param stretches the stretches
     * @param gaps the gap in numbers
     * @param apart what was not ridden by both
     */
    public record Other(
            int number,
            String outcome,
            String basis,
            List<Part> parts,
            Num total,
            Num moving,
            Markup drawn,
            Markup bars,
            boolean hasPower,
            boolean hasHeartRate,
            boolean hasApart,
            List<String> notes,
            List<Row> stretches,
            List<Gap> gaps,
            List<Missing> apart) {}

    /** A part of the gap. */
    public record Part(String label, Num seconds) {}

    /** A stretch. */
    public record Row(
            String ground,
            Num from,
            Num to,
            Num grade,
            Num apart,
            boolean isWhole,
            Num lost,
            Num lostMoving,
            Numbers first,
            Numbers other) {}

    /** What one ride did on a stretch. */
    public record Numbers(Num elapsed, Num moving, Num power, Num heartRate) {}

    /** The gap at a point. */
    public record Gap(String place, Num elapsed, Num moving) {}

    /** A stretch that was not ridden by both. */
    public record Missing(Num from, Num to, String words) {}

    static ComparisonPage of(RideComparison comparison, Units units) {
        List<String> rides = new ArrayList<>();
        List<Other> others = new ArrayList<>();
        rides.add(ComparisonWords.ride(1, comparison.reference().source()));
        for (int i = 0; i < comparison.others().size(); i++) {
            RideComparison.Against other = comparison.others().get(i);
            rides.add(ComparisonWords.ride(i + 2, other.compared().source()));
            others.add(other(comparison, other, i + 2, "others[" + i + "].", units));
        }
        String title =
                others.size() == 1 ? headline(comparison.course()) : (others.size() + 1) + " rides over one course";
        return new ComparisonPage(Frame.still(title), units.place(), title, rides, others);
    }

    private static String headline(CourseComparison comparison) {
        double gap = comparison.finalGapSeconds();
        String time = ComparisonWords.unsigned(gap);
        return Math.round(gap) == 0 ? "Level" : "Ride 2: " + time + (gap > 0 ? " behind" : " ahead");
    }

    private static Other other(RideComparison all, RideComparison.Against other, int number, String path, Units units) {
        CourseComparison comparison = other.comparison();
        List<Part> parts = ComparisonWords.parts(comparison).stream()
                .map(part -> new Part(
                        PlainText.capital(part.label()),
                        Num.of(path + "gap." + part.id(), part.seconds(), ComparisonWords::signed)))
                .toList();
        List<Row> stretches = new ArrayList<>();
        for (int i = 0; i < comparison.stretches().size(); i++) {
            stretches.add(row(comparison.stretches().get(i), path + "stretches[" + i + "].", units));
        }
        List<String> notes = new ArrayList<>();
        for (Channel channel : new Channel[] {Channel.POWER, Channel.HEART_RATE}) {
            String missing = ComparisonWords.missing(all, number, channel);
            if (!missing.isEmpty()) {
                notes.add(missing);
            }
        }
        ComparisonDrawing drawing = new ComparisonDrawing(all, other, number, units);
        return new Other(
                number,
                ComparisonWords.outcome(number, comparison, units),
                ComparisonWords.basis(comparison, units),
                parts,
                Num.of(path + "gap.elapsedSeconds", comparison.finalGapSeconds(), ComparisonWords::signed),
                Num.of(path + "gap.movingSeconds", comparison.finalMovingGapSeconds(), ComparisonWords::signed),
                drawing.alongTheCourse(),
                drawing.stretches(),
                drawing.has(Channel.POWER),
                drawing.has(Channel.HEART_RATE),
                !comparison.apart().isEmpty(),
                notes,
                stretches,
                gaps(comparison, path, units),
                apart(comparison, number, path, units));
    }

    private static List<Missing> apart(CourseComparison comparison, int number, String path, Units units) {
        List<Missing> apart = new ArrayList<>();
        for (int i = 0; i < comparison.apart().size(); i++) {
            CourseComparison.Apart each = comparison.apart().get(i);
            apart.add(new Missing(
                    Num.of(path + "apart[" + i + "].startM", each.startM(), units::distance),
                    Num.of(path + "apart[" + i + "].endM", each.endM(), units::distance),
                    ComparisonWords.reason(number, each)));
        }
        return apart;
    }

    private static Row row(Stretch stretch, String path, Units units) {
        Double grade = stretch.meanGrade();
        return new Row(
                stretch.ground().words(),
                Num.of(path + "startM", stretch.startM(), units::distance),
                Num.of(path + "endM", stretch.endM(), units::distance),
                Num.of(
                        path + "meanGradePercent",
                        grade == null ? null : grade * 100,
                        value -> Figures.decimal(value, 1) + " %",
                        "no altitude"),
                Num.of(path + "apartM", stretch.apartM(), units::distanceWords),
                stretch.apartM() == 0,
                Num.of(path + "lostSeconds", stretch.lostSeconds(), ComparisonWords::signed),
                Num.of(path + "lostMovingSeconds", stretch.lostMovingSeconds(), ComparisonWords::signed),
                numbers(stretch.reference(), path + "reference."),
                numbers(stretch.other(), path + "other."));
    }

    private static Numbers numbers(Side side, String path) {
        return new Numbers(
                Num.of(path + "elapsedSeconds", side.elapsedSeconds(), Figures::clock),
                Num.of(path + "movingSeconds", side.movingSeconds(), Figures::clock),
                Num.of(path + "averagePowerW", side.averagePowerW(), Figures::watts, "no power"),
                Num.of(path + "averageHeartRateBpm", side.averageHeartRateBpm(), Figures::beats, "no heart rate"));
    }

    private static List<Gap> gaps(CourseComparison comparison, String path, Units units) {
        List<Gap> gaps = new ArrayList<>();
        int point = comparison.fromPoint();
        while (point < comparison.toPoint()) {
            gaps.add(gap(comparison, path, point, units));
            point += POINTS_A_ROW;
        }
        gaps.add(gap(comparison, path, comparison.toPoint(), units));
        return gaps;
    }

    private static Gap gap(CourseComparison comparison, String path, int point, Units units) {
        return new Gap(
                units.distance(comparison.distanceM(point)),
                Num.of(
                        path + "gapSeconds[" + point + "]",
                        comparison.gapSeconds().get(point),
                        ComparisonWords::signed),
                Num.of(
                        path + "movingGapSeconds[" + point + "]",
                        comparison.movingGapSeconds().get(point),
                        ComparisonWords::signed));
    }
}
