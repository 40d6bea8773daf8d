package io.github.wattledger.read.fit;

import io.github.wattledger.read.ReadNote;
import io.github.wattledger.read.ReadRequest;
import io.github.wattledger.read.ReadResult;
import io.github.wattledger.read.RideFormat;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.read.UnreadableRideException.Reason;
import io.github.wattledger.ride.Recording;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * FIT activity files. The FIT SDK decodes the bytes. This package decides which of several fields for the same thing is
 * believed, and reads what a damaged file still holds.
 */
public final class FitFormat implements RideFormat {
    /** A format without state. */
    public FitFormat() {}

    @Override
    public String name() {
        return "FIT";
    }

    @Override
    public Set<String> fileEndings() {
        return Set.of("fit");
    }

    @Override
    public boolean recognizes(byte[] content) {
        return FitHeader.at(content, 0) != null;
    }

    @Override
    public ReadResult read(byte[] content, ReadRequest request) throws UnreadableRideException {
        requireDecoder();
        List<FitPart> parts = FitPart.of(content);
        List<Recording> recordings = new ArrayList<>();
        List<ReadNote> notes = new ArrayList<>();
        if (parts.size() > 1) {
            notes.add(new ReadNote(
                    "chained",
                    "The file holds " + parts.size() + " FIT files one after the other; each was read on its own."));
        }
        FitReading.WhyEmpty whyEmpty = null;
        int sampleCount = 0;
        for (int i = 0; i < parts.size(); i++) {
            FitPart part = parts.get(i);
            int limit = request.limits().maximumSamples();
            FitReading reading = FitReading.of(content, part, limit - sampleCount, request.cancellation());
            if (reading.tooManySamples()) {
                throw new UnreadableRideException(
                        Reason.TOO_LARGE,
                        String.format(
                                Locale.ROOT,
                                "holds more than %,d samples, the most that is read; split it first",
                                limit));
            }
            String prefix = parts.size() == 1 ? "" : "File " + (i + 1) + ": ";
            for (ReadNote note : reading.notes()) {
                notes.add(new ReadNote(note.code(), prefix + note.text()));
            }
            for (Recording recording : reading.recordings()) {
                recordings.add(recording.withSessionIndex(recordings.size()));
                sampleCount += recording.samples().size();
            }
            if (whyEmpty == null) {
                whyEmpty = reading.whyEmpty();
            }
        }
        if (recordings.isEmpty()) {
            throw new UnreadableRideException(
                    whyEmpty == null ? Reason.NOT_A_RECORDING : whyEmpty.reason(),
                    whyEmpty == null
                            ? "is a FIT file without a single sample; nothing was recorded in it"
                            : whyEmpty.words());
        }
        return new ReadResult(name(), recordings, notes);
    }

    /** The FIT SDK may be left out by who reads no FIT files. */
    static void requireDecoder() throws UnreadableRideException {
        try {
            Class.forName("com.garmin.fit.Decoder", false, FitFormat.class.getClassLoader());
        } catch (ClassNotFoundException e) {
            throw new UnreadableRideException(
                    Reason.NO_DECODER,
                    "is a FIT file, and the FIT SDK that decodes it is not on the class path; add com.garmin:fit to the"
                            + " dependencies of the program",
                    e);
        }
    }
}
