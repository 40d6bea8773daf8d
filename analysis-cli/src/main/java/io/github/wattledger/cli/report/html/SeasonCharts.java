package io.github.wattledger.cli.report.html;

import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.season.BestEfforts;
import io.github.wattledger.season.LoadHistory;
import io.github.wattledger.season.PeriodTotals;
import io.github.wattledger.season.ThresholdCheck;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The drawings of a season's page. */
final class SeasonCharts {
    private static final int TALL = 230;
    private static final int LOW = 150;
    private static final int TOP = 20;
    private static final int FOOT = 26;
    private static final int[] FEET = {1, 5, 30, 60, 300, 1200, 3600, 7200, 4 * 3600, 8 * 3600, 15 * 3600};

    private SeasonCharts() {}

    /** The loads of 7 and of 42 days, with the stress of each day as a bar. */
    static Markup load(LoadHistory load) {
        List<LoadHistory.Day> days = load.days();
        LocalDate first = days.get(0).day();
        LocalDate last = days.get(days.size() - 1).day();
        double mostLoad = 1;
        double mostStress = 1;
        double[] xs = new double[days.size()];
        double[] load7Days = new double[days.size()];
        double[] load42Days = new double[days.size()];
        for (int i = 0; i < days.size(); i++) {
            LoadHistory.Day day = days.get(i);
            xs[i] = day.day().toEpochDay() + 1.0;
            load7Days[i] = day.load7Days();
            load42Days[i] = day.load42Days();
            mostLoad = Math.max(mostLoad, Math.max(day.load7Days(), day.load42Days()));
            mostStress = Math.max(mostStress, day.trainingStress());
        }
        int second = TOP + TALL + TOP;
        Svg svg = Plot.begin(
                second + LOW / 2 + FOOT,
                "Load over time",
                "The loads of 7 and of 42 days day by day, and the training stress of each day; the numbers are in the table"
                        + " below it.");
        Scale time = Days.scale(first, last);
        new Plot(svg, TOP, TALL, time, Scale.fromZero(mostLoad))
                .levels(4, value -> Figures.decimal(value, 0))
                .name("Load, training stress a day")
                .between("load-gap", xs, load7Days, load42Days)
                .line("load-7", xs, load7Days)
                .line("load-42", xs, load42Days);
        Plot stress = new Plot(svg, second, LOW / 2, time, Scale.fromZero(mostStress));
        stress.levels(2, value -> Figures.decimal(value, 0)).name("Training stress of each day");
        for (LoadHistory.Day day : days) {
            if (day.trainingStress() > 0) {
                double from = day.day().toEpochDay();
                stress.bar("stress", from + 0.1, from + 0.9, 0, day.trainingStress());
            }
        }
        Days.foot(stress, first, last);
        return svg.close("svg").done();
    }

    /** The stress of each week as a bar, and the hours as a line of strokes. */
    static Markup weeks(List<PeriodTotals> weeks) {
        LocalDate first = weeks.get(0).from();
        LocalDate last = weeks.get(weeks.size() - 1).to().minusDays(1);
        double mostStress = 1;
        double mostHours = 1;
        for (PeriodTotals week : weeks) {
            Double stress = week.trainingStress();
            mostStress = stress == null ? mostStress : Math.max(mostStress, stress);
            mostHours = Math.max(mostHours, week.movingSeconds() / 3600.0);
        }
        int second = TOP + LOW + TOP;
        Svg svg = Plot.begin(
                second + LOW / 2 + FOOT,
                "Week by week",
                "Training stress and moving hours of each week; the numbers are in the table below it.");
        Scale time = Days.scale(first, last);
        Plot stressPlot = new Plot(svg, TOP, LOW, time, Scale.fromZero(mostStress));
        stressPlot.levels(3, value -> Figures.decimal(value, 0)).name("Training stress a week");
        Plot hoursPlot = new Plot(svg, second, LOW / 2, time, Scale.fromZero(mostHours));
        hoursPlot.levels(2, Figures::brief).name("Moving time a week, h");
        for (PeriodTotals week : weeks) {
            double from = week.from().toEpochDay() + 0.6;
            double to = week.to().toEpochDay() - 0.6;
            Double stress = week.trainingStress();
            if (stress != null && stress > 0) {
                stressPlot.bar("stress", from, to, 0, stress);
            }
            if (week.movingSeconds() > 0) {
                hoursPlot.bar("hours", from, to, 0, week.movingSeconds() / 3600.0);
            }
        }
        Days.foot(hoursPlot, first, last);
        return svg.close("svg").done();
    }

    /** The bests of the season and of its last days, with the threshold and what they imply of it. */
    static Markup bests(BestEfforts all, @Nullable BestEfforts recent, @Nullable ThresholdCheck check) {
        double longest = 2;
        double most = 1;
        for (BestEfforts.Effort effort : all.efforts()) {
            longest = Math.max(longest, effort.seconds());
            most = Math.max(most, effort.watts());
        }
        Svg svg = Plot.begin(
                TOP + TALL + FOOT,
                "Best efforts",
                "Best mean power by duration on a logarithmic axis of time; the numbers are in the table below it.");
        Plot plot = new Plot(svg, TOP, TALL, Scale.logarithmic(1, longest), Scale.fromZero(most));
        plot.levels(4, value -> Figures.decimal(value, 0)).name("Best mean power, W");
        if (check != null && check.inForceW() != null) {
            plot.rule("threshold", check.inForceW());
        }
        if (check != null && check.impliedW() != null) {
            plot.rule("guide", check.impliedW());
        }
        efforts(plot, "power", all);
        for (BestEfforts.Effort effort : all.efforts()) {
            plot.dot("best-dot", effort.seconds(), effort.watts(), 3.2);
        }
        if (recent != null) {
            for (BestEfforts.Effort effort : recent.efforts()) {
                plot.dot("recent-dot", effort.seconds(), effort.watts(), 5.5);
            }
        }
        for (int i = 0; i < FEET.length; i++) {
            if (FEET[i] <= longest) {
                plot.foot(FEET[i], Figures.duration(FEET[i]), i % 2 == 1);
            }
        }
        return svg.close("svg").done();
    }

    private static void efforts(Plot plot, String style, BestEfforts efforts) {
        double[] xs = efforts.efforts().stream()
                .mapToDouble(BestEfforts.Effort::seconds)
                .toArray();
        double[] ys = efforts.efforts().stream()
                .mapToDouble(BestEfforts.Effort::watts)
                .toArray();
        plot.line(style, xs, ys);
    }
}
