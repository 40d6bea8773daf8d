package io.github.wattledger.read;

import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.read.UnreadableRideException.Reason;
import io.github.wattledger.read.ZipEntries.Entry;
import io.github.wattledger.ride.Recording;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * Reads content that may be packed: gzip, zip, or one in the other. The limits hold for the whole of it, so that an
 * archive in an archive gains nothing. One instance reads one file.
 */
final class Unpacking {
    /** An archive in an archive in an archive is no longer somebody's ride. */
    private static final int DEEPEST = 2;

    private static final int MOST_NAMES = 8;
    private static final int MOST_NOTES = 40;

    /** How names of archives end. */
    static final Set<String> FILE_ENDINGS = Set.of("gz", "zip");

    private final Formats formats;
    private final ReadOptions options;
    private final ReadRequest request;
    private long unpackedBytes;
    private int entryCount;

    Unpacking(ReadOptions options, Cancellation cancellation) {
        this.formats = new Formats(options.formats());
        this.options = options;
        this.request = options.request(cancellation);
    }

    ReadResult read(byte[] content) throws UnreadableRideException {
        ReadResult result = read(content, 0);
        int notes = result.notes().size();
        if (notes <= MOST_NOTES) {
            return result;
        }
        List<ReadNote> first = new ArrayList<>(result.notes().subList(0, MOST_NOTES));
        first.add(new ReadNote("more-notes", (notes - MOST_NOTES) + " more notes on this file were left out."));
        return new ReadResult(result.format(), result.recordings(), first);
    }

    private ReadResult read(byte[] content, int depth) throws UnreadableRideException {
        request.cancellation().check();
        if (content.length == 0) {
            throw new UnreadableRideException(Reason.EMPTY, "is empty (0 bytes); copy it from the device again");
        }
        if (GzipContent.looksLike(content) || ZipEntries.looksLike(content)) {
            if (depth == DEEPEST) {
                throw new UnreadableRideException(
                        Reason.NOT_A_RECORDING,
                        "is an archive in an archive in an archive; unpack it and name one file");
            }
            return GzipContent.looksLike(content) ? readGzip(content, depth) : readZip(content, depth);
        }
        RideFormat format = formats.of(content);
        if (format == null) {
            throw new UnreadableRideException(
                    Reason.UNKNOWN_FORMAT,
                    "is not a recording in a known format (" + formats.names()
                            + "); export the ride from the device or its app again");
        }
        return format.read(content, request);
    }

    private ReadResult readGzip(byte[] content, int depth) throws UnreadableRideException {
        GzipContent gzip = GzipContent.measure(content, mostBytesOfAFile());
        if (gzip.tooLarge()) {
            throw new UnreadableRideException(
                    Reason.TOO_LARGE,
                    "unpacks to more than " + megabytes(mostBytesOfAFile()) + ", the most that is read; is it a ride?");
        }
        unpackedBytes += gzip.size();
        if (gzip.size() == 0) {
            throw new UnreadableRideException(
                    Reason.EMPTY, "is a gzip file with nothing in it; copy it from the device again");
        }
        ReadResult inner = read(gzip.unpack(content), depth + 1);
        if (!gzip.damaged()) {
            return inner;
        }
        List<ReadNote> notes = new ArrayList<>();
        notes.add(new ReadNote(
                "archive-damaged",
                String.format(
                        Locale.ROOT,
                        "The gzip file is damaged or cut short; the %,d bytes before the damage were read.",
                        gzip.size())));
        notes.addAll(inner.notes());
        return new ReadResult(inner.format(), inner.recordings(), notes);
    }

    private ReadResult readZip(byte[] content, int depth) throws UnreadableRideException {
        ZipEntries zip = measure(content);
        Parts parts = new Parts();
        ZipEntries.Content contents = zip.contents(content);
        for (Entry entry : zip.entries()) {
            if (entry.size() > options.limits().maximumBytes()) {
                parts.passOver(
                        entry.name(),
                        "larger than " + megabytes(options.limits().maximumBytes()));
                contents.skip();
                continue;
            }
            byte[] inner = contents.next(Math.toIntExact(entry.size()));
            try {
                parts.add(entry.name(), read(inner, depth + 1));
            } catch (UnreadableRideException e) {
                parts.passOver(entry.name(), String.valueOf(e.getMessage()));
            }
            if (parts.sampleCount > options.limits().maximumSamples()) {
                throw new UnreadableRideException(
                        Reason.TOO_LARGE,
                        String.format(
                                Locale.ROOT,
                                "holds more than %,d samples in all its files, the most that is read; "
                                        + "unpack it and name one file",
                                options.limits().maximumSamples()));
            }
        }
        return parts.result(zip.damaged());
    }

