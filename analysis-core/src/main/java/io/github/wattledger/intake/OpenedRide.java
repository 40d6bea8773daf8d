package io.github.wattledger.intake;

import io.github.wattledger.clean.Cleaning;
import io.github.wattledger.clean.PowerSource;
import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.clean.QualityReport;
import io.github.wattledger.history.OwnRides;
import io.github.wattledger.read.ContentDigest;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.RideFiles;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.DeviceTotals;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.rider.Rider;
import java.io.InputStream;
import java.io.Serializable;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A ride that was read and cleaned, and where it comes from. A review, a replay, a comparison, an inspection and a season
 * all begin with one.
 *
 * @param ride the cleaned one-second recording, whole
 * @param quality how good the recording was, and what was changed in it; the notes on its file come first
 * @param source where it comes from
 * @param device the device that recorded it, with its settings
 * @param totals what the device computed for the whole session, as it stored it, or null
 * @param setting what the file says about where it was ridden
 */
public record OpenedRide(
        Ride ride,
        QualityReport quality,
        RideSource source,
        RecordingDevice device,
        @Nullable DeviceTotals totals,
        RideSetting setting)
        implements Serializable {
    /**
     * Opens a session of a file.
     *
     * @param sessionIndex which session, counted from 0, or null for the first of cycling
     * @throws UnreadableRideException when nothing could be read, or the file has no such session; its message is one line
     *     for people that begins with the file
     */
    public static OpenedRide of(Path file, ReadOptions options, @Nullable Integer sessionIndex)
            throws UnreadableRideException {
        byte[] content = RideFiles.content(file, options.limits());
        String sha256 = ContentDigest.sha256(content);
        return chosen(OpenedFile.of(content, sha256, file.toString(), shownName(file), options), sessionIndex);
    }

    /**
     * Opens a session of a file's content that is already in memory.
     *
     * @param content the whole content; not changed
     * @param name what to call it in messages and reports
     * @param sessionIndex which session, counted from 0, or null for the first of cycling
     * @throws UnreadableRideException when nothing could be read, or the content has no such session; its message is one
     *     line for people that begins with the name
     */
    public static OpenedRide of(byte[] content, String name, ReadOptions options, @Nullable Integer sessionIndex)
            throws UnreadableRideException {
        return chosen(OpenedFile.of(content, ContentDigest.sha256(content), name, name, options), sessionIndex);
    }

    /**
     * Opens a session of a stream, which is read to its end and not closed.
     *
     * @param name what to call it in messages and reports
     * @param sessionIndex which session, counted from 0, or null for the first of cycling
     * @throws UnreadableRideException when nothing could be read, the stream is longer than the limits allow, or there is
     *     no such session; its message is one line for people that begins with the name
     */
    public static OpenedRide of(InputStream in, String name, ReadOptions options, @Nullable Integer sessionIndex)
            throws UnreadableRideException {
        return of(RideFiles.content(in, name, options.limits()), name, options, sessionIndex);
    }

    /** Opens a recording that is already in memory. */
    public static OpenedRide of(Recording recording) {
        return of(recording, null, null, null);
    }

    /** A session of a file taken by itself, without the notes on the file. */
    static OpenedRide of(OpenedFile file, Recording recording) {
        return of(recording, file.shownName(), file.read().format(), file.sha256())
                .withSports(file.sports());
    }

    private static OpenedRide chosen(OpenedFile file, @Nullable Integer sessionIndex) throws UnreadableRideException {
        Recording recording = file.chosen(sessionIndex);
        return of(file, recording).withNotesBefore(file.notesBeside(recording));
    }

    private static OpenedRide of(
            Recording recording, @Nullable String file, @Nullable String format, @Nullable String sha256) {
        Cleaning.Cleaned cleaned = Cleaning.clean(recording);
        RideSource source = RideSource.of(recording, cleaned.ride(), file, format, sha256);
        return new OpenedRide(
                cleaned.ride(),
                cleaned.quality(),
                source,
                recording.device(),
                recording.totals(),
                RideSetting.of(recording, cleaned.ride()));
    }

    /**
     * Takes a ride that is already clean.
     *
     * @param device the device that recorded it; {@link RecordingDevice#UNKNOWN} when that is not known
     * @param utcOffsetSeconds the rider's local time minus UTC, seconds, or null when it is not known
     */
    public static OpenedRide of(Ride ride, RecordingDevice device, @Nullable Integer utcOffsetSeconds) {
        return of(ride, device, utcOffsetSeconds, RideSetting.of(ride));
    }

    /**
     * Takes a ride that is already clean, and of whose file more is known than it carries now.
     *
     * @param device the device that recorded it; {@link RecordingDevice#UNKNOWN} when that is not known
     * @param utcOffsetSeconds the rider's local time minus UTC, seconds, or null when it is not known
     * @param setting what the file says about where it was ridden
     */
    public static OpenedRide of(
            Ride ride, RecordingDevice device, @Nullable Integer utcOffsetSeconds, RideSetting setting) {
        int recorded = ride.seconds() - ride.countSeconds(SecondState.PAUSED) - ride.countSeconds(SecondState.MISSING);
        PowerSource power = ride.has(Channel.POWER) ? PowerSource.SAMPLES : PowerSource.NONE;
        return new OpenedRide(
                ride,
                new QualityReport(recorded, 0, 0, power, List.of()),
                new RideSource(null, null, null, device.name(), null, ride.start(), utcOffsetSeconds, 0),
                device,
                null,
                setting);
    }

    /**
     * Opens all cycling sessions of a file's content, without the notes on the file.
     *
     * @param content the whole content; not changed
     * @param sha256 its digest, as {@link ContentDigest#sha256} gives it
     * @param name what to call it in messages and reports
     * @return the sessions in the file's order, possibly none
     * @throws UnreadableRideException when nothing could be read; its message is one line for people that begins with the
     *     name
     */
    public static List<OpenedRide> allCycling(byte[] content, String sha256, String name, ReadOptions options)
            throws UnreadableRideException {
        OpenedFile file = OpenedFile.of(content, sha256, name, name, options);
        return file.cycling().stream().map(recording -> of(file, recording)).toList();
    }

    /** The name of a file without its folder. */
    static String shownName(Path file) {
        Path name = file.getFileName();
        return name == null ? file.toString() : name.toString();
    }

    /** The same ride out of a file with so many sports. */
    OpenedRide withSports(int count) {
        return new OpenedRide(ride, quality, source, device, totals, setting.withSports(count));
    }

    /** The same ride with more notes before its own. */
    OpenedRide withNotesBefore(List<QualityNote> notes) {
        return new OpenedRide(ride, quality.withNotesBefore(notes), source, device, totals, setting);
    }

    /** The device's totals, without the zeros that stand for power where the ride has none; null when there are none. */
    public @Nullable DeviceTotals measuredTotals() {
        return totals == null || ride.has(Channel.POWER) ? totals : totals.withoutZeroPower();
    }

    /**
     * The local day on which the ride began.
     *
     * @param zone the time zone of rides that do not know their local time
     */
    public LocalDate localDay(ZoneId zone) {
        return RiderOnDay.localDay(source.startTime(), source.utcOffsetSeconds(), zone);
    }

    /**
     * What holds of the rider on the day of this ride.
     *
     * @param rider what the caller knows about the rider
     * @param zone the time zone of rides that do not know their local time
     */
    public RiderOnDay riderOnDay(Rider rider, ZoneId zone) {
        return riderOnDay(rider, zone, null);
    }

    /**
     * What holds of the rider on the day of this ride, by own rides of earlier days too.
     *
     * @param rider what the caller knows about the rider
     * @param zone the time zone of rides that do not know their local time
     * @param ownRides the rider's own rides, or null where they are not to be looked at
     */
    public RiderOnDay riderOnDay(Rider rider, ZoneId zone, @Nullable OwnRides ownRides) {
        return RiderOnDay.of(rider, device, localDay(zone), ownRides);
    }
}
