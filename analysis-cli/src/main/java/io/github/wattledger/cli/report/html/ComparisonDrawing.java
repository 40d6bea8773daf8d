package io.github.wattledger.cli.report.html;

import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.ReportUnit;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.compare.CourseComparison;
import io.github.wattledger.compare.CourseComparison.Stretch;
import io.github.wattledger.compare.RideComparison;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Series;
import java.util.Arrays;
import java.util.List;

/** The charts of one ride against the first, over distance. Ride 1 is a full line, the other a broken one. */
final class ComparisonDrawing {
    private static final int GAP = 190;
    private static final int CHANNEL = 110;
    private static final int GROUND = 70;
    private static final int BARS = 150;
    private static final int BETWEEN = 34;
    private static final int TOP = 20;
    private static final int FOOT = 24;
    private static final double SMOOTHED_M = 1000;

    /** Up to this the gap is drawn in seconds. */
    private static final double LONGEST_IN_SECONDS = 240;

    private final RideComparison all;
    private final RideComparison.Against other;
    private final CourseComparison comparison;
    private final int number;
    private final Units units;
    private final ReportUnit unit;
    private final Scale along;

    ComparisonDrawing(RideComparison all, RideComparison.Against other, int number, Units units) {
        this.all = all;
        this.other = other;
        this.number = number;
        comparison = other.comparison();
        this.units = units;
        unit = units.distance();
        along = Scale.linear(
                unit.of(comparison.distanceM(comparison.fromPoint())),
                unit.of(comparison.distanceM(comparison.toPoint())));
    }

    /** Whether a channel was measured in one of the two rides at least. */
    boolean has(Channel channel) {
        return all.reference().ride().has(channel) || other.compared().ride().has(channel);
    }

    Markup alongTheCourse() {
        boolean hasPower = has(Channel.POWER);
        boolean hasHeartRate = has(Channel.HEART_RATE);
        boolean hasGround = all.reference().ride().has(Channel.ALTITUDE);
        int height = TOP
                + GAP
                + (hasPower ? BETWEEN + CHANNEL : 0)
                + (hasHeartRate ? BETWEEN + CHANNEL : 0)
                + (hasGround ? BETWEEN + GROUND : 0)
                + FOOT;
        Svg svg = Plot.begin(
                height,
                "Ride " + number + " against ride 1 along the course",
                "From top to bottom: the gap, power, heart rate and altitude over distance; the numbers are in the"
                        + " tables below.");
        String smoothed = Figures.brief(unit.of(SMOOTHED_M)) + " " + unit.symbol();
        Plot plot = gap(svg);
        int top = TOP + GAP + BETWEEN;
        if (hasPower) {
            plot = channel(svg, top, Channel.POWER, "Power, W, mean of " + smoothed, "power", "rival");
            top += CHANNEL + BETWEEN;
        }
        if (hasHeartRate) {
            plot = channel(svg, top, Channel.HEART_RATE, "Heart rate, bpm, mean of " + smoothed, "heart", "rival");
            top += CHANNEL + BETWEEN;
        }
        if (hasGround) {
            Series altitude = all.along(Channel.ALTITUDE);
            double[] ys =
                    Arrays.stream(values(altitude)).map(units.height()::of).toArray();
            Plot pane = pane(svg, top, GROUND, Scale.around(lowest(ys), highest(ys)));
            pane.area("ground-area", distances(), ys)
                    .levels(2, value -> Figures.decimal(value, 0))
                    .name("Altitude, " + units.height().symbol())
                    .line("ground", distances(), ys);
            plot = pane;
        }
        feet(plot);
        return svg.close("svg").done();
    }

    private Plot gap(Svg svg) {
        double[] elapsed = values(comparison.gapSeconds());
        double[] moving = values(comparison.movingGapSeconds());
        double most =
                Math.max(Math.max(highest(elapsed), -lowest(elapsed)), Math.max(highest(moving), -lowest(moving)));
        boolean inSeconds = most <= LONGEST_IN_SECONDS;
        if (!inSeconds) {
            elapsed = inMinutes(elapsed);
            moving = inMinutes(moving);
        }
        double low = Math.min(0, Math.min(lowest(elapsed), lowest(moving)));
        double high = Math.max(0, Math.max(highest(elapsed), highest(moving)));
        Plot plot = pane(svg, TOP, GAP, Scale.around(low, high));
        return plot.levels(5, Figures::brief)
                .name("Gap, " + (inSeconds ? "s" : "min") + ": up behind, down ahead")
                .rule("nought", 0)
                .line("gap-moving", distances(), moving)
                .line("gap", distances(), elapsed);
    }

