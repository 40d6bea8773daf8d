package io.github.wattledger;

import io.github.wattledger.RiderContext.ThresholdSource;
import io.github.wattledger.clean.Cleaning;
import io.github.wattledger.clean.PowerSource;
import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.clean.QualityReport;
import io.github.wattledger.load.RideLoad;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.pacing.RacedPart;
import io.github.wattledger.pacing.Thresholds;
import io.github.wattledger.power.Ability;
import io.github.wattledger.power.MeanMaximalCurve;
import io.github.wattledger.power.SustainablePower;
import io.github.wattledger.power.ThresholdEstimate;
import io.github.wattledger.read.ReadLimits;
import io.github.wattledger.read.ReadNote;
import io.github.wattledger.read.ReadResult;
import io.github.wattledger.read.RideFiles;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.DeviceTotals;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.Rider;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.road.RigChoice;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The front door: a file, a recording or a ride goes in, a review comes out. Stateless and safe for many threads. */
public final class Reviewer {
    /** A threshold is doubted when a ride was this hard against it for this long: nobody rides so by definition. */
    private static final double DOUBTFUL_INTENSITY = 1.05;

    private static final int DOUBTFUL_SECONDS = 45 * 60;

    private Reviewer() {}

    /**
     * Reviews a recorded file.
     *
     * @throws UnreadableRideException when nothing could be read, or the file holds no cycling; its message is one line
     *     for people that begins with the file
     * @throws IllegalArgumentException when the options do not fit the ride, with one line for people
     */
    public static RideReview review(Path file, Rider rider, ReviewOptions options) throws UnreadableRideException {
        byte[] content = RideFiles.content(file, ReadLimits.DEFAULT);
        ReadResult read = RideFiles.read(content, file.toString(), ReadLimits.DEFAULT);
        Recording recording = cyclingSession(read, file.toString());
        Path name = file.getFileName();
        FileFacts facts =
                new FileFacts(name == null ? file.toString() : name.toString(), read.format(), sha256(content));
        return review(recording, facts, readNotes(read, recording), rider, options);
    }

    /**
     * Reviews a recording that is already in memory.
     *
     * @throws IllegalArgumentException when the options do not fit the ride, with one line for people
     */
    public static RideReview review(Recording recording, Rider rider, ReviewOptions options) {
        return review(recording, new FileFacts(null, null, null), List.of(), rider, options);
    }

    /**
     * Reviews a ride that is already clean.
     *
     * @throws IllegalArgumentException when the options do not fit the ride, with one line for people
     */
    public static RideReview review(Ride ride, Rider rider, ReviewOptions options) {
        RideSource source = new RideSource(null, null, null, null, null, ride.start(), null, 0);
        int recorded = ride.seconds() - ride.countSeconds(SecondState.PAUSED) - ride.countSeconds(SecondState.MISSING);
        PowerSource power = ride.has(Channel.POWER) ? PowerSource.SAMPLES : PowerSource.NONE;
        QualityReport quality = new QualityReport(recorded, 0, 0, power, List.of());
        return review(ride, quality, source, RecordingDevice.UNKNOWN, null, rider, options);
    }

    private record FileFacts(
            @Nullable String name,
            @Nullable String format,
            @Nullable String sha256) {}

    private static RideReview review(
            Recording recording, FileFacts file, List<QualityNote> readNotes, Rider rider, ReviewOptions options) {
        Cleaning.Cleaned cleaned = Cleaning.clean(recording);
        RideSource source = new RideSource(
                file.name(),
                file.format(),
                file.sha256(),
                recording.device().name(),
                recording.sport(),
                cleaned.ride().start(),
                recording.utcOffsetSeconds(),
                recording.sessionIndex());
        return review(
                cleaned.ride(),
                cleaned.quality().withNotesBefore(readNotes),
                source,
                recording.device(),
                recording.totals(),
                rider,
                options);
    }

