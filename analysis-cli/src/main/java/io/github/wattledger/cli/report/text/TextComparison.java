package io.github.wattledger.cli.report.text;

import io.github.wattledger.cli.report.words.ComparisonWords;
import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.compare.CourseComparison;
import io.github.wattledger.compare.CourseComparison.Side;
import io.github.wattledger.compare.CourseComparison.Stretch;
import io.github.wattledger.compare.RideComparison;
import io.github.wattledger.ride.Channel;
import java.io.IOException;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** A comparison, for people: at most 80 columns, who was ahead first, then where and why. */
public final class TextComparison {
    private static final int LABEL = 18;
    private static final int GAPS = 10;

    private final Units units;

    /** A report in these units. */
    public TextComparison(Units units) {
        this.units = units;
    }

    /**
     * Writes a comparison.
     *
     * @param comparison what to show
     * @param out where the characters go; lines end with a line feed on every system
     * @throws IOException when {@code out} fails
     */
    public void write(RideComparison comparison, Appendable out) throws IOException {
        Page page = new Page();
        for (int i = 0; i < comparison.others().size(); i++) {
            page.paragraph(
                    ComparisonWords.outcome(i + 2, comparison.others().get(i).comparison(), units));
        }
        page.blank();
        page.line(ComparisonWords.ride(1, comparison.reference().source()));
        for (int i = 0; i < comparison.others().size(); i++) {
            page.line(ComparisonWords.ride(
                    i + 2, comparison.others().get(i).compared().source()));
        }
        for (int i = 0; i < comparison.others().size(); i++) {
            other(page, comparison, i + 2);
        }
        out.append(page.toString());
    }

    private void other(Page page, RideComparison all, int number) {
        CourseComparison comparison = all.others().get(number - 2).comparison();
        page.heading("RIDE " + number + " AGAINST RIDE 1; + is lost by ride " + number + ", - is won by it");
        page.line(ComparisonWords.basis(comparison, units));
        for (ComparisonWords.Part part : ComparisonWords.parts(comparison)) {
            page.row("  " + Page.padRight(part.label(), LABEL)
                    + Page.padLeft(ComparisonWords.signed(part.seconds()), 9));
        }
        page.row("  " + Page.padRight("in all", LABEL)
                + Page.padLeft(ComparisonWords.signed(comparison.finalGapSeconds()), 9));
        page.heading("THE GAP OF RIDE " + number + " ALONG THE COURSE; + is behind, - is ahead");
        gaps(page, comparison);
        page.heading("STRETCHES, ride 1 / ride " + number);
        page.row("  " + Page.padRight(units.place() + " of ride 1", 16) + Page.padRight("ground", 17)
                + Page.padLeft("grade", 7) + Page.padLeft("lost", 9) + Page.padLeft("power, W", 13)
                + Page.padLeft("heart, bpm", 13));
        for (Stretch stretch : comparison.stretches()) {
            page.row("  " + Page.padRight(units.distances(stretch.startM(), stretch.endM()), 16)
                    + Page.padRight(stretch.ground().words(), 17)
                    + Page.padLeft(grade(stretch.meanGrade()), 7)
                    + Page.padLeft(ComparisonWords.signed(stretch.lostSeconds()), 9)
                    + Page.padLeft(both(stretch, Side::averagePowerW), 13)
                    + Page.padLeft(both(stretch, Side::averageHeartRateBpm), 13));
        }
        for (Channel channel : new Channel[] {Channel.POWER, Channel.HEART_RATE}) {
            String missing = ComparisonWords.missing(all, number, channel);
            if (!missing.isEmpty()) {
                page.line(missing);
            }
        }
        if (!comparison.apart().isEmpty()) {
            page.heading("NOT SHARED");
            comparison.apart().forEach(apart -> page.line(ComparisonWords.apart(number, apart, units)));
        }
    }

    private void gaps(Page page, CourseComparison comparison) {
        int points = comparison.toPoint() - comparison.fromPoint();
        for (int part = 1; part <= GAPS; part++) {
            int point = comparison.fromPoint() + points * part / GAPS;
            double gap = comparison.gapSeconds().get(point);
            double moving = comparison.movingGapSeconds().get(point);
            page.row("  " + Page.padRight(units.at(comparison.distanceM(point)), LABEL)
                    + (Double.isNaN(gap)
                            ? "   not known"
                            : Page.padLeft(ComparisonWords.signed(gap), 9) + "   without stops "
                                    + Page.padLeft(ComparisonWords.signed(moving), 9)));
        }
    }

    private static String grade(@Nullable Double grade) {
        return grade == null ? "-" : Figures.decimal(grade * 100, 1) + " %";
    }

    private static String both(Stretch stretch, Function<Side, @Nullable Double> number) {
        return whole(number.apply(stretch.reference())) + " / " + whole(number.apply(stretch.other()));
    }

    private static String whole(@Nullable Double value) {
        return value == null ? "-" : Figures.decimal(value, 0);
    }
}