    private Plot channel(Svg svg, int top, Channel channel, String name, String first, String second) {
        double[] one = values(all.along(channel));
        double[] two = values(other.along(channel));
        double low = Math.min(lowest(one), lowest(two));
        double high = Math.max(highest(one), highest(two));
        Scale scale = channel == Channel.POWER ? Scale.fromZero(high) : Scale.around(low, high);
        return pane(svg, top, CHANNEL, scale)
                .levels(3, value -> Figures.decimal(value, 0))
                .name(name)
                .line(first, distances(), one)
                .line(second, distances(), two);
    }

    private Plot pane(Svg svg, int top, int height, Scale scale) {
        Plot plot = new Plot(svg, top, height, along, scale);
        for (CourseComparison.Apart apart : comparison.apart()) {
            double from = Math.max(unit.of(apart.startM()), along.low());
            double to = Math.min(unit.of(apart.endM()), along.high());
            if (from < to) {
                plot.stretch("missing", from, to);
            }
        }
        return plot;
    }

    /** A bar for each stretch: up what was lost on it, down what was won. */
    Markup stretches() {
        Svg svg = Plot.begin(
                TOP + BARS + FOOT,
                "What ride " + number + " lost to ride 1 on each stretch",
                "A bar for each stretch where it lies; the numbers are in the table below.");
        double low = 0;
        double high = 0;
        for (Stretch stretch : comparison.stretches()) {
            low = Math.min(low, stretch.lostSeconds());
            high = Math.max(high, stretch.lostSeconds());
        }
        double seconds = Math.max(high, -low) <= LONGEST_IN_SECONDS ? 1 : 60;
        Plot plot = new Plot(svg, TOP, BARS, along, Scale.around(low / seconds, high / seconds));
        plot.levels(4, Figures::brief).name("Stretches, " + (seconds == 1 ? "s" : "min") + ": up lost, down won");
        for (Stretch stretch : comparison.stretches()) {
            double lost = stretch.lostSeconds() / seconds;
            double from = unit.of(stretch.startM());
            double to = unit.of(stretch.endM());
            double inset = (to - from) * 0.04;
            plot.bar(lost > 0 ? "lost-bar" : "won-bar", from + inset, to - inset, Math.min(0, lost), Math.max(0, lost));
        }
        plot.rule("nought", 0);
        feet(plot);
        return svg.close("svg").done();
    }

    private void feet(Plot plot) {
        List<Double> ticks = along.ticks(9);
        for (int i = 0; i < ticks.size(); i++) {
            boolean isLast = i == ticks.size() - 1;
            plot.foot(ticks.get(i), Figures.brief(ticks.get(i)) + (isLast ? " " + unit.symbol() : ""), i % 2 == 1);
        }
    }

    private double[] distances() {
        int points = comparison.toPoint() - comparison.fromPoint() + 1;
        double[] xs = new double[points];
        for (int i = 0; i < points; i++) {
            xs[i] = unit.of(comparison.distanceM(comparison.fromPoint() + i));
        }
        return xs;
    }

    private double[] values(Series values) {
        return values.slice(comparison.fromPoint(), comparison.toPoint() + 1).toArray();
    }

    private static double[] inMinutes(double[] seconds) {
        double[] minutes = new double[seconds.length];
        for (int i = 0; i < seconds.length; i++) {
            minutes[i] = seconds[i] / 60;
        }
        return minutes;
    }

    private static double lowest(double[] values) {
        double lowest = Double.POSITIVE_INFINITY;
        for (double each : values) {
            lowest = each < lowest ? each : lowest;
        }
        return lowest;
    }

    private static double highest(double[] values) {
        double highest = Double.NEGATIVE_INFINITY;
        for (double each : values) {
            highest = each > highest ? each : highest;
        }
        return highest;
    }
}
