package io.github.wattledger.bunch;

import io.github.wattledger.bunch.BunchProposal.Level;
import io.github.wattledger.course.Course;
import io.github.wattledger.ride.Channel;
import io.github.wattledger.ride.Ride;
import io.github.wattledger.rig.Air;
import io.github.wattledger.rig.Measure;
import io.github.wattledger.rig.RigChoice;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The door: a ride of which nobody says whether there was a bunch goes in, a proposal comes out. */
public final class BunchSearch {
    private BunchSearch() {}

    /**
     * Looks for a bunch in a ride.
     *
     * @param course the course of this ride, or null where it leads nowhere
     * @param rig what the rider rode on; drag area and rolling resistance count where they were given or come from the
     *     rider's other rides, never where they come from this one, since a bunch is in them
     */
    public static BunchProposal of(Ride ride, @Nullable Course course, RigChoice rig) {
        boolean isOneKind = rig.rollingResistance().origin() == Measure.Origin.GIVEN && !rig.isUnpaved();
        String missing = missing(ride, course);
        if (missing != null || course == null) {
            return new BunchProposal(List.of(), null, missing, List.of(), isOneKind);
        }
        double density = Air.of(ride).density().value();
        RoadPieces pieces = RoadPieces.of(ride, course, rig.rig(), density);
        Level level = LevelDrag.of(ride, course, rig, density);
        ChangeSearch.Found change = ChangeSearch.of(pieces, Prior.of(rig, density), isOneKind);
        return new BunchProposal(change.stretches(), level, change.whyNot(), change.wouldHaveShown(), isOneKind);
    }

    private static @Nullable String missing(Ride ride, @Nullable Course course) {
        for (Channel channel : List.of(Channel.POWER, Channel.DISTANCE, Channel.SPEED, Channel.ALTITUDE)) {
            if (!ride.has(channel)) {
                return "there is no " + channel.label() + " in this file";
            }
        }
        if (!ride.has(Channel.LATITUDE) || !ride.has(Channel.LONGITUDE)) {
            return "there are no positions in this file, so that wind and bunch look alike";
        }
        return course == null ? "the ride leads nowhere" : null;
    }
}