    private static RideReview review(
            Ride whole,
            QualityReport quality,
            RideSource source,
            RecordingDevice device,
            @Nullable DeviceTotals totals,
            Rider rider,
            ReviewOptions options) {
        Interval selected = SelectedPart.of(whole, options);
        Ride ride = whole.part(selected);
        MeanMaximalCurve curve = MeanMaximalCurve.of(ride);
        RiderContext context = riderContext(rider, device, curve);
        RideLoad load = RideLoad.of(
                ride,
                context.thresholdPowerW(),
                context.thresholdHeartRateBpm(),
                rider.powerZones(),
                rider.heartRateZones());
        boolean partIsGiven = selected.seconds() != whole.seconds();
        RacedPart part = partIsGiven ? RacedPart.whole(ride) : RacedPart.find(ride, context.thresholdPowerW());
        Ability ability = ability(context.thresholdPowerW(), part.movingSeconds(ride));
        Thresholds thresholds = new Thresholds(
                context.thresholdPowerW(),
                context.thresholdPowerSource() == ThresholdSource.ESTIMATED,
                context.thresholdHeartRateBpm());
        RigChoice rig = RigChoice.of(ride, context.massKg(), null, null, null);
        PacingReview pacing =
                PacingReview.of(ride, part, selected.fromSecond(), thresholds, ability, options.effort(), rig);
        List<QualityNote> notes = new ArrayList<>();
        addPartNotes(notes, selected, partIsGiven, part, whole);
        addThresholdDoubt(notes, context, load);
        return new RideReview(
                source,
                context,
                quality.withNotes(notes),
                load,
                totals == null ? null : withoutPowerPlaceholders(totals, whole),
                curve,
                ability,
                pacing,
                whole);
    }

    private static Recording cyclingSession(ReadResult read, String file) throws UnreadableRideException {
        Recording unnamed = null;
        for (Recording recording : read.recordings()) {
            if (recording.isCycling()) {
                return recording;
            }
            if (unnamed == null && recording.isOfUnnamedSport()) {
                unnamed = recording;
            }
        }
        if (unnamed != null) {
            return unnamed;
        }
        throw new UnreadableRideException(
                file + ": holds no cycling, but " + sports(read.recordings()) + "; choose a file with a ride");
    }

    private static String sports(List<Recording> recordings) {
        return recordings.stream()
                .map(recording -> recording.sport() == null ? "an unnamed sport" : recording.sport())
                .distinct()
                .collect(Collectors.joining(", "));
    }

    private static List<QualityNote> readNotes(ReadResult read, Recording chosen) {
        List<QualityNote> notes = new ArrayList<>();
        for (ReadNote note : read.notes()) {
            notes.add(new QualityNote(note.code(), null, note.text()));
        }
        List<Recording> others = read.recordings().stream()
                .filter(each -> each.sessionIndex() != chosen.sessionIndex())
                .toList();
        if (!others.isEmpty()) {
            notes.add(new QualityNote(
                    "other-sessions",
                    null,
                    "The file holds " + others.size() + " more session(s): " + sports(others)
                            + ". Only the first cycling session is reviewed."));
        }
        return notes;
    }

    private static RiderContext riderContext(Rider rider, RecordingDevice device, MeanMaximalCurve curve) {
        Double thresholdPower = rider.thresholdPowerW();
        ThresholdSource source = thresholdPower == null ? null : ThresholdSource.GIVEN;
        if (thresholdPower == null && device.thresholdPowerW() != null) {
            thresholdPower = device.thresholdPowerW();
            source = ThresholdSource.DEVICE;
        }
        if (thresholdPower == null) {
            OptionalDouble estimate = ThresholdEstimate.watts(curve);
            if (estimate.isPresent()) {
                thresholdPower = estimate.getAsDouble();
                source = ThresholdSource.ESTIMATED;
            }
        }
        return new RiderContext(
                thresholdPower,
                source,
                rider.thresholdHeartRateBpm() != null ? rider.thresholdHeartRateBpm() : device.thresholdHeartRateBpm(),
                rider.massKg() != null ? rider.massKg() : device.riderMassKg());
    }

