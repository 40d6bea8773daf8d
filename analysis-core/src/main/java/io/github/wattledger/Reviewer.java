package io.github.wattledger;

import io.github.wattledger.RiderContext.ThresholdSource;
import io.github.wattledger.clean.Cleaning;
import io.github.wattledger.clean.PowerSource;
import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.clean.QualityReport;
import io.github.wattledger.course.Course;
import io.github.wattledger.course.GearUse;
import io.github.wattledger.load.RideLoad;
import io.github.wattledger.pacing.PacingReview;
import io.github.wattledger.pacing.RacedPart;
import io.github.wattledger.pacing.Thresholds;
import io.github.wattledger.power.Ability;
import io.github.wattledger.power.MeanMaximalCurve;
import io.github.wattledger.read.ContentDigest;
import io.github.wattledger.read.ReadNote;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.ReadResult;
import io.github.wattledger.read.RideFiles;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.DeviceTotals;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.RecordingDevice;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.ride.SecondState;
import io.github.wattledger.rider.Gears;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rig.Measure;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.RigChoice;
import io.github.wattledger.rig.RigEstimate;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The front door: a file, a recording or a ride goes in, a review comes out. Stateless and safe for many threads. */
public final class Reviewer {
    /** A threshold is doubted when a ride was this hard against it for this long: nobody rides so by definition. */
    private static final double DOUBTFUL_INTENSITY = 1.05;

    private static final int DOUBTFUL_SECONDS = 45 * 60;

    private static final int MOST_SESSIONS_NAMED = 12;

    private Reviewer() {}

    /**
     * Reviews a recorded file.
     *
     * @throws UnreadableRideException when nothing could be read, or the file holds no cycling; its message is one line
     *     for people that begins with the file
     * @throws IllegalArgumentException when the options do not fit the ride, with one line for people
     */
    public static RideReview review(Path file, Rider rider, ReviewOptions options) throws UnreadableRideException {
        return review(file, ReadOptions.DEFAULT, rider, options);
    }

    /**
     * Reviews a recorded file, read with options of one's own.
     *
     * @throws UnreadableRideException when nothing could be read, or the file holds no cycling, or not the session asked
     *     for; its message is one line for people that begins with the file
     * @throws IllegalArgumentException when the options do not fit the ride, with one line for people
     */
    public static RideReview review(Path file, ReadOptions readOptions, Rider rider, ReviewOptions options)
            throws UnreadableRideException {
        byte[] content = RideFiles.content(file, readOptions.limits());
        CompletableFuture<@Nullable String> sha256 =
                readOptions.digest() ? digestBeside(content) : CompletableFuture.completedFuture(null);
        ReadResult read = RideFiles.read(content, file.toString(), readOptions);
        Recording recording = chosenSession(read, file.toString(), options.sessionIndex());
        Path name = file.getFileName();
        FileFacts facts = new FileFacts(name == null ? file.toString() : name.toString(), read.format(), sha256.join());
        return review(recording, facts, readNotes(read, recording), rider, options);
    }

    /** The digest on a thread of its own, while the caller reads the content: it takes some 25 ms of a cold start. */
    private static CompletableFuture<@Nullable String> digestBeside(byte[] content) {
        return CompletableFuture.supplyAsync(() -> ContentDigest.sha256(content), work -> {
            Thread thread = new Thread(work, "wattledger-digest");
            thread.setDaemon(true);
            thread.start();
        });
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
        return review(ride, rider, options, null);
    }

    /**
     * Reviews a ride that is already clean, and whose drag area and rolling resistance were estimated before, from more
     * than it carries now, for instance its positions.
     *
     * @param estimate made with the mass of rider and bicycle that {@code rider} has, or null to estimate from the ride
     * @throws IllegalArgumentException when the options do not fit the ride, with one line for people
     */
    public static RideReview review(
            Ride ride, Rider rider, ReviewOptions options, @Nullable Outcome<RigEstimate> estimate) {
        RideSource source = new RideSource(null, null, null, null, null, ride.start(), null, 0);
        int recorded = ride.seconds() - ride.countSeconds(SecondState.PAUSED) - ride.countSeconds(SecondState.MISSING);
        PowerSource power = ride.has(Channel.POWER) ? PowerSource.SAMPLES : PowerSource.NONE;
        QualityReport quality = new QualityReport(recorded, 0, 0, power, List.of());
        return review(ride, quality, source, RecordingDevice.UNKNOWN, null, rider, options, estimate);
    }

    private record FileFacts(
            @Nullable String name,
            @Nullable String format,
            @Nullable String sha256) {}

