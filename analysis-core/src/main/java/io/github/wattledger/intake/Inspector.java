package io.github.wattledger.intake;

import io.github.wattledger.clean.RecordingSummary;
import io.github.wattledger.load.RideLoad;
import io.github.wattledger.read.ContentDigest;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.RideFiles;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.rider.ZoneScheme;
import java.nio.file.Path;
import java.util.List;

/** Looks into a recorded file: what it holds, without any judgement. Stateless and safe for many threads. */
public final class Inspector {
    private Inspector() {}

    /**
     * Looks into a recorded file, read with the usual options.
     *
     * @throws UnreadableRideException when nothing could be read; its message is one line for people that begins with
     *     the file
     */
    public static FileInspection inspect(Path file) throws UnreadableRideException {
        return inspect(file, ReadOptions.DEFAULT);
    }

    /**
     * Looks into a recorded file. The result holds its sessions of every sport.
     *
     * @throws UnreadableRideException when nothing could be read; its message is one line for people that begins with
     *     the file
     */
    public static FileInspection inspect(Path file, ReadOptions options) throws UnreadableRideException {
        byte[] content = RideFiles.content(file, options.limits());
        String sha256 = ContentDigest.sha256(content);
        String shownName = OpenedRide.shownName(file);
        OpenedFile opened = OpenedFile.of(content, sha256, file.toString(), shownName, options);
        List<FileInspection.Session> sessions = opened.read().recordings().stream()
                .map(recording -> session(opened, recording))
                .toList();
        return new FileInspection(shownName, opened.read().format(), content.length, sha256, opened.notes(), sessions);
    }

    private static FileInspection.Session session(OpenedFile file, Recording recording) {
        OpenedRide opened = OpenedRide.of(file, recording);
        RideLoad load = RideLoad.of(
                opened.ride(), null, null, ZoneScheme.POWER_SEVEN_LEVELS, ZoneScheme.HEART_RATE_FIVE_LEVELS);
        return new FileInspection.Session(
                opened.source(),
                RecordingSummary.of(recording, opened.ride()),
                opened.quality(),
                load,
                opened.totals(),
                opened.ride());
    }
}