    private ZipEntries measure(byte[] content) throws UnreadableRideException {
        ReadLimits limits = options.limits();
        ZipEntries zip = ZipEntries.measure(
                content, limits.maximumArchiveEntries() - entryCount, limits.maximumUnpackedBytes() - unpackedBytes);
        if (zip.tooMany()) {
            throw new UnreadableRideException(
                    Reason.TOO_LARGE,
                    String.format(
                            Locale.ROOT,
                            "is an archive of more than %,d entries, the most that is read; unpack it and name one file",
                            limits.maximumArchiveEntries()));
        }
        if (zip.tooLarge()) {
            throw new UnreadableRideException(
                    Reason.TOO_LARGE,
                    "unpacks to more than " + megabytes(limits.maximumUnpackedBytes())
                            + ", the most that is read; is it a ride?");
        }
        unpackedBytes += zip.unpackedBytes();
        entryCount += zip.entryCount();
        return zip;
    }

    private long mostBytesOfAFile() {
        ReadLimits limits = options.limits();
        return Math.min(limits.maximumBytes(), limits.maximumUnpackedBytes() - unpackedBytes);
    }

    private static String megabytes(long bytes) {
        return String.format(Locale.ROOT, "%,.1f MB", bytes / 1e6);
    }

    /** What was found in a zip archive. */
    private static final class Parts {
        private final Set<String> formatNames = new LinkedHashSet<>();
        private final List<Recording> recordings = new ArrayList<>();
        private final List<String> origins = new ArrayList<>();
        private final List<String> passedOver = new ArrayList<>();
        private final List<String> partNames = new ArrayList<>();
        private final List<ReadResult> parts = new ArrayList<>();
        private long sampleCount;

        void add(String name, ReadResult part) {
            int first = recordings.size() + 1;
            for (Recording recording : part.recordings()) {
                recordings.add(recording.withSessionIndex(recordings.size()));
                sampleCount += recording.samples().size();
            }
            int last = recordings.size();
            origins.add((first == last ? "session " + first + " is " : "sessions " + first + " to " + last + " are ")
                    + name);
            formatNames.add(part.format());
            partNames.add(name);
            parts.add(part);
        }

        void passOver(String name, String reason) {
            passedOver.add(name + " (" + reason + ")");
        }

        ReadResult result(boolean damaged) throws UnreadableRideException {
            if (parts.isEmpty()) {
                throw new UnreadableRideException(
                        Reason.NOT_A_RECORDING,
                        passedOver.isEmpty()
                                ? "is an archive without a file; export the ride again"
                                : "is an archive without a readable ride: " + listed(passedOver));
            }
            List<ReadNote> notes = new ArrayList<>();
            if (damaged) {
                notes.add(new ReadNote(
                        "archive-damaged",
                        "The zip archive is damaged or cut short; what comes before the damage was read."));
            }
            notes.add(new ReadNote(
                    "archive",
                    parts.size() == 1
                            ? "Read from the archive: " + partNames.get(0) + "."
                            : "The archive holds " + parts.size() + " rides: " + listed(origins) + "."));
            if (!passedOver.isEmpty()) {
                notes.add(
                        new ReadNote("archive-passed-over", "Passed over in the archive: " + listed(passedOver) + "."));
            }
            for (int i = 0; i < parts.size(); i++) {
                for (ReadNote note : parts.get(i).notes()) {
                    notes.add(
                            parts.size() == 1
                                    ? note
                                    : new ReadNote(note.code(), partNames.get(i) + ": " + note.text()));
                }
            }
            return new ReadResult(String.join(", ", formatNames), recordings, notes);
        }

        private static String listed(List<String> names) {
            if (names.size() <= MOST_NAMES) {
                return String.join(", ", names);
            }
            return String.join(", ", names.subList(0, MOST_NAMES)) + " and " + (names.size() - MOST_NAMES) + " more";
        }
    }
}
