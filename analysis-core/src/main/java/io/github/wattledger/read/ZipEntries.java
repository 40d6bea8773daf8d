package io.github.wattledger.read;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;

/**
 * The files in a zip archive and what they unpack to. As with gzip, a first pass only counts, and a second fills arrays
 * of the right size, one file at a time. The sizes that the archive itself states are not believed.
 *
 * @param entries its files in order, without folders
 * @param entryCount entries, folders included
 * @param unpackedBytes all files together
 * @param damaged whether it is cut short or broken; the last entry may be incomplete then
 * @param tooMany whether it has more entries than allowed; then it was not counted to the end
 * @param tooLarge whether it is larger than allowed; then it was not counted to the end
 */
record ZipEntries(
        List<Entry> entries, int entryCount, long unpackedBytes, boolean damaged, boolean tooMany, boolean tooLarge) {
    private static final int STEP = 8192;
    private static final int LONGEST_NAME = 100;

    /**
     * A file in an archive.
     *
     * @param name its name with folders, made fit to print
     * @param size bytes that it unpacks to
     */
    record Entry(String name, long size) {}

    static boolean looksLike(byte[] content) {
        return content.length > 3
                && content[0] == 'P'
                && content[1] == 'K'
                && ((content[2] == 3 && content[3] == 4) || (content[2] == 5 && content[3] == 6));
    }

    static ZipEntries measure(byte[] content, int maximumEntries, long maximumBytes) {
        List<Entry> entries = new ArrayList<>();
        byte[] step = new byte[STEP];
        int count = 0;
        long total = 0;
        String name = "";
        long size = -1;
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(content))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                if (++count > maximumEntries) {
                    return new ZipEntries(entries, count, total, false, true, false);
                }
                name = printable(entry.getName());
                size = entry.isDirectory() ? -1 : 0;
                for (int read = zip.read(step); read >= 0; read = zip.read(step)) {
                    size += read;
                    total += read;
                    if (total > maximumBytes) {
                        return new ZipEntries(entries, count, total, false, false, true);
                    }
                }
                if (!entry.isDirectory()) {
                    entries.add(new Entry(name, size));
                }
                size = -1;
            }
            return new ZipEntries(entries, count, total, false, false, false);
        } catch (IOException | IllegalArgumentException e) {
            // IllegalArgumentException: a name that is not the text it claims to be.
            if (size > 0) {
                entries.add(new Entry(name, size));
            }
            return new ZipEntries(entries, count, total, true, false, false);
        }
    }

    Content contents(byte[] archive) {
        return new Content(new ZipInputStream(new ByteArrayInputStream(archive)));
    }

    private static String printable(String name) {
        StringBuilder text = new StringBuilder();
        name.codePoints()
                .limit(LONGEST_NAME)
                .forEach(point -> text.appendCodePoint(
                        Character.isISOControl(point) || Character.getType(point) == Character.FORMAT ? '?' : point));
        return text.toString();
    }

    /** The second pass over the files, in the order of the entries. */
    static final class Content {
        private final ZipInputStream zip;

        private Content(ZipInputStream zip) {
            this.zip = zip;
        }

        /** The next file, as large as the first pass has found. */
        byte[] next(int size) {
            byte[] file = new byte[size];
            int filled = advance() ? GzipContent.fill(zip, file) : 0;
            return filled == size ? file : Arrays.copyOf(file, filled);
        }

        /** Passes over the next file. */
        void skip() {
            advance();
        }

        private boolean advance() {
            try {
                ZipEntry entry = zip.getNextEntry();
                while (entry != null && entry.isDirectory()) {
                    entry = zip.getNextEntry();
                }
                return entry != null;
            } catch (IOException | IllegalArgumentException e) {
                return false;
            }
        }
    }
}
