package io.github.wattledger.intake;

import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.cancel.CancelledException;
import io.github.wattledger.clean.Cleaning;
import io.github.wattledger.clean.PowerSource;
import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.clean.QualityReport;
import io.github.wattledger.history.OwnRides;
import io.github.wattledger.read.ContentDigest;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.RideInput;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.DeviceTotals;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.rider.Rider;
import java.io.Serializable;
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
     * Opens a session of a file, of its bytes or of a stream. An interrupt of the thread ends it.
     *
     * @param sessionIndex which session, counted from 0, or null for the first of cycling
     * @throws UnreadableRideException when nothing could be read, there is more than the limits allow, or there is no such
     *     session; its message is one line for people that begins with the name of the input
     * @throws CancelledException when the thread was interrupted
     */
    public static OpenedRide of(RideInput input, ReadOptions options, @Nullable Integer sessionIndex)
            throws UnreadableRideException {
        return of(input, options, sessionIndex, Cancellation.ON_INTERRUPT);
    }

    /**
     * Opens a session of a file, of its bytes or of a stream.
     *
     * @param sessionIndex which session, counted from 0, or null for the first of cycling
     * @param cancellation when to end early
     * @throws UnreadableRideException when nothing could be read, there is more than the limits allow, or there is no such
     *     session; its message is one line for people that begins with the name of the input
     * @throws CancelledException when it ends early
     */
    public static OpenedRide of(
            RideInput input, ReadOptions options, @Nullable Integer sessionIndex, Cancellation cancellation)
            throws UnreadableRideException {
        OpenedFile file = OpenedFile.of(input, options, cancellation);
        Recording recording = file.chosen(sessionIndex);
        cancellation.check();
        return of(file, recording).withNotesBefore(file.notesBeside(recording));
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
        OpenedFile file = OpenedFile.of(content, sha256, name, name, options, Cancellation.ON_INTERRUPT);
        return file.cycling().stream().map(recording -> of(file, recording)).toList();
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
