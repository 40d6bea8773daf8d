package io.github.wattledger.read.fit;

import com.garmin.fit.Decode;
import com.garmin.fit.Decoder;
import com.garmin.fit.MesgListener;
import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.cancel.CancelledException;
import io.github.wattledger.read.ReadNote;
import io.github.wattledger.read.UnreadableRideException.Reason;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.Samples;
import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** One complete FIT file read as far as it can be. */
final class FitReading {
    private final FitPart part;
    private final FitMessages messages;
    private final @Nullable Exception damage;
    private final List<ReadNote> notes = new ArrayList<>();
    private final List<Recording> recordings = new ArrayList<>();

    private FitReading(FitPart part, FitMessages messages, @Nullable Exception damage) {
        this.part = part;
        this.messages = messages;
        this.damage = damage;
        Samples raw = messages.samples();
        noteDamage(raw);
        if (raw.size() > 0 && !isCourse()) {
            Samples samples = messages.completedSamples(notes);
            recordings.addAll(new FitSessionSplit(messages, samples, breaksOff()).recordings());
            noteLosses();
        }
    }

    /**
     * Reads a part with the fast decoder, and once more with the other one where the fast decoder stops early: it knows
     * neither compressed timestamps nor developer fields that no message describes.
     */
    static FitReading of(byte[] content, FitPart part, int maximumSamples, Cancellation cancellation) {
        byte[] file = part.asFile(content);
        FitMessages messages = new FitMessages(maximumSamples, cancellation);
        Exception damage = decode(file, messages);
        FitReading reading = new FitReading(part, messages, damage);
        if (damage == null || reading.tooManySamples() || reading.stoppedByChecksum()) {
            return reading;
        }
        FitMessages slower = new FitMessages(maximumSamples, cancellation);
        Exception slowerDamage = decodeStream(file, slower);
        boolean further = slowerDamage == null || slower.messageCount() > messages.messageCount();
        return further ? new FitReading(part, slower, slowerDamage) : reading;
    }

    boolean tooManySamples() {
        return damage instanceof FitMessages.TooManySamplesException;
    }

    List<Recording> recordings() {
        return recordings;
    }

    List<ReadNote> notes() {
        return notes;
    }

    /** Hands every message to the collector; gives back what stopped the decoder before the end, or null. */
    @SuppressWarnings(
            "CatchGeneric") // the SDK declares `throws Exception`, and throws runtime exceptions of many kinds
    private static @Nullable Exception decode(byte[] file, FitMessages messages) {
        Decoder decoder = new Decoder(file);
        decoder.enableSkipExpandComponents(true);
        decoder.addListener((MesgListener) messages::accept);
        try {
            decoder.read();
            return null;
        } catch (CancelledException e) {
            throw e;
        } catch (Exception e) {
            return e;
        }
    }

    /** The slower decoder that reads from a stream. */
    private static @Nullable Exception decodeStream(byte[] file, FitMessages messages) {
        Decode decoder = new Decode();
        decoder.enableSkipExpandComponents(true);
        try {
            decoder.read(new ByteArrayInputStream(file), (MesgListener) messages::accept);
            return null;
        } catch (CancelledException e) {
            throw e;
        } catch (RuntimeException e) {
            return e;
        }
    }

    /** Whether it is a course to ride: the times of its records are those of a virtual partner, never of a ride. */
    private boolean isCourse() {
        return "course".equals(messages.fileType());
    }

    private boolean breaksOff() {
        return damage != null || part.lengthIsWrong();
    }

    private boolean checksumIsWrong() {
        return !part.closed() && !part.lengthIsWrong();
    }

    private void noteDamage(Samples read) {
        if (part.isCutShort()) {
            notes.add(ReadNote.damage(
                    "cut-short",
                    String.format(
                            Locale.ROOT,
                            "The file is cut short: its header promises %,d bytes, it has %,d.",
                            part.promisedBytes(),
                            part.sizeBytes()),
                    read));
        } else if (part.lengthIsWrong()) {
            notes.add(ReadNote.damage(
                    "not-closed",
                    String.format(
                            Locale.ROOT,
                            "The file was not closed properly: its header does not give its length, which is %,d bytes.",
                            part.sizeBytes()),
                    read));
        } else if (damage != null && !stoppedByChecksum()) {
            notes.add(ReadNote.damage("damaged", "The file is damaged: " + reason(damage) + ".", read));
        } else if (checksumIsWrong()) {
            notes.add(new ReadNote(
                    "wrong-checksum",
                    String.format(
                            Locale.ROOT,
                            "The file's checksum is wrong: a byte somewhere has changed, and with it perhaps a value. "
                                    + "All %,d samples were read.",
                            read.size())));
        }
        if (part.strayBytes() > 0) {
            notes.add(new ReadNote(
                    "stray-bytes",
                    String.format(
                            Locale.ROOT,
                            "%,d bytes after the end of the recording belong to nothing and were passed over.",
                            part.strayBytes())));
        }
    }

    /** The decoder complains of the checksum only after the last message. */
    private boolean stoppedByChecksum() {
        String message = damage == null ? null : damage.getMessage();
        return checksumIsWrong() && message != null && message.contains("CRC");
    }

    private void noteLosses() {
        if (!messages.hasSessions()) {
            notes.add(new ReadNote(
                    "no-session",
                    "The file has no session message: it was not closed properly. All totals are recomputed."));
        }
        if (messages.recordsWithoutTime() > 0) {
            notes.add(new ReadNote(
                    "records-without-time", messages.recordsWithoutTime() + " records without a time were left out."));
        }
    }

    /** Why a part has no sample, for programs and for people. */
    record WhyEmpty(Reason reason, String words) {}

    /** Why there is no sample; meaningful only then. */
    WhyEmpty whyEmpty() {
        if (isCourse()) {
            return new WhyEmpty(
                    Reason.NOT_A_RECORDING,
                    "is a FIT course, a way to ride and not a recorded ride; choose an activity file, or make a plan for"
                            + " it with wattledger plan (in the library, RacePlan)");
        }
        if (damage != null) {
            return new WhyEmpty(
                    Reason.DAMAGED,
                    "is a damaged FIT file with no sample before the damage (" + reason(damage)
                            + "); copy it from the device again");
        }
        String type = messages.fileType();
        String words = type != null && !type.equals("activity")
                ? "is a FIT file of type \"" + type + "\", not a recorded ride; choose an activity file"
                : "is a FIT file without a single sample; nothing was recorded in it";
        return new WhyEmpty(Reason.NOT_A_RECORDING, words);
    }

    /** What stopped the decoder, in words of ours: its own are for programmers. */
    private static String reason(Exception damage) {
        String message = damage.getMessage();
        boolean atTheEnd = message != null && message.contains("End of file");
        return atTheEnd ? "it ends in the middle of a message" : "from some byte on, nothing in it can be decoded";
    }
}
