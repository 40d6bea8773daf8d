package io.github.wattledger.cli.report.html;

import io.github.wattledger.RideDetail;
import io.github.wattledger.RideReview;
import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.power.MeanMaximalCurve;
import io.github.wattledger.power.ModelCurve;
import io.github.wattledger.power.SustainablePower;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The best efforts of a ride.
 *
 * @param drawn the mean-maximal curve with the lines of the models, or null without power
 * @param rows durations with their power
 * @param legend what the lines are, a sentence each
 */
public record Efforts(@Nullable Markup drawn, List<Row> rows, List<Key> legend) {
    private static final int HEIGHT = 300;
    private static final int[] FEET = {1, 5, 30, 60, 300, 1200, 3600, 7200, 4 * 3600, 8 * 3600, 15 * 3600};

    /**
     * A duration.
     *
     * @param duration its length
     * @param watts the best mean power
     * @param isLowerBound whether missing seconds may have lowered it
     */
    public record Row(Num duration, Num watts, boolean isLowerBound) {}

    /**
     * What a line is.
     *
     * @param sample a piece of it, or null
     * @param words what it is
     */
    public record Key(@Nullable Markup sample, String words) {}

    static Efforts of(RideReview review, RideDetail detail) {
        MeanMaximalCurve curve = review.curve();
        if (curve.longestSeconds() < 2) {
            return new Efforts(null, List.of(), List.of());
        }
        List<Integer> durations = curve.logSpacedSeconds();
        List<Row> rows = new ArrayList<>();
        double[] xs = new double[durations.size()];
        double[] ys = new double[durations.size()];
        for (int i = 0; i < durations.size(); i++) {
            MeanMaximalCurve.Window best = curve.bestWindow(durations.get(i));
            xs[i] = best.seconds();
            ys[i] = best.watts();
            String path = "curve[" + i + "].";
            rows.add(new Row(
                    Num.of(path + "seconds", (double) best.seconds(), Figures::duration),
                    Num.of(path + "watts", best.watts(), Figures::watts),
                    best.mayBeLow()));
        }
        return new Efforts(draw(review, detail, xs, ys), rows, legend(review, detail));
    }

    private static Markup draw(RideReview review, RideDetail detail, double[] xs, double[] ys) {
        Svg svg = Plot.begin(
                HEIGHT + 46,
                "Best mean power by duration",
                "The mean-maximal curve of this ride on a logarithmic axis of time, with the models; the numbers are in"
                        + " the table below it.");
        double longest = xs[xs.length - 1];
        Plot plot = new Plot(svg, 20, HEIGHT, Scale.logarithmic(1, longest), Scale.fromZero(ys[0]));
        plot.levels(5, value -> Figures.decimal(value, 0)).name("Best mean power, W");
        for (ModelCurve model : detail.models()) {
            model(plot, model, longest, model.source() == ModelCurve.Source.GUIDE ? "guide" : "fit");
        }
        Double criticalPowerW = review.ability().criticalPowerW();
        if (criticalPowerW != null) {
            plot.rule("critical", criticalPowerW);
        }
        plot.line("power", xs, ys);
        SustainablePower sustainable = detail.sustainable();
        int forSeconds = review.ability().forSeconds();
        if (sustainable != null && forSeconds > 1 && forSeconds <= longest) {
            plot.segment("guide-range", forSeconds, sustainable.lowW(), forSeconds, sustainable.highW());
            plot.dot("guide-dot", forSeconds, sustainable.watts(), 4);
        }
        for (int i = 0; i < FEET.length; i++) {
            if (FEET[i] <= longest) {
                plot.foot(FEET[i], Figures.duration(FEET[i]), i % 2 == 1);
            }
        }
        return svg.close("svg").done();
    }

    private static void model(Plot plot, ModelCurve model, double longest, String style) {
        List<ModelCurve.Point> points = model.points().stream()
                .filter(point -> point.seconds() <= longest)
                .toList();
        double[] xs = points.stream().mapToDouble(ModelCurve.Point::seconds).toArray();
        double[] ys = points.stream().mapToDouble(ModelCurve.Point::watts).toArray();
        if (points.stream().allMatch(point -> point.lowW() != null && point.highW() != null)) {
            plot.between(
                    style + "-band",
                    xs,
                    points.stream()
                            .mapToDouble(point -> orMissing(point.lowW()))
                            .toArray(),
                    points.stream()
                            .mapToDouble(point -> orMissing(point.highW()))
                            .toArray());
        }
        plot.line(style, xs, ys);
    }

    private static double orMissing(@Nullable Double value) {
        return value == null ? Double.NaN : value;
    }

    private static List<Key> legend(RideReview review, RideDetail detail) {
        List<Key> legend = new ArrayList<>();
        legend.add(new Key(key("", "power"), "best mean power of this ride; stops count as 0 W"));
        for (ModelCurve model : detail.models()) {
            legend.add(
                    switch (model.source()) {
                        case CRITICAL_POWER ->
                            new Key(
                                    key("fit-band", "fit"),
                                    "critical power fitted to this ride, with the 95 % interval of critical power, W\u2032"
                                            + " held");
                        case GIVEN_CRITICAL_POWER -> new Key(key("", "fit"), "critical power and W\u2032 as given");
                        case GUIDE ->
                            new Key(
                                    key("guide-band", "guide"),
                                    "the guide from threshold power alone, with its range; it knows nothing of the"
                                            + " rider's endurance");
                    });
        }
        if (review.ability().criticalPowerW() != null) {
            legend.add(new Key(key("", "critical"), "critical power"));
        }
        if (detail.sustainable() != null && review.ability().forSeconds() > 1) {
            legend.add(new Key(
                    dot(),
                    "what could be held for " + Figures.span(review.ability().forSeconds()) + ", with its range"));
        }
        if (detail.models().isEmpty() && detail.sustainable() == null) {
            legend.add(new Key(
                    null,
                    "No model is drawn: critical power was not fitted, and there is no guide without a threshold."));
        }
        return legend;
    }

    private static Markup dot() {
        Svg key = new Svg();
        key.open("svg", "class", "key", "width", "12", "height", "12", "aria-hidden", "true");
        key.line("guide-range", "6", "6", "0", "12");
        key.leaf("circle", "class", "guide-dot", "cx", "6", "cy", "6", "r", "4");
        return key.close("svg").done();
    }

    private static Markup key(String area, String line) {
        Svg key = new Svg();
        key.open("svg", "class", "key", "width", "26", "height", "12", "aria-hidden", "true");
        if (!area.isEmpty()) {
            key.rect(area, "0", "26", "1", "10");
        }
        key.line(line, "0", "26", "6", "6");
        return key.close("svg").done();
    }
}
