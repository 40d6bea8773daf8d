package io.github.wattledger.cli.report.text;

/** Collects lines of at most 80 columns, or another width; what is longer continues in the next line under an indent. */
final class Page {
    static final int WIDTH = 80;

    private final int width;
    private final StringBuilder text = new StringBuilder();

    /** A page of 80 columns. */
    Page() {
        this(WIDTH);
    }

    /** A page of so many columns. */
    Page(int width) {
        this.width = width;
    }

    /** An empty line. */
    void blank() {
        text.append('\n');
    }

    /** The heading of a part, with an empty line before it. */
    void heading(String title) {
        blank();
        wrapped("", "", title);
    }

    /** A paragraph at the left edge. */
    void paragraph(String words) {
        wrapped("", "", words);
    }

    /** A line of a part, indented by two. */
    void line(String words) {
        wrapped("  ", "    ", words);
    }

    /** A line of a list. */
    void item(String words) {
        wrapped("  - ", "    ", words);
    }

    /** A label and what belongs to it, the label in a column of its own. */
    void labelled(String label, int labelWidth, String words) {
        String first = "  " + padRight(label, labelWidth) + "  ";
        wrapped(first, " ".repeat(first.length()), words);
    }

    /** A row already set in columns; trailing spaces fall away, an overlong row is wrapped. */
    void row(String columns) {
        String trimmed = columns.stripTrailing();
        if (columns(trimmed) <= width) {
            text.append(trimmed).append('\n');
        } else {
            wrapped("  ", "    ", trimmed.strip());
        }
    }

    /**
     * Words, wrapped.
     *
     * @param first what stands before the first line
     * @param next what stands before each further line
     */
    void wrapped(String first, String next, String words) {
        StringBuilder line = new StringBuilder(first);
        boolean lineHasWord = false;
        int from = 0;
        while (from < words.length()) {
            int to = endOfWord(words, from);
            String word = words.substring(from, to);
            from = to + 1;
            if (word.isEmpty()) {
                continue;
            }
            if (lineHasWord && columns(line) + 1 + columns(word) > width) {
                text.append(line).append('\n');
                line = new StringBuilder(next);
                lineHasWord = false;
            }
            while (columns(line) + (lineHasWord ? 1 : 0) + columns(word) > width) {
                int fitting = fitting(word, width - columns(line));
                text.append(line).append(word, 0, fitting).append('\n');
                word = word.substring(fitting);
                line = new StringBuilder(next);
            }
            line.append(lineHasWord ? " " : "").append(word);
            lineHasWord = true;
        }
        text.append(line.toString().stripTrailing()).append('\n');
    }

    /** Where a word ends; a percent sign stays with its number. */
    private static int endOfWord(String words, int from) {
        int space = words.indexOf(' ', from);
        while (space >= 0 && words.startsWith(" %", space)) {
            space = words.indexOf(' ', space + 1);
        }
        return space < 0 ? words.length() : space;
    }

    @Override
    public String toString() {
        return text.toString();
    }

    /** The text in a column of the given width; longer text is left as it is. */
    static String padRight(String text, int width) {
        return text + " ".repeat(Math.max(0, width - columns(text)));
    }

    /** The text at the right edge of a column of the given width; longer text is left as it is. */
    static String padLeft(String text, int width) {
        return " ".repeat(Math.max(0, width - columns(text))) + text;
    }

    /** Columns on a screen: letters of Asian scripts and pictures take two. */
    static int columns(CharSequence text) {
        int columns = 0;
        int next = 0;
        while (next < text.length()) {
            int point = Character.codePointAt(text, next);
            columns += columns(point);
            next += Character.charCount(point);
        }
        return columns;
    }

    private static int columns(int c) {
        if (c < 0x300) {
            return 1;
        }
        int type = Character.getType(c);
        if (type == Character.NON_SPACING_MARK || type == Character.ENCLOSING_MARK) {
            return 0;
        }
        boolean wide = within(c, 0x1100, 0x115F)
                || within(c, 0x2E80, 0xA4CF)
                || within(c, 0xAC00, 0xD7A3)
                || within(c, 0xF900, 0xFAFF)
                || within(c, 0xFE30, 0xFE6F)
                || within(c, 0xFF00, 0xFF60)
                || within(c, 0x1F300, 0x1FAFF)
                || within(c, 0x20000, 0x3FFFD);
        return wide ? 2 : 1;
    }

    private static boolean within(int c, int first, int last) {
        return c >= first && c <= last;
    }

    /** How many chars of a word fit into so many columns, at least one code point. */
    private static int fitting(String word, int columns) {
        int end = word.offsetByCodePoints(0, 1);
        while (end < word.length() && columns(word.substring(0, word.offsetByCodePoints(end, 1))) <= columns) {
            end = word.offsetByCodePoints(end, 1);
        }
        return end;
    }
}
