package io.github.wattledger.cli.profile;

/**
 * How deep brackets and keys of a TOML text are nested. The parser calls itself once for each level, so that a text of
 * brackets alone would exhaust the stack; the depth is therefore looked at before the text is parsed.
 */
final class TomlNesting {
    /** A profile needs three levels. */
    static final int MOST_LEVELS = 50;

    private final String text;
    private int at;
    private int line = 1;
    private int levels;
    private int keyParts;

    private TomlNesting(String text) {
        this.text = text;
    }

    /** The line, from 1, on which a text is nested deeper than {@link #MOST_LEVELS}; 0 where it never is. */
    static int tooDeepLine(String text) {
        return new TomlNesting(text).scan();
    }

    private int scan() {
        for (; at < text.length(); at++) {
            char c = text.charAt(at);
            switch (c) {
                case '\n' -> line++;
                case '#' -> skipTo("\n");
                case '"', '\'' -> skipString(c);
                case '[', '{' -> levels++;
                case ']', '}' -> levels = Math.max(0, levels - 1);
                default -> {}
            }
            // The parts of a dotted key are levels, too; a number has one point.
            keyParts = c == '.' ? keyParts + 1 : c == '=' || c == ',' || c == '\n' ? 0 : keyParts;
            if (levels + keyParts > MOST_LEVELS) {
                return line;
            }
        }
        return 0;
    }

    private void skipString(char quote) {
        String three = String.valueOf(quote).repeat(3);
        if (text.startsWith(three, at)) {
            at += 3;
            skipTo(three);
            at += 2;
            return;
        }
        for (at++; at < text.length() && text.charAt(at) != quote && text.charAt(at) != '\n'; at++) {
            if (quote == '"' && text.charAt(at) == '\\') {
                at++;
            }
        }
        at -= at < text.length() && text.charAt(at) == '\n' ? 1 : 0;
    }

    /** Goes on so that the next place is that of the end, and counts the lines passed. */
    private void skipTo(String end) {
        int found = text.indexOf(end, at);
        int to = found < 0 ? text.length() : found;
        line += (int) text.substring(at, to).chars().filter(c -> c == '\n').count();
        at = end.equals("\n") ? to - 1 : to;
    }
}
