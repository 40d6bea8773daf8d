package io.github.wattledger.cli.report.html;

import io.github.wattledger.RideDetail;
import io.github.wattledger.RideReview;
import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.cli.report.words.FindingWords;
import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.pacing.Finding;
import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.ride.Series;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The whole ride on one axis of time, drawn once: what is printed, and what is seen where no script runs. */
final class TimelineDrawing {
    private static final int LANE = 24;
    /** The least share of the width that a stretch takes, so that a short stop is still seen. */
    private static final double LEAST_REACH = 0.004;

    private static final int NAME = 20;
    private static final int FOOT = 24;
    private static final int POWER = 190;
    private static final int OTHER = 84;
    private static final int TEMPERATURE = 48;

    private final RideReview review;
    private final RideDetail detail;
    private final Ride ride;
    private final Units units;
    private final Scale time;
    private final List<Integer> lanes;

    TimelineDrawing(RideReview review, RideDetail detail, Units units) {
        this.review = review;
        this.detail = detail;
        this.ride = review.ride();
        this.units = units;
        this.time = Scale.linear(0, Math.max(1, ride.seconds()));
        this.lanes =
                Lanes.of(review.pacing().findings().stream().map(Finding::when).toList(), ride.seconds());
    }

    List<Integer> lanes() {
        return lanes;
    }

    /** The drawing, or null for a ride without power, heart rate and altitude. */
    @Nullable Markup draw() {
        int laneCount = lanes.stream().mapToInt(lane -> lane + 1).max().orElse(0);
        int top = laneCount * LANE;
        int height = top + FOOT;
        Series balance = detail.wPrimeBalanceKJ();
        if (!hasPower() && !has(Channel.HEART_RATE) && !has(Channel.ALTITUDE)) {
            return null;
        }
        height += hasPower() ? NAME + POWER : 0;
        height += has(Channel.HEART_RATE) ? NAME + OTHER : 0;
        height += balance != null ? NAME + OTHER : 0;
        height += has(Channel.ALTITUDE) ? NAME + OTHER : 0;
        height += has(Channel.TEMPERATURE) ? NAME + TEMPERATURE : 0;
        Svg svg = Plot.beginWithLinks(
                height,
                "The ride over time",
                "Power, heart rate and altitude from start to end with the numbered findings; the numbers are in the"
                        + " tables of this page.");
        Plot last = null;
        if (hasPower()) {
            last = power(svg, top + NAME);
            top += NAME + POWER;
        }
        if (has(Channel.HEART_RATE)) {
            last = heartRate(svg, top + NAME);
            top += NAME + OTHER;
        }
        if (balance != null) {
            last = balance(svg, top + NAME, balance);
            top += NAME + OTHER;
        }
        if (has(Channel.ALTITUDE)) {
            last = altitude(svg, top + NAME);
            top += NAME + OTHER;
        }
        if (has(Channel.TEMPERATURE)) {
            last = temperature(svg, top + NAME);
        }
        if (last != null) {
            feet(last);
        }
        marks(svg, height - FOOT);
        return svg.close("svg").done();
    }

    private boolean has(Channel channel) {
        return ride.has(channel);
    }

    private boolean hasPower() {
        return detail.power30sW().hasAny();
    }

    private Plot power(Svg svg, int top) {
        Bins bins = Bins.peaks(detail.power30sW());
        Double threshold = review.rider().thresholdPowerW();
        Plot plot = new Plot(
                svg,
                top,
                POWER,
                time,
                Scale.fromZero(Math.max(bins.highest(), threshold == null ? 0 : threshold * 1.1)));
        states(plot);
        SustainablePower sustainable = detail.sustainable();
        if (sustainable != null) {
            plot.band("guide-band", sustainable.lowW(), sustainable.highW());
        }
        plot.levels(4, value -> Figures.decimal(value, 0))
                .name("Power, mean of 30 s, W")
                .line("power", bins.xs, bins.ys);
        if (!has(Channel.ALTITUDE)) {
            bunches(plot);
        }
        if (sustainable != null) {
            plot.rule("guide", sustainable.watts());
        }
        if (threshold != null) {
            plot.rule("threshold", threshold);
        }
        return plot;
    }

