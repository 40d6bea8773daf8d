package io.github.wattledger;

import io.github.wattledger.clean.Cleaning;
import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.clean.RecordingSummary;
import io.github.wattledger.load.RideLoad;
import io.github.wattledger.read.ContentDigest;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.ReadResult;
import io.github.wattledger.read.RideFiles;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.rider.ZoneScheme;
import java.nio.file.Path;
import java.util.List;

/** The door beside {@link Reviewer} for those who want to know what a file holds before anything is judged. */
public final class Inspector {
    private Inspector() {}

    /**
     * Looks into a recorded file; sessions of any sport are told.
     *
     * @throws UnreadableRideException when nothing could be read; its message is one line for people that begins with
     *     the file
     */
    public static FileInspection inspect(Path file) throws UnreadableRideException {
        return inspect(file, ReadOptions.DEFAULT);
    }

    /**
     * {@link #inspect(Path)}, read with options of one's own.
     *
     * @throws UnreadableRideException when nothing could be read; its message is one line for people that begins with
     *     the file
     */
    public static FileInspection inspect(Path file, ReadOptions options) throws UnreadableRideException {
        byte[] content = RideFiles.content(file, options.limits());
        ReadResult read = RideFiles.read(content, file.toString(), options);
        Path name = file.getFileName();
        String shownName = name == null ? file.toString() : name.toString();
        String sha256 = ContentDigest.sha256(content);
        List<QualityNote> notes = read.notes().stream()
                .map(note -> new QualityNote(note.code(), null, note.text()))
                .toList();
        List<FileInspection.Session> sessions = read.recordings().stream()
                .map(recording -> session(recording, shownName, read.format(), sha256))
                .toList();
        return new FileInspection(shownName, read.format(), content.length, sha256, notes, sessions);
    }

    private static FileInspection.Session session(Recording recording, String file, String format, String sha256) {
        Cleaning.Cleaned cleaned = Cleaning.clean(recording);
        RideLoad load = RideLoad.of(
                cleaned.ride(), null, null, ZoneScheme.POWER_SEVEN_LEVELS, ZoneScheme.HEART_RATE_FIVE_LEVELS);
        return new FileInspection.Session(
                RideSource.of(recording, cleaned.ride(), file, format, sha256),
                RecordingSummary.of(recording, cleaned.ride()),
                cleaned.quality(),
                load,
                recording.totals(),
                cleaned.ride());
    }
}
