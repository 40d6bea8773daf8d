package io.github.wattledger.intake;

import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.clean.RecordingSummary;
import io.github.wattledger.load.RideLoad;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.RideInput;
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
        return inspect(RideInput.of(file), ReadOptions.DEFAULT);
    }

    /**
     * Looks into a recorded file, its bytes or a stream. The result holds its sessions of every sport. An interrupt of the
     * thread ends it with a {@link io.github.wattledger.cancel.CancelledException}.
     *
     * @throws UnreadableRideException when nothing could be read; its message is one line for people that begins with
     *     the name of the input
     */
    public static FileInspection inspect(RideInput input, ReadOptions options) throws UnreadableRideException {
        OpenedFile opened = OpenedFile.of(input, options, Cancellation.ON_INTERRUPT);
        List<FileInspection.Session> sessions = opened.read().recordings().stream()
                .map(recording -> session(opened, recording))
                .toList();
        return new FileInspection(
                opened.shownName(), opened.read().format(), opened.bytes(), opened.sha256(), opened.notes(), sessions);
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
