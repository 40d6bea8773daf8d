package io.github.wattledger.cli.report.html;

import io.github.wattledger.RideDetail;
import io.github.wattledger.RideReview;
import io.github.wattledger.cli.report.words.Figures;
import io.github.wattledger.load.Decoupling;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Watts a heartbeat, block by block.
 *
 * @param drawn watts a heartbeat over time, or null without it
 * @param rows the blocks
 * @param otherwise why there are none, or empty
 */
public record Blocks(@Nullable Markup drawn, List<Row> rows, String otherwise) {
    private static final int HEIGHT = 150;

    /**
     * A block.
     *
     * @param from when it begins
     * @param to when it ends
     * @param wattsPerBeat watts per beat per minute
     * @param change against the first hour
     */
    public record Row(String from, String to, String wattsPerBeat, String change) {}

    static Blocks of(RideReview review, RideDetail detail) {
        List<Decoupling.Block> blocks = detail.wattsPerBeat();
        List<Row> rows = new ArrayList<>();
        double lowest = Double.POSITIVE_INFINITY;
        double highest = 0;
        for (Decoupling.Block block : blocks) {
            Double wattsPerBeat = block.wattsPerBeat();
            Double decoupling = block.decouplingPercent();
            rows.add(new Row(
                    Figures.shortClock(block.stretch().fromSecond()),
                    Figures.shortClock(block.stretch().toSecond()),
                    wattsPerBeat == null ? "not computed: too few readings" : Figures.wattsABeat(wattsPerBeat),
                    decoupling == null ? "not known" : Figures.decimal(-decoupling, 1) + " %"));
            if (wattsPerBeat != null) {
                lowest = Math.min(lowest, wattsPerBeat);
                highest = Math.max(highest, wattsPerBeat);
            }
        }
        String otherwise = rows.isEmpty() ? "Not computed: it needs power and heart rate for at least 20 minutes." : "";
        return new Blocks(highest > 0 ? draw(review, blocks, highest) : null, rows, otherwise);
    }

    private static Markup draw(RideReview review, List<Decoupling.Block> blocks, double highest) {
        Svg svg = Plot.begin(
                HEIGHT + 46,
                "Watts a heartbeat by block of 20 minutes",
                "Normalized power over mean heart rate; the numbers are in the table below it.");
        Scale time = Scale.linear(0, review.ride().seconds());
        Plot plot = new Plot(svg, 20, HEIGHT, time, Scale.fromZero(highest));
        plot.levels(3, value -> Figures.decimal(value, 1)).name("Watts a heartbeat, blocks of 20 min");
        for (Decoupling.Block block : blocks) {
            Double wattsPerBeat = block.wattsPerBeat();
            if (wattsPerBeat != null) {
                double gap = block.stretch().seconds() * 0.06;
                plot.bar(
                        "block",
                        block.stretch().fromSecond() + gap,
                        block.stretch().toSecond() - gap,
                        0,
                        wattsPerBeat);
            }
        }
        List<Double> ticks = time.clockTicks(9);
        for (int i = 0; i < ticks.size(); i++) {
            plot.foot(ticks.get(i), Figures.shortClock((int) Math.round(ticks.get(i))), i % 2 == 1);
        }
        return svg.close("svg").done();
    }
}
