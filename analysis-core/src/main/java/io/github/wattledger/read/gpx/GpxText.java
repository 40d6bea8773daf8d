package io.github.wattledger.read.gpx;

import io.github.wattledger.read.ReadNote;
import java.io.ByteArrayInputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.StandardCharsets;
import java.nio.charset.UnsupportedCharsetException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A document's bytes as text. What the bytes are is believed before what the document declares: programs write one
 * encoding and declare another, and all that matters of a ride is written in letters that most encodings share. Bytes
 * that the encoding does not have become replacement characters, so that no document is lost for a name's umlaut.
 */
final class GpxText {
    private static final int LOOKED_AT_BYTES = 400;
    private static final int LONGEST_NAME = 40;
    private static final Pattern DECLARED = Pattern.compile("^\\s*<\\?xml[^>]*?encoding\\s*=\\s*[\"']([^\"']*)[\"']");

    private final byte[] content;
    private final int markBytes;
    private final Charset charset;
    private final @Nullable ReadNote note;

    private GpxText(byte[] content, int markBytes, Charset charset, @Nullable ReadNote note) {
        this.content = content;
        this.markBytes = markBytes;
        this.charset = charset;
        this.note = note;
    }

    static GpxText of(byte[] content) {
        int mark = markBytes(content);
        Charset shown = shownByBytes(content);
        String start = new String(content, mark, Math.min(content.length - mark, LOOKED_AT_BYTES), shown);
        Matcher matcher = DECLARED.matcher(start);
        String declared = matcher.find() ? matcher.group(1) : null;
        Charset charset = shown;
        boolean believed = true;
        if (declared != null && shown.equals(StandardCharsets.UTF_8) && mark == 0) {
            Charset named = named(declared);
            // A document that could be read as far as its declaration in single bytes is not in pairs of them.
            believed = named != null
                    && !named.name().startsWith("UTF-16")
                    && !named.name().startsWith("UTF-32");
            charset = named != null && believed ? named : shown;
        } else if (declared != null) {
            Charset named = named(declared);
            believed = named != null && shown.name().startsWith(named.name());
        }
        return new GpxText(content, mark, charset, note(content, mark, charset, declared, believed));
    }

    private static @Nullable ReadNote note(
            byte[] content, int mark, Charset charset, @Nullable String declared, boolean believed) {
        boolean whole = isWhole(content, mark, charset);
        if (whole && believed) {
            return null;
        }
        String says = declared == null
                ? "The file names no encoding"
                : "The file names the encoding " + ReadNote.printable(declared, LONGEST_NAME);
        String text = believed
                ? says + ", but holds bytes that are not " + charset.name() + ": those letters were replaced, and all "
                        + "else was read."
                : says + ", which is not what it is in: it was read as " + charset.name() + ".";
        return new ReadNote("encoding", text);
    }

    private static int markBytes(byte[] content) {
        if (startsWith(content, 0xEF, 0xBB, 0xBF)) {
            return 3;
        }
        return startsWith(content, 0xFF, 0xFE) || startsWith(content, 0xFE, 0xFF) ? 2 : 0;
    }

    /** The encoding that a byte order mark or zeros between the first letters show; UTF-8 where neither is there. */
    private static Charset shownByBytes(byte[] content) {
        if (startsWith(content, 0xFF, 0xFE) || startsWith(content, '<', 0)) {
            return StandardCharsets.UTF_16LE;
        }
        return startsWith(content, 0xFE, 0xFF) || startsWith(content, 0, '<')
                ? StandardCharsets.UTF_16BE
                : StandardCharsets.UTF_8;
    }

    private static boolean startsWith(byte[] content, int... bytes) {
        if (content.length < bytes.length) {
            return false;
        }
        for (int i = 0; i < bytes.length; i++) {
            if ((content[i] & 0xFF) != bytes[i]) {
                return false;
            }
        }
        return true;
    }

    private static @Nullable Charset named(String name) {
        try {
            return Charset.forName(name.strip());
        } catch (IllegalCharsetNameException | UnsupportedCharsetException e) {
            return null;
        }
    }

    /** Whether all bytes are of the encoding. */
    private static boolean isWhole(byte[] content, int fromByte, Charset charset) {
        CharsetDecoder decoder = charset.newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        ByteBuffer bytes = ByteBuffer.wrap(content, fromByte, content.length - fromByte);
        CharBuffer letters = CharBuffer.allocate(8192);
        while (true) {
            var result = decoder.decode(bytes, letters, true);
            if (result.isError()) {
                return false;
            }
            if (result.isUnderflow()) {
                return true;
            }
            letters.clear();
        }
    }

    /** The text from the document's start on. */
    Reader reader() {
        return new InputStreamReader(
                new ByteArrayInputStream(content, markBytes, content.length - markBytes),
                charset.newDecoder()
                        .onMalformedInput(CodingErrorAction.REPLACE)
                        .onUnmappableCharacter(CodingErrorAction.REPLACE));
    }

    /** What was odd about the encoding, or null. */
    @Nullable ReadNote note() {
        return note;
    }
}
