package io.github.wattledger.season;

import io.github.wattledger.cancel.CancelledException;
import io.github.wattledger.intake.OpenedRide;
import io.github.wattledger.intake.RideSource;
import io.github.wattledger.read.ContentDigest;
import io.github.wattledger.read.ReadLimits;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.RideInput;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.read.UnreadableRideException.Reason;
import io.github.wattledger.ride.Ride;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Takes in one file: bytes become rides, packed for the store and measured; they are judged from there. */
final class RideIntake {
    private RideIntake() {}

    /** A ride to be stored. */
    record NewRide(StoredRide ride, Judge.Judged judged) {}

    /**
     * What became of a file.
     *
     * @param file the file
     * @param sha256 digest of its content, or null when it could not be had
     * @param isKnown whether the store has all of this content already
     * @param rides its rides, empty when known or unreadable
     * @param problem why it gives no ride, or null
     */
    record Taken(
            FoundFile file,
            @Nullable String sha256,
            boolean isKnown,
            List<NewRide> rides,
            @Nullable String problem) {}

    /** Reads, cleans and measures a file whose content is not among those that are known. */
    static Taken take(FoundFile file, Set<String> knownContents, Judge judge) {
        String sha256 = null;
        try {
            byte[] content = RideInput.of(file.path()).content(ReadLimits.DEFAULT);
            sha256 = ContentDigest.sha256(content);
            if (knownContents.contains(sha256)) {
                return new Taken(file, sha256, true, List.of(), null);
            }
            List<NewRide> rides = new ArrayList<>();
            for (OpenedRide opened : OpenedRide.allCycling(content, sha256, file.name(), ReadOptions.DEFAULT)) {
                if (opened.ride().seconds() > 0) {
                    rides.add(newRide(opened, sha256, judge));
                }
            }
            return new Taken(file, sha256, false, rides, rides.isEmpty() ? "holds no cycling with samples" : null);
        } catch (UnreadableRideException e) {
            return new Taken(file, e.reason() == Reason.NO_DECODER ? null : sha256, false, List.of(), reason(e, file));
        } catch (CancelledException e) {
            throw e;
        } catch (RuntimeException | LinkageError e) {
            // One file that trips a mistake of ours must not end the season; without a digest it is tried again.
            return new Taken(file, null, false, List.of(), "internal failure: " + e);
        }
    }

    private static NewRide newRide(OpenedRide opened, String sha256, Judge judge) {
        Ride whole = opened.ride();
        RideSource source = opened.source();
        // What is measured now is exactly what will be judged from the store.
        Ride ride = RideCodec.slim(whole);
        StoredRide.Device device = new StoredRide.Device(
                opened.device().name(),
                opened.device().thresholdPowerW(),
                opened.device().thresholdHeartRateBpm(),
                opened.device().maximumHeartRateBpm(),
                opened.device().riderMassKg());
        KeptEstimate estimate = KeptEstimate.of(whole, Judge.totalMassKg(judge.onDay(opened)));
        StoredRide stored = new StoredRide(
                new StoredRide.Key(sha256, source.sessionIndex()),
                device,
                opened.setting(),
                ride.start(),
                source.utcOffsetSeconds(),
                String.valueOf(source.format()),
                whole.channels().size(),
                ride.laps().size(),
                RideCodec.pack(ride),
                RideCodec.packStates(ride),
                RideCodec.packLaps(ride),
                ride.seconds(),
                estimate);
        return new NewRide(stored, Judge.measure(ride));
    }

    /** The reader's sentence without the file's name, which stands beside it anyway. */
    private static String reason(UnreadableRideException e, FoundFile file) {
        String message = String.valueOf(e.getMessage());
        for (String prefix : List.of(file.name() + ": ", file.path() + ": ")) {
            if (message.startsWith(prefix)) {
                return message.substring(prefix.length());
            }
        }
        return message;
    }
}
