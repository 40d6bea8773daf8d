package io.github.wattledger.read.fit;

import com.garmin.fit.Decode;
import com.garmin.fit.Decoder;
import com.garmin.fit.MesgListener;
import io.github.wattledger.read.ReadLimits;
import io.github.wattledger.read.ReadNote;
import io.github.wattledger.read.ReadResult;
import io.github.wattledger.read.RideFormat;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Recording;
import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * FIT activity files. The bytes are decoded by the FIT SDK; what is resolved here is which of several fields that say
 * the same is believed, and what a damaged file still tells.
 */
public final class FitFormat implements RideFormat {
    /** Found by {@link java.util.ServiceLoader}. */
    public FitFormat() {}

    @Override
    public String name() {
        return "FIT";
    }

    @Override
    public boolean recognizes(byte[] content) {
        return FitHeader.at(content, 0) != null;
    }

    @Override
    public ReadResult read(byte[] content, ReadLimits limits) throws UnreadableRideException {
        FitMessages messages = new FitMessages(limits.maximumSamples());
        Exception damage = decode(content, messages);
        if (needsStreamDecoder(damage)) {
            messages = new FitMessages(limits.maximumSamples());
            damage = decodeStream(content, messages);
        }
        if (damage instanceof FitMessages.TooManySamplesException) {
            throw new UnreadableRideException(
                    "holds more than " + limits.maximumSamples() + " samples, the most that is read; split it first",
                    damage);
        }
        if (messages.sampleCount() == 0) {
            throw new UnreadableRideException(whyEmpty(messages, damage));
        }
        List<ReadNote> notes = new ArrayList<>();
        ReadNote damageNote = damageNote(content, messages, damage);
        if (damageNote != null) {
            notes.add(damageNote);
        }
        List<Recording> recordings = new FitSessionSplit(messages).recordings();
        if (!messages.hasSessions()) {
            notes.add(new ReadNote(
                    "no-session",
                    "The file has no session message: it was not closed properly. All totals are recomputed."));
        }
        return new ReadResult(name(), recordings, notes);
    }

    /** Hands every message to the collector; gives back what stopped the decoder before the end, or null. */
    @SuppressWarnings(
            "CatchGeneric") // the SDK declares `throws Exception`, and throws runtime exceptions of many kinds
    private static @Nullable Exception decode(byte[] content, FitMessages messages) {
        Decoder decoder = new Decoder(content);
        decoder.enableSkipExpandComponents(true);
        decoder.addListener((MesgListener) messages::accept);
        try {
            decoder.read();
            return null;
        } catch (Exception e) {
            return e;
        }
    }

    /** The byte-array decoder does not know compressed timestamps; the slower stream decoder does. */
    private static boolean needsStreamDecoder(@Nullable Exception damage) {
        String message = damage == null ? null : damage.getMessage();
        return message != null && message.contains("Compressed timestamp");
    }

    private static @Nullable Exception decodeStream(byte[] content, FitMessages messages) {
        Decode decoder = new Decode();
        decoder.enableSkipExpandComponents(true);
        try {
            decoder.read(new ByteArrayInputStream(content), (MesgListener) messages::accept);
            return null;
        } catch (RuntimeException e) {
            return e;
        }
    }

    private static @Nullable ReadNote damageNote(byte[] content, FitMessages messages, @Nullable Exception damage) {
        FitHeader header = FitHeader.at(content, 0);
        if (header != null && header.promisedBytes() > content.length) {
            return new ReadNote(
                    "cut-short",
                    String.format(
                            Locale.ROOT,
                            "The file is cut short: its header promises %,d bytes, it has %,d. "
                                    + "The %,d samples before the break were read.",
                            header.promisedBytes(),
                            content.length,
                            messages.sampleCount()));
        }
        if (damage != null) {
            return new ReadNote(
                    "damaged",
                    String.format(
                            Locale.ROOT,
                            "The file is damaged (%s). The %,d samples before the damage were read.",
                            reason(damage),
                            messages.sampleCount()));
        }
        return null;
    }

    private static String whyEmpty(FitMessages messages, @Nullable Exception damage) {
        if (damage != null) {
            return "is a damaged FIT file with no sample before the damage (" + reason(damage)
                    + "); copy it from the device again";
        }
        String type = messages.fileType();
        if (type != null && !type.equals("activity")) {
            return "is a FIT file of type \"" + type + "\", not a recorded ride; choose an activity file";
        }
        return "is a FIT file without a single sample; nothing was recorded in it";
    }

    private static String reason(Exception damage) {
        String message = damage.getMessage();
        if (message == null || message.isBlank()) {
            return damage.getClass().getSimpleName();
        }
        String oneLine = message.replaceAll("\\s+", " ").strip();
        return oneLine.startsWith("FIT decode error: ") ? oneLine.substring("FIT decode error: ".length()) : oneLine;
    }
}