    private static RideReview review(
            Recording recording, FileFacts file, List<QualityNote> readNotes, Rider rider, ReviewOptions options) {
        Cleaning.Cleaned cleaned = Cleaning.clean(recording);
        RideSource source = RideSource.of(recording, cleaned.ride(), file.name(), file.format(), file.sha256());
        return review(
                cleaned.ride(),
                cleaned.quality().withNotesBefore(readNotes),
                source,
                recording.device(),
                recording.totals(),
                rider,
                options,
                null);
    }

    private static RideReview review(
            Ride whole,
            QualityReport quality,
            RideSource source,
            RecordingDevice device,
            @Nullable DeviceTotals totals,
            Rider rider,
            ReviewOptions options,
            @Nullable Outcome<RigEstimate> estimate) {
        Interval selected = SelectedPart.of(whole, options);
        Ride ride = whole.part(selected);
        MeanMaximalCurve curve = MeanMaximalCurve.of(ride);
        LocalDate day = localDay(source);
        RideAbility rideAbility = RideAbility.of(ride, curve, knownThresholdW(rider, day, device), rider, day);
        RiderContext context = riderContext(rider, day, device, rideAbility);
        RideLoad load = RideLoad.of(
                ride,
                context.thresholdPowerW(),
                context.thresholdHeartRateBpm(),
                rider.powerZones(),
                rider.heartRateZones());
        boolean doubtful = contradicts(load);
        boolean estimated = context.thresholdPowerSource() == ThresholdSource.ESTIMATED;
        // An estimate that the ride itself refutes is no measure of anything; a threshold that somebody set may be.
        Double judgedByW = estimated && doubtful ? null : context.thresholdPowerW();
        RacedPart part = options.choosesPart() ? RacedPart.whole(ride) : RacedPart.find(ride, judgedByW);
        Ability ability = rideAbility.over(part.movingSeconds(ride), judgedByW);
        Thresholds thresholds = new Thresholds(judgedByW, estimated, context.thresholdHeartRateBpm());
        Course course = Course.of(ride).orElse(null);
        RigChoice before = rig(rider, context.massKg(), Position.HOODS).withGears(rider.gears());
        RigChoice rig = estimate == null ? before.estimatedFrom(ride, course) : before.estimatedBy(estimate);
        PacingReview pacing = PacingReview.of(
                ride,
                course,
                part,
                selected.fromSecond(),
                thresholds,
                ability,
                options.effort(),
                options.limits(),
                rig,
                options.detectors());
        List<QualityNote> notes = new ArrayList<>();
        addPartNotes(notes, selected, part, whole);
        addThresholdAge(notes, context, rider, day);
        if (doubtful) {
            notes.add(thresholdDoubt(context, load));
        }
        return new RideReview(
                source,
                context,
                quality.withNotes(notes),
                load,
                totals == null ? null : withoutPowerPlaceholders(totals, whole),
                curve,
                ability,
                pacing,
                whole,
                selected,
                ClimbReview.of(ride, course, selected.fromSecond(), context.massKg()),
                gearUse(ride, course, rider));
    }

    private static @Nullable GearUse gearUse(Ride ride, @Nullable Course course, Rider rider) {
        Gears gears = rider.gears();
        return gears == null ? null : GearUse.of(ride, course, gears).orElse(null);
    }

    /** The rig of a rider before a ride tells more; a mass that the rider did not give is the device's. */
    static RigChoice rig(Rider rider, @Nullable Double massKg, Position position) {
        RigChoice choice =
                RigChoice.ofNoRide(massKg, rider.bikeMassKg(), rider.dragAreaM2(), rider.rollingResistance(), position);
        boolean isFromDevice = massKg != null && rider.massKg() == null;
        return isFromDevice ? choice.withRiderFrom(Measure.Origin.DEVICE) : choice;
    }

