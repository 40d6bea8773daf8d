package io.github.wattledger.cli.report.html;

/** Writes a drawing, tag by tag; every attribute and every word is escaped. */
final class Svg {
    private final StringBuilder text = new StringBuilder();

    /** Opens an element; attributes are names and values in turn. */
    Svg open(String tag, String... attributes) {
        tag(tag, attributes);
        text.append('>');
        return this;
    }

    Svg close(String tag) {
        text.append("</").append(tag).append('>');
        return this;
    }

    /** An element without content. */
    Svg leaf(String tag, String... attributes) {
        tag(tag, attributes);
        text.append("/>");
        return this;
    }

    /** A rectangle: its style, where it begins from the left and how wide it is, then from the top and how high. */
    Svg rect(String style, String x, String width, String y, String height) {
        return leaf("rect", "class", style, "x", x, "width", width, "y", y, "height", height);
    }

    /** A straight line: its style, both ends from the left, then both from the top. */
    Svg line(String style, String x1, String x2, String y1, String y2) {
        return leaf("line", "class", style, "x1", x1, "x2", x2, "y1", y1, "y2", y2);
    }

    /** An element with words in it. */
    Svg words(String tag, String words, String... attributes) {
        open(tag, attributes);
        escape(words);
        return close(tag);
    }

    Markup done() {
        return new Markup(text.toString());
    }

    /** A coordinate with at most one decimal. */
    static String at(double coordinate) {
        long tenths = Math.round(coordinate * 10);
        long whole = tenths / 10;
        long rest = Math.abs(tenths % 10);
        String sign = tenths < 0 && whole == 0 ? "-" : "";
        return rest == 0 ? Long.toString(whole) : sign + whole + "." + rest;
    }

    /** A fraction of the width as percent with at most two decimals. */
    static String percent(double fraction) {
        return Math.round(fraction * 10_000) / 100.0 + "%";
    }

    private void tag(String tag, String... attributes) {
        text.append('<').append(tag);
        for (int i = 0; i < attributes.length; i += 2) {
            text.append(' ').append(attributes[i]).append("=\"");
            escape(attributes[i + 1]);
            text.append('"');
        }
    }

    private void escape(String words) {
        for (int i = 0; i < words.length(); i++) {
            char c = words.charAt(i);
            switch (c) {
                case '&' -> text.append("&amp;");
                case '<' -> text.append("&lt;");
                case '>' -> text.append("&gt;");
                case '"' -> text.append("&quot;");
                case '\'' -> text.append("&#39;");
                default -> text.append(c);
            }
        }
    }
}
