package io.github.wattledger.cli.report.html;

import java.util.function.DoubleFunction;

/**
 * One pane of a chart. Its width is whatever the page gives it: places along x are shares of it, places along y pixels,
 * so that letters and lines keep their size on a telephone, on a wide screen and on paper.
 */
final class Plot {
    private static final int STRIP = 5;
    private static final int UNITS = 1000;

    /** From the end of the pane to the value of a level, so that no mark at the end touches it, pixels. */
    private static final String LEVEL_GAP = "10";

    private final Svg svg;
    private final int top;
    private final int height;
    private final Scale x;
    private final Scale y;

    /**
     * A pane.
     *
     * @param svg the chart it belongs to
     * @param top pixels above it
     * @param height its own, pixels
     */
    Plot(Svg svg, int top, int height, Scale x, Scale y) {
        this.svg = svg;
        this.top = top;
        this.height = height;
        this.x = x;
        this.y = y;
    }

    /** Begins a chart that is as wide as its place. */
    static Svg begin(int height, String title, String description) {
        return begin("img", height, title, description);
    }

    /** Begins a chart that is as wide as its place, and that holds links. */
    static Svg beginWithLinks(int height, String title, String description) {
        return begin("group", height, title, description);
    }

    private static Svg begin(String role, int height, String title, String description) {
        Svg svg = new Svg();
        svg.open("svg", "class", "chart", "width", "100%", "height", Integer.toString(height), "role", role);
        svg.words("title", title);
        svg.words("desc", description);
        return svg;
    }

    private double down(double value) {
        return (1 - y.share(value)) * height;
    }

    private String left(double value) {
        return Svg.percent(x.share(value));
    }

    private String from(double value) {
        return Svg.at(top + down(value));
    }

    /** A horizontal line over the whole width. */
    Plot rule(String style, double value) {
        svg.line(style, "0", "100%", from(value), from(value));
        return this;
    }

    /** A band over the whole width. */
    Plot band(String style, double low, double high) {
        svg.rect(style, "0", "100%", from(high), Svg.at(down(low) - down(high)));
        return this;
    }

    /** A stretch over the whole height. */
    Plot stretch(String style, double fromX, double toX) {
        svg.rect(
                style,
                left(fromX),
                Svg.percent(Math.max(x.share(toX) - x.share(fromX), 0.0015)),
                Integer.toString(top),
                Integer.toString(height));
        return this;
    }

    /** A stretch as a strip along the foot. */
    Plot strip(String style, double fromX, double toX) {
        svg.rect(
                style,
                left(fromX),
                Svg.percent(x.share(toX) - x.share(fromX)),
                Integer.toString(top + height - STRIP),
                Integer.toString(STRIP));
        return this;
    }

    /** A bar from one value up to another. */
    Plot bar(String style, double fromX, double toX, double low, double high) {
        svg.rect(
                style,
                left(fromX),
                Svg.percent(Math.max(x.share(toX) - x.share(fromX), 0.001)),
                from(high),
                Svg.at(down(low) - down(high)));
        return this;
    }

    /** A horizontal stroke. */
    Plot stroke(String style, double fromX, double toX, double value) {
        svg.line(style, left(fromX), left(toX), from(value), from(value));
        return this;
    }

    /** A straight line between two points. */
    Plot segment(String style, double fromX, double fromY, double toX, double toY) {
        svg.line(style, left(fromX), left(toX), from(fromY), from(toY));
        return this;
    }

    Plot dot(String style, double atX, double atY, double radius) {
        svg.leaf("circle", "class", style, "cx", left(atX), "cy", from(atY), "r", Svg.at(radius));
        return this;
    }

    /** Words beside a point. */
    Plot label(String style, double atX, double atY, double dx, double dy, String words) {
        svg.words("text", words, "class", style, "x", left(atX), "y", from(atY), "dx", Svg.at(dx), "dy", Svg.at(dy));
        return this;
    }

    /** What the pane shows, in its upper left corner. */
    Plot name(String words) {
        svg.words("text", words, "class", "pane-name", "x", "0", "y", Integer.toString(top - 5));
        return this;
    }

    /** Lines across, with their values beside the right end. */
    Plot levels(int about, DoubleFunction<String> words) {
        for (double tick : y.ticks(about)) {
            rule("grid", tick);
            svg.words(
                    "text",
                    words.apply(tick),
                    "class",
                    "level",
                    "x",
                    "100%",
                    "y",
                    from(tick),
                    "dx",
                    LEVEL_GAP,
                    "dy",
                    "4");
        }
        return this;
    }

    /** A value under the pane; a fine one is left out where there is little room. */
    Plot foot(double atX, String words, boolean fine) {
        double share = x.share(atX);
        String anchor = share < 0.03 ? " first" : share > 0.97 ? " last" : "";
        svg.line("tick", left(atX), left(atX), Integer.toString(top + height), Integer.toString(top + height + 4));
        svg.words(
                "text",
                words,
                "class",
                "foot" + anchor + (fine ? " fine" : ""),
                "x",
                left(atX),
                "y",
                Integer.toString(top + height + 17));
        return this;
    }

    /** A line through points; a value that is not a number breaks it. */
    Plot line(String style, double[] xs, double[] ys) {
        return path(style, linePath(xs, ys));
    }

    /** The area between a line and the bottom of the pane. */
    Plot area(String style, double[] xs, double[] ys) {
        StringBuilder path = new StringBuilder();
        int begin = 0;
        while (begin < xs.length) {
            if (Double.isNaN(ys[begin])) {
                begin++;
                continue;
            }
            int end = begin;
            path.append('M').append(across(xs[begin])).append(' ').append(height);
            while (end < xs.length && !Double.isNaN(ys[end])) {
                path.append('L').append(across(xs[end])).append(' ').append(Svg.at(down(ys[end])));
                end++;
            }
            path.append('L')
                    .append(across(xs[end - 1]))
                    .append(' ')
                    .append(height)
                    .append('Z');
            begin = end;
        }
        return path(style, path);
    }

    /** The area between two lines, all of whose values are numbers. */
    Plot between(String style, double[] xs, double[] lows, double[] highs) {
        StringBuilder path = new StringBuilder();
        for (int i = 0; i < xs.length; i++) {
            path.append(i == 0 ? 'M' : 'L').append(across(xs[i])).append(' ').append(Svg.at(down(highs[i])));
        }
        for (int i = xs.length - 1; i >= 0; i--) {
            path.append('L').append(across(xs[i])).append(' ').append(Svg.at(down(lows[i])));
        }
        return path(style, xs.length < 2 ? new StringBuilder() : path.append('Z'));
    }

    private StringBuilder linePath(double[] xs, double[] ys) {
        StringBuilder path = new StringBuilder();
        boolean pen = false;
        for (int i = 0; i < xs.length; i++) {
            if (Double.isNaN(ys[i])) {
                pen = false;
                continue;
            }
            path.append(pen ? 'L' : 'M').append(across(xs[i])).append(' ').append(Svg.at(down(ys[i])));
            pen = true;
        }
        return path;
    }

    private String across(double value) {
        return Svg.at(x.share(value) * UNITS);
    }

    private Plot path(String style, StringBuilder path) {
        if (path.length() > 0) {
            svg.open(
                    "svg",
                    "y",
                    Integer.toString(top),
                    "width",
                    "100%",
                    "height",
                    Integer.toString(height),
                    "viewBox",
                    "0 0 " + UNITS + " " + height,
                    "preserveAspectRatio",
                    "none");
            svg.leaf("path", "class", style, "d", path.toString());
            svg.close("svg");
        }
        return this;
    }
}