    static Recording chosenSession(ReadResult read, String file, @Nullable Integer sessionIndex)
            throws UnreadableRideException {
        if (sessionIndex == null) {
            return cyclingSession(read, file);
        }
        if (sessionIndex >= read.recordings().size()) {
            throw new UnreadableRideException(
                    file + ": has no session " + (sessionIndex + 1) + "; it holds " + numbered(read.recordings()));
        }
        return read.recordings().get(sessionIndex);
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
                file + ": holds no cycling, but " + numbered(read.recordings()) + "; choose a file with a ride");
    }

    /** The sessions with their numbers, counted from 1, for messages. */
    private static String numbered(List<Recording> recordings) {
        String first = recordings.stream()
                .limit(MOST_SESSIONS_NAMED)
                .map(recording -> (recording.sessionIndex() + 1) + " ("
                        + (recording.sport() == null ? "unnamed sport" : recording.sport()) + ")")
                .collect(Collectors.joining(", "));
        int more = recordings.size() - MOST_SESSIONS_NAMED;
        String sessions = recordings.size() == 1 ? "session " : "sessions ";
        return sessions + first + (more > 0 ? " and " + more + " more" : "");
    }

    private static List<QualityNote> readNotes(ReadResult read, Recording chosen) {
        List<QualityNote> notes = new ArrayList<>();
        for (ReadNote note : read.notes()) {
            notes.add(new QualityNote(note.code(), null, note.text()));
        }
        if (read.recordings().size() > 1) {
            notes.add(new QualityNote(
                    "other-sessions",
                    null,
                    "The file holds " + numbered(read.recordings()) + ". Only session " + (chosen.sessionIndex() + 1)
                            + " is reviewed."));
        }
        return notes;
    }

    private static @Nullable Double knownThresholdW(Rider rider, LocalDate day, RecordingDevice device) {
        return firstKnown(rider.thresholdPowerW(), rider.thresholds().powerW(day), device.thresholdPowerW());
    }

    private static RiderContext riderContext(Rider rider, LocalDate day, RecordingDevice device, RideAbility ability) {
        ThresholdSource source = null;
        if (rider.thresholdPowerW() != null) {
            source = ThresholdSource.GIVEN;
        } else if (rider.thresholds().powerW(day) != null) {
            source = ThresholdSource.PROFILE;
        } else if (device.thresholdPowerW() != null) {
            source = ThresholdSource.DEVICE;
        } else if (ability.thresholdPowerW() != null) {
            source = ThresholdSource.ESTIMATED;
        }
        return new RiderContext(
                ability.thresholdPowerW(),
                source,
                firstKnown(
                        rider.thresholdHeartRateBpm(),
                        rider.thresholds().heartRateBpm(day),
                        device.thresholdHeartRateBpm()),
                firstKnown(rider.massKg(), device.riderMassKg()));
    }

    private static @Nullable Double firstKnown(@Nullable Double... numbers) {
        for (Double number : numbers) {
            if (number != null) {
                return number;
            }
        }
        return null;
    }

    /** The day on the rider's own calendar, or on that of UTC when the file does not know the local time. */
    private static LocalDate localDay(RideSource source) {
        Integer offset = source.utcOffsetSeconds();
        long local = source.startTime().getEpochSecond() + (offset == null ? 0 : offset);
        return LocalDate.ofEpochDay(Math.floorDiv(local, 86_400L));
    }

    private static void addThresholdAge(List<QualityNote> notes, RiderContext context, Rider rider, LocalDate day) {
        if (context.thresholdPowerSource() == ThresholdSource.PROFILE
                && rider.thresholds().isBeforeFirstPower(day)) {
            notes.add(new QualityNote(
                    "threshold-later-than-ride",
                    null,
                    "The rider profile knows no threshold power of " + day
                            + ": its first one, of a later day, was taken."));
        }
    }

    private static void addPartNotes(List<QualityNote> notes, Interval selected, RacedPart part, Ride whole) {
        if (selected.seconds() != whole.seconds()) {
            notes.add(new QualityNote(
                    "part-selected",
                    selected.seconds(),
                    "Only " + Interval.clock(selected.fromSecond()) + " to " + Interval.clock(selected.toSecond())
                            + " of "
                            + Interval.clock(whole.seconds())
                            + " was reviewed, as asked for. The device's totals are of the"
                            + " whole session."));
        }
        if (part.leadInSeconds() > 0) {
            notes.add(new QualityNote(
                    "lead-in-set-apart",
                    part.leadInSeconds(),
                    "The first " + Interval.clock(part.leadInSeconds())
                            + " was easy riding or waiting: set apart as not raced. Load and curve include it."));
        }
        if (part.tailSeconds() > 0) {
            notes.add(new QualityNote(
                    "tail-set-apart",
                    part.tailSeconds(),
                    "The last " + Interval.clock(part.tailSeconds())
                            + " was easy riding or waiting: set apart as not raced. Load and curve include it."));
        }
    }

    /** Whether the ride was harder, for longer, than anyone can ride by the definition of its threshold. */
    private static boolean contradicts(RideLoad load) {
        Double intensity = load.intensityFactor();
        return intensity != null && intensity > DOUBTFUL_INTENSITY && load.timerSeconds() > DOUBTFUL_SECONDS;
    }

    private static QualityNote thresholdDoubt(RiderContext context, RideLoad load) {
        String consequence = context.thresholdPowerSource() == ThresholdSource.ESTIMATED
                ? "The estimate is too low, and pacing is not judged by it; give the threshold."
                : "It looks too low, perhaps a factory setting; give the true one.";
        return new QualityNote(
                "threshold-doubtful",
                null,
                String.format(
                        Locale.ROOT,
                        "An intensity factor of %.2f over %s contradicts a threshold of %.0f W. %s",
                        load.intensityFactor(),
                        Interval.clock(load.timerSeconds()),
                        context.thresholdPowerW(),
                        consequence));
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
}