    private static Ability ability(@Nullable Double thresholdPowerW, int movingSeconds) {
        if (thresholdPowerW == null || movingSeconds < SustainablePower.SHORTEST_GUIDE_SECONDS) {
            return new Ability(null, null, null, null, null, movingSeconds);
        }
        double guideW = SustainablePower.guideW(thresholdPowerW, movingSeconds);
        return new Ability(null, null, Ability.Source.GUIDE, null, guideW, movingSeconds);
    }

    private static void addPartNotes(
            List<QualityNote> notes, Interval selected, boolean partIsGiven, RacedPart part, Ride whole) {
        if (partIsGiven) {
            notes.add(new QualityNote(
                    "part-selected",
                    selected.seconds(),
                    "Only " + clock(selected.fromSecond()) + " to " + clock(selected.toSecond()) + " of "
                            + clock(whole.seconds()) + " was reviewed, as asked for. The device's totals are of the"
                            + " whole session."));
        }
        if (part.leadInSeconds() > 0) {
            notes.add(new QualityNote(
                    "lead-in-set-apart",
                    part.leadInSeconds(),
                    "The first " + clock(part.leadInSeconds())
                            + " was easy riding or waiting: set apart as not raced. Load and curve include it."));
        }
        if (part.tailSeconds() > 0) {
            notes.add(new QualityNote(
                    "tail-set-apart",
                    part.tailSeconds(),
                    "The last " + clock(part.tailSeconds())
                            + " was easy riding or waiting: set apart as not raced. Load and curve include it."));
        }
    }

    private static void addThresholdDoubt(List<QualityNote> notes, RiderContext context, RideLoad load) {
        Double intensity = load.intensityFactor();
        if (intensity != null
                && context.thresholdPowerW() != null
                && context.thresholdPowerSource() != ThresholdSource.ESTIMATED
                && intensity > DOUBTFUL_INTENSITY
                && load.timerSeconds() > DOUBTFUL_SECONDS) {
            notes.add(new QualityNote(
                    "threshold-doubtful",
                    null,
                    String.format(
                            Locale.ROOT,
                            "An intensity factor of %.2f over %s contradicts a threshold of %.0f W: it looks too low, "
                                    + "perhaps a factory setting. Give the true one.",
                            intensity,
                            clock(load.timerSeconds()),
                            context.thresholdPowerW())));
        }
    }

    /** Some devices store 0 W where they had no power meter; that is a placeholder, not a total. */
    private static DeviceTotals withoutPowerPlaceholders(DeviceTotals totals, Ride ride) {
        if (ride.has(Channel.POWER)) {
            return totals;
        }
        return new DeviceTotals(
                totals.elapsedSeconds(),
                totals.timerSeconds(),
                totals.movingSeconds(),
                totals.distanceM(),
                totals.ascentM(),
                zeroToNull(totals.workKJ()),
                zeroToNull(totals.averagePowerW()),
                zeroToNull(totals.normalizedPowerW()),
                zeroToNull(totals.intensityFactor()),
                zeroToNull(totals.trainingStress()),
                totals.averageHeartRateBpm(),
                totals.maximumHeartRateBpm(),
                totals.averageCadenceRpm(),
                totals.averageSpeedMps());
    }

    private static @Nullable Double zeroToNull(@Nullable Double value) {
        return value == null || value == 0 ? null : value;
    }

    private static String clock(int seconds) {
        return String.format(Locale.ROOT, "%d:%02d:%02d", seconds / 3600, seconds / 60 % 60, seconds % 60);
    }

    private static String sha256(byte[] content) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
        } catch (NoSuchAlgorithmException e) {
            throw new AssertionError("every Java platform has SHA-256", e);
        }
    }
}
