package io.github.wattledger;

import io.github.wattledger.clean.Cleaning;
import io.github.wattledger.course.Course;
import io.github.wattledger.read.ContentDigest;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.ReadResult;
import io.github.wattledger.read.RideFiles;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.replay.WhatIf;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Recording;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.RigChoice;
import java.io.Serializable;
import java.nio.file.Path;

/** The door for rides that are to be ridden again with something changed. Stateless and safe for many threads. */
public final class Replayer {
    private Replayer() {}

    /**
     * A recorded ride with something changed.
     *
     * @param source where the ride comes from
     * @param ridden the seconds of the recording that were ridden again
     * @param answer what the change is worth
     */
    public record Replayed(RideSource source, Interval ridden, WhatIf.Answer answer) implements Serializable {}

    /**
     * Rides a recorded file again. The rider's mass is what was given, else what was set on the device; drag area and
     * rolling resistance are what was given, else estimated from the ride, else typical.
     *
     * @param rider what is known of the rider and the bicycle
     * @param position how the rider sat, as far as one position can say it
     * @param change what to change
     * @param options which session, and which part of it; the rest of them is not looked at
     * @throws UnreadableRideException when nothing could be read, or the ride cannot be replayed, for instance for want
     *     of power; its message is one line for people that begins with the file
     * @throws IllegalArgumentException when the options or the change do not fit, with one line for people
     */
    public static Replayed whatIf(
            Path file,
            ReadOptions readOptions,
            Rider rider,
            Position position,
            WhatIf.Change change,
            ReviewOptions options)
            throws UnreadableRideException {
        byte[] content = RideFiles.content(file, readOptions.limits());
        ReadResult read = RideFiles.read(content, file.toString(), readOptions);
        Recording recording = Reviewer.chosenSession(read, file.toString(), options.sessionIndex());
        Ride whole = Cleaning.clean(recording).ride();
        Interval part = SelectedPart.of(whole, options);
        Ride ride = whole.part(part);
        Double massKg = rider.massKg() == null ? recording.device().riderMassKg() : rider.massKg();
        Course course = Course.of(ride).orElse(null);
        RigChoice rig = Reviewer.rig(rider, massKg, position).estimatedFrom(ride, course);
        WhatIf.Answer answer = WhatIf.replayed(ride, course, rig, change)
                .orElseThrow(reason -> new UnreadableRideException(file + ": cannot be ridden again: " + reason));
        Path name = file.getFileName();
        RideSource source = RideSource.of(
                recording,
                whole,
                name == null ? file.toString() : name.toString(),
                read.format(),
                readOptions.digest() ? ContentDigest.sha256(content) : null);
        return new Replayed(source, part, answer);
    }
}
