package io.github.wattledger.cli;

import io.github.wattledger.cli.report.words.Units;
import io.github.wattledger.intake.RidePlace;
import io.github.wattledger.intake.Selection;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.ride.Interval;
import io.github.wattledger.ride.Ride;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** Which session of a file, and which part of it. */
final class RidePart {
    static final String FROM = "--from";
    static final String TO = "--to";
    static final String PLACE = "PLACE";

    @Option(
            names = "--session",
            paramLabel = "N",
            converter = OptionValues.SessionNumber.class,
            description = "The session of the file, counted from 1, whatever its sport. Without it: the first of"
                    + " cycling. 'wattledger inspect' lists them.")
    private @Nullable Integer sessionIndex;

    @Option(
            names = FROM,
            paramLabel = PLACE,
            converter = OptionValues.Place.class,
            description = "Leave out what comes before: an elapsed time, pauses counted, as 1:30:00 or 2h30 (1:30 is an"
                    + " hour and a half), or a distance, as 40km or 25mi.")
    private @Nullable RidePlace from;

    @Option(
            names = TO,
            paramLabel = PLACE,
            converter = OptionValues.Place.class,
            description = "Leave out what comes after this time or distance.")
    private @Nullable RidePlace to;

    /** How a ride is had when a place is a distance, which only the ride can turn into a time. */
    @FunctionalInterface
    interface Opening {
        Ride ride(@Nullable Integer sessionIndex) throws UnreadableRideException;
    }

    /** Whether any of the options was given. */
    boolean isGiven() {
        return sessionIndex != null || hasPlace();
    }

    /** Whether a part was given, not only a session. */
    boolean hasPlace() {
        return from != null || to != null;
    }

    /**
     * The part of a ride; a usage error when the two places are out of order or not on the ride.
     *
     * @param units of the reader, for what is said of a place that is not on the ride
     * @param opening asked only when a place is a distance
     */
    Selection selection(@Nullable CommandSpec spec, Units units, Opening opening) throws UnreadableRideException {
        Ride ride = from instanceof RidePlace.AtDistance || to instanceof RidePlace.AtDistance
                ? opening.ride(sessionIndex)
                : null;
        Integer first = second(spec, FROM, from, ride);
        Integer end = second(spec, TO, to, ride);
        if (ride != null && from instanceof RidePlace.AtDistance) {
            requireBeforeTheEnd(spec, from, ride, units);
        }
        requireOrder(spec, first, end);
        return Selection.WHOLE_RIDE.withSeconds(first, end).withSessionIndex(sessionIndex);
    }

    /** A usage error when a part would begin where a ride has ended. */
    static void requireBeforeTheEnd(@Nullable CommandSpec spec, RidePlace from, Ride ride, Units units) {
        if (from.secondOf(ride) < ride.seconds()) {
            return;
        }
        String length = from instanceof RidePlace.AtDistance
                ? units.distanceWords(new RidePlace.AtSecond(ride.seconds()).metresOf(ride))
                : Interval.clock(ride.seconds());
        throw Usage.refused(spec, FROM, "the ride is " + length + " long; choose an earlier place");
    }

    /** A usage error when the end does not lie behind the beginning. */
    static void requireOrder(@Nullable CommandSpec spec, @Nullable Number first, @Nullable Number end) {
        if (end != null && end.doubleValue() <= (first == null ? 0 : first.doubleValue())) {
            throw Usage.refused(spec, TO, "must come after " + (first == null ? "the start" : FROM));
        }
    }

    /** The usage error for what the core says of a part that a ride does not have. */
    ParameterException refused(@Nullable CommandSpec spec, IllegalArgumentException e) {
        return from == null ? Usage.error(spec, e.getMessage()) : Usage.refused(spec, FROM, e.getMessage());
    }

    private static @Nullable Integer second(
            @Nullable CommandSpec spec, String option, @Nullable RidePlace place, @Nullable Ride ride) {
        if (place instanceof RidePlace.AtSecond time) {
            return time.second();
        }
        if (place == null || ride == null) {
            return null;
        }
        try {
            return place.secondOf(ride);
        } catch (IllegalArgumentException e) {
            throw Usage.refused(spec, option, e.getMessage() + "; give an elapsed time such as 1:30:00");
        }
    }
}
