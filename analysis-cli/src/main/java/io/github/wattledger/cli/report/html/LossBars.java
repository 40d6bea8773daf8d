package io.github.wattledger.cli.report.html;

import io.github.wattledger.cli.report.words.Figures;
import java.util.List;

/** Minutes lost or saved as bars over one scale. */
final class LossBars {
    private LossBars() {}

    /** A bar that is full up to the lower end of a range and hatched to the upper one. */
    static Markup bar(Scale minutes, double low, double high) {
        Svg bar = new Svg();
        bar.open("svg", "class", "loss-bar", "width", "100%", "height", "22", "aria-hidden", "true");
        for (double tick : minutes.ticks(4)) {
            line(bar, "grid", minutes.share(tick));
        }
        double from = Math.max(0, minutes.share(Math.max(0, low)));
        double to = Math.max(from, minutes.share(Math.max(0, high)));
        if (from > 0) {
            bar.rect("sure", "0", Svg.percent(from), "5", "12");
        }
        if (to > from) {
            bar.rect("perhaps", Svg.percent(from), Svg.percent(to - from), "5", "12");
        }
        if (to == 0) {
            bar.line("nought", "1", "1", "4", "18");
        }
        return bar.close("svg").done();
    }

    /** A bar from the lower end of a range to the upper one, with a line at the value that lies in it. */
    static Markup between(Scale minutes, double low, double high, double value) {
        Svg bar = new Svg();
        bar.open("svg", "class", "loss-bar", "width", "100%", "height", "22", "aria-hidden", "true");
        for (double tick : minutes.ticks(4)) {
            line(bar, tick == 0 ? "nought" : "grid", minutes.share(tick));
        }
        double from = minutes.share(low);
        bar.rect("power-bar", Svg.percent(from), Svg.percent(minutes.share(high) - from), "6", "10");
        line(bar, "answer", minutes.share(value));
        return bar.close("svg").done();
    }

    private static void line(Svg bar, String style, double share) {
        String x = Svg.percent(share);
        bar.line(style, x, x, "0", "22");
    }

    /** The minutes along the head of the bars. */
    static Markup scale(Scale minutes) {
        Svg scale = new Svg();
        scale.open("svg", "class", "loss-scale", "width", "100%", "height", "18", "aria-hidden", "true");
        List<Double> ticks = minutes.ticks(4);
        for (int i = 0; i < ticks.size(); i++) {
            double share = minutes.share(ticks.get(i));
            boolean isLast = i == ticks.size() - 1;
            String anchor = i == 0 ? "first" : share > 0.9 ? "last" : "";
            scale.words(
                    "text",
                    Figures.brief(ticks.get(i)) + (isLast ? " min" : ""),
                    "class",
                    "foot " + anchor + (i > 0 && !isLast ? " fine" : ""),
                    "x",
                    Svg.percent(share),
                    "y",
                    "13");
        }
        return scale.close("svg").done();
    }
}
