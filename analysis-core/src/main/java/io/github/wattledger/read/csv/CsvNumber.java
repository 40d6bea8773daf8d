package io.github.wattledger.read.csv;

/** Numbers as people and programs in different countries write them. */
final class CsvNumber {
    private static final int LONGEST = 40;

    private CsvNumber() {}

    /**
     * The number, or NaN when the text is none. A single comma without a point is a decimal comma; where both stand, the
     * last of them is the decimal sign and the others part the thousands.
     */
    static double parse(String text) {
        if (text.isEmpty() || text.length() > LONGEST) {
            return Double.NaN;
        }
        boolean comma = false;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            // Java's own parser also takes hexadecimal numbers, words and type letters.
            if ("0123456789+-.,eE".indexOf(c) < 0) {
                return Double.NaN;
            }
            comma |= c == ',';
        }
        try {
            double value = Double.parseDouble(comma ? withPoint(text) : text);
            return Double.isFinite(value) ? value : Double.NaN;
        } catch (NumberFormatException e) {
            return Double.NaN;
        }
    }

    private static String withPoint(String text) {
        int lastComma = text.lastIndexOf(',');
        int lastPoint = text.lastIndexOf('.');
        if (lastPoint > lastComma) {
            return text.replace(",", "");
        }
        return text.replace(".", "").replace(',', '.');
    }
}
