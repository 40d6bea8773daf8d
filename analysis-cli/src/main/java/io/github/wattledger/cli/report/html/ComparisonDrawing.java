package io.github.wattledger.cli.report.html;

import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.compare.CourseComparison;
import io.github.wattledger.compare.CourseComparison.Stretch;
import io.github.wattledger.compare.RideComparison;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Series;
import java.util.List;

/** The charts of one ride against the first, over kilometres. Ride 1 is a full line, the other a broken one. */
final class ComparisonDrawing {
    private static final int GAP = 190;
    private static final int CHANNEL = 110;
    private static final int GROUND = 70;
    private static final int BARS = 150;
    private static final int BETWEEN = 34;
    private static final int TOP = 20;
    private static final int FOOT = 24;
    private static final double METRES_PER_KILOMETRE = 1000;

    /** Up to this the gap is drawn in seconds. */
    private static final double LONGEST_IN_SECONDS = 240;

    private final RideComparison all;
    private final RideComparison.Against other;
    private final CourseComparison comparison;
    private final int number;
    private final Scale km;

    ComparisonDrawing(RideComparison all, RideComparison.Against other, int number) {
        this.all = all;
        this.other = other;
        this.number = number;
        comparison = other.comparison();
        km = Scale.linear(
                comparison.distanceM(comparison.fromPoint()) / METRES_PER_KILOMETRE,
                comparison.distanceM(comparison.toPoint()) / METRES_PER_KILOMETRE);
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
                "From top to bottom: the gap, power, heart rate and altitude over kilometres; the numbers are in the"
                        + " tables below.");
        Plot plot = gap(svg);
        int top = TOP + GAP + BETWEEN;
        if (hasPower) {
            plot = channel(svg, top, Channel.POWER, "Power, W, mean of 1 km", "power", "rival");
            top += CHANNEL + BETWEEN;
        }
        if (hasHeartRate) {
            plot = channel(svg, top, Channel.HEART_RATE, "Heart rate, bpm, mean of 1 km", "heart", "rival");
            top += CHANNEL + BETWEEN;
        }
        if (hasGround) {
            Series altitude = all.along(Channel.ALTITUDE);
            double[] ys = values(altitude);
            Plot pane = pane(svg, top, GROUND, Scale.around(lowest(ys), highest(ys)));
            pane.area("ground-area", kilometres(), ys)
                    .levels(2, value -> Figures.decimal(value, 0))
                    .name("Altitude, m")
                    .line("ground", kilometres(), ys);
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
                .line("gap-moving", kilometres(), moving)
                .line("gap", kilometres(), elapsed);
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
                .line(first, kilometres(), one)
                .line(second, kilometres(), two);
    }

    private Plot pane(Svg svg, int top, int height, Scale scale) {
        Plot plot = new Plot(svg, top, height, km, scale);
        for (CourseComparison.Apart apart : comparison.apart()) {
            double from = Math.max(apart.startM() / METRES_PER_KILOMETRE, km.low());
            double to = Math.min(apart.endM() / METRES_PER_KILOMETRE, km.high());
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
                "A bar for each stretch over its kilometres; the numbers are in the table below.");
        double low = 0;
        double high = 0;
        for (Stretch stretch : comparison.stretches()) {
            low = Math.min(low, stretch.lostSeconds());
            high = Math.max(high, stretch.lostSeconds());
        }
        double unit = Math.max(high, -low) <= LONGEST_IN_SECONDS ? 1 : 60;
        Plot plot = new Plot(svg, TOP, BARS, km, Scale.around(low / unit, high / unit));
        plot.levels(4, Figures::brief).name("Stretches, " + (unit == 1 ? "s" : "min") + ": up lost, down won");
        for (Stretch stretch : comparison.stretches()) {
            double lost = stretch.lostSeconds() / unit;
            double from = stretch.startM() / METRES_PER_KILOMETRE;
            double to = stretch.endM() / METRES_PER_KILOMETRE;
            double inset = (to - from) * 0.04;
            plot.bar(lost > 0 ? "lost-bar" : "won-bar", from + inset, to - inset, Math.min(0, lost), Math.max(0, lost));
        }
        plot.rule("nought", 0);
        feet(plot);
        return svg.close("svg").done();
    }

    private void feet(Plot plot) {
        List<Double> ticks = km.ticks(9);
        for (int i = 0; i < ticks.size(); i++) {
            boolean isLast = i == ticks.size() - 1;
            plot.foot(ticks.get(i), Figures.brief(ticks.get(i)) + (isLast ? " km" : ""), i % 2 == 1);
        }
    }

    private double[] kilometres() {
        int points = comparison.toPoint() - comparison.fromPoint() + 1;
        double[] xs = new double[points];
        for (int i = 0; i < points; i++) {
            xs[i] = comparison.distanceM(comparison.fromPoint() + i) / METRES_PER_KILOMETRE;
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
