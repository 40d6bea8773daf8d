package io.github.wattledger.read.csv;

import io.github.wattledger.read.ReadNote;
import java.io.ByteArrayInputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/**
 * A table's bytes and what its start shows: the encoding, what stands between the cells, and where the header begins.
 *
 * @param content the bytes
 * @param charset their encoding: as the byte order mark says, otherwise UTF-8
 * @param fromByte where the header begins
 * @param delimiter comma, semicolon or tab
 * @param linesBefore lines before the header
 */
record CsvText(Content content, Charset charset, int fromByte, char delimiter, int linesBefore) {
    private static final int LOOKED_AT_BYTES = 16_384;
    private static final String DELIMITERS = ";\t,";
    private static final int LONGEST_CELL_SHOWN = 40;

    /** The bytes, wrapped since a record should not hold an array. */
    static final class Content {
        private final byte[] bytes;

        private Content(byte[] bytes) {
            this.bytes = bytes;
        }
    }

    /** Text of the table made fit for one line of a message. */
    static String printable(String text) {
        return ReadNote.printable(text, LONGEST_CELL_SHOWN);
    }

    /** Whether the content is text whose first line has at least two cells that are not blank: a letter has none. */
    static boolean looksLikeTable(byte[] content) {
        int mark = markLength(content);
        String start = start(content, mark);
        for (int i = 0; i < start.length(); i++) {
            char c = start.charAt(i);
            if (c < ' ' && c != '\t' && c != '\n' && c != '\r' && c != '\f') {
                return false;
            }
        }
        String header = of(content).headerLine();
        return !header.startsWith("<")
                && !header.startsWith("{")
                && DELIMITERS.chars().anyMatch(delimiter -> hasTwoCells(header, (char) delimiter));
    }

    private static boolean hasTwoCells(String header, char delimiter) {
        int cells = 0;
        int from = 0;
        for (int i = 0; i <= header.length(); i++) {
            if (i == header.length() || header.charAt(i) == delimiter) {
                if (!header.substring(from, i).isBlank()) {
                    cells++;
                }
                from = i + 1;
            }
        }
        return cells >= 2;
    }

    static CsvText of(byte[] content) {
        Charset charset = charset(content);
        String start = start(content, markLength(content));
        int from = 0;
        int lines = 0;
        while (from < start.length()) {
            int end = lineEnd(start, from);
            String line = start.substring(from, end).strip();
            if (!line.isEmpty() && !line.startsWith("sep=")) {
                break;
            }
            // Empty lines, and the line in which some spreadsheets name the separator.
            lines++;
            boolean two = end + 1 < start.length() && start.charAt(end) == '\r' && start.charAt(end + 1) == '\n';
            from = end + (two ? 2 : 1);
        }
        from = Math.min(from, start.length());
        int fromByte = markLength(content) + start.substring(0, from).getBytes(charset).length;
        char delimiter = delimiter(start.substring(from, lineEnd(start, from)));
        return new CsvText(new Content(content), charset, Math.min(fromByte, content.length), delimiter, lines);
    }

    private String headerLine() {
        int length = Math.min(content.bytes.length - fromByte, LOOKED_AT_BYTES);
        String start = new String(content.bytes, fromByte, length, charset);
        return start.substring(0, lineEnd(start, 0)).strip();
    }

    private static int lineEnd(String text, int from) {
        for (int i = from; i < text.length(); i++) {
            if (text.charAt(i) == '\n' || text.charAt(i) == '\r') {
                return i;
            }
        }
        return text.length();
    }

    private static char delimiter(String header) {
        char best = ',';
        long most = 0;
        for (int i = 0; i < DELIMITERS.length(); i++) {
            char candidate = DELIMITERS.charAt(i);
            long count = header.chars().filter(c -> c == candidate).count();
            if (count > most) {
                best = candidate;
                most = count;
            }
        }
        return best;
    }

    private static String start(byte[] content, int mark) {
        return new String(content, mark, Math.min(content.length - mark, LOOKED_AT_BYTES), charset(content));
    }

    private static Charset charset(byte[] content) {
        if (startsWith(content, 0xFF, 0xFE)) {
            return StandardCharsets.UTF_16LE;
        }
        return startsWith(content, 0xFE, 0xFF) ? StandardCharsets.UTF_16BE : StandardCharsets.UTF_8;
    }

    private static int markLength(byte[] content) {
        if (startsWith(content, 0xEF, 0xBB, 0xBF)) {
            return 3;
        }
        return charset(content).equals(StandardCharsets.UTF_8) ? 0 : 2;
    }

    private static boolean startsWith(byte[] content, int... mark) {
        if (content.length < mark.length) {
            return false;
        }
        for (int i = 0; i < mark.length; i++) {
            if ((content[i] & 0xFF) != mark[i]) {
                return false;
            }
        }
        return true;
    }

    /** The text from the header on. */
    Reader reader() {
        return new InputStreamReader(
                new ByteArrayInputStream(content.bytes, fromByte, content.bytes.length - fromByte), charset);
    }
}
