package io.github.wattledger.cli.report.words;

import java.util.Locale;

/** Words from files and from the core, made safe and plain enough to paste into a message. */
public final class PlainText {
    private PlainText() {}

    /**
     * Removes control characters (a file's name may hold terminal sequences), writes typographic marks in ASCII and
     * narrows white space to one space. Letters of any script stay.
     */
    public static String of(String text) {
        StringBuilder plain = new StringBuilder(text.length());
        int next = 0;
        while (next < text.length()) {
            int point = text.codePointAt(next);
            append(plain, point);
            next += Character.charCount(point);
        }
        return plain.toString().strip();
    }

    /** Words as a sentence of their own: a full stop at the end. */
    public static String sentence(String words) {
        String plain = of(words);
        if (plain.isEmpty()) {
            return plain;
        }
        char last = plain.charAt(plain.length() - 1);
        return last == '.' || last == '!' || last == '?' ? plain : plain + ".";
    }

    /** Plain words, those beyond so many letters replaced by three dots. */
    static String cut(String words, int mostLetters) {
        return words.codePointCount(0, words.length()) <= mostLetters
                ? words
                : words.substring(0, words.offsetByCodePoints(0, mostLetters)).strip() + "...";
    }

    /** Words whose first letter becomes a small one. */
    static String withoutCapital(String words) {
        return words.isEmpty() ? words : words.substring(0, 1).toLowerCase(Locale.ROOT) + words.substring(1);
    }

    /** Words with a capital at the beginning. */
    public static String capital(String words) {
        return words.isEmpty() ? words : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    private static void append(StringBuilder plain, int c) {
        switch (c) {
            case '\u2032', '\u2018', '\u2019' -> plain.append('\''); // prime, as in W', and single quotes
            case '\u201C', '\u201D', '\u201E' -> plain.append('"');
            case '\u2010', '\u2011', '\u2012', '\u2013', '\u2014', '\u2212' -> plain.append('-');
            case '\u2026' -> plain.append("...");
            case '\u00B0' -> plain.append("deg ");
            case '\u00D7' -> plain.append('x');
            case '\u00B1' -> plain.append("+/-");
            case '\u2264' -> plain.append("at most ");
            case '\u2265' -> plain.append("at least ");
            default -> appendOther(plain, c);
        }
    }

    private static void appendOther(StringBuilder plain, int c) {
        boolean shown = switch (Character.getType(c)) {
            case Character.CONTROL,
                    Character.FORMAT,
                    Character.SURROGATE,
                    Character.PRIVATE_USE,
                    Character.UNASSIGNED,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR,
                    Character.SPACE_SEPARATOR -> false;
            default -> true;
        };
        if (shown) {
            plain.appendCodePoint(c);
        } else if (plain.length() > 0 && plain.charAt(plain.length() - 1) != ' ') {
            plain.append(' ');
        }
    }
}
