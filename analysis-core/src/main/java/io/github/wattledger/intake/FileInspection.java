package io.github.wattledger.intake;

import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.clean.QualityReport;
import io.github.wattledger.clean.RecordingSummary;
import io.github.wattledger.load.RideLoad;
import io.github.wattledger.ride.DeviceTotals;
import io.github.wattledger.ride.Ride;
import java.io.Serializable;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a file holds, without any judgement of the rides in it.
 *
 * @param file the file's name without its folder
 * @param format the format's name, for instance {@code FIT}
 * @param bytes its size, bytes
 * @param sha256 the SHA-256 digest of its bytes, lower-case hexadecimal
 * @param notes damage that was survived and fields that were left out
 * @param sessions what each session holds, in the file's order
 */
public record FileInspection(
        String file, String format, int bytes, String sha256, List<QualityNote> notes, List<Session> sessions)
        implements Serializable {
    /**
     * One session of the file.
     *
     * @param source where it comes from
     * @param summary what was recorded
     * @param quality how good it is, and what the cleaning would change in it
     * @param load our totals; what rests on a threshold is null
     * @param deviceTotals what the device computed, as it stored it, or null
     * @param ride the session, cleaned
     */
    public record Session(
            RideSource source,
            RecordingSummary summary,
            QualityReport quality,
            RideLoad load,
            @Nullable DeviceTotals deviceTotals,
            Ride ride)
            implements Serializable {}

    /** Copies the lists. */
    public FileInspection {
        notes = List.copyOf(notes);
        sessions = List.copyOf(sessions);
    }
}
