package io.github.wattledger.replay;

import io.github.wattledger.clean.QualityNote;
import io.github.wattledger.course.Course;
import io.github.wattledger.history.OwnRides;
import io.github.wattledger.intake.OpenedRide;
import io.github.wattledger.intake.RideSource;
import io.github.wattledger.intake.RiderOnDay;
import io.github.wattledger.intake.Selection;
import io.github.wattledger.read.ReadOptions;
import io.github.wattledger.read.RideInput;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.read.UnreadableRideException.Reason;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Outcome;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rider.Rider;
import io.github.wattledger.rig.Position;
import io.github.wattledger.rig.RigChoice;
import java.io.Serializable;
import java.time.ZoneOffset;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The door for rides that are to be ridden again with something changed. Stateless and safe for many threads. */
public final class Replayer {
    private Replayer() {}

    /**
     * A recorded ride with something changed.
     *
     * @param source where the ride comes from
     * @param ridden the seconds of the recording that were ridden again
     * @param answer what the change is worth
     * @param notes what has to be said about the numbers that the replay rests on, possibly nothing
     */
    public record Replayed(RideSource source, Interval ridden, WhatIf.Answer answer, List<QualityNote> notes)
            implements Serializable {
        /** Copies the list. */
        public Replayed {
            notes = List.copyOf(notes);
        }
    }

    /**
     * Rides a recorded file, its bytes or a stream again. The rider's mass is what was given, otherwise what was set on the device, otherwise
     * typical; drag area and rolling resistance are what was given, otherwise estimated from the ride, otherwise what the
     * rider's own rides of earlier days show, otherwise typical.
     *
     * @param rider what is known of the rider and the bicycle
     * @param position how the rider sat, as far as one position can say it
     * @param change what to change
     * @param selection which session, and which part of it; the rest is not looked at
     * @param ownRides the rider's own rides, or null where they are not to be looked at
     * @throws UnreadableRideException when nothing could be read, or the ride cannot be replayed, for instance for want
     *     of power; its message is one line for people that begins with the name of the input
     * @throws IllegalArgumentException when the selection or the change does not fit, with one line for people
     */
    public static Replayed whatIf(
            RideInput input,
            ReadOptions readOptions,
            Rider rider,
            Position position,
            WhatIf.Change change,
            Selection selection,
            @Nullable OwnRides ownRides)
            throws UnreadableRideException {
        return whatIf(
                        OpenedRide.of(input, readOptions, selection.sessionIndex()),
                        rider,
                        position,
                        change,
                        selection,
                        ownRides)
                .orElseThrow(reason -> new UnreadableRideException(Reason.NOT_SUITABLE, input.name() + ": " + reason));
    }

    /**
     * Rides a ride again that was opened before, with the session that the selection names.
     *
     * @param rider what is known of the rider and the bicycle
     * @param position how the rider sat, as far as one position can say it
     * @param change what to change
     * @param selection which part of it; the rest is not looked at
     * @param ownRides the rider's own rides, or null where they are not to be looked at
     * @return refused where the ride cannot be replayed, for instance for want of power
     * @throws IllegalArgumentException when the selection or the change does not fit, with one line for people
     */
    public static Outcome<Replayed> whatIf(
            OpenedRide opened,
            Rider rider,
            Position position,
            WhatIf.Change change,
            Selection selection,
            @Nullable OwnRides ownRides) {
        Interval part = selection.secondsOf(opened.ride());
        Ride ride = opened.ride().part(part);
        // A replay rests on no threshold, so the time zone of the day makes no difference.
        RiderOnDay onDay = opened.riderOnDay(rider, ZoneOffset.UTC);
        Course course = Course.of(ride).orElse(null);
        RigChoice ofRide = onDay.rig(position).estimatedFrom(ride, course);
        RigChoice rig =
                ownRides == null ? ofRide : ownRides.traitsOn(onDay.day()).fill(ofRide);
        Outcome<WhatIf.Answer> answer = WhatIf.replayed(ride, course, rig, change);
        if (answer instanceof Outcome.Refused<WhatIf.Answer> refused) {
            return Outcome.refused("cannot be ridden again: " + refused.reason());
        }
        List<QualityNote> notes = onDay.notes().stream()
                .filter(note -> note.code().equals(RiderOnDay.DEVICE_MASS_IGNORED))
                .toList();
        return Outcome.of(new Replayed(opened.source(), part, answer.orElseThrow(AssertionError::new), notes));
    }
}