    private Plot heartRate(Svg svg, int top) {
        Bins bins = Bins.peaks(ride.series(Channel.HEART_RATE));
        Plot plot = new Plot(svg, top, OTHER, time, Scale.around(bins.lowest(), bins.highest()));
        states(plot);
        plot.levels(2, value -> Figures.decimal(value, 0))
                .name("Heart rate, bpm")
                .line("heart", bins.xs, bins.ys);
        return plot;
    }

    private Plot balance(Svg svg, int top, Series kilojoules) {
        Bins bins = Bins.peaks(kilojoules);
        Plot plot = new Plot(svg, top, OTHER, time, Scale.around(Math.min(0, bins.lowest()), bins.highest()));
        states(plot);
        plot.levels(2, value -> Figures.decimal(value, 0))
                .name("W\u2032 balance, kJ")
                .rule("guide", 0)
                .line("balance", bins.xs, bins.ys);
        return plot;
    }

    private Plot altitude(Svg svg, int top) {
        Bins bins = Bins.peaks(ride.series(Channel.ALTITUDE)).in(units.height()::of);
        Plot plot = new Plot(svg, top, OTHER, time, Scale.around(bins.lowest(), bins.highest()));
        states(plot);
        plot.area("ground-area", bins.xs, bins.ys)
                .levels(2, value -> Figures.decimal(value, 0))
                .name("Altitude, " + units.height().symbol())
                .line("ground", bins.xs, bins.ys);
        bunches(plot);
        return plot;
    }

    private Plot temperature(Svg svg, int top) {
        Bins bins = Bins.peaks(ride.series(Channel.TEMPERATURE)).in(units.temperature()::of);
        Plot plot = new Plot(svg, top, TEMPERATURE, time, Scale.around(bins.lowest(), bins.highest()));
        states(plot);
        plot.levels(2, value -> Figures.decimal(value, 0))
                .name("Temperature at the recorder, \u00B0"
                        + units.temperature().symbol())
                .line("temperature", bins.xs, bins.ys);
        return plot;
    }

    private void bunches(Plot plot) {
        for (Interval bunch : Stretches.inBunch(review)) {
            plot.strip("in-bunch", bunch.fromSecond(), bunch.toSecond());
        }
        for (Interval bunch : Stretches.proposedBunch(review)) {
            plot.strip("maybe-bunch", bunch.fromSecond(), bunch.toSecond());
        }
    }

    private void states(Plot plot) {
        stretches(plot, SecondState.STOPPED, "stopped");
        stretches(plot, SecondState.PAUSED, "paused");
        stretches(plot, SecondState.MISSING, "missing");
    }

    private void stretches(Plot plot, SecondState state, String style) {
        for (Interval stretch : Stretches.in(ride, state)) {
            plot.stretch(style, stretch.fromSecond(), stretch.toSecond());
        }
    }

    private void feet(Plot plot) {
        List<Double> ticks = time.clockTicks(9);
        for (int i = 0; i < ticks.size(); i++) {
            plot.foot(ticks.get(i), Figures.shortClock((int) Math.round(ticks.get(i))), i % 2 == 1);
        }
    }

    private void reach(Svg svg, Interval part, int middle) {
        double from = time.share(part.fromSecond());
        double to = Math.max(time.share(part.toSecond()), from + LEAST_REACH);
        svg.line("reach", Svg.percent(from), Svg.percent(to), Integer.toString(middle), Integer.toString(middle));
    }

    private void marks(Svg svg, int bottom) {
        List<Finding> findings = review.pacing().findings();
        for (int i = 0; i < findings.size(); i++) {
            Finding finding = findings.get(i);
            double from = time.share(finding.when().fromSecond());
            int middle = lanes.get(i) * LANE + LANE / 2;
            String number = Integer.toString(i + 1);
            String severity = finding.severity().id();
            svg.open("a", "href", "#finding-" + number, "class", "flag " + severity);
            svg.words("title", "Finding " + number + ": " + FindingWords.title(finding.kind()));
            for (Interval part : Stretches.of(finding)) {
                reach(svg, part, middle);
            }
            svg.line("drop", Svg.percent(from), Svg.percent(from), Integer.toString(middle), Integer.toString(bottom));
            svg.open("svg", "x", Svg.percent(Math.min(from, 0.96)), "y", Integer.toString(middle - 10));
            svg.leaf("rect", "class", "chip", "x", "1", "y", "1", "width", "20", "height", "18", "rx", "2");
            svg.words("text", number, "class", "chip-number", "x", "11", "y", "14");
            svg.close("svg").close("a");
        }
    }
}
